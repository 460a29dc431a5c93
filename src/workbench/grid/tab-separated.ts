/**
 * Rows of cell texts as the text that spreadsheet programs put on the clipboard: tabs between cells, a line a
 * row. A text with a tab, a line break or a leading quotation mark stands in quotation marks, doubled inside.
 */
export const formatTabSeparated = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => row.map(quoteText).join("\t")).join("\n");

const quoteText = (text: string): string =>
  /[\t\n\r]|^"/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/**
 * Reads clipboard text into rows of cell texts; the reverse of {@link formatTabSeparated}. A single trailing line
 * break, which most programs add, is not another row. Rows are filled to the same length with "".
 */
export function parseTabSeparated(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const normal = text.replaceAll("\r\n", "\n").replaceAll("\r", "\n");
  const source = normal.endsWith("\n") ? normal.slice(0, -1) : normal;
  for (;;) {
    const { value, end } = readField(source, at);
    row.push(value);
    const stop = source[end];
    if (stop !== "\t") {
      rows.push(row);
      row = [];
    }
    if (stop === undefined) break;
    at = end + 1;
  }
  const width = Math.max(...rows.map((cells) => cells.length));
  return rows.map((cells) => [...cells, ...Array<string>(width - cells.length).fill("")]);
}

/** One field from `at` on: its text and the place of the tab or line break after it. */
function readField(source: string, at: number): { readonly value: string; readonly end: number } {
  if (source[at] === '"') {
    const quoted = /"((?:[^"]|"")*)"(?=[\t\n]|$)/y;
    quoted.lastIndex = at;
    const match = quoted.exec(source);
    if (match !== null) return { value: (match[1] ?? "").replaceAll('""', '"'), end: quoted.lastIndex };
  }
  const tab = source.indexOf("\t", at);
  const line = source.indexOf("\n", at);
  const ends = [tab, line].filter((place) => place >= 0);
  const end = ends.length === 0 ? source.length : Math.min(...ends);
  return { value: source.slice(at, end), end };
}
