import type { Paper } from "../domain/paper";
import { success, type Result } from "../domain/result";
import { median } from "../domain/statistics/median";
import { linearScale } from "./axis-scale";
import { labelDays, sayDays, type PlainChart } from "./plain-chart";
import {
  checkTactileLayout,
  LEAST_COMPONENT,
  LEAST_SIDE,
  PAPER_MARGIN,
  refuseLayout,
  TACTILE_GAPS,
  type TactileElement,
  type TactileFault,
  type TactilePage,
  type TactileProcess,
} from "./tactile-check";
import { layOutKey, type KeyRow } from "./tactile-key";
import { layOutLabel, placeLabel, type LabelBlock, type ToCells } from "./tactile-label";
import {
  DASHES,
  drawEventLines,
  drawFirstPath,
  drawLines,
  drawSecondPath,
  LINE_WIDTHS,
  POINT_RADIUS,
  thinPoints,
  type TactilePlot,
} from "./tactile-paths";
import type { TactileShape } from "./tactile-shape";

/** How a tactile graphic is made. */
export interface TactileRequest {
  readonly paper: Paper;
  readonly landscape: boolean;
  readonly process: TactileProcess;
  /** all on one sheet, where a long series is thinned; or on as many sheets as its points need */
  readonly sheets: "one" | "several";
  readonly toCells: ToCells;
}

/** A tactile graphic: its sheets, the key last, and what must be said of it in print. */
export interface TactileGraphic {
  readonly pages: readonly TactilePage[];
  readonly notes: readonly string[];
}

/** Sheets of one graphic at most: more are not read. Our choice. */
const MOST_SHEETS = 6;
const LETTERS = "abcdefghij";

/**
 * A chart for the fingers, in millimetres: the data path strongest, other lines interrupted around it, no grid lines;
 * title, axes and key in braille. A long series is thinned from its latest point back, or spread over several sheets,
 * and the notes say how many points are drawn.
 *
 * @returns the sheets, each checked by {@link checkTactileLayout}; or why there are none
 */
export const layOutTactile = (
  chart: PlainChart,
  request: TactileRequest,
): Result<TactileGraphic, TactileFault> => {
  const points = chart.paths.flatMap(({ stretches }) => stretches.flat());
  if (points.length === 0)
    return refuseLayout("nothing-to-draw", "There are no points to draw yet: add probes first.");
  const frame = layOutFrame(chart, request);
  if (!frame.ok) return frame;
  const events = letterEvents(chart);
  const spans = splitDays(chart, request, frame.value);
  const pages: TactilePage[] = [];
  let drawn = 0;
  const missing = new Set<string>();
  for (const [i, days] of spans.entries()) {
    const part = spans.length === 1 ? chart : cutChart(chart, days, i + 1, spans.length);
    const laid = spans.length === 1 ? frame : layOutFrame(part, request);
    if (!laid.ok) return laid;
    const sheet = fillSheet(part, events, request, laid.value);
    const checked = checkTactileLayout(sheet.page);
    if (!checked.ok) return checked;
    pages.push(checked.value);
    drawn += sheet.drawn;
    for (const name of sheet.missing) missing.add(name);
  }
  const keyed = layOutKey(chart.title, listKeyRows(chart, events, pages), request);
  if (!keyed.ok) return keyed;
  return success({
    pages: [...pages, ...keyed.value],
    notes: sayDrawn(drawn, points.length, pages.length, missing),
  });
};

const sayDrawn = (
  drawn: number,
  all: number,
  sheets: number,
  missing: ReadonlySet<string>,
): readonly string[] => [
  drawn === all
    ? `All ${all} points are drawn${sheets > 1 ? `, on ${sheets} sheets` : ""}.`
    : `${drawn} of ${all} points are drawn${sheets > 1 ? ` on ${sheets} sheets` : ""}: there is no room for the others between them. The table has them all.`,
  ...(missing.size === 0 ? [] : [`No room for these lines, the key names them: ${[...missing].join(", ")}.`]),
  "The braille was translated by machine and not proofread.",
];

