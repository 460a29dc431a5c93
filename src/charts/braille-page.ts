import { BLANK_CELL, dotsOf } from "../domain/braille/cell";
import {
  BRAILLE_SIZES,
  CELL_HEIGHT,
  placeDots,
  placesOfCell,
  widthOfCells,
} from "../domain/braille/dimensions";
import type { EmbosserPage } from "../domain/drill/embosser-page";
import type { HandoutLine, HandoutOptions } from "../domain/drill/handout";
import { PAPERS, type PaperKey } from "../domain/paper";
import { refusal, success, type Result } from "../domain/result";
import { estimateWidth } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";

/** How pages of true-size braille look; lengths in millimetres. */
export interface BraillePageLook {
  readonly paper: PaperKey;
  /** kept free on all four sides */
  readonly margin: number;
  /** the places of the dots that a cell lacks, faintly: for eyes that count them */
  readonly guideDots: boolean;
  /** the print of each line under its braille */
  readonly printBetween: boolean;
  /** that print in 18 points: it needs lines in double spacing */
  readonly largePrint: boolean;
}

/** Half an inch is a margin that printers keep: common practice, no source. */
export const USUAL_LOOK: BraillePageLook = {
  paper: "letter",
  margin: 12.7,
  guideDots: false,
  printBetween: true,
  largePrint: false,
};

/** One printed page. */
export interface BraillePagePicture {
  /** complete `<svg role="img">` whose width and height are those of the paper; presentation attributes only */
  readonly svg: string;
  readonly title: string;
  /** the print of its lines, for a reader who does not see the picture */
  readonly summary: readonly string[];
}

type PageSize = Pick<HandoutOptions, "cellsPerLine" | "linesPerPage" | "lineSpacing">;

/** 10.2 and 18 points: the smaller fits between two lines of braille, whose dots leave 3.88 mm. */
const PRINT_HEIGHT = { usual: 3.6, large: 6.35 } as const;
/** Ascenders of common sans-serif faces, in ems. */
const ASCENT = 0.74;
const PRINT_GAP = { usual: 0.25, large: 1.2 } as const;
const GUIDE_RADIUS = 0.3;
const ROUNDING = 1e-6;

/**
 * The longest lines and fullest pages of true-size braille that a paper holds between its margins.
 *
 * @returns cells a line and lines a page, 0 where the margins leave no room
 */
export const fitPaper = ({
  paper,
  margin,
  printBetween,
  largePrint,
}: Omit<BraillePageLook, "guideDots">): Pick<PageSize, "cellsPerLine" | "linesPerPage"> => {
  const { width, height } = roomOn(paper, margin);
  const { cellToCell, lineToLine } = BRAILLE_SIZES;
  const printedLine = largePrint ? CELL_HEIGHT + PRINT_GAP.large + PRINT_HEIGHT.large : lineToLine;
  const fitting = (room: number, first: number, each: number): number =>
    room + ROUNDING < first ? 0 : Math.floor((room - first) / each + ROUNDING) + 1;
  return {
    cellsPerLine: fitting(width, widthOfCells(1), cellToCell),
    linesPerPage: fitting(height, printBetween ? printedLine : CELL_HEIGHT, lineToLine),
  };
};

/**
 * Draws pages of braille in true size: every dot where Specification 800 puts it, black on white.
 *
 * @param pages - laid out with `size`
 * @param idPrefix - led to the ids in the markup, where several pictures stand in one document
 * @returns a picture a page; or `does-not-fit` where the paper is too small, `large-print-spacing` where large print
 *   has no empty line to stand in, `eight-dots` where a cell has dot 7 or 8
 */
export const drawBraillePages = (
  pages: readonly EmbosserPage[],
  size: PageSize,
  look: BraillePageLook,
  idPrefix = "braille-page",
): Result<readonly BraillePagePicture[]> => {
  const fits = checkFit(size, look);
  if (!fits.ok) return fits;
  const pictures: BraillePagePicture[] = [];
  for (const page of pages) {
    if (page.rows.some(({ cells }) => [...cells].some((cell) => dotsOf(cell).some((dot) => dot > 6))))
      return refusal(
        "eight-dots",
        `Page ${page.number} has cells with dot 7 or 8, whose places the specification does not give: use a six-dot code.`,
      );
    pictures.push(drawPage(page, pages.length, size, look, `${idPrefix}-${page.number}`));
  }
  return success(pictures);
};

const roomOn = (paper: PaperKey, margin: number): { readonly width: number; readonly height: number } => ({
  width: PAPERS[paper].width - 2 * margin,
  height: PAPERS[paper].height - 2 * margin,
});

