import { BRAILLE_SIZES, placeDots } from "../domain/braille/dimensions";
import { drawElement, escapeText } from "./svg-element";
import type { TactileElement, TactileLabel, TactilePage } from "./tactile-check";
import type { TactileShape } from "./tactile-shape";

/** How a sheet is drawn. */
export interface TactileLook {
  /** for a seeing proofreader: outlines, and the print under each piece of braille */
  readonly proof?: boolean;
  /** begins the ids of title and description */
  readonly idPrefix?: string;
}

/** Height of the proof's print in millimetres, so that it fits between lines of braille. */
const PRINT_SIZE = 3;

const drawShape = (shape: TactileShape, proof: boolean): string => {
  const outline = { fill: "none", stroke: "#000", "stroke-width": 0.3 };
  const area = proof ? outline : { fill: "#000" };
  switch (shape.kind) {
    case "disc":
      return drawElement("circle", { cx: shape.at.x, cy: shape.at.y, r: shape.radius, ...area });
    case "block":
      return drawElement("rect", {
        x: shape.left,
        y: shape.top,
        width: shape.right - shape.left,
        height: shape.bottom - shape.top,
        ...area,
      });
    case "line":
      return drawElement("polyline", {
        points: shape.spots.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" "),
        fill: "none",
        stroke: proof ? "#777" : "#000",
        "stroke-width": shape.width,
        "stroke-linejoin": "round",
      });
  }
};

const drawLabel = ({ print, lines, at }: TactileLabel, proof: boolean): readonly string[] => {
  const { dotBase, lineToLine } = BRAILLE_SIZES;
  const dots = lines.flatMap((line, i) =>
    placeDots(line).map(({ x, y }) =>
      drawElement("circle", {
        cx: at.x + dotBase / 2 + x,
        cy: at.y + dotBase / 2 + y + i * lineToLine,
        r: dotBase / 2,
        ...(proof ? { fill: "none", stroke: "#000", "stroke-width": 0.2 } : { fill: "#000" }),
      }),
    ),
  );
  const words = { x: at.x, y: at.y - 0.4, "font-size": PRINT_SIZE, fill: "#000" };
  return proof ? [...dots, drawElement("text", words, escapeText(print))] : dots;
};

const drawOne = ({ label, shapes }: TactileElement, proof: boolean): readonly string[] =>
  label === undefined ? shapes.map((shape) => drawShape(shape, proof)) : drawLabel(label, proof);

/**
 * A sheet as SVG in true size: black is raised. One unit is a millimetre.
 *
 * @returns `<svg role="img">` with title and description in print
 */
export const drawTactile = (page: TactilePage, look: TactileLook = {}): string => {
  const { proof = false, idPrefix = "tactile" } = look;
  const { width, height, title, summary, elements } = page;
  return drawElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-labelledby": `${idPrefix}-title ${idPrefix}-desc`,
      width: `${Number(width.toFixed(2))}mm`,
      height: `${Number(height.toFixed(2))}mm`,
      viewBox: `0 0 ${Number(width.toFixed(2))} ${Number(height.toFixed(2))}`,
      "font-family": "system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif",
    },
    [
      drawElement("title", { id: `${idPrefix}-title` }, escapeText(title)),
      drawElement("desc", { id: `${idPrefix}-desc` }, escapeText(summary)),
      drawElement("rect", { width, height, fill: "#fff" }),
      ...elements.flatMap((element) => drawOne(element, proof)),
    ],
  );
};
