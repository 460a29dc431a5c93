import { fitPaper, USUAL_LOOK, type BraillePageLook } from "../../src/charts/braille-page";
import { USUAL_HANDOUT, type HandoutOptions, type PrintPlace } from "../../src/domain/drill/handout";
import { PAPERS, type PaperKey } from "../../src/domain/paper";

/** How a handout is to look, as she has set it. */
export interface HandoutSettings {
  readonly cells: number;
  readonly lines: number;
  readonly double: boolean;
  readonly print: PrintPlace;
  readonly paper: PaperKey;
  readonly guideDots: boolean;
  readonly largePrint: boolean;
  /** as it is named to her */
  readonly code: string;
}

export const USUAL_SETTINGS: HandoutSettings = {
  cells: USUAL_HANDOUT.cellsPerLine,
  lines: USUAL_HANDOUT.linesPerPage,
  double: false,
  print: USUAL_HANDOUT.print,
  paper: "a4",
  guideDots: false,
  largePrint: false,
  code: USUAL_HANDOUT.code,
};

/** Lines and pages of files and tables. */
export const fileOptions = ({ cells, lines, double, print, code }: HandoutSettings): HandoutOptions => ({
  cellsPerLine: cells,
  linesPerPage: lines,
  lineSpacing: double ? 2 : 1,
  print,
  code,
});

/** The look of printed pages. */
export const pageLook = ({ paper, guideDots, print, largePrint }: HandoutSettings): BraillePageLook => ({
  ...USUAL_LOOK,
  paper,
  guideDots,
  printBetween: print !== "none",
  largePrint,
});

/** Lines and pages of paper with braille in true size: no longer than set, and no longer than the paper holds. */
export const paperOptions = (settings: HandoutSettings): HandoutOptions => {
  const look = pageLook(settings);
  const most = fitPaper(look);
  return {
    ...fileOptions(settings),
    cellsPerLine: Math.min(settings.cells, most.cellsPerLine),
    linesPerPage: most.linesPerPage,
    lineSpacing: settings.double || (look.printBetween && look.largePrint) ? 2 : 1,
  };
};

/** What the paper holds, in a sentence, and what that means for her lines. */
export const describePaper = (settings: HandoutSettings): string => {
  const { cellsPerLine, linesPerPage } = fitPaper(pageLook(settings));
  const holds = `Printed in true size, ${PAPERS[settings.paper].name} holds ${cellsPerLine} cells by ${linesPerPage} lines.`;
  return settings.cells > cellsPerLine
    ? `${holds} Lines of ${settings.cells} cells are broken to ${cellsPerLine} there; files keep ${settings.cells}.`
    : holds;
};

/** A CSS page size. */
export const cssPaper = (paper: PaperKey): string => `${PAPERS[paper].width}mm ${PAPERS[paper].height}mm`;
