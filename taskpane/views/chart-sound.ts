import type { C2MChartConfig, c2m } from "./chart-sound-library";
import type { PlainChart } from "../../src/charts/plain-chart";
import { formatDay } from "../../src/domain/calendar";
import type { Day } from "../../src/domain/units";
import { make } from "./markup";

/** What each key does while the chart that sounds has the focus. */
const KEYS: readonly (readonly [keys: string, does: string])[] = [
  ["Right or left arrow", "the next or the previous point, played and said"],
  ["Home, End", "the first or the last point"],
  ["Shift with End or Home", "plays on to the end, or back to the start"],
  ["Control", "stops playing"],
  ["Page Down, Page Up", "the next or the previous line, such as the aim"],
  ["Square brackets", "the lowest or the highest point"],
  ["Q, E", "slower or faster"],
  ["Space", "says the point again"],
];

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Each line of a chart as points to be played; higher values sound higher. */
const listSounds = ({ paths, lines, formatValue }: PlainChart): C2MChartConfig["data"] =>
  Object.fromEntries([
    ...paths.map(({ name, stretches }) => [
      capitalise(name),
      stretches.flat().map(({ day, value, isCheck }) => ({
        x: day,
        y: value,
        label: `${formatDay(day)}, ${formatValue(value)}${isCheck === true ? ", maintenance check" : ""}`,
      })),
    ]),
    ...lines.map(({ name, points }) => [
      capitalise(name),
      points.map(({ day, value }) => ({
        x: day,
        y: value,
        label: `${formatDay(day)}, ${formatValue(value)}`,
      })),
    ]),
  ]);

/** A chart that sounds; {@link stop} lets go of it. */
export interface SoundingChart {
  readonly element: HTMLElement;
  stop(): void;
}

/**
 * A chart as sound: a place to focus that plays its points by the arrow keys and says each, with its keys explained.
 * The player is loaded now, when somebody wants to hear.
 *
 * @throws {TypeError} where the player refuses the data or could not be loaded
 */
export const makeSoundingChart = async (chart: PlainChart): Promise<SoundingChart> => {
  const { c2mChart } = await import(/* webpackChunkName: "chart-sound" */ "./chart-sound-library");
  const player = make("div", {
    class: "player",
    tabindex: "0",
    role: "application",
    "aria-label": `${chart.title}, as sound. Arrow keys play its points.`,
  });
  player.append(make("span", { "aria-hidden": "true" }, "♪ Focus here and press the arrow keys."));
  const spoken = make("div", { class: "said" });
  const keys = make("dl", { class: "keys" });
  for (const [key, does] of KEYS) keys.append(make("dt", {}, key), make("dd", {}, does));
  const element = make("div", { class: "sounding" }, player, spoken, keys);
  const { err, data } = c2mChart({
    type: "line",
    data: listSounds(chart),
    element: player,
    cc: spoken,
    title: chart.title,
    axes: {
      x: { label: "Day", format: (day) => formatDay(Math.max(1, Math.round(day)) as Day) },
      y: {
        label: capitalise(chart.yTitle),
        minimum: chart.yTicks[0] ?? 0,
        maximum: chart.yTicks.at(-1) ?? 1,
        format: chart.formatValue,
      },
    },
    info: { annotations: chart.events.map(({ name, day }) => ({ x: day, label: name })) },
    options: {
      // Its own list of keys would send people to a page elsewhere; ours stands beneath.
      customHotkeys: ["h", "o"].map((key) => ({ key: { key }, force: true, callback: () => undefined })),
    },
  });
  if (err !== null || data === undefined) throw new TypeError(`The chart cannot be played: ${err ?? ""}`);
  // What is said follows her keys: it must not cut off what a screen reader is saying.
  spoken.setAttribute("aria-live", "polite");
  return { element, stop: stopPlayer(data) };
};

const stopPlayer = (player: c2m) => (): void => {
  player.cleanUp();
};
