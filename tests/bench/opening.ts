import { strToU8, unzipSync, zipSync } from "fflate";
import { newWorkbook } from "../../src/adapters/xlsx/new-workbook";
import { readWorkbook } from "../../src/adapters/xlsx/read-workbook";
import { saveWorkbook } from "../../src/adapters/xlsx/save-workbook";
import { scanXml } from "../../src/adapters/xlsx/xml-source";
import { Calculation } from "../../src/spreadsheet/calculation";
import type { FunctionLibrary } from "../../src/spreadsheet/function-library";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import type { BenchFigure } from "./figure";

const ROWS = 50_000;
const SHEET = "xl/worksheets/sheet1.xml";
const LIBRARY: FunctionLibrary = { names: [], find: () => undefined };
const OPTIONS = { functions: LIBRARY.names };

/** 50,000 rows of ten columns: dates, three texts, four numbers, a plain formula and a shared one. */
const makeWorkbook = (): Uint8Array => {
  const rows: string[] = [];
  for (let row = 1; row <= ROWS; row++) {
    const text = ["Heron", "read aloud", `Passage ${row % 40}`]
      .map(
        (value, column) => `<c r="${"BCD".charAt(column)}${row}" t="inlineStr"><is><t>${value}</t></is></c>`,
      )
      .join("");
    const numbers = [60 + (row % 50), row % 7, 60, row]
      .map((value, column) => `<c r="${"EFGH".charAt(column)}${row}"><v>${value}</v></c>`)
      .join("");
    const shared = row === 1 ? ` ref="J1:J${ROWS}">1-F1/E1</f>` : "/>";
    rows.push(
      `<row r="${row}"><c r="A${row}" s="1"><v>${46_000 + (row % 300)}</v></c>${text}${numbers}` +
        `<c r="I${row}"><f>60*(E${row}-F${row})/G${row}</f><v>${60 + (row % 50) - (row % 7)}</v></c>` +
        `<c r="J${row}"><f t="shared" si="0"${shared}<v>${1 - (row % 7) / (60 + (row % 50))}</v></c></row>`,
    );
  }
  const parts = unzipSync(newWorkbook("Probes"));
  const sheet = new TextDecoder()
    .decode(parts[SHEET])
    .replace("<sheetData/>", `<sheetData>${rows.join("")}</sheetData>`);
  return zipSync({ ...parts, [SHEET]: strToU8(sheet) });
};

const seconds = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
};

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

const medianOfFive = async (work: () => unknown): Promise<number> => {
  const times: number[] = [];
  for (let run = 0; run < 5; run++) times.push(await seconds(work));
  return median(times);
};

const open = (bytes: Uint8Array): OpenWorkbook => {
  const read = readWorkbook(bytes, OPTIONS);
  if (!read.ok) throw new Error(read.fault.message);
  return new OpenWorkbook(read.value.contents);
};

/** How fast a large workbook is read, calculated and saved; medians of five runs, the first ones included. */
export default async function run(): Promise<BenchFigure[]> {
  const bytes = makeWorkbook();
  const xml = new TextDecoder().decode(unzipSync(bytes)[SHEET]);
  const nothing = (): void => undefined;
  const scan = await medianOfFive(() => scanXml(xml, { open: nothing, close: nothing, text: nothing }));
  const read = await medianOfFive(() => open(bytes));
  const whole = await medianOfFive(async () => {
    const calculation = new Calculation(open(bytes), { library: LIBRARY, now: () => 46_000 });
    await calculation.idle();
  });
  const save = await medianOfFive(() => {
    const workbook = open(bytes);
    workbook.setCell("Probes", 9, 4, 99);
    const saved = saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS);
    if (!saved.ok) throw new Error(saved.fault.message);
  });
  const against = `passing the same XML with saxes and doing nothing: ${scan.toFixed(2)} s`;
  return [
    {
      name: `read ${ROWS} rows of 10 columns`,
      value: read,
      unit: "s",
      against,
      ratio: read / scan,
      goal: "under 2 s",
      met: read < 2,
    },
    {
      name: `open and calculate them (100,000 formulas)`,
      value: whole,
      unit: "s",
      against,
      ratio: whole / scan,
      goal: "under 5 s",
      met: whole < 5,
    },
    {
      name: "read them, type one cell and save",
      value: save,
      unit: "s",
      against,
      ratio: save / scan,
      goal: null,
      met: null,
    },
  ];
}
