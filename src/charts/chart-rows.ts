import type { Day } from "../domain/units";
import type { PlainChart, PlainPoint } from "./plain-chart";

/** A chart as columns of a sheet: the days, and a column for each path and line; undefined where it has no value. */
export interface ChartRows {
  readonly days: readonly Day[];
  readonly columns: readonly {
    readonly name: string;
    readonly values: readonly (number | undefined)[];
  }[];
}

/** The value of a line on a day: straight between its points; undefined outside them. */
const valueOn = (points: readonly PlainPoint[], day: number): number | undefined => {
  for (const [i, to] of points.entries()) {
    const from = points[i - 1];
    if (to.day === day) return to.value;
    if (from !== undefined && from.day < day && day < to.day)
      return from.value + ((day - from.day) / (to.day - from.day)) * (to.value - from.value);
  }
  return undefined;
};

/** The numbers behind a chart: every day that has a value, and the ends of its lines. */
export const listChartRows = ({ paths, lines }: PlainChart): ChartRows => {
  const byPath = paths.map(({ name, stretches }) => ({
    name,
    values: new Map(stretches.flat().map(({ day, value }) => [day, value])),
  }));
  const days = [
    ...new Set([
      ...byPath.flatMap(({ values }) => [...values.keys()]),
      ...lines.flatMap(({ points }) => points.map(({ day }) => day)),
    ]),
  ].sort((a, b) => a - b);
  return {
    days,
    columns: [
      ...byPath.map(({ name, values }) => ({ name, values: days.map((day) => values.get(day)) })),
      ...lines.map(({ name, points }) => ({ name, values: days.map((day) => valueOn(points, day)) })),
    ],
  };
};
