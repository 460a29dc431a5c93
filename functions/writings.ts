/** What the sheet functions WRITING and CELLERRORS give. */
import { formatDots, isBraille } from "../src/domain/braille/cell";
import { parseSignItems } from "../src/domain/contraction/taught";
import {
  dropBlanks,
  expectBraille,
  expectSigns,
  expectText,
  parseWritten,
  type ExpectedCells,
} from "../src/domain/probe/expected-cells";
import {
  cellAccuracy,
  dotAccuracy,
  poolWriting,
  scoreWriting,
  type WritingScore,
} from "../src/domain/probe/writing";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Translator } from "../src/ports/translator";
import { codeOf, isUeb } from "./braille";
import { pooledText, textOf } from "./cell-reading";
import { faultOfText, withTranslator } from "./function-host";
import { asBlock, giveRows, isBlank, type Answer, type Block } from "./shape";

/** The word in place of a code that says that items are signs. */
const SIGNS = "signs";

/** How the items of one call are turned into cells. */
interface WritingReader {
  readonly expect: (text: string) => Result<ExpectedCells>;
  readonly write: (text: string) => Result<string>;
}

const SIGN_READER: WritingReader = {
  expect: (text) => {
    if (isBraille(text))
      return mapResult(expectBraille(text), ({ cells }) => ({ cells: dropBlanks(cells), pieces: [] }));
    return mapResult(parseSignItems([text]), expectSigns);
  },
  write: (text) => mapResult(parseWritten(text), dropBlanks),
};

const textReader = (translator: Translator): WritingReader => ({
  expect: (text) => {
    if (isBraille(text)) return expectBraille(text);
    try {
      return success(expectText(text, (part) => translator.transcribe(part), isUeb(translator.code)));
    } catch (failure) {
      return { ok: false, fault: faultOfText(failure) };
    }
  },
  write: parseWritten,
});

const mapResult = <T, U>(result: Result<T>, map: (value: T) => U): Result<U> =>
  result.ok ? success(map(result.value)) : result;

/** The texts expected and written, paired item by item where the ranges have as many cells, else as one text each. */
const pairItems = (expected: Block, written: Block): readonly (readonly [string, string])[] => {
  const [ones, others] = [expected.flat(), written.flat()];
  if (ones.length !== others.length) return [[pooledText(expected), pooledText(written)]];
  return ones.flatMap((one, place) => {
    const other = others[place];
    // Nothing noted is not the same as nothing written.
    return isBlank(one) || isBlank(other) ? [] : [[textOf(one), textOf(other)] as const];
  });
};

const NOTHING_EXPECTED: Fault = {
  code: "nothing-to-give",
  message: "There is nothing to compare with: give the text that was to be written.",
};

const scoreItems = (
  reader: WritingReader,
  items: readonly (readonly [string, string])[],
): Result<WritingScore> => {
  const scores: WritingScore[] = [];
  for (const [text, other] of items) {
    const expected = reader.expect(text);
    if (!expected.ok) return expected;
    const written = reader.write(other);
    if (!written.ok) return written;
    scores.push(scoreWriting(expected.value, written.value));
  }
  const score = poolWriting(scores);
  return score.cells === 0 ? refusal(NOTHING_EXPECTED.code, NOTHING_EXPECTED.message) : success(score);
};

const giveWriting = (
  expected: Block | null | undefined,
  written: Block | null | undefined,
  code: string | null | undefined,
  show: (score: WritingScore) => Answer | readonly (readonly Answer[])[],
): unknown[][] | Promise<unknown[][]> => {
  const give = (reader: WritingReader): unknown[][] =>
    giveRows([expected, written], () => {
      const [one, other] = [asBlock(expected), asBlock(written)];
      if (other.flat().every(isBlank)) return "";
      if (one.flat().every(isBlank)) return NOTHING_EXPECTED;
      const items = pairItems(one, other);
      if (items.length === 0) return "";
      const score = scoreItems(reader, items);
      return score.ok ? show(score.value) : score.fault;
    });
  return (code ?? "").trim().toLowerCase() === SIGNS
    ? give(SIGN_READER)
    : withTranslator(codeOf(code), (translator) => give(textReader(translator)));
};

/** One row: cells expected, right, changed, left out, added, cell accuracy, dot accuracy. */
export const writingRow = (
  expected: Block | null | undefined,
  written: Block | null | undefined,
  code: string | null | undefined,
): unknown[][] | Promise<unknown[][]> =>
  giveWriting(expected, written, code, (score) => {
    const { cells, right, changed, leftOut, added } = score;
    return [
      [
        cells,
        right,
        changed,
        leftOut,
        added,
        cellAccuracy(score) ?? NOTHING_EXPECTED,
        dotAccuracy(score) ?? NOTHING_EXPECTED,
      ],
    ];
  });

const NO_ERRORS: Fault = {
  code: "nothing-to-give",
  message: "There are no errors: every cell was written as expected.",
};

/** Rows of position, expected cells, written cells, the dots of each, and what happened. */
export const cellErrorRows = (
  expected: Block | null | undefined,
  written: Block | null | undefined,
  code: string | null | undefined,
): unknown[][] | Promise<unknown[][]> =>
  giveWriting(expected, written, code, ({ aligned }) => {
    const rows = aligned.flatMap(({ position, expected: one, written: other, kind }) =>
      kind === undefined ? [] : [[position, one, other, formatDots(one), formatDots(other), kind]],
    );
    return rows.length === 0 ? NO_ERRORS : rows;
  });