/** Where things are on a sheet, in millimetres, before data are drawn. */
interface SheetFrame {
  readonly width: number;
  readonly height: number;
  readonly gap: number;
  readonly plot: TactilePlot;
  readonly axisX: number;
  readonly axisY: number;
  readonly right: number;
  readonly top: number;
  readonly eventLabelsAt: number;
  readonly fixed: readonly TactileElement[];
}

const layOutFrame = (chart: PlainChart, request: TactileRequest): Result<SheetFrame, TactileFault> => {
  const { paper, landscape, process, toCells } = request;
  const [width, height] = landscape ? [paper.height, paper.width] : [paper.width, paper.height];
  const gap = TACTILE_GAPS[process];
  // Between blocks, the half width of an axis among them.
  const space = gap + LINE_WIDTHS.axis;
  const usable = width - 2 * PAPER_MARGIN;
  const title = layOutLabel(chart.title, toCells, usable);
  const yTitle = layOutLabel(chart.yTitle, toCells, usable);
  const xTitle = layOutLabel(sayDays(chart), toCells, usable);
  const ticks = chart.yTicks.map((value) => ({
    value,
    label: layOutLabel(chart.formatTick(value), toCells, usable),
  }));
  const letter = chart.events.length === 0 ? undefined : layOutLabel("a", toCells, usable);
  const tickWidth = Math.max(...ticks.map(({ label }) => label.width));
  const tickHeight = Math.max(...ticks.map(({ label }) => label.height));
  const yTitleAt = PAPER_MARGIN + title.height + space;
  const eventLabelsAt = yTitleAt + yTitle.height + space;
  const top = eventLabelsAt + (letter === undefined ? 0 : letter.height + space);
  const dayLabelHeight = layOutLabel("1", toCells, usable).height;
  const xTitleAt = height - PAPER_MARGIN - xTitle.height;
  const axisX = PAPER_MARGIN + tickWidth + space + LEAST_COMPONENT;
  const axisY = xTitleAt - space - dayLabelHeight - space - LEAST_COMPONENT;
  const right = width - PAPER_MARGIN - LINE_WIDTHS.axis / 2;
  // The path with its points keeps its distance from the axes.
  const inset = gap + POINT_RADIUS + LINE_WIDTHS.axis / 2;
  const [low, high] = [chart.yTicks[0] ?? 0, chart.yTicks.at(-1) ?? 1];
  const x = linearScale(chart.days[0], chart.days[1], axisX + inset, right - POINT_RADIUS);
  const y = linearScale(low, high, axisY - inset, top + POINT_RADIUS);
  if (x.place(x.high) - axisX < 3 * LEAST_SIDE || axisY - top < 3 * LEAST_SIDE)
    return refuseLayout(
      "no-room",
      `The braille title and labels leave no room for the graph on ${paper.name}: choose a larger paper, or turn it.`,
    );
  const plot = { x, y, gap };
  const days = fitDayLabels(chart, plot, toCells, PAPER_MARGIN, width - PAPER_MARGIN);
  const drawnTicks = thinTicks(ticks, (value) => y.place(value), tickHeight + gap);
  const fixed: TactileElement[] = [
    placeLabel(title, { x: PAPER_MARGIN, y: PAPER_MARGIN }, "title"),
    placeLabel(yTitle, { x: PAPER_MARGIN, y: yTitleAt }, "label of the values"),
    placeLabel(xTitle, { x: PAPER_MARGIN, y: xTitleAt }, "label of the days"),
    ...drawnTicks.map(({ value, label }) =>
      placeLabel(
        label,
        { x: PAPER_MARGIN + tickWidth - label.width, y: y.place(value) - label.height / 2 },
        "number",
      ),
    ),
    ...days.map(({ label, at }) => placeLabel(label, { x: at, y: axisY + LEAST_COMPONENT + space }, "day")),
    {
      name: "axes",
      group: "axes",
      style: { of: "line", name: "fine full line" },
      shapes: [
        {
          kind: "line",
          width: LINE_WIDTHS.axis,
          spots: [
            { x: axisX, y: top },
            { x: axisX, y: axisY },
            { x: right, y: axisY },
          ],
        },
        ...drawnTicks.map(({ value }): TactileShape => {
          const at = y.place(value);
          const spots = [
            { x: axisX - LEAST_COMPONENT, y: at },
            { x: axisX, y: at },
          ];
          return { kind: "line", width: LINE_WIDTHS.axis, spots };
        }),
        ...days.map(({ day }): TactileShape => {
          const at = x.place(day);
          const spots = [
            { x: at, y: axisY },
            { x: at, y: axisY + LEAST_COMPONENT },
          ];
          return { kind: "line", width: LINE_WIDTHS.axis, spots };
        }),
      ],
    },
  ];
  return success({ width, height, gap, plot, axisX, axisY, right, top, eventLabelsAt, fixed });
};

