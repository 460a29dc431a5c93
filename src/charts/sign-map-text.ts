import { formatDay } from "../domain/calendar";
import { SIGN_STATES, type SignStanding, type SignState } from "../domain/progress/sign-states";
import { WAYS, type Way } from "../domain/progress/way";
import type { Day } from "../domain/units";
import type { ChartPicture } from "./chart-picture";

/** What a map of signs is of. */
export interface SignMap {
  readonly pupil: string;
  /** a kind or all, in words: `strong groupsigns` */
  readonly scope: string;
  /** the day for which the states hold */
  readonly asOf: Day;
  readonly standings: readonly SignStanding[];
}

/** What the map is of. */
export const titleOfMap = ({ pupil, scope, asOf }: SignMap): string =>
  `${pupil}: ${scope} on ${formatDay(asOf)}`;

const inState = ({ standings }: SignMap, way: Way, state: SignState): readonly string[] =>
  standings.filter((standing) => standing[way].state === state).map(({ sign }) => sign.name);

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The map in sentences: for each way and state how many signs, and which; states without a sign are left out. */
export const summariseMap = (map: SignMap): readonly string[] => {
  const { length } = map.standings;
  return [
    `${length} ${length === 1 ? "sign" : "signs"}.`,
    ...WAYS.flatMap((way) =>
      SIGN_STATES.flatMap((state) => {
        const names = inState(map, way, state);
        if (names.length === 0) return [];
        const which = names.length === length && length > 1 ? "all of them" : names.join(", ");
        return [`${capitalise(way)}, ${state}, ${names.length}: ${which}.`];
      }),
    ),
  ];
};

/** A row a sign, in the order of the map. */
export const tabulateMap = (map: SignMap): ChartPicture["table"] => ({
  caption: titleOfMap(map),
  headings: ["Sign", "Braille", "Dots", "Reading", "Writing"],
  rows: map.standings.map(({ sign, reading, writing }) => [
    sign.name,
    sign.cells,
    sign.dots,
    reading.state,
    writing.state,
  ]),
});
