import type { ChartPicture } from "../../src/charts/chart-picture";
import type { SeriesPoint } from "../../src/domain/progress/series";

/** An element with text, made without markup. */
export const makeText = <K extends keyof HTMLElementTagNameMap>(
  tag: K,
  text: string,
): HTMLElementTagNameMap[K] => {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
};

/**
 * The table of a picture with a button in each row that leads to the probe's own row in the workbook.
 *
 * @param points - one a row, in the same order
 */
export const buildTable = (
  { caption, headings, rows }: ChartPicture["table"],
  points: readonly SeriesPoint[],
  choose: (point: SeriesPoint) => void,
): HTMLTableElement => {
  const table = document.createElement("table");
  table.append(makeText("caption", caption));
  const head = table.createTHead().insertRow();
  for (const heading of [...headings, "In the sheet"]) {
    const cell = makeText("th", heading);
    cell.scope = "col";
    head.append(cell);
  }
  const body = table.createTBody();
  rows.forEach((cells, index) => {
    const row = body.insertRow();
    cells.forEach((text, column) => {
      const cell = makeText(column === 0 ? "th" : "td", text);
      if (column === 0) cell.setAttribute("scope", "row");
      row.append(cell);
    });
    const point = points[index];
    if (point !== undefined) row.insertCell().append(makeJump(point, cells[0] ?? "", choose));
  });
  return table;
};

const makeJump = (
  point: SeriesPoint,
  date: string,
  choose: (point: SeriesPoint) => void,
): HTMLButtonElement => {
  const { sheet, row } = point.probe.source;
  const button = makeText("button", `Row ${row}`);
  button.type = "button";
  button.dataset["jump"] = `${sheet}\u0000${row}`;
  button.setAttribute("aria-label", `Row ${row} of ${sheet}, probe of ${date}`);
  button.addEventListener("click", () => {
    choose(point);
  });
  return button;
};