/** Every tick where its number has room; else every second one, every third one, the lowest always. */
const thinTicks = <T extends { readonly value: number }>(
  ticks: readonly T[],
  place: (value: number) => number,
  pitch: number,
): readonly T[] => {
  const [first, second] = ticks;
  if (first === undefined || second === undefined) return ticks;
  const step = Math.max(1, Math.ceil(pitch / Math.abs(place(first.value) - place(second.value))));
  return ticks.filter((_, i) => i % step === 0);
};

interface PlacedDay {
  readonly day: number;
  readonly label: LabelBlock;
  /** left edge */
  readonly at: number;
}

/** As many labels of days as stand beside each other. */
const fitDayLabels = (
  chart: PlainChart,
  { x, gap }: TactilePlot,
  toCells: ToCells,
  left: number,
  right: number,
): readonly PlacedDay[] => {
  for (let most = 8; most >= 2; most--) {
    const placed = labelDays(chart, most).map(({ day, text }) => {
      const label = layOutLabel(text, toCells, right - left);
      const at = Math.min(Math.max(left, x.place(day) - label.width / 2), right - label.width);
      return { day, label, at };
    });
    const fits = placed.every(({ at }, i) => {
      const before = placed[i - 1];
      return before === undefined || at - before.at - before.label.width >= gap;
    });
    if (fits) return placed;
  }
  return [];
};

/** The spans of days of the sheets: one, or so many that the points have room. */
const splitDays = (
  { days, paths }: PlainChart,
  { sheets }: TactileRequest,
  { plot }: SheetFrame,
): readonly (readonly [number, number])[] => {
  const width = plot.x.place(days[1]) - plot.x.place(days[0]);
  // As long as points usually are apart is what each sheet must have room for.
  const apart = Math.min(
    ...paths.map(({ stretches }) => usualSpacing(stretches.flat().map(({ day }) => day))),
  );
  const needed = ((days[1] - days[0]) * pitchOf(plot)) / (apart * width);
  const many = sheets === "one" ? 1 : Math.min(MOST_SHEETS, Math.max(1, Math.ceil(needed)));
  const length = (days[1] - days[0]) / many;
  return Array.from({ length: many }, (_, i) => [
    i === 0 ? days[0] : Math.floor(days[0] + i * length) + 1,
    i === many - 1 ? days[1] : Math.floor(days[0] + (i + 1) * length),
  ]);
};

/** The median of the days between neighbours; without end for a single one. */
const usualSpacing = (days: readonly number[]): number => {
  const spacings = days
    .slice(1)
    .map((day, i) => day - (days[i] ?? day))
    .filter((spacing) => spacing > 0);
  return spacings.length === 0 ? Infinity : median(spacings);
};

const pitchOf = ({ gap }: TactilePlot): number => 2 * POINT_RADIUS + gap;

const cutChart = (
  chart: PlainChart,
  [from, to]: readonly [number, number],
  sheet: number,
  sheets: number,
): PlainChart => {
  const isIn = ({ day }: { readonly day: number }): boolean => day >= from && day <= to;
  return {
    ...chart,
    title: `${chart.title}, sheet ${sheet} of ${sheets}`,
    days: [from, to],
    paths: chart.paths.map((path) => ({
      ...path,
      stretches: path.stretches.map((stretch) => stretch.filter(isIn)),
    })),
    events: chart.events.filter(isIn),
  };
};

