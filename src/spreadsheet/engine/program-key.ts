import { parseColumn } from "../address";

const PIECES =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\]|\$?\d{1,7}:\$?\d{1,7}(?![\w.(])|\d+\.?\d*(?:[eE][+-]?\d+)?|\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![\w.($])|(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})(?![\w.(!])|[\p{L}_\\][\p{L}\p{N}_.\\?]*/gu;

/**
 * A formula's text with its relative references counted from its own cell, so that a formula filled down is
 * compiled once: `A2*2` in row 2 and `A3*2` in row 3 have the same key.
 *
 * @returns undefined where only the text as a whole, at this very cell, says what is meant
 */
export function programKey(formula: string, row: number, column: number): string | undefined {
  let plain = true;
  const key = formula.replace(
    PIECES,
    (piece: string, columnMark?: string, letters?: string, rowMark?: string, digits?: string) => {
      if (letters === undefined || digits === undefined) {
        if (/^\$?[A-Za-z]{1,3}:/.test(piece) || /^\$?\d+:/.test(piece)) plain = false;
        // A trailing dot or a leading one belongs to the trimming range operators.
        if (piece.endsWith(".") && !/^\d/.test(piece)) plain = false;
        return piece;
      }
      const at = parseColumn(letters);
      if (at === undefined) return piece;
      const c = columnMark ? `c${at}` : `c[${at - column}]`;
      const r = rowMark ? `r${Number(digits) - 1}` : `r[${Number(digits) - 1 - row}]`;
      return `\u0001${r}${c}`;
    },
  );
  if (plain) return key;
  // Whole rows and columns that are all absolute, or a formula that stands in the same column, would do; a key for
  // the same column covers the commonest case, a whole column looked up from every row.
  return /\d:\$?\d|\.:|:\./.test(formula.replaceAll(/"(?:[^"]|"")*"/g, ""))
    ? undefined
    : `${column}\u0002${key}`;
}
