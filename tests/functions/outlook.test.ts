import { beforeAll, describe, expect, it } from "vitest";
import { celeration, change, nap, reaches } from "../../functions/functions";
import single from "../check-values/single-case.json";
import trend from "../check-values/trend.json";
import worked from "../check-values/worked-trend.json";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

beforeAll(standInForCustomFunctions);

const NA = { error: "#N/A" };
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
/** The code of the error that a call throws, or what it gives instead. */
const code = async (call: () => unknown): Promise<unknown> => {
  const [[cell] = []] = await answerOfCall(() => [[call()]]);
  return (cell as { code?: string } | undefined)?.code ?? cell;
};
const dates = column(...trend.weeks.x.map((week) => 46_000 + 7 * week));
const scores = column(...trend.weeks.y);

describe("REACHES", () => {
  const weeksOf = (rows: unknown[][]): string[] =>
    (rows[0] as number[]).map((day) => ((day - 46_000) / 7).toFixed(1));

  it("is one row of date, earliest, latest: week 23.2, 20.4 to 27.9 of the worked set", () => {
    expect(weeksOf(reaches(dates, scores, 45))).toEqual(["23.2", "20.4", "27.9"]);
  });

  it("skips pairs with a blank, and takes several a day by their median", () => {
    const [moreDates, moreScores] = [
      [...dates, [46_300], [""]],
      [...scores, [null], [12]],
    ];
    expect(reaches(moreDates, moreScores, 45)).toEqual(reaches(dates, scores, 45));
    const thrice = [...scores, ...scores, ...scores.map(() => [0])];
    expect(reaches([...dates, ...dates, ...dates], thrice, 45)).toEqual(reaches(dates, scores, 45));
  });

  it.each([
    { about: "under six days", call: () => reaches(dates.slice(0, 5), scores.slice(0, 5), 45), want: "#N/A" },
    {
      about: "all on one day",
      call: () =>
        reaches(
          dates.map(() => [46_000]),
          scores,
          45,
        ),
      want: "#N/A",
    },
    {
      about: "constant scores",
      call: () =>
        reaches(
          dates,
          scores.map(() => [20]),
          45,
        ),
      want: "#N/A",
    },
    { about: "a trend away from the goal", call: () => reaches(dates, scores, 5), want: "#N/A" },
    { about: "a goal that is passed", call: () => reaches(dates, scores, 25), want: "#N/A" },
    { about: "a missing goal", call: () => reaches(dates, scores, null), want: "#VALUE!" },
    { about: "text for the goal", call: () => reaches(dates, scores, "fast"), want: "#VALUE!" },
    { about: "unequal lengths", call: () => reaches(dates, scores.slice(1), 45), want: "#VALUE!" },
    {
      about: "dates as text",
      call: () =>
        reaches(
          dates.map(() => ["7/10/2026"]),
          scores,
          45,
        ),
      want: "#VALUE!",
    },
    {
      about: "a date before 1900",
      call: () =>
        reaches(
          dates.map(() => [-1]),
          scores,
          45,
        ),
      want: "#NUM!",
    },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => {
    expect(reaches(dates, [[NA], ...scores.slice(1)], 45)).toEqual([[NA]]);
    expect(reaches(dates, scores, NA)).toEqual([[NA]]);
  });
});

describe("CELERATION", () => {
  it("is the factor a week: ×1.0541 of the worked set, ×2 from 10 to 20 in seven days", () => {
    expect(celeration(dates, scores)).toBeCloseTo(worked.worked.celeration_per_week, 10);
    expect(celeration(column(46_000, null, 46_007), column(10, 5, 20))).toBeCloseTo(2, 12);
  });

  it.each([
    { about: "a rate of 0", call: () => celeration(column(1, 8), column(0, 20)), want: "#NUM!" },
    { about: "one point", call: () => celeration(column(1), column(20)), want: "#N/A" },
    { about: "one day", call: () => celeration(column(1, 1), column(20, 30)), want: "#N/A" },
    { about: "text", call: () => celeration(column(1, 8), column(20, "30")), want: "#VALUE!" },
    { about: "unequal lengths", call: () => celeration(column(1, 8), column(20)), want: "#VALUE!" },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => {
    expect(celeration(column(1, 8), column(NA, 20))).toBe(NA);
  });
});

describe("NAP", () => {
  const { before, after, computed } = single.cases.PVD2011;

  it("is one row of NAP, low, high: 38.5/42 of Parker, Vannest & Davis 2011", () => {
    const [row = []] = nap(column(...before), [after]) as number[][];
    expect(row[0]).toBeCloseTo(38.5 / 42, 12);
    expect(row[1]).toBeCloseTo(computed.NAP_CI95[0] ?? NaN, 9);
    expect(row[2]).toBeCloseTo(computed.NAP_CI95[1] ?? NaN, 9);
  });

  it("turns round where lower is better, blanks left out", () => {
    expect(nap(column(9, null, 8), column(3, "", 2), true)[0]?.[0]).toBe(1);
    expect(nap(column(9, 8), column(3, 2))[0]?.[0]).toBe(0);
  });

  it("takes the interior root at 1 and at 0", () => {
    const [[, low] = []] = nap(column(1, 2, 3, 4, 5), column(6, 7, 8, 9, 10)) as number[][];
    expect(low?.toFixed(4)).toBe("0.6427");
    const [[, , high] = []] = nap(column(6, 7, 8, 9, 10), column(1, 2, 3, 4, 5)) as number[][];
    expect(high?.toFixed(4)).toBe("0.3573");
  });

  it.each([
    { about: "nothing before", call: () => nap(column(null), column(1, 2)), want: "#N/A" },
    { about: "text among the scores", call: () => nap(column(1, "two"), column(1, 2)), want: "#VALUE!" },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));

  it("becomes an error among its cells", () => expect(nap(column(1, NA), column(2))).toEqual([[NA]]));
});

describe("CHANGE", () => {
  it.each(Object.entries(single.cases))("%s: 100 (exp(corrected log ratio) − 1) percent", (_, one) => {
    const [row = []] = change(column(...one.before), column(...one.after)) as number[][];
    const { LRR_bias_corrected: ratio, LRR_SE: error } = one.computed;
    const [middle, low, high] = [0, -1, 1].map(
      (side) => 100 * Math.expm1(ratio + side * 1.959963984540054 * error),
    );
    expect(row[0]).toBeCloseTo(middle ?? NaN, 7);
    expect(row[1]).toBeCloseTo(low ?? NaN, 7);
    expect(row[2]).toBeCloseTo(high ?? NaN, 7);
  });

  it("has #N/A for low and high inside the row where no score varies", async () => {
    const [[percent, low, high] = []] = await answerOfCall(() => change(column(20, 20), column(30, 30)));
    expect(percent).toBeCloseTo(50, 10);
    expect([low, high]).toMatchObject([{ code: "#N/A" }, { code: "#N/A" }]);
  });

  it.each([
    { about: "one score before", call: () => change(column(3), column(4, 5)), want: "#N/A" },
    { about: "all zeros before", call: () => change(column(0, 0), column(4, 5)), want: "#NUM!" },
    { about: "a score below 0", call: () => change(column(3, -1), column(4, 5)), want: "#NUM!" },
    { about: "text among the scores", call: () => change(column(3, "4"), column(4, 5)), want: "#VALUE!" },
  ])("$about: $want", async ({ call, want }) => expect(await code(call)).toBe(want));
});
