/** What the sheet functions READING and MISCUES give. */
import { computeAccuracy } from "../src/domain/probe/accuracy";
import { scoreReading, type Miscue, type ReadingScore } from "../src/domain/probe/reading";
import { computeReadingRates } from "../src/domain/probe/reading-rates";
import { splitReadingWords, type PlacedWord } from "../src/domain/probe/reading-words";
import { attemptedText } from "../src/domain/probe/word-outcomes";
import { readPieces } from "../src/domain/contraction/usage";
import type { Piece } from "../src/domain/contraction/alignment";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Seconds } from "../src/domain/units";
import type { Translator } from "../src/ports/translator";
import { codeOf, isUeb } from "./braille";
import { countCells } from "./cell-forms";
import { numberOf, pooledText } from "./cell-reading";
import { faultOfText, withTranslator } from "./function-host";
import { attempt, ONLY_UEB } from "./passages";
import { answerOf, asBlock, giveRows, isBlank, type Answer, type Block } from "./shape";

/** A text and what was heard of it, scored. */
interface ScoredText {
  readonly text: string;
  readonly score: ReadingScore;
}

/** Undefined where nothing was noted, which is not the same as nothing read. */
const scoreCells = (
  expected: Block | null | undefined,
  heard: Block | null | undefined,
): Result<ScoredText> | undefined => {
  if (asBlock(heard).flat().every(isBlank)) return undefined;
  const text = pooledText(expected);
  return splitReadingWords(text).length === 0
    ? refusal("no-words", "The expected text has no words: give the text that was read.")
    : success({ text, score: scoreReading(text, pooledText(heard)) });
};

/**
 * One row: words, correct, misread, left out, swapped, added, accuracy, words correct a minute, cells a minute.
 * @param seconds - as the host hands it over; the two rates are "" where it is blank
 */
export const readingRow = (
  expected: Block | null | undefined,
  heard: Block | null | undefined,
  seconds: unknown,
  code: string | null | undefined,
): unknown[][] | Promise<unknown[][]> =>
  withTranslator(codeOf(code), (translator) =>
    giveRows([expected, heard, [[seconds]]], () => {
      const scored = scoreCells(expected, heard);
      if (scored === undefined) return "";
      if (!scored.ok) return scored.fault;
      const rates = ratesOf(translator, scored.value, seconds);
      if (!rates.ok) return rates.fault;
      const { words, correct, misread, leftOut, swapped, added } = scored.value.score;
      const accuracy = answerOf(computeAccuracy(words, words - correct));
      return [[words, correct, misread, leftOut, swapped, added, accuracy, ...rates.value]];
    }),
  );

/** Words correct and cells a minute; both "" without a time. */
const ratesOf = (
  translator: Translator,
  { text, score: { words, correct } }: ScoredText,
  seconds: unknown,
): Result<readonly Answer[]> => {
  if (isBlank(seconds)) return success(["", ""]);
  const time = numberOf(seconds, "seconds");
  if (!time.ok) return time;
  const attempted = attemptedText(text, words);
  try {
    const cells = countCells(translator.translate(attempted));
    const timed = { words, correct, characters: attempted.length, cells, seconds: time.value as Seconds };
    const rates = computeReadingRates(timed);
    return rates.ok ? success([rates.value.words, rates.value.cells]) : rates;
  } catch (failure) {
    return { ok: false, fault: faultOfText(failure) };
  }
};

const NO_MISCUES: Fault = {
  code: "nothing-to-give",
  message: "There are no miscues: every word attempted was read as printed.",
};

/** Rows of position, expected, heard, kind, and the signs in the expected word. */
export const miscueRows = (
  expected: Block | null | undefined,
  heard: Block | null | undefined,
  code: string | null | undefined,
): unknown[][] | Promise<unknown[][]> => {
  const wanted = codeOf(code);
  if (!isUeb(wanted)) return giveRows([expected, heard], () => ONLY_UEB);
  return withTranslator(wanted, (translator) =>
    giveRows([expected, heard], () => {
      const scored = scoreCells(expected, heard);
      if (scored === undefined) return "";
      if (!scored.ok) return scored.fault;
      const { text, score } = scored.value;
      const { miscues } = score;
      if (miscues.length === 0) return NO_MISCUES;
      return attempt(() => {
        const signsOf = signReader(translator, text);
        return miscues.map((miscue) => [
          miscue.position,
          miscue.expected,
          miscue.heard,
          miscue.kind,
          signsOf(miscue).join(", "),
        ]);
      });
    }),
  );
};

/** Tells the signs of a missed word where it stands, each once: its letters, contractions and indicators. */
const signReader = (translator: Translator, text: string): ((miscue: Miscue) => readonly string[]) => {
  const composed = text.normalize("NFC");
  const words = splitReadingWords(composed);
  const pieces = readPieces(translator.transcribe(composed));
  return ({ position, expected }) => {
    const word = words[position - 1];
    return expected === "" || word === undefined ? [] : signNames(word, pieces);
  };
};

/** Marks at the ends of a word are not read aloud. */
const signNames = ({ shown, start }: PlacedWord, pieces: readonly Piece[]): readonly string[] => {
  const core = /[\p{L}\p{M}\p{N}].*[\p{L}\p{M}\p{N}]|[\p{L}\p{N}]/su.exec(shown);
  if (core === null) return [];
  const from = start + core.index;
  const to = from + core[0].length;
  const inside = pieces.filter(({ printStart, printEnd }) => printStart >= from && printEnd <= to);
  return [...new Set(inside.map(({ sign }) => sign.name))];
};
