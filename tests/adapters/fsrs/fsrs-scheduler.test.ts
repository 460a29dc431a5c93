import { describe, expect, it } from "vitest";
import { createFsrsScheduler } from "../../../src/adapters/fsrs/fsrs-scheduler";
import type { Day } from "../../../src/domain/units";
import type { Recall } from "../../../src/ports/scheduler";

const FIRST = 46_000;
const gapAfter = (
  ...occasions: readonly (readonly [after: number, recall: Recall])[]
): number | undefined => {
  const rows = occasions.map(([after, recall]) => ({ day: (FIRST + after) as Day, recall }));
  const next = createFsrsScheduler().nextCheck(rows);
  return next === undefined ? undefined : next - (rows.at(-1)?.day ?? NaN);
};

describe("when to check again", () => {
  // ts-fsrs 5.4.2 called by itself with `enable_fuzz: false, enable_short_term: false` and its ratings 1, 2 and 3.
  it.each([
    { about: "first time remembered", occasions: [[0, "remembered"]], days: 3 },
    { about: "first time unsteady", occasions: [[0, "unsteady"]], days: 2 },
    { about: "first time forgotten", occasions: [[0, "forgotten"]], days: 1 },
    {
      about: "twice remembered",
      occasions: [
        [0, "remembered"],
        [2, "remembered"],
      ],
      days: 11,
    },
    {
      about: "three times remembered",
      occasions: [
        [0, "remembered"],
        [2, "remembered"],
        [13, "remembered"],
      ],
      days: 46,
    },
    {
      about: "forgotten after two weeks",
      occasions: [
        [0, "remembered"],
        [7, "remembered"],
        [14, "forgotten"],
      ],
      days: 2,
    },
    {
      about: "unsteady after two weeks",
      occasions: [
        [0, "remembered"],
        [7, "remembered"],
        [14, "unsteady"],
      ],
      days: 37,
    },
  ] as const)("$about: in $days days", ({ occasions, days }) => expect(gapAfter(...occasions)).toBe(days));

  it("is the same every time, whole days, and no day without an occasion", () => {
    const scheduler = createFsrsScheduler();
    const occasions = [{ day: (FIRST + 0.6) as Day, recall: "remembered" as const }];
    expect(scheduler.nextCheck(occasions)).toBe(FIRST + 3);
    expect(scheduler.nextCheck(occasions)).toBe(FIRST + 3);
    expect(scheduler.nextCheck([])).toBeUndefined();
  });
});
