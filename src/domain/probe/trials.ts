import { refusal, success, type Fault, type Result } from "../result";

/** What the mark of one trial says. */
export const OUTCOMES = ["correct", "incorrect", "prompted", "no response", "absent"] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** Spellings of each outcome, lower case. Signs of Unicode that look alike are one: see {@link parseMark}. */
const SPELLINGS: Readonly<Record<Outcome, readonly string[]>> = {
  correct: ["+", "✓", "1", "true", "c", "correct", "right", "y", "yes"],
  incorrect: ["-", "✗", "0", "false", "x", "incorrect", "wrong", "error", "n", "no"],
  prompted: ["p", "pr", "prompt", "prompted"],
  "no response": ["nr", "n/r", "no response", "no answer"],
  absent: ["a", "abs", "absent", "n/a", "na"],
};

const OUTCOME_OF: ReadonlyMap<string, Outcome> = new Map(
  OUTCOMES.flatMap((outcome) => SPELLINGS[outcome].map((spelling) => [spelling, outcome] as const)),
);

/**
 * What one mark means: + ✓ 1 correct, − ✗ 0 incorrect, P prompted, NR no response, A absent, in any case, with the
 * dashes, ticks and crosses of Unicode and the words in full.
 *
 * Source: common practice, no source.
 *
 * @returns the outcome, or undefined where it is no mark
 */
export const parseMark = (mark: string | number | boolean): Outcome | undefined =>
  OUTCOME_OF.get(normaliseMark(String(mark)));

const normaliseMark = (mark: string): string =>
  mark
    // Full-width forms become plain ones; then variation selectors, which only choose a picture, go.
    .normalize("NFKC")
    .replace(/[\uFE00-\uFE0F]/g, "")
    .replace(/[\u2010-\u2015\u2212\u2796]/g, "-")
    .replace(/[✔√☑✅]/gu, "✓")
    .replace(/[✘×✕✖☒❌]/gu, "✗")
    .replace(/➕/gu, "+")
    .trim()
    .replace(/\.$/, "")
    .replace(/\s+/g, " ")
    .toLowerCase();

/** What a row of marks adds up to. `correct` and `prompted` and `noResponse` are among `opportunities`. */
export interface TrialCount {
  readonly correct: number;
  readonly opportunities: number;
  /** answered with help: an opportunity, not a correct answer */
  readonly prompted: number;
  /** an opportunity, not a correct answer */
  readonly noResponse: number;
  /** no opportunity at all */
  readonly absent: number;
}

/** A mark that is none. */
export interface MarkFault extends Fault {
  readonly code: "unknown-mark";
}

/**
 * Counts outcomes: prompted and no response are opportunities and not correct, absent is neither.
 *
 * Source: common practice, no source.
 */
const countOutcomes = (outcomes: readonly Outcome[]): TrialCount => {
  const count = (wanted: Outcome): number => outcomes.filter((outcome) => outcome === wanted).length;
  const absent = count("absent");
  return {
    correct: count("correct"),
    opportunities: outcomes.length - absent,
    prompted: count("prompted"),
    noResponse: count("no response"),
    absent,
  };
};

/**
 * Counts marks. One text may hold several, with or without spaces, commas or bars between: `+ − P`, `++-+`.
 *
 * @param marks - one entry a cell; empty ones are skipped
 * @returns the counts, or `unknown-mark`, which names the mark
 */
export const countMarks = (
  marks: readonly (string | number | boolean | null)[],
): Result<TrialCount, MarkFault> => {
  const outcomes: Outcome[] = [];
  for (const mark of marks) {
    if (mark === null) continue;
    for (const piece of splitMarks(mark)) {
      const outcome = parseMark(piece);
      if (outcome === undefined) {
        return refusal(
          "unknown-mark",
          `"${String(piece).slice(0, 40)}" is not a mark of a trial: use + or ✓ or 1, − or ✗ or 0, P (prompted), ` +
            "NR (no response), A (absent).",
        );
      }
      outcomes.push(outcome);
    }
  }
  return success(countOutcomes(outcomes));
};

/** A run such as ++-P+ holds at least one sign; digits alone (10) are a count and stay whole. */
const RUN = /^(?=.*[-+✓✗])[-+✓✗10pax]+$/u;

const splitMarks = (mark: string | number | boolean): readonly (string | number | boolean)[] => {
  if (typeof mark !== "string" || parseMark(mark) !== undefined) return [mark];
  return mark
    .split(/[\s,;|]+/)
    .filter((piece) => piece !== "")
    .flatMap((piece) => (RUN.test(normaliseMark(piece)) ? [...normaliseMark(piece)] : [piece]));
};
