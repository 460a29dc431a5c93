import { HostError } from "../../ports/sheet";
import type { ChartRequest } from "../../ports/sheet";
import { enterText } from "./cell-content";
import { areaOf, PLACE, rangeOf } from "./cell-transfer";
import { loadProtection, refuseProtected } from "./sheet-protection";

/** Rows and columns of default size that a chart covers. */
const ROWS = 20;
const COLUMNS = 9;

/** The row for the summary: the first empty cell of the column from beneath the chart on. */
async function freeRow(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  row: number,
  column: number,
): Promise<number> {
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load(PLACE);
  await context.sync();
  const bottom = used.isNullObject ? row : Math.max(row, areaOf(used).bottom);
  const cells = rangeOf(sheet, { top: row, left: column, bottom, right: column });
  cells.load("formulas");
  await context.sync();
  const free = cells.formulas.findIndex(([cell]) => cell === "");
  return free < 0 ? bottom + 1 : row + free;
}

/** Adds a native chart of points over dates, y from 0, with its summary in the cell beneath it. */
export async function addNativeChart(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  request: ChartRequest,
): Promise<() => void> {
  const [leading] = request.series;
  if (!leading) throw new HostError("A chart needs at least one column of numbers. Choose one.");
  const summary = enterText(request.summary);
  const sheet = context.workbook.worksheets.getItem(request.sheet);
  const dates = rangeOf(sheet, request.x);
  loadProtection(sheet);
  dates.load("numberFormat");
  sheet.charts.load("items/name");
  const row = await freeRow(context, sheet, request.at.row + ROWS, request.at.column);
  refuseProtected(sheet);
  const standing = new Set(sheet.charts.items.map((chart) => chart.name));

  const summaryCell = rangeOf(sheet, {
    top: row,
    left: request.at.column,
    bottom: row,
    right: request.at.column,
  });
  onRefusal(async () => {
    sheet.charts.load("items/name");
    await context.sync();
    for (const chart of sheet.charts.items) if (!standing.has(chart.name)) chart.delete();
    // It was found empty.
    summaryCell.formulas = [[""]];
    await context.sync();
  });
  const chart = sheet.charts.add("XYScatterLines", rangeOf(sheet, leading.y), "Columns");
  chart.title.text = request.title;
  chart.legend.visible = request.series.length > 1;
  request.series.forEach(({ name, y }, index) => {
    const series = index === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    series.name = name;
    series.setXAxisValues(dates);
    series.setValues(rangeOf(sheet, y));
  });
  // On a scatter chart Excel's "category axis" is the horizontal one.
  chart.axes.categoryAxis.title.text = request.xTitle;
  chart.axes.categoryAxis.numberFormat = String(dates.numberFormat[0]?.[0] ?? "General");
  chart.axes.valueAxis.title.text = request.yTitle;
  chart.axes.valueAxis.minimum = 0;
  const { row: top, column: left } = request.at;
  chart.setPosition(
    rangeOf(sheet, { top, left, bottom: top, right: left }),
    rangeOf(sheet, {
      top: top + ROWS - 1,
      left: left + COLUMNS - 1,
      bottom: top + ROWS - 1,
      right: left + COLUMNS - 1,
    }),
  );
  summaryCell.formulas = [[summary]];
  return () => undefined;
}
