import { isContraction } from "../contraction/sign";
import type { TaughtSign } from "../contraction/taught-sign";
import type { NotedMiscue } from "../probe/noted-miscue";
import type { Probe } from "../probe/probe";
import { findConfusions, type SignConfusions } from "../probe/sign-confusions";
import type { Day } from "../units";
import { normaliseName } from "./series";
import { collectEvidence, type TranscribeIn } from "./sign-evidence";
import { listSignStates, type SignStanding, type StandingQuestion } from "./sign-states";

/** One pupil's signs: how far each is, and which are taken for which. */
export interface PupilSigns {
  /** letters, contractions, and what the records tell of digits, punctuation and indicators */
  readonly standings: readonly SignStanding[];
  /** every sign of the inventory */
  readonly all: readonly SignStanding[];
  readonly confusions: SignConfusions;
}

/** The records of a workbook that tell of signs, those of all pupils. */
export interface SignRecords {
  readonly probes: readonly Probe[];
  readonly miscues: readonly NotedMiscue[];
  readonly taught: readonly TaughtSign[];
}

/**
 * How far each sign of one pupil is on a day, from all that the records tell ({@link collectEvidence},
 * {@link listSignStates}, {@link findConfusions}).
 *
 * @param pupil - whatever the spelling of the name
 * @param nextCheck - as the port `Scheduler` has it
 */
export const judgeSigns = (
  { probes, miscues, taught }: SignRecords,
  pupil: string,
  asOf: Day,
  transcribeIn: TranscribeIn,
  nextCheck: StandingQuestion["nextCheck"],
): PupilSigns => {
  const name = normaliseName(pupil);
  const isOwn = (row: { readonly pupil: string }): boolean => normaliseName(row.pupil) === name;
  const own = { probes: probes.filter(isOwn), miscues: miscues.filter(isOwn) };
  const evidence = collectEvidence(own.probes, own.miscues, transcribeIn);
  const all = listSignStates({ taught: taught.filter(isOwn), evidence, asOf, nextCheck });
  return {
    standings: all.filter(isTold),
    all,
    confusions: findConfusions(own.probes, own.miscues, evidence, transcribeIn),
  };
};

/** Whether a sign is one of those that are practised, or the records tell of it. */
const isTold = ({ sign, taught, isAssumed, reading, writing }: SignStanding): boolean =>
  isContraction(sign) ||
  sign.kind === "letter" ||
  (taught !== undefined && isAssumed !== true) ||
  [reading, writing].some(({ knowledge }) => knowledge.lastSeen !== undefined);
