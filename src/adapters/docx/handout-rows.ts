import { Paragraph, TableCell, TableRow, TextRun } from "docx";
import { BRAILLE_FONTS } from "../../domain/braille/fonts";
import type { Handout, HandoutItem, PrintPlace } from "../../domain/drill/handout";
import { HANDOUT_COLUMNS } from "../../domain/drill/handout-table";
import { dropForbidden } from "../../domain/markup";

/**
 * The rows of a handout's table: the headings, repeated on every page, then one row an item. A row stays on one page,
 * but for passages.
 *
 * @param brailleSize - in points
 */
export const handoutRows = ({ items, options }: Handout, brailleSize: number): TableRow[] => {
  const headings = HANDOUT_COLUMNS[options.print].map(
    (name) =>
      new TableCell({ children: [new Paragraph({ children: [new TextRun({ text: name, bold: true })] })] }),
  );
  return [
    new TableRow({ tableHeader: true, cantSplit: true, children: headings }),
    ...items.map(
      (item) =>
        new TableRow({
          cantSplit: item.kind !== "passage",
          children: cellsOf(item, options.print, brailleSize).map((children) => new TableCell({ children })),
        }),
    ),
  ];
};

const cellsOf = ({ print, lines }: HandoutItem, place: PrintPlace, size: number): Paragraph[][] => {
  const braille = lines.map(({ cells }) => brailleParagraph(cells, size, false));
  if (place === "none") return [braille];
  if (place === "beside") return [print.split("\n").map(printParagraph), braille];
  return [
    lines.flatMap((line) =>
      line.print === ""
        ? [brailleParagraph(line.cells, size, false)]
        : [brailleParagraph(line.cells, size, true), printParagraph(line.print)],
    ),
  ];
};

const printParagraph = (text: string): Paragraph =>
  new Paragraph({ children: [new TextRun(dropForbidden(text))] });

/** Braille is no language to check the spelling of. */
const brailleParagraph = (cells: string, size: number, keepNext: boolean): Paragraph =>
  new Paragraph({
    keepNext,
    children: [
      new TextRun({ text: cells, font: BRAILLE_FONTS[0], size: Math.round(2 * size), noProof: true }),
    ],
  });
