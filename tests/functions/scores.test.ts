import { beforeAll, describe, expect, it, vi } from "vitest";
import { accuracy, aim, trend, trials, verdict, wcpm } from "../../functions/functions";
import checks from "../check-values/trend.json";

/** As much of Excel's error object as the functions use. */
class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

beforeAll(() => {
  const ErrorCode = { invalidValue: "#VALUE!", notAvailable: "#N/A", invalidNumber: "#NUM!" };
  vi.stubGlobal("CustomFunctions", { Error: CellError, ErrorCode });
});

const NA = { error: "#N/A" };
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const one = (cell: unknown): unknown[][] => [[cell]];

/** The error that a call throws. */
const errorOf = (call: () => unknown): { code: string; message: string } => {
  try {
    call();
  } catch (error) {
    if (error instanceof CellError) return { code: error.code, message: error.message };
    throw error;
  }
  throw new Error("No error was thrown.");
};
const codesIn = (rows: unknown): unknown[][] =>
  (rows as unknown[][]).map((row) => row.map((cell) => (cell instanceof CellError ? cell.code : cell)));

describe("WCPM", () => {
  it("maps cell by cell, single cells repeated", () => {
    expect(wcpm(one(95), one(3), one(52))[0]?.[0]).toBeCloseTo(106.15384615384616, 12);
    expect(wcpm(column(84, 60), column(3, 0), one(60))).toEqual(column(81, 60));
    expect(wcpm([[84, 60]], one(0), [[60, 30]])).toEqual([[84, 120]]);
  });

  it("leaves a row with a blank empty, and passes an error to its own place", () => {
    expect(wcpm(column(84, null, 60, NA), column(3, 0, "", 0), one(60))).toEqual(column(81, "", "", NA));
  });

  it("keeps a fault at its own place", () => {
    expect(codesIn(wcpm(column(84, 10, 84, 84), column(3, 11, 3, "few"), column(60, 60, 0, 60)))).toEqual(
      column(81, "#NUM!", "#NUM!", "#VALUE!"),
    );
  });

  it.each([
    { about: "seconds 0", cells: [84, 3, 0], code: "#NUM!", message: "more than 0" },
    { about: "negative seconds", cells: [84, 3, -60], code: "#NUM!", message: "more than 0" },
    {
      about: "1:30 as a clock time",
      cells: [84, 3, 1.5 / 1440],
      code: "#NUM!",
      message: "a clock time such as 1:30 is stored as part of a day",
    },
    { about: "more errors than words", cells: [3, 84, 60], code: "#NUM!", message: "more errors" },
    { about: "negative words", cells: [-3, 0, 60], code: "#NUM!", message: "0 or more" },
    { about: "text for a number", cells: ["84", 3, 60], code: "#VALUE!", message: "words" },
    { about: "TRUE for a number", cells: [84, 3, true], code: "#VALUE!", message: "seconds" },
  ])("$about: $code", ({ cells: [words, errors, seconds], code, message }) => {
    const error = errorOf(() => wcpm(one(words), one(errors), one(seconds)));
    expect(error.code).toBe(code);
    expect(error.message).toContain(message);
  });

  it("refuses ranges of different size", () => {
    expect(errorOf(() => wcpm(column(84, 60, 50), column(3, 0), one(60))).code).toBe("#VALUE!");
    expect(errorOf(() => wcpm(column(84, 60), [[3, 0]], one(60))).code).toBe("#VALUE!");
  });
});

describe("ACCURACY", () => {
  it("is a share from 0 to 1, cell by cell", () => {
    expect(accuracy(column(68, 100, null), column(5, 100, 1))).toEqual(column(63 / 68, 0, ""));
  });
  it("is #N/A where nothing was attempted and #NUM! with more errors than words", () => {
    expect(errorOf(() => accuracy(one(0), one(0))).code).toBe("#N/A");
    expect(errorOf(() => accuracy(one(3), one(4))).code).toBe("#NUM!");
  });
});

describe("TRIALS", () => {
  it("is one row of correct, opportunities, prompted, no response", () => {
    expect(trials([["+", "−", "✓", "✗", 1, 0, "P", "NR", "A", null]])).toEqual([[3, 8, 1, 1]]);
    expect(trials(column("+", "+", "-"))).toEqual([[2, 3, 0, 0]]);
    expect(trials(one(null))).toEqual([[0, 0, 0, 0]]);
  });
  it("names a mark that it does not know, and becomes an error among the marks", () => {
    const error = errorOf(() => trials([["+", "maybe"]]));
    expect(error).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("maybe") as string });
    expect(trials([["+", NA]])).toEqual([[NA]]);
  });
});

