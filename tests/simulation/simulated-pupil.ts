import type { AimEnds } from "../../src/domain/progress/aim";
import type { DailyValue } from "../../src/domain/progress/phases";
import { normalDeviate, type RandomSource } from "../../src/domain/seeded-random";
import type { Day } from "../../src/domain/units";

/** Twenty weeks at two words a week to a goal of 60. */
export const SIMULATED_AIM: AimEnds = { startDay: 46_000, startScore: 20, goalDay: 46_140, goalScore: 60 };
const AIM_A_WEEK = 2;

/** What one simulated pupil is like. */
export interface SimulatedPupil {
  /** correlation of neighbouring weeks' noise; 0 is independent */
  readonly correlation: number;
  /** true growth a week less that of the aim line */
  readonly slopeOff: number;
  /** standard deviation of the noise, the same in every week */
  readonly scatter: number;
}

/** Weekly scores in weeks 1 to `weeks` after the start: the true line and first-order autoregressive noise. */
export const simulateScores = (
  { correlation, slopeOff, scatter }: SimulatedPupil,
  weeks: number,
  random: RandomSource,
): readonly DailyValue[] => {
  let noise = normalDeviate(random);
  return Array.from({ length: weeks }, (_, i) => {
    if (i > 0) noise = correlation * noise + Math.sqrt(1 - correlation * correlation) * normalDeviate(random);
    return {
      day: (SIMULATED_AIM.startDay + 7 * (i + 1)) as Day,
      value: SIMULATED_AIM.startScore + (AIM_A_WEEK + slopeOff) * (i + 1) + scatter * noise,
    };
  });
};
