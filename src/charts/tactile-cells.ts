import { BLANK_CELL, toAscii } from "../domain/braille/cell";
import { wrapCells } from "../domain/braille/page";
import { success, type Result } from "../domain/result";
import { linearScale } from "./axis-scale";
import { DotCanvas } from "./dot-canvas";
import { labelDays, sayDays, type PlainChart, type PlainPath, type PlainPoint } from "./plain-chart";
import { refuseLayout, type TactileFault } from "./tactile-check";
import type { ToCells } from "./tactile-label";

/** A page of an embosser in cells. */
export interface CellPage {
  /** cells a line */
  readonly cells: number;
  /** lines a page */
  readonly lines: number;
  readonly toCells: ToCells;
}

/** A chart in braille cells: pages of lines, and what must be said of it in print. */
export interface CellGraphic {
  /** Unicode braille, one text a line, without trailing blanks */
  readonly pages: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

/** The plot is at least this high and wide, in cells: our choice. */
const LEAST_PLOT = { cells: 12, lines: 6 } as const;
/** Columns of dots from one point to the next, so that each can be counted. */
const POINT_PITCH = 3;
const LETTERS = "abcdefghij";

/**
 * A chart drawn with the dots of braille cells for an embosser: two rows of dots thick at the points, one row between
 * them, the aim in sparse dots that stop near the path, and under it the key. Axis numbers, title and key are braille.
 * Dots of neighbouring cells stand further apart than those of one cell, so slopes are felt in small steps.
 *
 * @returns pages with no line longer than the page; or why there are none
 */
export const drawCells = (chart: PlainChart, page: CellPage): Result<CellGraphic, TactileFault> => {
  const all = chart.paths.flatMap(({ stretches }) => stretches.flat()).length;
  if (all === 0) return refuseLayout("nothing-to-draw", "There are no points to draw yet: add probes first.");
  const wrap = (print: string): readonly string[] => wrapPrint(print, page);
  const head = [...wrap(chart.title), ...wrap(chart.yTitle)];
  const foot = wrap(sayDays(chart));
  const ticks = chart.yTicks.map((value) => ({ value, text: page.toCells(chart.formatTick(value)) }));
  const labelWidth = Math.max(...ticks.map(({ text }) => text.length));
  const hasEvents = chart.events.length > 0;
  // Beneath the plot a line of labels of days; above it one of letters.
  const lines = page.lines - head.length - foot.length - 1 - Number(hasEvents);
  const cells = page.cells - labelWidth - 1;
  if (lines < LEAST_PLOT.lines || cells < LEAST_PLOT.cells)
    return refuseLayout(
      "no-room",
      `A page of ${page.cells} cells and ${page.lines} lines leaves no room for the graph: set a larger page.`,
    );
  const canvas = new DotCanvas(cells, lines);
  // The axes are the first column and the last row of dots; the path keeps two dots away.
  const x = linearScale(chart.days[0], chart.days[1], 4, canvas.width - 2);
  const [low, high] = [chart.yTicks[0] ?? 0, chart.yTicks.at(-1) ?? 1];
  const y = linearScale(low, high, canvas.height - 4, 1);
  const spotOf = ({ day, value }: PlainPoint): readonly [number, number] => [
    Math.round(x.place(day)),
    Math.round(y.place(value)),
  ];
  canvas.drawLine([0, 0], [0, canvas.height - 1]);
  canvas.drawLine([0, canvas.height - 1], [canvas.width - 1, canvas.height - 1]);
  let drawn = 0;
  chart.paths.forEach((path, i) => {
    const thinned = thinByColumn(path, spotOf);
    drawn += thinned.stretches.flat().length;
    for (const stretch of thinned.stretches) {
      drawStretch(canvas, stretch.map(spotOf), {
        isStepped: path.isStepped === true,
        every: i === 0 ? 1 : 2,
      });
    }
  });
  for (const { points } of chart.lines) {
    const spots = points.map(spotOf);
    spots.forEach((to, i) => {
      const from = spots[i - 1];
      if (from !== undefined) canvas.drawLine(from, to, { every: 4, clear: 2 });
    });
  }
  const events = chart.events.slice(0, LETTERS.length).map((event, i) => ({
    ...event,
    letter: LETTERS.charAt(i),
    column: Math.round(x.place(event.day)),
  }));
  for (const { column } of events)
    canvas.drawLine([column, 0], [column, canvas.height - 3], { every: 2, clear: 2 });
  const tickRows = new Map(
    ticks.map(({ value, text }) => [Math.min(lines - 1, Math.floor(y.place(value) / 3)), text] as const),
  );
  const plotted = canvas.toLines().map((line, row) => {
    const text = tickRows.get(row) ?? "";
    return BLANK_CELL.repeat(labelWidth - text.length) + text + BLANK_CELL + line;
  });
  const offset = labelWidth + 1;
  const letters = placeTexts(
    events.map(({ letter, column }) => ({ text: page.toCells(letter), at: offset + (column >> 1) })),
    page.cells,
  );
  const days = fitDays(chart, page, (day) => offset + (Math.round(x.place(day)) >> 1));
  const graph = [...head, ...(hasEvents ? [letters] : []), ...plotted, days, ...foot].map(trimLine);
  const key = listKey(chart, events).flatMap((entry) => wrap(entry));
  return success({
    pages: [graph, ...paginate([...wrap(`Key: ${chart.title}`), ...key], page.lines)],
    notes: [
      drawn === all
        ? `All ${all} points are drawn.`
        : `${drawn} of ${all} points are drawn: there is no room for the others between them. The table has them all.`,
      "The braille was translated by machine and not proofread.",
    ],
  });
};

/**
 * The pages as a file for an embosser in North American ASCII braille: lines end with CR LF, pages with a form feed.
 *
 * @returns the text; cells with dot 7 or 8, which the code lacks, do not occur in a {@link CellGraphic}
 */
export const formatBrf = ({ pages }: CellGraphic): string =>
  pages
    .map((lines) => {
      const ascii = toAscii(lines.join("\n"));
      return `${(ascii.ok ? ascii.value : "").replaceAll("\n", "\r\n")}\r\n\f`;
    })
    .join("");

const trimLine = (line: string): string => line.replace(/\u2800+$/u, "");

const wrapPrint = (print: string, { cells, toCells }: CellPage): readonly string[] => {
  const wrapped = wrapCells(toCells(print), cells);
  return wrapped.ok ? wrapped.value : [];
};

const paginate = (lines: readonly string[], most: number): readonly (readonly string[])[] =>
  Array.from({ length: Math.ceil(lines.length / most) }, (_, i) => lines.slice(i * most, (i + 1) * most));

/** Points that are at least a pitch apart, from the latest one back. */
const thinByColumn = (
  path: PlainPath,
  spotOf: (point: PlainPoint) => readonly [number, number],
): PlainPath => {
  let next = Infinity;
  const stretches = [...path.stretches].reverse().map((stretch) =>
    [...stretch]
      .reverse()
      .filter((point) => {
        const [column] = spotOf(point);
        if (column > next - POINT_PITCH) return false;
        next = column;
        return true;
      })
      .reverse(),
  );
  return { ...path, stretches: stretches.reverse() };
};

/** A path: two by two dots at each point, a row of dots between; the second path has every other dot. */
const drawStretch = (
  canvas: DotCanvas,
  spots: readonly (readonly [number, number])[],
  { isStepped, every }: { readonly isStepped: boolean; readonly every: number },
): void => {
  spots.forEach((to, i) => {
    const from = spots[i - 1];
    if (from !== undefined && isStepped) {
      canvas.drawLine(from, [to[0], from[1]], { every });
      canvas.drawLine([to[0], from[1]], to, { every });
    } else if (from !== undefined) canvas.drawLine(from, to, { every });
    canvas.drawBlock(to);
  });
  const last = spots.at(-1);
  if (isStepped && last !== undefined) canvas.drawLine(last, [canvas.width - 2, last[1]], { every });
};

/** Texts at their columns in one line; one that would touch the one before it is left out. */
const placeTexts = (
  texts: readonly { readonly text: string; readonly at: number }[],
  cells: number,
): string => {
  let line = "";
  for (const { text, at } of texts) {
    const start = Math.min(at, cells - text.length);
    if (line !== "" && start < line.length + 1) continue;
    line = line.padEnd(start, BLANK_CELL) + text;
  }
  return line;
};

const fitDays = (chart: PlainChart, page: CellPage, columnOf: (day: number) => number): string => {
  for (let most = 8; most > 2; most--) {
    const texts = labelDays(chart, most).map(({ day, text }) => ({
      text: page.toCells(text),
      at: columnOf(day),
    }));
    const fits = texts.every(({ at, text }, i) => {
      const next = texts[i + 1];
      const end = Math.min(at, page.cells - text.length) + text.length;
      return next === undefined || end + 1 <= Math.min(next.at, page.cells - next.text.length);
    });
    if (fits) return placeTexts(texts, page.cells);
  }
  return placeTexts(
    labelDays(chart, 2).map(({ day, text }) => ({ text: page.toCells(text), at: columnOf(day) })),
    page.cells,
  );
};

const listKey = (
  { paths, lines }: PlainChart,
  events: readonly { readonly letter: string; readonly name: string }[],
): readonly string[] => [
  ...paths.map(({ name }, i) => `${i === 0 ? "Full line" : "Broken line"} with thick points: ${name}`),
  ...lines.map(({ name }) => `Single dots: ${name}`),
  ...events.map(({ letter, name }) => `${letter}: ${name}`),
  "Machine translated, not proofread",
];
