import { existsSync } from "node:fs";
import path from "node:path";
import { nodeFunctionLibrary } from "../../src/adapters/custom-functions/node-bundle";
import { nodeTranslatorLibrary } from "../../src/adapters/liblouis/node-engine";
import type { CellValue } from "../../src/domain/cell-value";
import { Calculation } from "../../src/spreadsheet/calculation";
import type { FunctionLibrary, SheetFunction } from "../../src/spreadsheet/function-library";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { cellKey, type Cell, type Worksheet } from "../../src/spreadsheet/workbook";
import { emptySheet } from "../../src/spreadsheet/workbook-state";
import type { BenchFigure } from "./figure";

const ROWS = 5_000;

const WORDS = [
  "children",
  "the",
  "people",
  "before",
  "mother",
  "reading",
  "quick",
  "bright",
  "think",
  "station",
];

/** A sheet of 5,000 rows with a text and a probe each, CELLS and WCPM beside them: 10,000 function cells. */
function makeLog(): Worksheet {
  const cells = new Map<number, Cell>();
  const put = (row: number, column: number, cell: Omit<Cell, "style">): void => {
    cells.set(cellKey(row, column), { ...cell, style: 0 });
  };
  for (let row = 0; row < ROWS; row++) {
    put(row, 0, { value: `${WORDS[row % 10] ?? ""} ${WORDS[Math.floor(row / 10) % 10] ?? ""} ${row}` });
    put(row, 1, { value: 40 + (row % 50) });
    put(row, 2, { value: row % 7 });
    put(row, 3, { value: 60 });
    put(row, 4, { value: null, formula: `BRAILLE.CELLS(A${row + 1})` });
    put(row, 5, { value: null, formula: `BRAILLE.WCPM(B${row + 1},C${row + 1},D${row + 1})` });
  }
  return { ...emptySheet("Log"), cells };
}

/** The functions of the build, or a stand-in that is named as one in the figures. */
async function openLibrary(): Promise<{ library: FunctionLibrary; name: string }> {
  const directory = path.resolve("dist");
  if (existsSync(path.join(directory, "functions.js"))) {
    const translators = nodeTranslatorLibrary({ directory: path.join(directory, "liblouis") });
    await translators.translator("contracted");
    return { library: await nodeFunctionLibrary({ directory, translators }), name: "functions of the build" };
  }
  const standIn = (name: string, call: (values: readonly CellValue[]) => CellValue): SheetFunction => ({
    name,
    description: "",
    parameters: [{ name: "values", type: "any", dimensionality: "scalar", optional: true, repeating: true }],
    result: { dimensionality: "scalar" },
    call: (args) => call(args as readonly CellValue[]),
  });
  const functions = [
    standIn("BRAILLE.CELLS", ([text]) => String(text).length),
    standIn(
      "BRAILLE.WCPM",
      ([words, errors, seconds]) => (60 * (Number(words) - Number(errors))) / Number(seconds),
    ),
  ];
  const find = (name: string): SheetFunction | undefined =>
    functions.find((each) => each.name === name.toUpperCase());
  return {
    library: { find, names: functions.map(({ name }) => name) },
    name: "stand-in functions: run npm run build first",
  };
}

function openWorkbook(sheet: Worksheet): OpenWorkbook {
  return new OpenWorkbook({
    sheets: [sheet],
    names: [],
    styles: [{ numberFormat: "General" }],
    date1904: false,
    settings: new Map(),
  });
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

const time = (work: () => void): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

const figure = (name: string, value: number, against: string, limit: number): BenchFigure => ({
  name,
  value,
  unit: "ms",
  against,
  ratio: value / limit,
  goal: `at most ${limit} ms`,
  met: value <= limit,
});

/** How long 10,000 function cells and one edit take to calculate; medians of five and of fifty. */
export default async function run(): Promise<BenchFigure[]> {
  const { library, name } = await openLibrary();
  const settings = { library, now: () => 46_000 };
  const opened = openWorkbook(makeLog());
  const calculation = new Calculation(opened, settings);
  const all = Array.from({ length: 5 }, () => time(() => calculation.useLibrary(library)));
  const edits = Array.from({ length: 50 }, (_, at) => time(() => opened.setCell("Log", at * 90, 1, 41 + at)));
  const first = time(() => new Calculation(openWorkbook(makeLog()), settings));
  calculation.close();
  return [
    figure("10,000 function cells, opened and calculated", first, name, 1000),
    figure("10,000 function cells, calculated anew", median(all), name, 1000),
    figure("one edit among 10,000 function cells", median(edits), name, 20),
  ];
}
