import type { ChartPicture } from "../../src/charts/chart-picture";
import { listChartRows } from "../../src/charts/chart-rows";
import { sayDays, type PlainChart } from "../../src/charts/plain-chart";
import { HostError, type Sheet } from "../../src/ports/sheet";
import { takeBackWrites, undoable, type Written } from "../../src/records/undoable-writes";

/** What was put into the workbook, and the way back. */
export interface PutIntoSheet {
  /** as a sentence */
  readonly words: string;
  /** the new sheets: none of them holds records */
  readonly sheets: readonly string[];
  undo(): Promise<void>;
}

/** Charts and their text; a chart of a series of its own has its own title and sentences. */
export interface ChartInSheet {
  readonly chart: PlainChart;
  readonly picture: Pick<ChartPicture, "title" | "summary">;
}

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A name that no sheet or table of the workbook has yet. It holds no pupil's name. */
const findFreeName = async (sheet: Sheet, stem: string): Promise<string> => {
  const taken = new Set(
    (await sheet.outline()).flatMap(({ name, tables }) =>
      [name, ...tables.map((table) => table.name)].map((each) => each.toLowerCase()),
    ),
  );
  let number = 1;
  while (taken.has(`${stem}${number}`.toLowerCase())) number++;
  return `${stem}${number}`;
};

/** Headings of a table must differ from each other. */
const nameColumns = (names: readonly string[]): readonly string[] =>
  names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other.toLowerCase() === name.toLowerCase()).length;
    return capitalise(before === 0 ? name : `${name} ${before + 1}`);
  });

const writeText = (
  sheet: Sheet,
  name: string,
  at: { readonly row: number; readonly column: number },
  { title, summary }: ChartInSheet["picture"],
) =>
  sheet.writeBlock(
    name,
    at,
    [title, ...summary].map((sentence) => [sentence]),
  );

/**
 * @param made - called when the sheet is there
 * @returns why the host drew no chart; undefined where it did
 */
const putChart = async (
  sheet: Sheet,
  name: string,
  { chart, picture }: ChartInSheet,
  made: () => void,
): Promise<string | undefined> => {
  const { days, columns } = listChartRows(chart);
  const headings = nameColumns(["Date", ...columns.map((column) => column.name)]);
  const format = chart.formatValue(0.5).endsWith("%") ? "0%" : "General";
  const area = await sheet.addTable({
    name,
    sheet: name,
    columns: headings.map((heading, i) => ({
      name: heading,
      ...(i === 0 ? { format: "yyyy-mm-dd", width: 12 } : { format }),
    })),
    rows: days.map((day, row) => [day, ...columns.map(({ values }) => values[row] ?? null)]),
  });
  made();
  const at = { row: area.top, column: area.right + 2 };
  const first = area.top + 1;
  const columnArea = (column: number): { top: number; bottom: number; left: number; right: number } => ({
    top: first,
    bottom: first + days.length - 1,
    left: area.left + column,
    right: area.left + column,
  });
  try {
    await sheet.addChart({
      sheet: name,
      title: picture.title,
      xTitle: capitalise(sayDays(chart)),
      yTitle: capitalise(chart.yTitle),
      x: columnArea(0),
      series: columns.map((_, i) => ({ name: headings[i + 1] ?? "", y: columnArea(i + 1) })),
      at,
      summary: picture.summary.join(" "),
    });
    return undefined;
  } catch (error) {
    if (!(error instanceof HostError)) throw error;
    await writeText(sheet, name, at, picture);
    return error.message;
  }
};

const describe = (sheets: readonly string[]): string =>
  sheets.length === 1
    ? `on the new sheet ${sheets[0] ?? ""}`
    : `on the new sheets ${sheets.slice(0, -1).join(", ")} and ${sheets.at(-1) ?? ""}`;

/**
 * Puts charts into the workbook as one step: the numbers of each as a table on a sheet of its own, a native chart over
 * them, and its description. Where the host draws no charts, numbers and description stand there alone.
 *
 * @throws {HostError} where not even the numbers could be written, or where no chart has any
 */
export const putChartsInSheet = async (
  sheet: Sheet,
  charts: readonly ChartInSheet[],
): Promise<PutIntoSheet> => {
  const filled = charts.filter(({ chart }) => listChartRows(chart).days.length > 0);
  if (filled.length === 0) throw new HostError("There are no numbers to draw yet: add probes first.");
  const sheets: string[] = [];
  const written: Written[] = [];
  let refused: string | undefined;
  const write = async (): Promise<void> => {
    for (const each of filled) {
      const name = await findFreeName(sheet, "Chart");
      const made = (): void => {
        sheets.push(name);
        written.push(madeSheet(name));
      };
      refused = (await putChart(sheet, name, each, made)) ?? refused;
    }
  };
  const undo = await undoable(sheet, write, written).catch(async (error: unknown) => {
    if (!sheet.group) await takeBackWrites(sheet, written);
    throw error;
  });
  const [what, whose] =
    filled.length === 1
      ? ["The chart, its numbers and its description are", "Its numbers and its description are"]
      : [
          `${filled.length} charts, their numbers and descriptions are`,
          "The numbers and descriptions of the charts are",
        ];
  const words =
    refused === undefined
      ? `${what} ${describe(sheets)}.`
      : `This program draws no chart of its own (${refused}) ${whose} ${describe(sheets)}; save the picture as a file to put it elsewhere.`;
  return { words, sheets, undo };
};

/**
 * Puts the table of a picture that has no numbers into the workbook as one step, on a sheet of its own, with title and
 * description beside it.
 *
 * @param stem - begins the name of sheet and table
 * @param fonts - of columns by their headings, such as one that has braille
 * @throws {HostError} where the host refuses
 */
export const putTableInSheet = async (
  sheet: Sheet,
  { title, summary, table }: Pick<ChartPicture, "title" | "summary" | "table">,
  stem: string,
  fonts: Readonly<Record<string, string>> = {},
): Promise<PutIntoSheet> => {
  const name = await findFreeName(sheet, stem);
  const undo = await undoable(sheet, async () => {
    const area = await sheet.addTable({
      name,
      sheet: name,
      columns: table.headings.map((heading) => {
        const font = fonts[heading];
        return { name: heading, width: 16, ...(font !== undefined && { font }) };
      }),
      rows: table.rows,
    });
    await writeText(sheet, name, { row: area.top, column: area.right + 2 }, { title, summary });
  }, [madeSheet(name)]);
  return {
    words: `The signs are a table ${describe([name])}, with the description beside it.`,
    sheets: [name],
    undo,
  };
};

/** Undone by taking the sheet out, where the host has no undo of its own. */
const madeSheet = (sheet: string): Written => ({
  kind: "sheet",
  sheet,
  area: { top: 0, left: 0, bottom: 0, right: 0 },
  rows: [],
});
