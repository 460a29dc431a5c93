import type { Area } from "../../domain/area";

/** The smallest area that holds both: `A1:C3` of A1 and C3. */
export const joinAreas = (a: Area, b: Area): Area => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});

/** The cells that two areas share, or undefined. */
export function overlap(a: Area, b: Area): Area | undefined {
  const area = {
    top: Math.max(a.top, b.top),
    left: Math.max(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
  };
  return area.top <= area.bottom && area.left <= area.right ? area : undefined;
}
