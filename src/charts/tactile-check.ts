import { success, type Fault, type Result } from "../domain/result";
import { extentOf, findNearer, gapBetween, type Spot, type TactileShape } from "./tactile-shape";

/** How the sheet is raised: by an embosser or by heat on capsule paper, where lines swell. */
export const TACTILE_PROCESSES = ["embossed", "capsule"] as const;
export type TactileProcess = (typeof TACTILE_PROCESSES)[number];

/**
 * The least free paper between two elements, in millimetres.
 *
 * Source: web pages that summarise the guidelines of the Braille Authority of North America for tactile graphics; the
 * guidelines themselves were not read.
 */
export const TACTILE_GAPS: Readonly<Record<TactileProcess, number>> = { embossed: 3.2, capsule: 6.4 };
/** The least size of anything that is to be found with a finger: symbols, dashes, ticks. Source: as above. */
export const LEAST_COMPONENT = 6.4;
/** The least side of an area, and of a sample in the key. Source: as above. */
export const LEAST_SIDE = 12.7;
/** The most line styles, and the most symbols, on one sheet. Source: as above. */
export const MOST_KINDS = 5;
/** Free paper around everything: half an inch (common practice, no source). */
export const PAPER_MARGIN = 12.7;

/** Braille on a tactile graphic: lines of cells beneath each other, with the print they stand for. */
export interface TactileLabel {
  readonly print: string;
  readonly lines: readonly string[];
  /** the upper left corner of the block of dots */
  readonly at: Spot;
}

/** Something on the paper that is felt as one. */
export interface TactileElement {
  /** in print, for messages */
  readonly name: string;
  /** elements of one group touch by design: a path and its points, an axis and its ticks */
  readonly group: string;
  /** its line style or symbol, where it has one */
  readonly style?: { readonly of: "line" | "symbol"; readonly name: string };
  readonly shapes: readonly TactileShape[];
  readonly label?: TactileLabel;
}

/** One sheet of paper. */
export interface TactilePage {
  readonly title: string;
  readonly summary: string;
  readonly width: number;
  readonly height: number;
  readonly process: TactileProcess;
  readonly elements: readonly TactileElement[];
}

/** Why a layout cannot be felt, or why there is none. */
export interface TactileFault extends Fault {
  readonly code: "too-close" | "too-small" | "too-many" | "off-paper" | "no-room" | "nothing-to-draw";
  /** the elements at fault */
  readonly elements: readonly string[];
}

/** Millimetres that rounding may take. */
const ROUNDING = 1e-6;

/** A refusal of a layout that names the elements at fault. */
export const refuseLayout = (
  code: TactileFault["code"],
  message: string,
  elements: readonly string[] = [],
): Result<never, TactileFault> => ({ ok: false, fault: { code, message, elements } });

const mm = (length: number): string => `${length.toFixed(1)} mm`;

/**
 * Whether a finger can tell a layout apart: elements of different groups far enough from each other, lines, symbols and
 * dashes long enough, not too many styles, all on the paper.
 *
 * @returns the page, or the first fault with the elements named
 */
export const checkTactileLayout = (page: TactilePage): Result<TactilePage, TactileFault> =>
  checkPlaces(page) ?? checkSizes(page) ?? checkStyles(page) ?? checkGaps(page) ?? success(page);

const checkPlaces = ({ elements, width, height }: TactilePage): Result<never, TactileFault> | undefined => {
  for (const { name, shapes } of elements) {
    for (const shape of shapes) {
      const { left, top, right, bottom } = extentOf(shape);
      const inside =
        Math.min(left, top) >= PAPER_MARGIN - ROUNDING &&
        right <= width - PAPER_MARGIN + ROUNDING &&
        bottom <= height - PAPER_MARGIN + ROUNDING;
      if (!inside)
        return refuseLayout(
          "off-paper",
          `“${name}” reaches into the margin of ${mm(PAPER_MARGIN)}: choose a larger paper or turn it.`,
          [name],
        );
    }
  }
  return undefined;
};

const checkSizes = ({ elements }: TactilePage): Result<never, TactileFault> | undefined => {
  for (const { name, shapes, label } of elements) {
    if (label !== undefined) continue;
    for (const shape of shapes) {
      const { left, top, right, bottom } = extentOf(shape);
      const [wide, high] = [right - left, bottom - top];
      // A line need only be long; a symbol must be large both ways.
      const size = shape.kind === "line" ? Math.hypot(wide, high) : Math.min(wide, high);
      if (size < LEAST_COMPONENT - ROUNDING)
        return refuseLayout(
          "too-small",
          `A part of “${name}” is ${mm(size)}; at least ${mm(LEAST_COMPONENT)} can be felt.`,
          [name],
        );
    }
  }
  return undefined;
};

const checkStyles = ({ elements }: TactilePage): Result<never, TactileFault> | undefined => {
  for (const kind of ["line", "symbol"] as const) {
    const names = new Set(elements.flatMap(({ style }) => (style?.of === kind ? [style.name] : [])));
    if (names.size > MOST_KINDS)
      return refuseLayout(
        "too-many",
        `${names.size} different ${kind}s on one sheet; at most ${MOST_KINDS} can be told apart.`,
        [...names],
      );
  }
  return undefined;
};

const checkGaps = ({ elements, process }: TactilePage): Result<never, TactileFault> | undefined => {
  const least = TACTILE_GAPS[process];
  const nearer = elements.map(({ shapes }) => findNearer(shapes));
  for (const [i, one] of elements.entries()) {
    for (const [j, other] of elements.entries()) {
      if (j <= i || one.group === other.group) continue;
      for (const shape of one.shapes) {
        const against = nearer[j]?.(shape, least - ROUNDING);
        if (against === undefined) continue;
        return refuseLayout(
          "too-close",
          `“${one.name}” and “${other.name}” are ${mm(gapBetween(shape, against))} apart; ${mm(least)} are needed${process === "capsule" ? " on capsule paper" : ""}. Choose a larger paper, or turn it.`,
          [one.name, other.name],
        );
      }
    }
  }
  return undefined;
};
