import { escapeText } from "../markup";
import type { EmbosserPage } from "./embosser-page";
import type { HandoutOptions } from "./handout";

/** What a file of pages says about itself. */
export interface PefDescription {
  /** unique to the file, such as `urn:uuid:…` */
  readonly identifier: string;
  /** never a pupil's name */
  readonly title: string;
  /** both sides of the sheet are embossed */
  readonly duplex: boolean;
}

/**
 * Pages in the Portable Embosser Format: XML with Unicode braille, one volume of one section. Every page
 * has all its rows, empty ones too.
 *
 * Source: PEF 1.0, public draft (elements, attributes and the required `dc:format` and `dc:identifier`; from memory).
 */
export const formatPef = (
  pages: readonly EmbosserPage[],
  { cellsPerLine, linesPerPage }: Pick<HandoutOptions, "cellsPerLine" | "linesPerPage">,
  { identifier, title, duplex }: PefDescription,
): string => {
  const rows = (page: EmbosserPage): string =>
    page.rows.map(({ cells }) => (cells === "" ? "<row/>" : `<row>${escapeText(cells)}</row>`)).join("\n");
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<pef version="2008-1" xmlns="http://www.daisy.org/ns/2008/pef">',
    '<head><meta xmlns:dc="http://purl.org/dc/elements/1.1/">',
    "<dc:format>application/x-pef+xml</dc:format>",
    `<dc:identifier>${escapeText(identifier)}</dc:identifier>`,
    `<dc:title>${escapeText(title)}</dc:title>`,
    "</meta></head>",
    "<body>",
    `<volume cols="${cellsPerLine}" rows="${linesPerPage}" rowgap="0" duplex="${String(duplex)}"><section>`,
    ...pages.map((page) => `<page>\n${rows(page)}\n</page>`),
    "</section></volume>",
    "</body>",
    "</pef>",
    "",
  ].join("\n");
};