const checkFit = (
  { cellsPerLine, linesPerPage, lineSpacing }: PageSize,
  look: BraillePageLook,
): Result<undefined> => {
  const { name } = PAPERS[look.paper];
  if (!(look.margin >= 0))
    return refusal("does-not-fit", `A margin is to be 0 mm or more, not ${look.margin}.`);
  if (look.printBetween && look.largePrint && lineSpacing === 1)
    return refusal(
      "large-print-spacing",
      "Large print does not fit between lines of braille in single spacing: choose double spacing.",
    );
  const most = fitPaper(look);
  if (cellsPerLine > most.cellsPerLine)
    return refusal(
      "does-not-fit",
      `A line of ${cellsPerLine} cells is ${formatLength(widthOfCells(cellsPerLine))} mm long; ${name} with margins of ${look.margin} mm has room for ${most.cellsPerLine} cells. Choose shorter lines, smaller margins or other paper.`,
    );
  if (linesPerPage > most.linesPerPage)
    return refusal(
      "does-not-fit",
      `${name} with margins of ${look.margin} mm has room for ${most.linesPerPage} lines, not ${linesPerPage}. Choose fewer lines a page, smaller margins or other paper.`,
    );
  return success(undefined);
};

const formatLength = (millimetres: number): string => String(Number(millimetres.toFixed(1)));

const drawPage = (
  { number, rows }: EmbosserPage,
  ofPages: number,
  { cellsPerLine }: PageSize,
  look: BraillePageLook,
  id: string,
): BraillePagePicture => {
  const { width, height } = PAPERS[look.paper];
  const title = ofPages === 1 ? "Page of braille" : `Page ${number} of ${ofPages} in braille`;
  const written = rows.slice(0, -1).map(({ print }) => print);
  const summary = written.filter((print) => print !== "");
  const left = look.margin + BRAILLE_SIZES.dotBase / 2;
  const top = look.margin + BRAILLE_SIZES.dotBase / 2;
  const lines = rows.map((row, index) => {
    const y = top + index * BRAILLE_SIZES.lineToLine;
    return [
      ...(look.guideDots ? drawGuides(row.cells, left, y) : []),
      ...drawDots(row.cells, left, y),
      ...(look.printBetween ? drawPrint(row, { left, y, cellsPerLine }, look.largePrint) : []),
    ];
  });
  const svg = drawElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-labelledby": `${id}-title ${id}-desc`,
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
    },
    [
      drawElement("title", { id: `${id}-title` }, escapeText(title)),
      drawElement("desc", { id: `${id}-desc` }, escapeText(summary.join(" / "))),
      drawElement("rect", { width, height, fill: "#fff" }),
      drawElement("g", { fill: "#000", "font-family": "sans-serif" }, lines.flat()),
    ],
  );
  return { svg, title, summary };
};

const drawDots = (cells: string, left: number, top: number): string[] =>
  placeDots(cells).map(({ x, y }) =>
    drawElement("circle", { cx: left + x, cy: top + y, r: BRAILLE_SIZES.dotBase / 2 }),
  );

/** A blank cell stays blank, so that words stay apart. */
const drawGuides = (cells: string, left: number, top: number): string[] =>
  [...cells].flatMap((cell, index) => {
    if (cell === BLANK_CELL) return [];
    const dots = dotsOf(cell);
    return placesOfCell(index)
      .filter((_, place) => !dots.includes(place + 1))
      .map(({ x, y }) =>
        drawElement("circle", { cx: left + x, cy: top + y, r: GUIDE_RADIUS, "fill-opacity": 0.3 }),
      );
  });

/** Print begins under the first dots of its line; where it would run past the line's end it is set narrower. */
const drawPrint = (
  { cells, print }: HandoutLine,
  { left, y, cellsPerLine }: { readonly left: number; readonly y: number; readonly cellsPerLine: number },
  largePrint: boolean,
): string[] => {
  if (print === "") return [];
  const size = largePrint ? "large" : "usual";
  const height = PRINT_HEIGHT[size];
  const leading = /^\u2800*/.exec(cells)?.[0].length ?? 0;
  const room = widthOfCells(cellsPerLine) - leading * BRAILLE_SIZES.cellToCell;
  const estimated = estimateWidth(print, height);
  return [
    drawElement(
      "text",
      {
        x: left - BRAILLE_SIZES.dotBase / 2 + leading * BRAILLE_SIZES.cellToCell,
        y: y - BRAILLE_SIZES.dotBase / 2 + CELL_HEIGHT + PRINT_GAP[size] + ASCENT * height,
        "font-size": height,
        ...(estimated > room ? { textLength: room, lengthAdjust: "spacingAndGlyphs" } : {}),
      },
      escapeText(print),
    ),
  ];
};
