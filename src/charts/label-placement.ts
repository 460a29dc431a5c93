/** A rectangle in pixels, y downwards. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

type TextAnchor = "start" | "middle" | "end";

/** Where a text may stand: its anchor point on the baseline. */
export interface TextPlace {
  readonly x: number;
  readonly y: number;
  readonly anchor: TextAnchor;
}

/** A text with the places it may take, the most welcome first. */
export interface Label {
  readonly text: string;
  readonly places: readonly TextPlace[];
  /** left out where every place would cover something */
  readonly optional?: boolean;
  readonly accent?: boolean;
}

/** A label at its place. */
export interface PlacedLabel extends TextPlace {
  readonly text: string;
  readonly accent: boolean;
}

/** Mean width of a character of a sans-serif face, in ems: generous, because no face can be measured here. */
const CHARACTER = 0.54;

/** Estimated width of a text in pixels. */
export const estimateWidth = (text: string, fontSize: number): number =>
  [...text].length * CHARACTER * fontSize;

const boxOf = (text: string, { x, y, anchor }: TextPlace, fontSize: number): Box => {
  const width = estimateWidth(text, fontSize);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, top: y - 0.8 * fontSize, right: left + width, bottom: y + 0.25 * fontSize };
};

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

const outside = (box: Box, bounds: Box): number =>
  Math.max(0, bounds.left - box.left) +
  Math.max(0, box.right - bounds.right) +
  Math.max(0, bounds.top - box.top) +
  Math.max(0, box.bottom - bounds.bottom);

/**
 * Puts labels where they cover least of the obstacles and of each other, one after another.
 *
 * @param obstacles - boxes around marks and along lines
 * @param bounds - no label leaves these if it can help it
 */
export const placeLabels = (
  labels: readonly Label[],
  obstacles: readonly Box[],
  bounds: Box,
  fontSize: number,
): readonly PlacedLabel[] => {
  const taken: Box[] = [];
  return labels.flatMap(({ text, places, optional = false, accent = false }) => {
    let best: { readonly place: TextPlace; readonly box: Box; readonly cost: number } | undefined;
    places.forEach((place, rank) => {
      const box = boxOf(text, place, fontSize);
      const covered = obstacles.reduce((sum, obstacle) => sum + overlap(box, obstacle), 0);
      const hidden = taken.reduce((sum, other) => sum + overlap(box, other), 0);
      const cost = covered + 20 * hidden + 500 * outside(box, bounds) + 0.2 * rank;
      if (best === undefined || cost < best.cost) best = { place, box, cost };
    });
    if (best === undefined || (optional && best.cost > fontSize * 4)) return [];
    taken.push(best.box);
    return [{ ...best.place, text, accent }];
  });
};

/** Boxes along a straight line, small enough to stand for it as an obstacle. */
export const boxesAlong = (x1: number, y1: number, x2: number, y2: number, half = 1.5): readonly Box[] => {
  const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / 4));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const x = x1 + ((x2 - x1) * i) / steps;
    const y = y1 + ((y2 - y1) * i) / steps;
    return { left: x - half, top: y - half, right: x + half, bottom: y + half };
  });
};
