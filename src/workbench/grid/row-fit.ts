import type { CellStyle, Worksheet } from "../../spreadsheet/workbook";
import { columnOf, rowOf } from "../../spreadsheet/workbook";

const USUAL_SIZE = 11;
/** Height of a line of text over its size in points, as spreadsheet programs set rows. */
const LINE = 1.36;

/**
 * Heights that rows without their own need for large or wrapped text, in points by row: as when a spreadsheet
 * program opens a file that leaves them out. Widths of letters are taken as usual ones.
 */
export function fitRows(sheet: Worksheet, styles: readonly CellStyle[]): ReadonlyMap<number, number> {
  const demanding = styles.map(
    (style) => style.wrap === true || (style.font?.size ?? USUAL_SIZE) > USUAL_SIZE,
  );
  const heights = new Map<number, number>();
  if (!demanding.includes(true)) return heights;
  for (const [key, cell] of sheet.cells) {
    if (demanding[cell.style] !== true || cell.value === null) continue;
    const row = rowOf(key);
    if (sheet.rowHeights.has(row)) continue;
    const style = styles[cell.style] ?? { numberFormat: "General" };
    const size = style.font?.size ?? USUAL_SIZE;
    const width = sheet.columnWidths.get(columnOf(key)) ?? sheet.defaultColumnWidth;
    const lines =
      style.wrap === true && !isMerged(sheet, key)
        ? countLines(String(cell.value), (width * USUAL_SIZE) / size)
        : 1;
    const height = Math.min(409, Math.ceil(lines * size * LINE));
    if (height > Math.max(sheet.defaultRowHeight, heights.get(row) ?? 0)) heights.set(row, height);
  }
  return heights;
}

const countLines = (text: string, characters: number): number =>
  text
    .split("\n")
    .reduce((lines, line) => lines + Math.max(1, Math.ceil(line.length / Math.max(1, characters))), 0);

const isMerged = (sheet: Worksheet, key: number): boolean =>
  sheet.merges.some((area) => area.top === rowOf(key) && area.left === columnOf(key));
