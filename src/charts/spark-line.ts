import { formatDay } from "../domain/calendar";
import { aimOn, type AimEnds } from "../domain/progress/aim";
import { formatValue } from "../domain/progress/measure-words";
import type { Measure } from "../domain/progress/measure";
import type { DailyValue } from "../domain/progress/phases";
import { drawElement } from "./svg-element";

const WIDTH = 128;
const HEIGHT = 36;
const INSET = 4;

/** What a small chart shows, in one sentence: how many values, from when to when, from what to what. */
export const describeSpark = (
  daily: readonly DailyValue[],
  measure: Measure,
  aim: AimEnds | undefined,
): string => {
  const [first, last] = [daily[0], daily.at(-1)];
  if (first === undefined || last === undefined) return "No values yet.";
  const say = (value: number): string => formatValue(value, measure);
  if (daily.length === 1) return `One value: ${say(first.value)} on ${formatDay(first.day)}.`;
  const values = daily.map(({ value }) => value);
  const aimed = aim && aimOn(aim, last.day);
  return (
    `${daily.length} days from ${formatDay(first.day)} to ${formatDay(last.day)}: first ${say(first.value)}, ` +
    `last ${say(last.value)}, between ${say(Math.min(...values))} and ${say(Math.max(...values))}.` +
    (aimed === undefined ? "" : ` The aim on the last day: ${say(aimed)}.`)
  );
};

/**
 * A chart as small as a word: daily values as a line, its last one as a dot, the aim line dashed beneath. It has no
 * axes: it shows the way, and {@link describeSpark}, its name, the numbers.
 *
 * @param daily - one value a day, oldest first
 * @param aim - drawn over the days of the values
 * @returns an svg of 128 × 36, with the text colour of its place
 */
export function drawSpark(daily: readonly DailyValue[], measure: Measure, aim: AimEnds | undefined): string {
  const [first, last] = [daily[0], daily.at(-1)];
  if (first === undefined || last === undefined) return "";
  const ends = [first.day, last.day].flatMap((day) => {
    const value = aim && aimOn(aim, day);
    return value === undefined ? [] : [{ day, value }];
  });
  const all = [...daily, ...ends].map(({ value }) => value);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const x = (day: number): number =>
    first.day === last.day
      ? WIDTH - INSET
      : INSET + ((day - first.day) / (last.day - first.day)) * (WIDTH - 2 * INSET);
  const y = (value: number): number =>
    high === low ? HEIGHT / 2 : HEIGHT - INSET - ((value - low) / (high - low)) * (HEIGHT - 2 * INSET);
  const path = (points: readonly DailyValue[]): string =>
    points.map(({ day, value }) => `${x(day).toFixed(1)},${y(value).toFixed(1)}`).join(" ");
  const line = { fill: "none", stroke: "currentColor" };
  return drawElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-label": describeSpark(daily, measure, aim),
      width: WIDTH,
      height: HEIGHT,
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
    },
    [
      ends.length === 2
        ? drawElement("polyline", {
            ...line,
            points: path(ends),
            "stroke-width": 1,
            "stroke-dasharray": "3 3",
          })
        : "",
      daily.length > 1
        ? drawElement("polyline", {
            ...line,
            points: path(daily),
            "stroke-width": 2,
            "stroke-linejoin": "round",
          })
        : "",
      drawElement("circle", { cx: x(last.day), cy: y(last.value), r: 3.5, fill: "currentColor" }),
    ],
  );
}
