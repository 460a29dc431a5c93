import { parseSigns } from "../../src/domain/contraction/taught";
import { chooseQuestions } from "../../src/domain/probe/question-selection";
import type { SignStanding } from "../../src/domain/progress/sign-states";
import { refusal, success, type Result } from "../../src/domain/result";
import type { WordBank } from "../../src/ports/word-bank";
import type { HandoutBraille } from "./handout-braille";

/** Words of a probe, and cells of a word, at most: our choice, no source. */
const MOST_WORDS = 30;
const MOST_CELLS = 10;
/** States in which it is open whether a sign is known in reading. */
const OPEN = new Set(["taught", "growing", "check again"]);

/** A text to be read aloud, as the view for it takes it. */
export interface SettlingText {
  readonly title: string;
  readonly text: string;
  /** what it asks, as a sentence */
  readonly words: string;
}

/**
 * The words that are expected to settle most of what is unknown of a pupil's signs in reading.
 *
 * @param chosen - names of the signs in question; where none, those taught of which it is open whether they are known
 */
export const chooseSettlingWords = (
  standings: readonly SignStanding[],
  chosen: readonly string[],
  { taught, code }: Pick<HandoutBraille, "taught" | "code">,
  bank: WordBank,
): Result<SettlingText> => {
  const names = new Set(chosen);
  const isAsked = ({ sign, reading }: SignStanding): boolean =>
    names.size > 0 ? names.has(sign.name) : OPEN.has(reading.state);
  const wanted = parseSigns(standings.filter(isAsked).map(({ sign }) => sign.name));
  if (!wanted.ok || wanted.value.length === 0)
    return refusal("no-signs", "No sign is open: choose the signs to ask about, then try once more.");
  const { questions, unasked } = chooseQuestions(bank.table(code), {
    wanted: wanted.value,
    beliefs: new Map(standings.map(({ sign, reading }) => [sign.name, reading.knowledge.belief])),
    taught,
    most: MOST_WORDS,
    mostCells: MOST_CELLS,
    accepts: (word) => bank.suitsDrill(word),
  });
  if (questions.length === 0)
    return refusal(
      "nothing-to-give",
      "No common word asks these signs with signs taught otherwise. Choose others, or make a drill with lines of signs.",
    );
  const asked = wanted.value.length - unasked.length;
  return success({
    title: "Words that settle most",
    text: questions.map(({ word }) => word).join(" "),
    words: `${questions.length} words that tell most about ${asked} ${asked === 1 ? "sign" : "signs"}.`,
  });
};
