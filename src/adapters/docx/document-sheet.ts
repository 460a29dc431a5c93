import type { Handout } from "../../domain/drill/handout";
import { PAPERS } from "../../domain/paper";
import type { PrintLook } from "../../ports/document";

/** Kept free on all sides, in millimetres: our choice, no source. */
export const MARGIN = 18;

/** How a document's sheets are laid out; lengths in millimetres, sizes of type in points. */
export interface Sheet {
  /** whether the longer side is the upper one */
  readonly lies: boolean;
  /** between the margins */
  readonly width: number;
  readonly columns: readonly number[];
  readonly printSize: number;
  readonly brailleSize: number;
}

const PRINT_SIZE = { usual: 12, large: 18 } as const;
/** Braille is read by eye here, by touch on embossed paper: our choice, no source. */
const BRAILLE_SIZE = { largest: 28, smallest: 8, upright: 16 } as const;
/** The share of the width that print has beside its braille. */
const PRINT_SHARE = 0.38;
/** Width of a cell in ems, with some room: Noto Sans Symbols 2 has 0.70, DejaVu Sans 0.73, measured; the others are not. */
const CELL_WIDTH = 0.78;
const POINT = 25.4 / 72;
/** Between a cell's border and its text, on both sides together. */
const PADDING = 4;

/** The sheet on which the longest line of a handout's braille has room: upright, or lying where it would get small. */
export const fitSheet = (handout: Handout, { paper, largePrint }: PrintLook): Sheet => {
  const { width, height } = PAPERS[paper];
  const printSize = PRINT_SIZE[largePrint ? "large" : "usual"];
  const longest = Math.max(
    1,
    ...handout.items.flatMap(({ lines }) => lines.map(({ cells }) => cells.length)),
  );
  const fit = (side: number, lies: boolean): Sheet => {
    const room = side - 2 * MARGIN;
    const print = handout.options.print === "beside" ? Math.round(room * PRINT_SHARE) : 0;
    const columns = print === 0 ? [room] : [print, room - print];
    const size = (room - print - PADDING) / (longest * CELL_WIDTH * POINT);
    const brailleSize = Math.max(
      BRAILLE_SIZE.smallest,
      Math.min(BRAILLE_SIZE.largest, Math.floor(2 * size) / 2),
    );
    return { lies, width: room, columns, printSize, brailleSize };
  };
  const upright = fit(Math.min(width, height), false);
  return upright.brailleSize >= BRAILLE_SIZE.upright ? upright : fit(Math.max(width, height), true);
};
