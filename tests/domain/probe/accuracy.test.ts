import { describe, expect, it } from "vitest";
import { computeShare } from "../../../src/domain/probe/accuracy";

describe("share of opportunities", () => {
  it("is correct over opportunities", () => expect(computeShare(45, 50)).toEqual({ ok: true, value: 0.9 }));
  it.each([
    { correct: 0, opportunities: 0, code: "no-opportunities" },
    { correct: 6, opportunities: 5, code: "more-correct-than-opportunities" },
    { correct: -1, opportunities: 5, code: "negative-count" },
  ])("refuses $correct of $opportunities", ({ correct, opportunities, code }) => {
    expect(computeShare(correct, opportunities)).toMatchObject({ ok: false, fault: { code } });
  });
});
