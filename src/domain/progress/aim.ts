import { refusal, success, type Fault, type Result } from "../result";

/** The two ends of an aim line: days as serial numbers, scores in the unit of the measure. */
export interface AimEnds {
  readonly startDay: number;
  readonly startScore: number;
  readonly goalDay: number;
  readonly goalScore: number;
}

/** Why there is no aim line. */
export interface AimFault extends Fault {
  readonly code: "goal-not-after-start";
}

/** Whether an aim line can be drawn: the goal's date must be after the start's. */
export const checkAim = (ends: AimEnds): Result<AimEnds, AimFault> =>
  ends.goalDay > ends.startDay
    ? success(ends)
    : refusal(
        "goal-not-after-start",
        "The goal date must be after the start date: check both dates of the goal.",
      );

/**
 * The aim line's value on a day: straight from start to goal, held at the goal after its date.
 *
 * Source: the aim line of curriculum-based measurement (Deno 1985, from memory); holding it is this project's choice.
 *
 * @param ends - checked by {@link checkAim}
 * @returns the value, or undefined before the start
 */
export const aimOn = (ends: AimEnds, day: number): number | undefined => {
  if (day < ends.startDay) return undefined;
  if (day >= ends.goalDay) return ends.goalScore;
  const share = (day - ends.startDay) / (ends.goalDay - ends.startDay);
  return ends.startScore + share * (ends.goalScore - ends.startScore);
};

/** Whether smaller scores are the better ones: the goal is under the start. If equal, higher is better. */
export const isLowerBetter = (ends: AimEnds): boolean => ends.goalScore < ends.startScore;
