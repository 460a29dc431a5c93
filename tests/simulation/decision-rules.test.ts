import { describe, expect, it } from "vitest";
import checks from "../check-values/decision-rules.json";
import { checkSettling, RULE_NAMES, shareCalledBehind } from "./decision-rules";

const PUPILS = 400;
/** The reference does not say how many pupils it simulated; its three digits are taken as from 4,000. */
const THERE = 4000;

/** Four binomial standard errors of the difference, for 120 shares at once, and half of the last digit. */
const tolerance = (share: number): number =>
  4 * Math.sqrt(Math.max(share * (1 - share), 1 / PUPILS) * (1 / PUPILS + 1 / THERE)) + 0.0005;

// The reference was simulated by other code (NumPy) with another generator.
describe("the usual rules on simulated pupils agree with the reference", () => {
  it.each(
    checks.rows.map(([weeks = NaN, correlation = NaN, slopeOff = NaN, ...shares], i) => ({
      weeks,
      correlation,
      slopeOff,
      shares,
      i,
    })),
  )(
    "$weeks weeks, correlation $correlation, slope less aim $slopeOff",
    ({ weeks, correlation, slopeOff, shares, i }) => {
      const ours = shareCalledBehind({ correlation, slopeOff, scatter: 8 }, weeks, PUPILS, 31 + i);
      shares.forEach((share, place) => {
        const rule = RULE_NAMES[place] ?? "this verdict";
        expect(Math.abs(ours[rule] - share), `${rule}: ${ours[rule]} for ${share}`).toBeLessThan(
          tolerance(share),
        );
      });
    },
  );
});

describe("the number of probes named to settle an unclear verdict", () => {
  it("is a fair promise: it settles more than half of those on the aim line, and more of those who are off it", () => {
    const on = checkSettling({ correlation: 0, slopeOff: 0, scatter: 8 }, 8, 200, 5);
    const off = checkSettling({ correlation: 0, slopeOff: -1, scatter: 8 }, 8, 200, 5);
    expect(on.named).toBeGreaterThan(0.9);
    expect(on.settled).toBeGreaterThan(0.6);
    expect(off.settled).toBeGreaterThan(0.9);
  });
});
