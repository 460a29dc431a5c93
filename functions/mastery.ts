/** What the sheet functions on mastery give: the date of the criterion, the share known, the date to check again. */
import { createFsrsScheduler } from "../src/adapters/fsrs/fsrs-scheduler";
import { checkCriterion, DEFAULT_CRITERION, findMastery } from "../src/domain/progress/mastery";
import { estimateKnown } from "../src/domain/progress/mastery-estimate";
import { poolOccasions } from "../src/domain/progress/mastery-occasions";
import { recallOf } from "../src/domain/progress/mastery-recall";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Scheduler } from "../src/ports/scheduler";
import { countOf, numberOf, textOf } from "./cell-reading";
import { readDate, readTrialCounts } from "./dated-cells";
import { isBlank, type Answer, type Block } from "./shape";

/** The three ranges of trials: dates, correct, opportunities. */
export type TrialBlocks = readonly [dates: Block, correct: Block, opportunities: Block];

/** The date on which the criterion was met, or `not yet`. */
export const masteredOfCells = (
  trials: TrialBlocks,
  wanted: { readonly share: unknown; readonly run: unknown; readonly least: unknown },
): Answer => {
  const share = isBlank(wanted.share) ? success(DEFAULT_CRITERION.share) : numberOf(wanted.share, "share");
  if (!share.ok) return share.fault;
  const run = readRun(wanted.run);
  if (!run.ok) return run.fault;
  const least = countOf(wanted.least, "least", DEFAULT_CRITERION.least);
  if (!least.ok) return least.fault;
  const criterion = checkCriterion({ share: share.value, ...run.value, least: least.value });
  if (!criterion.ok) return criterion.fault;
  const rows = readTrialCounts(...trials);
  if (!rows.ok) return rows.fault;
  const mastery = findMastery(rows.value, criterion.value);
  return mastery.ok ? (mastery.value.masteredOn ?? "not yet") : mastery.fault;
};

/** `3` is three consecutive occasions, `3 of 5` three of five in a row. */
const readRun = (cell: unknown): Result<{ readonly met: number; readonly of: number }> => {
  if (isBlank(cell)) return success({ met: DEFAULT_CRITERION.met, of: DEFAULT_CRITERION.of });
  const text = textOf(cell).trim();
  const [, met, of = met] = /^(\d+(?:\.\d+)?)(?:\s*(?:of|\/)\s*(\d+(?:\.\d+)?))?$/i.exec(text) ?? [];
  return met === undefined
    ? refusal("unknown-run", `run is a number such as 3, or such as “3 of 5”, not “${text.slice(0, 40)}”.`)
    : success({ met: Number(met), of: Number(of) });
};

/** The expected share right with low and high, as one row. */
export const knownOfCells = (trials: TrialBlocks, asOf: unknown): Fault | readonly (readonly Answer[])[] => {
  const rows = readTrialCounts(...trials);
  if (!rows.ok) return rows.fault;
  const until = isBlank(asOf) ? success(undefined) : readDate(asOf, "asOf");
  if (!until.ok) return until.fault;
  const known = estimateKnown(rows.value, until.value);
  if (!known.ok) return known.fault;
  const { expected, low, high } = known.value;
  return [[expected, low, high]];
};

let scheduler: Scheduler | undefined;

/** The date on which a sign is to be checked again. */
export const reviewOfCells = (trials: TrialBlocks): Answer => {
  const rows = readTrialCounts(...trials);
  if (!rows.ok) return rows.fault;
  const occasions = poolOccasions(rows.value);
  if (!occasions.ok) return occasions.fault;
  scheduler ??= createFsrsScheduler();
  const due = scheduler.nextCheck(
    occasions.value.map((occasion) => ({ day: occasion.day, recall: recallOf(occasion) })),
  );
  return (
    due ?? {
      code: "nothing-tried",
      message: "Nothing was tried yet: add dates with correct answers and opportunities.",
    }
  );
};
