import { describe, expect, it } from "vitest";
import type { Probe } from "../../../src/domain/probe/probe";
import { countSignTrials } from "../../../src/domain/probe/sign-trials";
import type { Day } from "../../../src/domain/units";

const probe = (fields: Partial<Probe>): Probe => ({
  pupil: "Heron",
  day: 45_000 as Day,
  source: { sheet: "Probes", row: 2 },
  ...fields,
});

describe("trials per sign and over signs", () => {
  const { signs, all } = countSignTrials([
    probe({ sign: "ch", correct: 3, opportunities: 5 }),
    probe({ sign: " ch ", correct: 5, opportunities: 5 }),
    probe({ sign: "ch", correct: 4, opportunities: 4, support: "verbal prompt" }),
    probe({ sign: "sh", words: 6, errors: 2, support: "none" }),
    probe({ correct: 9, opportunities: 9 }),
    probe({ sign: "th" }),
    probe({ sign: "th", correct: 5, opportunities: 4 }),
  ]);

  it("are added up, with and without support apart", () => {
    expect(signs.map(({ sign }) => sign)).toEqual(["ch", "sh"]);
    expect(signs[0]).toMatchObject({
      withoutSupport: { correct: 8, opportunities: 10, share: 0.8, probes: 2 },
      withSupport: { correct: 4, opportunities: 4, share: 1, probes: 1 },
    });
    expect(signs[1]).toMatchObject({
      withoutSupport: { correct: 4, opportunities: 6, probes: 1 },
      withSupport: {
        correct: 0,
        opportunities: 0,
        share: undefined,
        interval: { low: 0, high: 1 },
        probes: 0,
      },
    });
    expect(all).toMatchObject({
      sign: undefined,
      withoutSupport: { correct: 12, opportunities: 16, share: 0.75, probes: 3 },
      withSupport: { correct: 4, opportunities: 4, probes: 1 },
    });
  });

  it("say how sure they are: 8 of 10, Jeffreys 95 %, is .497 to .956 (the project's shared page)", () => {
    expect(signs[0]?.withoutSupport.interval.low).toBeCloseTo(0.497, 3);
    expect(signs[0]?.withoutSupport.interval.high).toBeCloseTo(0.956, 3);
  });

  it("tell A from a", () => {
    const letters = countSignTrials([
      probe({ sign: "A", correct: 1, opportunities: 1 }),
      probe({ sign: "a", correct: 0, opportunities: 1 }),
    ]);
    expect(letters.signs.map(({ sign }) => sign)).toEqual(["A", "a"]);
  });
});
