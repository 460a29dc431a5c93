import {
  Document,
  Footer,
  HeadingLevel,
  Packer,
  PageNumber,
  PageOrientation,
  Paragraph,
  Table,
  TextRun,
} from "docx";
import { FONT_ADVICE } from "../../domain/braille/fonts";
import { HANDOUT_NOTICE, type Handout } from "../../domain/drill/handout";
import { dropForbidden } from "../../domain/markup";
import { PAPERS } from "../../domain/paper";
import type { PrintLook } from "../../ports/document";
import { fitSheet, MARGIN, type Sheet } from "./document-sheet";
import { handoutRows } from "./handout-rows";

/** Twentieths of a point, in which the format counts lengths, in a millimetre. */
const TWIPS = 1440 / 25.4;
const twips = (millimetres: number): number => Math.round(millimetres * TWIPS);

/** Names that programs show of the file; nothing of a pupil. */
const PROPERTIES = { title: "Handout", creator: "Cellwright", lastModifiedBy: "Cellwright" } as const;

/**
 * A handout as a document: heading, date, a table of print and braille whose header row is repeated on every page,
 * what to do where the braille font is missing, the closing note, and a footer with the note and the page's number.
 *
 * Braille stands in lines of the set length, in a size that keeps each on one line; the sheet is turned on its side
 * where it would get too small. The language is English, of the braille too: no other fits.
 *
 * @returns the bytes of a .docx file
 */
export const writeHandoutDocument = async (handout: Handout, look: PrintLook): Promise<Uint8Array> => {
  const sheet = fitSheet(handout, look);
  const { title, date, notice } = handout;
  const document = new Document({
    ...PROPERTIES,
    styles: stylesOf(sheet),
    sections: [
      {
        properties: { page: pageOf(look, sheet) },
        footers: { default: footer() },
        children: [
          new Paragraph({ heading: HeadingLevel.HEADING_1, children: [textRun(title.print)] }),
          ...(date === undefined ? [] : [new Paragraph({ children: [textRun(date.print)] })]),
          new Table({
            width: { size: twips(sheet.width), type: "dxa" },
            columnWidths: sheet.columns.map(twips),
            rows: handoutRows(handout, sheet.brailleSize),
          }),
          new Paragraph({ spacing: { before: 240 }, children: [textRun(FONT_ADVICE)] }),
          new Paragraph({ children: [textRun(notice.print)] }),
        ],
      },
    ],
  });
  return Packer.pack(document, "uint8array");
};

/** Half points, in which the format counts sizes of type. */
const halfPoints = (points: number): number => Math.round(2 * points);

const stylesOf = ({
  printSize,
}: Sheet): NonNullable<ConstructorParameters<typeof Document>[0]["styles"]> => ({
  default: {
    document: {
      run: { size: halfPoints(printSize), font: "Arial", language: { value: "en-US" } },
      paragraph: { spacing: { after: 60 } },
    },
    heading1: {
      run: { size: halfPoints(printSize * 1.4), bold: true },
      paragraph: { spacing: { after: 120 } },
    },
  },
});

/** The library swaps the sides of a sheet that lies, so it is given them upright. */
const pageOf = ({ paper }: PrintLook, { lies }: Sheet) => {
  const { width, height } = PAPERS[paper];
  const [across, down] = [Math.min(width, height), Math.max(width, height)];
  const margin = twips(MARGIN);
  const orientation = lies ? PageOrientation.LANDSCAPE : PageOrientation.PORTRAIT;
  return {
    size: { width: twips(across), height: twips(down), orientation },
    margin: { top: margin, right: margin, bottom: margin, left: margin },
  };
};

const footer = (): Footer =>
  new Footer({
    children: [
      new Paragraph({
        children: [
          textRun(`${HANDOUT_NOTICE} `),
          new TextRun({ children: ["Page ", PageNumber.CURRENT, " of ", PageNumber.TOTAL_PAGES] }),
        ],
      }),
    ],
  });

const textRun = (text: string): TextRun => new TextRun(dropForbidden(text));
