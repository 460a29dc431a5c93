import { parseSignItems } from "../../src/domain/contraction/taught";
import type { Sign } from "../../src/domain/contraction/sign";
import { pairConfusions } from "../../src/domain/probe/sign-confusions";
import type { PupilSigns } from "../../src/domain/progress/pupil-signs";
import type { SignState } from "../../src/domain/progress/sign-states";
import type { Way } from "../../src/domain/progress/way";

/** Where the signs of a row come from; `named by hand` is not among them. */
export const POOLS = ["taught", "open", "confused"] as const;
export type PoolName = (typeof POOLS)[number];

/** Signs to draw a row from. */
export interface SignPool {
  readonly name: PoolName;
  /** as the list of choices has it, without the number */
  readonly label: string;
  readonly signs: readonly Sign[];
}

const LABELS: Readonly<Record<PoolName, string>> = {
  taught: "All signs taught",
  open: "Signs not settled yet",
  confused: "Signs confused with each other",
};

/** Taught, and neither mastered nor probably known. */
const OPEN: ReadonlySet<SignState> = new Set<SignState>(["taught", "growing", "check again"]);

/** The signs of a pupil that a row can be drawn from: all taught, those still open in this way, those confused. */
export const listPools = ({ standings, confusions }: PupilSigns, way: Way): readonly SignPool[] => {
  const taught = standings.filter((standing) => standing.taught !== undefined);
  const open = taught.filter((standing) => OPEN.has(standing[way].state));
  const confused = new Set(pairConfusions(confusions).flatMap(({ signs }) => signs));
  const found: Readonly<Record<PoolName, readonly Sign[]>> = {
    taught: taught.map(({ sign }) => sign),
    open: open.map(({ sign }) => sign),
    // Confusions can name signs that the list of standings lacks, such as punctuation.
    confused: readSigns([...confused]),
  };
  return POOLS.map((name) => ({ name, label: LABELS[name], signs: found[name] }));
};

const readSigns = (names: readonly string[]): readonly Sign[] => {
  const read = parseSignItems(names);
  return read.ok ? read.value : [];
};
