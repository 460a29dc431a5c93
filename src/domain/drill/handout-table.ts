import { BLANK_CELL } from "../braille/cell";
import { BRAILLE_FONTS } from "../braille/fonts";
import { dropForbidden, escapeText } from "../markup";
import type { Handout, HandoutItem, PrintPlace } from "./handout";

/** The columns of a handout's table for each place of the print. */
export const HANDOUT_COLUMNS: Readonly<Record<PrintPlace, readonly string[]>> = {
  beside: ["Print", "Braille"],
  beneath: ["Braille with its print beneath"],
  none: ["Braille"],
};

/**
 * Text that a spreadsheet would read as a formula is led by an apostrophe: a text that begins with = + - @, in their
 * wide forms too. The same holds for plain text and for HTML, because a spreadsheet program reads either.
 */
export const guardFormula = (text: string): string => (/^[=+\-@＝＋－＠]/.test(text) ? `'${text}` : text);

/**
 * A handout as plain text for the clipboard: tabs between columns, a line a row. Rows: title, date, headings, items,
 * closing note. Braille is not broken into lines: a cell of a sheet breaks it by itself. With the print beneath, it
 * stands in the row under its braille. Formulas are guarded by {@link guardFormula}; a leading quotation mark is
 * quoted, since a spreadsheet would take it for the beginning of a quoted text.
 */
export const formatHandoutText = ({ title, date, items, notice, options }: Handout): string => {
  const place = options.print;
  const rows = items.flatMap((item): string[][] => {
    const braille = item.cells.replaceAll("\n", BLANK_CELL);
    if (place === "beside") return [[item.print, braille]];
    return place === "beneath" && item.print !== "" ? [[braille], [item.print]] : [[braille]];
  });
  const heads = [[title.print], ...(date === undefined ? [] : [[date.print]]), [...HANDOUT_COLUMNS[place]]];
  return [...heads, ...rows, [notice.print]].map((row) => row.map(plainCell).join("\t")).join("\n");
};

const plainCell = (text: string): string => {
  const line = guardFormula(dropForbidden(text).replace(/\s+/g, " ").trim());
  return line.startsWith('"') ? `"${line.replaceAll('"', '""')}"` : line;
};

/** Sizes of the print and of the braille beside it, from 1 to 7 as HTML counts them: 3 is 12 points, 5 is 18. */
const SIZES = { usual: { print: 3, braille: 5 }, large: { print: 5, braille: 6 } } as const;

/**
 * A handout as HTML for the clipboard: a heading, the date, a table with a header row, and the closing note. Fonts and
 * sizes are given by `font` elements, which word processors read, so that no style stands in the markup. Braille stands
 * in lines of the set length. Formulas are guarded by {@link guardFormula}.
 */
export const formatHandoutHtml = (handout: Handout, largePrint: boolean): string => {
  const { title, date, items, notice, options } = handout;
  const size = SIZES[largePrint ? "large" : "usual"];
  const print = (text: string): string =>
    `<font size="${size.print}">${breakLines(escapeText(guardFormula(text)))}</font>`;
  const braille = (lines: readonly string[]): string =>
    `<font face="${BRAILLE_FONTS.join(", ")}" size="${size.braille}">${lines.map(escapeText).join("<br>")}</font>`;
  const cell = (content: string): string => `<td>${content}</td>`;
  const row = (item: HandoutItem): string => {
    const cells = item.lines.map((line) => line.cells);
    if (options.print === "beside") return cell(print(item.print)) + cell(braille(cells));
    if (options.print === "none") return cell(braille(cells));
    return cell(
      item.lines
        .map((line) => braille([line.cells]) + (line.print === "" ? "" : `<br>${print(line.print)}`))
        .join("<br>"),
    );
  };
  const head = HANDOUT_COLUMNS[options.print].map((name) => `<th scope="col">${print(name)}</th>`).join("");
  return [
    `<h1>${escapeText(guardFormula(title.print))}</h1>`,
    ...(date === undefined ? [] : [`<p>${print(date.print)}</p>`]),
    '<table border="1" cellpadding="6">',
    `<thead><tr>${head}</tr></thead>`,
    "<tbody>",
    ...items.map((item) => `<tr>${row(item)}</tr>`),
    "</tbody>",
    "</table>",
    `<p>${print(notice.print)}</p>`,
  ].join("\n");
};

const breakLines = (escaped: string): string => escaped.replaceAll("\n", "<br>");

/** A handout as an HTML file of its own, in English; its title says nothing of the handout. */
export const formatHandoutPage = (handout: Handout, largePrint: boolean): string =>
  [
    "<!DOCTYPE html>",
    '<html lang="en">',
    '<head><meta charset="utf-8"><title>Handout</title></head>',
    `<body>\n${formatHandoutHtml(handout, largePrint)}\n</body>`,
    "</html>",
    "",
  ].join("\n");
