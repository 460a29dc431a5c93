import type { Area } from "../domain/area";

/** The letters of a zero-based column: 0 is A, 26 is AA. */
export function formatColumn(column: number): string {
  let rest = column + 1;
  let letters = "";
  while (rest > 0) {
    const digit = (rest - 1) % 26;
    letters = String.fromCharCode(65 + digit) + letters;
    rest = (rest - 1 - digit) / 26;
  }
  return letters;
}

/** A cell as a teacher names it, from zero-based row and column: `D14`. */
export const formatCell = (row: number, column: number): string => `${formatColumn(column)}${row + 1}`;

/** An area as a teacher names it: `A3:H120`; one cell is `A3:A3`. */
export const formatArea = (area: Area): string =>
  `${formatCell(area.top, area.left)}:${formatCell(area.bottom, area.right)}`;
