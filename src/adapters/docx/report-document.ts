import { Document, HeadingLevel, ImageRun, Packer, Paragraph, TextRun } from "docx";
import { dropForbidden } from "../../domain/markup";
import { PAPERS, type PaperKey } from "../../domain/paper";
import type { Report } from "../../domain/progress/report";
import type { DocumentPicture } from "../../ports/document";

/** Twentieths of a point, in which the format counts lengths, in a millimetre. */
const TWIPS = 1440 / 25.4;
const twips = (millimetres: number): number => Math.round(millimetres * TWIPS);
/** Pixels, in which the library counts the sides of a picture, in a millimetre. */
const PIXELS = 96 / 25.4;
/** In millimetres: our choice, no source. */
const MARGIN = 20;
const HIGHEST_PICTURE = 75;
/** In half points. */
const TEXT_SIZE = 22;
const SMALL_SIZE = 19;

/** Names that programs show of the file; nothing of a pupil. */
const PROPERTIES = {
  title: "Progress report",
  creator: "Cellwright",
  lastModifiedBy: "Cellwright",
} as const;

/**
 * A report as a document: its title and each section under a real heading, the picture with its description after the
 * first section, the last section in smaller type.
 *
 * @returns the bytes of a .docx file
 */
export const writeReportDocument = async (
  { title, period, sections }: Report,
  paper: PaperKey,
  picture: DocumentPicture | undefined,
): Promise<Uint8Array> => {
  const { width, height } = PAPERS[paper];
  const margin = twips(MARGIN);
  const last = sections.length - 1;
  const document = new Document({
    ...PROPERTIES,
    styles: STYLES,
    sections: [
      {
        properties: {
          page: {
            size: { width: twips(width), height: twips(height) },
            margin: { top: margin, right: margin, bottom: margin, left: margin },
          },
        },
        children: [
          new Paragraph({ heading: HeadingLevel.HEADING_1, children: [textRun(title)] }),
          new Paragraph({ children: [textRun(period)] }),
          ...sections.flatMap(({ heading, sentences }, place) => [
            new Paragraph({ heading: HeadingLevel.HEADING_2, keepNext: true, children: [textRun(heading)] }),
            ...sentences.flatMap((sentence) => paragraphsOf(sentence, place === last)),
            ...(place === 0 && picture !== undefined ? [pictureOf(picture, width - 2 * MARGIN)] : []),
          ]),
        ],
      },
    ],
  });
  return Packer.pack(document, "uint8array");
};

const STYLES: NonNullable<ConstructorParameters<typeof Document>[0]["styles"]> = {
  default: {
    document: {
      run: { size: TEXT_SIZE, font: "Arial", language: { value: "en-US" } },
      paragraph: { spacing: { after: 60 } },
    },
    heading1: { run: { size: 32, bold: true }, paragraph: { spacing: { after: 60 } } },
    heading2: { run: { size: 25, bold: true }, paragraph: { spacing: { before: 180, after: 40 } } },
  },
};

const textRun = (text: string): TextRun => new TextRun(dropForbidden(text));

/** A teacher's own sentences may stand in several lines. */
const paragraphsOf = (text: string, isSmall: boolean): readonly Paragraph[] =>
  text.split(/\r?\n/).map(
    (line) =>
      new Paragraph({
        children: [new TextRun({ text: dropForbidden(line), ...(isSmall && { size: SMALL_SIZE }) })],
      }),
  );

/** As wide as the text, or as high as leaves room for it. @param room - in millimetres */
const pictureOf = ({ png, width, height, description }: DocumentPicture, room: number): Paragraph => {
  const scale = Math.min(room / width, HIGHEST_PICTURE / height);
  return new Paragraph({
    children: [
      new ImageRun({
        type: "png",
        data: png,
        transformation: {
          width: Math.round(width * scale * PIXELS),
          height: Math.round(height * scale * PIXELS),
        },
        altText: { name: "Chart", title: "Chart", description: dropForbidden(description) },
      }),
    ],
  });
};
