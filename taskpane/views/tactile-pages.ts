import type { PlainChart } from "../../src/charts/plain-chart";
import { drawCells, formatBrf, type CellGraphic } from "../../src/charts/tactile-cells";
import { TACTILE_PROCESSES, type TactileProcess } from "../../src/charts/tactile-check";
import { layOutTactile, type TactileGraphic } from "../../src/charts/tactile-layout";
import { drawTactile } from "../../src/charts/tactile-svg";
import { PAPER_KEYS, PAPERS, type PaperKey } from "../../src/domain/paper";
import type { Result } from "../../src/domain/result";
import { UnknownCodeError, UntranslatableError, type TranslatorLibrary } from "../../src/ports/translator";

/** What she has chosen for the sheets. */
export interface TactileChoice {
  readonly paper: PaperKey;
  readonly landscape: boolean;
  readonly process: TactileProcess;
  readonly sheets: "one" | "several";
  /** `contracted` or `uncontracted` */
  readonly code: string;
  /** cells a line and lines a page of the embosser */
  readonly cells: number;
  readonly lines: number;
}

export const DEFAULT_TACTILE_CHOICE: TactileChoice = {
  paper: "a4",
  landscape: true,
  process: "capsule",
  sheets: "one",
  code: "contracted",
  cells: 40,
  lines: 25,
};

/** Words of the lists to choose from. */
export const TACTILE_WORDS = {
  papers: PAPER_KEYS.map((key) => ({ value: key, label: PAPERS[key].name })),
  processes: TACTILE_PROCESSES.map((process) => ({
    value: process,
    label: process === "capsule" ? "capsule paper (swell paper)" : "tactile embosser",
  })),
} as const;

/** A chart for the fingers in both forms: sheets to print, and cells for an embosser. */
export interface TactileSheets {
  readonly graphic: Result<TactileGraphic>;
  readonly cells: Result<CellGraphic>;
}

/**
 * Makes a chart for the fingers with its braille by the engine.
 *
 * @returns the sheets, or a sentence that says what stands in the way and what to do
 */
export const makeTactileSheets = async (
  chart: PlainChart,
  choice: TactileChoice,
  translators: TranslatorLibrary,
): Promise<TactileSheets | string> => {
  try {
    const translator = await translators.translator(choice.code);
    const toCells = (print: string): string => translator.translate(print);
    return {
      graphic: layOutTactile(chart, { ...choice, paper: PAPERS[choice.paper], toCells }),
      cells: drawCells(chart, { ...choice, toCells }),
    };
  } catch (error) {
    if (error instanceof UntranslatableError || error instanceof UnknownCodeError) return error.message;
    return "The braille engine could not be loaded. Check that all files of the build are on the server, then try once more.";
  }
};

/** Each sheet as an SVG text in true size, or as a proof for a seeing reader. */
export const drawSheets = ({ pages }: TactileGraphic, proof: boolean): readonly string[] =>
  pages.map((page, i) => drawTactile(page, { proof, idPrefix: `tactile-${i + 1}` }));

/** The CSS size of the paper, turned or not. */
export const paperSize = ({ paper, landscape }: TactileChoice): string => {
  const { width, height } = PAPERS[paper];
  return landscape ? `${height}mm ${width}mm` : `${width}mm ${height}mm`;
};

/** A file for an embosser. */
export const makeBrfFile = (graphic: CellGraphic): Blob =>
  new Blob([formatBrf(graphic)], { type: "text/plain" });
