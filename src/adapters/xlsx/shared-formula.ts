import { tokenize } from "@borgar/fx/xlsx";
import { formatColumn, MAX_COLUMNS, MAX_ROWS, parseColumn } from "../../spreadsheet/address";

/** A relative reference within a formula that many cells share. */
interface Corner {
  readonly column: number | undefined;
  readonly columnFixed: boolean;
  readonly row: number | undefined;
  readonly rowFixed: boolean;
}
type Piece = string | { readonly prefix: string; readonly corners: readonly Corner[] };

/**
 * A formula that a file writes once for many cells, prepared so that reading it for each of 50,000 rows costs no
 * parsing.
 *
 * Source: ECMA-376 part 1, 18.3.1.40 (f, shared formulas).
 */
export class SharedFormula {
  private readonly pieces: readonly Piece[];

  /**
   * @param formula - as the first cell has it, without `=`
   * @param row - zero-based place of the first cell
   */
  constructor(
    formula: string,
    private readonly row: number,
    private readonly column: number,
  ) {
    const pieces: Piece[] = [];
    for (const token of tokenize(formula, {})) {
      const piece = /^range(_beam|_ternary)?$/.test(token.type) ? parseReference(token.value) : token.value;
      const last = pieces.at(-1);
      if (typeof piece === "string" && typeof last === "string") pieces[pieces.length - 1] = last + piece;
      else pieces.push(piece);
    }
    this.pieces = pieces;
  }

  /** The formula of another cell: relative references move along. */
  at(row: number, column: number): string {
    const rows = row - this.row;
    const columns = column - this.column;
    let text = "";
    for (const piece of this.pieces)
      text += typeof piece === "string" ? piece : formatReference(piece, rows, columns);
    return text;
  }
}

const CORNER = /^(\$?)([A-Za-z]{1,3})?(?:(\$?)(\d{1,7}))?$/;

const parseReference = (text: string): Piece => {
  const split = text.lastIndexOf("!") + 1;
  const corners: Corner[] = [];
  for (const corner of text.slice(split).split(":")) {
    const match = CORNER.exec(corner);
    const column = match?.[2] === undefined ? undefined : parseColumn(match[2]);
    if (!match || (match[2] !== undefined && column === undefined)) return text;
    // `$3` alone: the one sign stands before the row.
    const rowFixed = match[2] === undefined ? match[1] === "$" : match[3] === "$";
    const row = match[4] === undefined ? undefined : Number(match[4]) - 1;
    corners.push({ column, columnFixed: match[1] === "$" && match[2] !== undefined, row, rowFixed });
  }
  return { prefix: text.slice(0, split), corners };
};

const formatReference = (
  { prefix, corners }: Exclude<Piece, string>,
  rows: number,
  columns: number,
): string => {
  let text = prefix;
  for (const [index, corner] of corners.entries()) {
    const row = corner.row === undefined || corner.rowFixed ? corner.row : corner.row + rows;
    const column =
      corner.column === undefined || corner.columnFixed ? corner.column : corner.column + columns;
    if (
      (row !== undefined && (row < 0 || row >= MAX_ROWS)) ||
      (column !== undefined && (column < 0 || column >= MAX_COLUMNS))
    ) {
      return "#REF!";
    }
    if (index > 0) text += ":";
    if (column !== undefined) text += (corner.columnFixed ? "$" : "") + formatColumn(column);
    if (row !== undefined) text += (corner.rowFixed ? "$" : "") + String(row + 1);
  }
  return text;
};
