import type { SignState } from "../domain/progress/sign-states";
import { drawElement } from "./svg-element";

const INK = "currentColor";

/** A half disc: the right half filled. */
const halfOf = (x: number, y: number, r: number): string => `M${x} ${y - r}A${r} ${r} 0 0 1 ${x} ${y + r}Z`;

/**
 * The mark of a state, told apart by shape alone and fuller the further a sign is: a stroke, an empty ring, a ring half
 * filled, a ring with a dot, a filled disc, and for `check again` a square on its corner.
 *
 * @param r - half its height
 */
export const drawStateMark = (state: SignState, x: number, y: number, r: number): string => {
  const ring = drawElement("circle", { cx: x, cy: y, r, fill: "none", stroke: INK, "stroke-width": 1.5 });
  switch (state) {
    case "not taught":
      return drawElement("line", { x1: x - r, y1: y, x2: x + r, y2: y, stroke: INK, "stroke-width": 1.5 });
    case "taught":
      return ring;
    case "growing":
      return ring + drawElement("path", { d: halfOf(x, y, r), fill: INK });
    case "probably known":
      return ring + drawElement("circle", { cx: x, cy: y, r: r / 2, fill: INK });
    case "mastered":
      return drawElement("circle", { cx: x, cy: y, r: r + 0.75, fill: INK });
    case "check again": {
      const corner = r + 1;
      const points = `${x},${y - corner} ${x + corner},${y} ${x},${y + corner} ${x - corner},${y}`;
      return drawElement("polygon", { points, fill: "none", stroke: INK, "stroke-width": 1.5 });
    }
  }
};
