/** A place on the paper in millimetres from its upper left corner. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What stands up from the paper: a line of some width, a disc, or a block. Millimetres. */
export type TactileShape =
  | { readonly kind: "line"; readonly spots: readonly Spot[]; readonly width: number }
  | { readonly kind: "disc"; readonly at: Spot; readonly radius: number }
  | {
      readonly kind: "block";
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    };

type Segment = readonly [Spot, Spot];

/** A shape as straight pieces (a disc as one of no length), with how far its edge is from them. */
const outlineOf = (shape: TactileShape): { readonly pieces: readonly Segment[]; readonly reach: number } => {
  switch (shape.kind) {
    case "disc":
      return { pieces: [[shape.at, shape.at]], reach: shape.radius };
    case "line":
      return {
        pieces: shape.spots.slice(1).map((spot, i) => [shape.spots[i] ?? spot, spot]),
        reach: shape.width / 2,
      };
    case "block": {
      const { left, top, right, bottom } = shape;
      const corners = [
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ];
      return {
        pieces: corners.map((corner, i) => [corner, corners[(i + 1) % 4] ?? corner]),
        reach: 0,
      };
    }
  }
};

const fromSegment = ({ x, y }: Spot, [a, b]: Segment): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
};

const turn = (a: Spot, b: Spot, c: Spot): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const cross = ([a, b]: Segment, [c, d]: Segment): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

const betweenSegments = (one: Segment, other: Segment): number =>
  cross(one, other)
    ? 0
    : Math.min(
        fromSegment(one[0], other),
        fromSegment(one[1], other),
        fromSegment(other[0], one),
        fromSegment(other[1], one),
      );

const within = ({ x, y }: Spot, shape: TactileShape): boolean =>
  shape.kind === "block" && x > shape.left && x < shape.right && y > shape.top && y < shape.bottom;

const anySpot = (shape: TactileShape): Spot => {
  switch (shape.kind) {
    case "disc":
      return shape.at;
    case "line":
      return shape.spots[0] ?? { x: NaN, y: NaN };
    case "block":
      return { x: (shape.left + shape.right) / 2, y: (shape.top + shape.bottom) / 2 };
  }
};

/** The free paper between two shapes in millimetres; 0 where they touch or overlap. */
export const gapBetween = (one: TactileShape, other: TactileShape): number => {
  if (within(anySpot(one), other) || within(anySpot(other), one)) return 0;
  const [first, second] = [outlineOf(one), outlineOf(other)];
  let least = Infinity;
  for (const piece of first.pieces)
    for (const against of second.pieces) least = Math.min(least, betweenSegments(piece, against));
  return Math.max(0, least - first.reach - second.reach);
};

/** A block on the paper, in millimetres. */
interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Shapes to be held against many others: those whose extent is far enough away are not measured. */
export const findNearer = (
  shapes: readonly TactileShape[],
): ((shape: TactileShape, least: number) => TactileShape | undefined) => {
  const placed = shapes.map((shape) => ({ shape, extent: extentOf(shape) }));
  return (shape, least) => {
    const { left, top, right, bottom } = extentOf(shape);
    return placed.find(
      ({ shape: other, extent }) =>
        extent.left - right < least &&
        left - extent.right < least &&
        extent.top - bottom < least &&
        top - extent.bottom < least &&
        gapBetween(shape, other) < least,
    )?.shape;
  };
};

/** The smallest block that holds a shape. */
export const extentOf = (shape: TactileShape): Extent => {
  if (shape.kind === "block") return shape;
  const { pieces, reach } = outlineOf(shape);
  const spots = pieces.flat();
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  return {
    left: Math.min(...xs) - reach,
    top: Math.min(...ys) - reach,
    right: Math.max(...xs) + reach,
    bottom: Math.max(...ys) + reach,
  };
};
