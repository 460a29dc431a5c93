import { toAscii } from "../braille/cell";
import { success, type Result } from "../result";
import type { EmbosserPage } from "./embosser-page";

/**
 * Pages as a braille file for embossers and displays: North American ASCII braille, every line ended by CR LF, every
 * page by a form feed. There is no official standard; this is common practice.
 *
 * @returns the file's text, ASCII only; or `eight-dots` where a cell has dot 7 or 8, which this code cannot write
 */
export const formatBrf = (pages: readonly EmbosserPage[]): Result<string> => {
  let text = "";
  for (const { rows } of pages) {
    for (const { cells } of rows) {
      const ascii = toAscii(cells);
      if (!ascii.ok) return ascii;
      text += `${ascii.value}\r\n`;
    }
    text += "\f";
  }
  return success(text);
};
