import { describe, expect, it } from "vitest";
import { computeTrend, TREND_METHODS } from "../../../src/domain/progress/trend";
import checks from "../../check-values/trend.json";

const days = checks.weeks.x.map((week) => 46_000 + 7 * week);

describe("the trend a week", () => {
  it("by least squares is that of the worked set, with its 95 % interval", () => {
    const trend = computeTrend(days, checks.weeks.y, "least-squares");
    if (!trend.ok) throw new Error(trend.fault.message);
    expect(trend.value.perWeek).toBeCloseTo(checks.weeks.slope, 10);
    expect(trend.value.interval?.low).toBeCloseTo(checks.weeks.low95, 10);
    expect(trend.value.interval?.high).toBeCloseTo(checks.weeks.high95, 10);
    expect(trend.value.points).toBe(10);
  });

  it("by Theil–Sen, the default, is that of the worked set", () => {
    const trend = computeTrend(days, checks.weeks.y);
    if (!trend.ok) throw new Error(trend.fault.message);
    expect(trend.value.perWeek).toBeCloseTo(checks.weeks.medianSlope.slope, 10);
    expect(trend.value.interval?.low).toBeCloseTo(checks.weeks.medianSlope.low, 10);
    expect(trend.value.interval?.high).toBeCloseTo(checks.weeks.medianSlope.high, 10);
  });

  it.each(TREND_METHODS)("%s gives no interval under six points", (method) => {
    const few = computeTrend(days.slice(0, 5), checks.weeks.y.slice(0, 5), method);
    expect(few.ok && few.value.interval).toBeUndefined();
    const enough = computeTrend(days.slice(0, 6), checks.weeks.y.slice(0, 6), method);
    expect(enough.ok && enough.value.interval).toBeDefined();
  });

  it.each(TREND_METHODS)("%s of constant scores is 0, from 0 to 0", (method) => {
    const flat = computeTrend(
      days,
      days.map(() => 30),
      method,
    );
    expect(flat).toMatchObject({ ok: true, value: { perWeek: 0, interval: { low: 0, high: 0 } } });
  });

  it.each(TREND_METHODS)("%s refuses one point and one day", (method) => {
    expect(computeTrend([46_000], [1], method)).toMatchObject({ fault: { code: "too-few-points" } });
    expect(computeTrend([46_000, 46_000], [1, 2], method)).toMatchObject({ fault: { code: "one-day" } });
  });
});