interface LetteredEvent {
  readonly letter: string;
  readonly name: string;
  readonly day: number;
}

/** Events with the letter of each, in order; those past the tenth have none. */
const letterEvents = (chart: PlainChart): readonly LetteredEvent[] =>
  chart.events.slice(0, LETTERS.length).map((event, i) => ({ ...event, letter: LETTERS.charAt(i) }));

interface FilledSheet {
  readonly page: TactilePage;
  readonly drawn: number;
  readonly missing: readonly string[];
}

const fillSheet = (
  chart: PlainChart,
  events: readonly LetteredEvent[],
  request: TactileRequest,
  frame: SheetFrame,
): FilledSheet => {
  const { plot, fixed, gap, top, axisY, eventLabelsAt } = frame;
  const shapesOf = (elements: readonly TactileElement[]): readonly TactileShape[] =>
    elements.flatMap(({ shapes }) => shapes);
  const [first, ...rest] = chart.paths.map((path) => thinPoints(plot, path, pitchOf(plot)));
  const leading = first === undefined ? { elements: [], drawn: 0 } : drawFirstPath(plot, first);
  const elements: TactileElement[] = [...fixed, ...leading.elements];
  let { drawn } = leading;
  for (const path of rest) {
    const next = drawSecondPath(plot, path, shapesOf(elements));
    elements.push(...next.elements);
    drawn += next.drawn;
  }
  const placed: TactileElement[] = [];
  const missing: string[] = [];
  const shown: { readonly letter: string; readonly day: number }[] = [];
  let free = Infinity;
  const [firstDay, lastDay] = chart.days;
  const here = events.filter(({ day }) => day >= firstDay && day <= lastDay);
  for (const event of [...here].reverse()) {
    const label = layOutLabel(event.letter, request.toCells, frame.width);
    const at = Math.min(plot.x.place(event.day) - label.width / 2, frame.width - PAPER_MARGIN - label.width);
    if (at + label.width > free - gap) {
      missing.push(event.letter);
      continue;
    }
    free = at;
    placed.push(placeLabel(label, { x: at, y: eventLabelsAt }, "letter"));
    shown.push(event);
  }
  elements.push(...placed);
  elements.push(...drawEventLines(plot, shown, top, axisY - gap - 1, shapesOf(elements)));
  elements.push(...drawLines(plot, chart.lines, shapesOf(elements)));
  return {
    page: {
      title: chart.title,
      summary: `Tactile graphic with ${drawn} points. ${sayDays(chart)}.`,
      width: frame.width,
      height: frame.height,
      process: request.process,
      elements: elements.filter(({ shapes }) => shapes.length > 0),
    },
    drawn,
    missing,
  };
};

/** What the key explains: styles that stand on the sheets, and the letters of events. */
const listKeyRows = (
  chart: PlainChart,
  events: readonly LetteredEvent[],
  pages: readonly TactilePage[],
): readonly KeyRow[] => {
  const standing = pages.flatMap(({ elements }) => elements);
  const has = (style: string): boolean => standing.some((element) => element.style?.name === style);
  const [first, second] = chart.paths;
  const rows: (KeyRow | undefined)[] = [
    first && { text: first.name, sample: { width: LINE_WIDTHS.data, symbol: "disc" } },
    second &&
      has("dashed line") && {
        text: second.name,
        sample: { width: LINE_WIDTHS.second, dash: DASHES.second, symbol: "block" },
      },
    has("long dashes") ? { text: "aim", sample: { width: LINE_WIDTHS.aim, dash: DASHES.aim } } : undefined,
    has("short dashes")
      ? { text: "criterion", sample: { width: LINE_WIDTHS.aim, dash: DASHES.criterion } }
      : undefined,
    standing.some(({ name }) => name.endsWith("maintenance check"))
      ? { text: "maintenance check", sample: { symbol: "block" } }
      : undefined,
    ...events.map(({ letter, name }) => ({ text: `${letter}: ${name}` })),
  ].map((row) => (row === false ? undefined : row));
  return rows.filter((row) => row !== undefined);
};
