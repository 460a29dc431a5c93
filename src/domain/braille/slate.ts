import { cellOf, dotsOf } from "./cell";

/** Where each dot of six comes to lie when the paper is turned over. Eight-dot cells swap 7 and 8 as well. */
const MIRRORED = [0, 4, 5, 6, 1, 2, 3, 8, 7];

/**
 * Braille as it is punched with slate and stylus, from the back of the paper: every line from its end to its start,
 * every cell with its two columns swapped. Done twice, it is the braille again.
 *
 * @param cells - Unicode braille; line breaks stay where they are
 * @throws {RangeError} where a character is no braille pattern
 */
export const mirrorForSlate = (cells: string): string =>
  cells
    .split("\n")
    .map((line) =>
      [...line]
        .reverse()
        .map((cell) => cellOf(dotsOf(cell).map((dot) => MIRRORED[dot] ?? 0)))
        .join(""),
    )
    .join("\n");
