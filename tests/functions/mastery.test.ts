import { beforeAll, describe, expect, it } from "vitest";
import { known, mastered, review } from "../../functions/functions";
import checks from "../check-values/mastery.json";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

beforeAll(standInForCustomFunctions);

const NA = { error: "#N/A" };
const FIRST = 46_000;
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
/** The code of the error that a call throws, or what it gives instead. */
const code = async (call: () => unknown): Promise<unknown> => {
  const [[cell] = []] = await answerOfCall(() => [[call()]]);
  return (cell as { code?: string } | undefined)?.code ?? cell;
};
/** Weekly trials of ten opportunities. */
const weekly = (...correct: unknown[]): [unknown[][], unknown[][], unknown[][]] => [
  column(...correct.map((_, i) => FIRST + 7 * i)),
  column(...correct),
  column(...correct.map(() => 10)),
];

describe("MASTERED", () => {
  it.each([
    { about: "three consecutive at 80 %", given: weekly(7, 8, 9, 8), want: FIRST + 21 },
    { about: "not yet", given: weekly(8, 8, 7), want: "not yet" },
    { about: "nothing tried", given: weekly(null), want: "not yet" },
    { about: "a blank is skipped", given: weekly(8, null, 8, 8), want: FIRST + 21 },
    { about: "run 2", given: weekly(8, 8), run: 2, want: FIRST + 7 },
    { about: "run “2”", given: weekly(8, 8), run: "2", want: FIRST + 7 },
    { about: "run “3 of 5”", given: weekly(8, 7, 8, 7, 8), run: "3 of 5", want: FIRST + 28 },
    { about: "run “3/5”", given: weekly(8, 7, 8, 7, 8), run: "3/5", want: FIRST + 28 },
    { about: "share 0.9", given: weekly(8, 9, 9, 9), share: 0.9, want: FIRST + 21 },
    { about: "least 20 pools two days", given: weekly(9, 9, 9, 9, 9, 9), least: 20, want: FIRST + 35 },
  ])("$about: $want", ({ given, share, run, least, want }) => {
    expect(mastered(...given, share, run, least)).toBe(want);
  });

  it.each([
    { about: "more correct than opportunities", call: () => mastered(...weekly(11)), want: "#NUM!" },
    { about: "a negative count", call: () => mastered(...weekly(-1)), want: "#NUM!" },
    { about: "a share in percent", call: () => mastered(...weekly(8), 80), want: "#NUM!" },
    { about: "five of three", call: () => mastered(...weekly(8), 0.8, "5 of 3"), want: "#NUM!" },
    { about: "no run", call: () => mastered(...weekly(8), 0.8, 0), want: "#NUM!" },
    { about: "least 0", call: () => mastered(...weekly(8), 0.8, 3, 0), want: "#NUM!" },
    { about: "a run in words", call: () => mastered(...weekly(8), 0.8, "three"), want: "#VALUE!" },
    { about: "text for a count", call: () => mastered(...weekly("8")), want: "#VALUE!" },
    { about: "unequal lengths", call: () => mastered(column(1, 2), column(8), column(10)), want: "#VALUE!" },
    {
      about: "dates as text",
      call: () => mastered(column("7/10/2026"), column(8), column(10)),
      want: "#VALUE!",
    },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => {
    expect(mastered(...weekly(8, NA))).toBe(NA);
    expect(mastered(...weekly(8), undefined, NA)).toBe(NA);
  });
});

describe("KNOWN", () => {
  const { rows } = checks.forgetting;
  let week = 0;
  const trials = rows.map(({ k, n, weeks }) => [FIRST + 7 * (week += weeks), k, n] as const);
  const given = [0, 1, 2].map((place) => column(...trials.map((row) => row[place])));
  const [dates = [], correct = [], opportunities = []] = given;

  it("is one row of the expected share, low and high: .7326 of the worked sequence", () => {
    const [[expected, low = NaN, high = NaN] = []] = known(dates, correct, opportunities) as number[][];
    expect(expected).toBeCloseTo(rows.at(-1)?.mean ?? NaN, 12);
    // scipy.stats.beta.ppf of 21.817466 and 7.962844, SciPy 1.17.1
    expect(low).toBeCloseTo(0.5631449017345744, 10);
    expect(high).toBeCloseTo(0.8725500059256692, 10);
  });

  it("is less sure later, and takes only what was tried up to the date", () => {
    const width = ([[, low = NaN, high = NaN] = []]: number[][]): number => high - low;
    const now = known(dates, correct, opportunities) as number[][];
    expect(width(known(dates, correct, opportunities, FIRST + 100) as number[][])).toBeGreaterThan(
      width(now),
    );
    expect(known(dates, correct, opportunities, FIRST)[0]?.[0]).toBeCloseTo(7 / 12, 12);
  });

  it.each([
    { about: "nothing tried", call: () => known(...weekly(null)), want: "#N/A" },
    { about: "opportunities 0", call: () => known(column(FIRST), column(0), column(0)), want: "#N/A" },
    { about: "a date before the first", call: () => known(...weekly(8), FIRST - 1), want: "#N/A" },
    { about: "more correct than opportunities", call: () => known(...weekly(11)), want: "#NUM!" },
    { about: "1e9 opportunities", call: () => known(column(FIRST), column(8), column(1e9)), want: "#NUM!" },
    { about: "text for the date", call: () => known(...weekly(8), "today"), want: "#VALUE!" },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => {
    expect(known(...weekly(8, NA))).toEqual([[NA]]);
    expect(known(...weekly(8), NA)).toEqual([[NA]]);
  });
});

describe("REVIEW", () => {
  it.each([
    { about: "once known", given: weekly(9), after: 3 },
    { about: "once unsteady", given: weekly(7), after: 2 },
    { about: "once forgotten", given: weekly(2), after: 1 },
  ])("$about: $after days after the last date", ({ given, after }) => {
    expect(review(...given)).toBe(FIRST + after);
  });

  it("waits longer each time a sign is known, and sums a day's rows", () => {
    const gap = (...correct: number[]): number =>
      (review(...weekly(...correct)) as number) - (FIRST + 7 * (correct.length - 1));
    expect(gap(9, 9)).toBeGreaterThan(gap(9));
    expect(gap(9, 9, 9)).toBeGreaterThan(gap(9, 9));
    expect(gap(9, 9, 2)).toBeLessThan(gap(9, 9, 9));
    expect(review(column(FIRST, FIRST), column(5, 4), column(5, 5))).toBe(FIRST + 3);
  });

  it.each([
    { about: "nothing tried", call: () => review(...weekly(null)), want: "#N/A" },
    { about: "more correct than opportunities", call: () => review(...weekly(11)), want: "#NUM!" },
    { about: "text for a count", call: () => review(...weekly("8")), want: "#VALUE!" },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => expect(review(...weekly(8, NA))).toBe(NA));
});
