import { findNearer, type Spot, type TactileShape } from "./tactile-shape";
import { LEAST_COMPONENT } from "./tactile-check";

/** How far apart a line is looked at, and how much more than the least gap is kept for what lies between. */
const STEP = 0.5;
const SLACK = 0.3;

/** How a weaker line is drawn: full, or in dashes of a length. Millimetres. */
export interface LineLook {
  readonly width: number;
  readonly dash?: number;
}

/** Distances along a line at which its spots stand, from 0 on. */
const measureLine = (spots: readonly Spot[]): readonly number[] => {
  let length = 0;
  return spots.map((spot, i) => {
    const before = spots[i - 1];
    if (before !== undefined) length += Math.hypot(spot.x - before.x, spot.y - before.y);
    return length;
  });
};

const spotAt = (spots: readonly Spot[], lengths: readonly number[], distance: number): Spot => {
  const next = Math.max(
    1,
    lengths.findIndex((length) => length >= distance - 1e-9),
  );
  const [from, to] = [spots[next - 1], spots[next]];
  const [start, end] = [lengths[next - 1] ?? 0, lengths[next] ?? 0];
  if (from === undefined || to === undefined) return spots.at(-1) ?? { x: NaN, y: NaN };
  const share = end === start ? 0 : (distance - start) / (end - start);
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
};

/** The part of a line between two distances along it. */
const sliceLine = (
  spots: readonly Spot[],
  lengths: readonly number[],
  from: number,
  to: number,
): readonly Spot[] => [
  spotAt(spots, lengths, from),
  ...spots.filter((_, i) => (lengths[i] ?? 0) > from + 1e-9 && (lengths[i] ?? 0) < to - 1e-9),
  spotAt(spots, lengths, to),
];

/** Stretches of a line that keep away from what is already there, as distances along it. */
const findFree = (
  spots: readonly Spot[],
  lengths: readonly number[],
  width: number,
  others: readonly TactileShape[],
  gap: number,
): readonly (readonly [number, number])[] => {
  const length = lengths.at(-1) ?? 0;
  const steps = Math.max(1, Math.ceil(length / STEP));
  const nearer = findNearer(others);
  const free: [number, number][] = [];
  let start: number | undefined;
  for (let step = 0; step <= steps; step++) {
    const distance = (length * step) / steps;
    const at: TactileShape = { kind: "disc", at: spotAt(spots, lengths, distance), radius: width / 2 };
    const isFree = nearer(at, gap + SLACK) === undefined;
    if (isFree) start ??= distance;
    if (start !== undefined && (!isFree || step === steps)) {
      free.push([start, isFree ? distance : (length * (step - 1)) / steps]);
      start = undefined;
    }
  }
  return free;
};

/**
 * A weaker line, interrupted where it would come too near to something stronger. Pieces too short to be felt are left
 * out.
 *
 * @param gap - the least free paper, also between dashes
 */
export const drawAround = (
  spots: readonly Spot[],
  { width, dash }: LineLook,
  others: readonly TactileShape[],
  gap: number,
): readonly TactileShape[] => {
  const lengths = measureLine(spots);
  return findFree(spots, lengths, width, others, gap).flatMap(([from, to]) => {
    const room = to - from;
    if (room < LEAST_COMPONENT) return [];
    // As many dashes as go in, stretched so that the last ends where the room does.
    const many = dash === undefined ? 1 : Math.max(1, Math.floor((room + gap) / (dash + gap)));
    const each = (room + gap) / many - gap;
    return Array.from({ length: many }, (_, i): TactileShape => {
      const start = from + i * (each + gap);
      return {
        kind: "line",
        spots: sliceLine(spots, lengths, start, Math.min(to, start + each)),
        width,
      };
    });
  });
};
