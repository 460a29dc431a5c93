import type { ChartPicture } from "../../src/charts/chart-picture";
import { listChartRows } from "../../src/charts/chart-rows";
import { sayDays, type PlainChart } from "../../src/charts/plain-chart";
import { HostError, type Sheet } from "../../src/ports/sheet";

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A name that no sheet or table of the workbook has yet. It holds no pupil's name. */
const findFreeName = async (sheet: Sheet): Promise<string> => {
  const taken = new Set(
    (await sheet.outline()).flatMap(({ name, tables }) =>
      [name, ...tables.map((table) => table.name)].map((each) => each.toLowerCase()),
    ),
  );
  let number = 1;
  while (taken.has(`chart${number}`)) number++;
  return `Chart${number}`;
};

/** Headings of a table must differ from each other. */
const nameColumns = (names: readonly string[]): readonly string[] =>
  names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other.toLowerCase() === name.toLowerCase()).length;
    return capitalise(before === 0 ? name : `${name} ${before + 1}`);
  });

/**
 * Puts a chart into the workbook: its numbers as a table on a sheet of their own, a native chart over them, and its
 * description. Where the host draws no charts, numbers and description stand there alone.
 *
 * @returns what was done, as a sentence
 * @throws {HostError} where not even the numbers could be written
 */
export const putChartInSheet = async (
  sheet: Sheet,
  chart: PlainChart,
  picture: Pick<ChartPicture, "title" | "summary">,
): Promise<string> => {
  const { days, columns } = listChartRows(chart);
  if (days.length === 0) throw new HostError("There are no numbers to draw yet: add probes first.");
  const name = await findFreeName(sheet);
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
    return `The chart, its numbers and its description are on the new sheet ${name}.`;
  } catch (error) {
    if (!(error instanceof HostError)) throw error;
    await sheet.writeBlock(
      name,
      at,
      [picture.title, ...picture.summary].map((sentence) => [sentence]),
    );
    return `This program draws no chart of its own (${error.message}) Its numbers and its description are on the new sheet ${name}; save the picture as a file to put it elsewhere.`;
  }
};