describe("TREND", () => {
  const dates = column(...checks.weeks.x.map((week) => 46_000 + 7 * week));
  const scores = column(...checks.weeks.y);

  it.each([
    { method: undefined, expected: checks.weeks.medianSlope },
    { method: "theil-sen", expected: checks.weeks.medianSlope },
    { method: "Theil–Sen", expected: checks.weeks.medianSlope },
    {
      method: "least-squares",
      expected: { slope: checks.weeks.slope, low: checks.weeks.low95, high: checks.weeks.high95 },
    },
  ])("by $method gives the worked set's change a week, low, high and points", ({ method, expected }) => {
    const [row = []] = trend(dates, scores, method);
    [expected.slope, expected.low, expected.high, 10].forEach((value, i) =>
      expect(row[i]).toBeCloseTo(value, 10),
    );
    expect(row).toHaveLength(4);
  });

  it("has #N/A for low and high inside the row under six points", () => {
    const rows = codesIn(trend(dates.slice(0, 5), scores.slice(0, 5)));
    expect(rows[0]?.slice(1)).toEqual(["#N/A", "#N/A", 5]);
    expect(rows[0]?.[0]).toBeTypeOf("number");
  });

  it("skips pairs with a blank, takes rows against columns, and keeps several points on one day", () => {
    const holes = [...scores.slice(0, 3), [null], [""], ...scores.slice(5)];
    expect(trend(dates, holes)[0]?.[3]).toBe(8);
    expect(trend([dates.flat()], scores)).toEqual(trend(dates, scores));
    expect(trend([...dates, ...dates], [...scores, ...scores])[0]?.[3]).toBe(20);
  });

  it("leaves out pairs with a blank before it counts lengths in points", () => {
    expect(errorOf(() => trend(one(46_000), one(20))).code).toBe("#N/A");
    expect(errorOf(() => trend(column(null, null), column(1, 2))).code).toBe("#N/A");
    expect(errorOf(() => trend(column(46_000, 46_000), column(1, 2))).code).toBe("#N/A");
  });

  it.each([
    { about: "unequal lengths", call: () => trend(column(1, 2, 3), column(1, 2)), code: "#VALUE!" },
    {
      about: "dates as text",
      call: () => trend(column("7/10/2026", "8/10/2026"), column(1, 2)),
      code: "#VALUE!",
    },
    {
      about: "scores as text",
      call: () => trend(column(46_000, 46_001), column("20", "21")),
      code: "#VALUE!",
    },
    { about: "an unknown method", call: () => trend(column(1, 2), column(1, 2), "median"), code: "#VALUE!" },
    { about: "a date before 1900", call: () => trend(column(-5, 46_001), column(1, 2)), code: "#NUM!" },
  ])("$about: $code", ({ call, code }) => expect(errorOf(call).code).toBe(code));

  it("becomes an error among its cells", () => {
    expect(trend(column(46_000, 46_007), column(20, NA))).toEqual([[NA]]);
  });
});

describe("AIM", () => {
  const line = [one(46_028), one(19), one(46_126), one(45)] as const;

  it("maps dates, single ends repeated", () => {
    expect(aim(...line, column(46_028, 46_077, 46_126, 46_500, null))).toEqual(column(19, 32, 45, 45, ""));
  });
  it("is #N/A before the start, at its own place", () => {
    expect(codesIn(aim(...line, column(46_000, 46_077)))).toEqual(column("#N/A", 32));
  });
  it("refuses a goal date not after the start, text, and a date before 1900", () => {
    expect(errorOf(() => aim(one(46_126), one(19), one(46_126), one(45), one(46_126))).code).toBe("#NUM!");
    expect(errorOf(() => aim(...line, one("soon"))).code).toBe("#VALUE!");
    expect(errorOf(() => aim(...line, one(0))).code).toBe("#NUM!");
  });
});

describe("VERDICT", () => {
  const weekly = (...scores: unknown[]): [unknown[][], unknown[][]] => [
    column(...scores.map((_, i) => 46_007 + 7 * i)),
    column(...scores),
  ];
  const ends = [46_000, 20, 46_140, 60] as const;

  it.each([
    { scores: [22, 24, 26], verdict: "too few points" },
    { scores: [20, 21, 20, 19, 21, 20], verdict: "below aim" },
    { scores: [10, 40, 12, 45, 10, 50], verdict: "unclear" },
    { scores: [22, 25, 26, 28, 30, 32], verdict: "on aim" },
    { scores: [24, 29, 32, 35, 41, 44], verdict: "above aim" },
    { scores: [30, 40, 50, 60, 60, 61], verdict: "goal met" },
    { scores: [22, null, 24, "", 26], verdict: "too few points" },
  ])("$scores: $verdict", ({ scores, verdict: expected }) => {
    expect(verdict(...weekly(...scores), ...ends)).toBe(expected);
  });

  it.each([
    { about: "unequal lengths", call: () => verdict(column(1, 2), column(1), ...ends), code: "#VALUE!" },
    {
      about: "a missing start date",
      call: () => verdict(...weekly(1, 2), null, 20, 46_140, 60),
      code: "#VALUE!",
    },
    { about: "text for a score", call: () => verdict(...weekly(1, "two"), ...ends), code: "#VALUE!" },
    {
      about: "a goal date not after the start",
      call: () => verdict(...weekly(1, 2), 46_140, 20, 46_140, 60),
      code: "#NUM!",
    },
  ])("$about: $code", ({ call, code }) => expect(errorOf(call).code).toBe(code));

  it("becomes an error among its arguments", () => {
    expect(verdict(...weekly(20, NA), ...ends)).toBe(NA);
    expect(verdict(...weekly(20, 21), 46_000, NA, 46_140, 60)).toBe(NA);
  });
});
