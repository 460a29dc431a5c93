/** How the sheet functions on contractions read passages. */
import { COVERAGE_MEASURES, measureCoverage, type CoverageMeasure } from "../src/domain/contraction/coverage";
import type { Exceptions } from "../src/domain/contraction/exceptions";
import { formatKind } from "../src/domain/contraction/inventory";
import { createPassageReader, type PassageReader } from "../src/domain/contraction/passage";
import type { TaughtSigns } from "../src/domain/contraction/taught";
import { countUses, findUses, formatBrackets } from "../src/domain/contraction/usage";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Translator } from "../src/ports/translator";
import { codeOf, exceptionsOf, isUeb, readTaught, type BrailleArguments } from "./braille";
import { pooledText, textOf } from "./cell-reading";
import { faultOfText, withTranslator } from "./function-host";
import { answerOf, asBlock, firstError, giveRows, isBlank, mapCells, type Answer, type Block } from "./shape";

/** Readers by translator and list of exceptions: each remembers its words, and goes with the list it was made for. */
const readers = new WeakMap<Translator, WeakMap<Exceptions, PassageReader>>();

/** The reader of a code with the teacher's exceptions. */
export const readerFor = (translator: Translator, exceptions: Exceptions): PassageReader => {
  const ofTranslator = readers.get(translator) ?? new WeakMap<Exceptions, PassageReader>();
  readers.set(translator, ofTranslator);
  const known = ofTranslator.get(exceptions);
  if (known !== undefined) return known;
  const reader = createPassageReader((text) =>
    exceptions.transcribe((part) => translator.transcribe(part), text),
  );
  ofTranslator.set(exceptions, reader);
  return reader;
};

/** Runs what may meet a character that the code has no cells for. */
export const attempt = <T extends Answer | readonly (readonly Answer[])[]>(answer: () => T): T | Fault => {
  try {
    return answer();
  } catch (failure) {
    return faultOfText(failure);
  }
};

/** Print of each text with the letters of each contraction in parentheses. */
export const bracketedTexts = (
  text: Block | null | undefined,
  exceptionList: Block | null | undefined,
): unknown[][] | Promise<unknown[][]> =>
  withTranslator("contracted", (translator) => {
    const error = firstError([exceptionList]);
    if (error !== undefined) return [[error]];
    const exceptions = exceptionsOf(exceptionList);
    if (!exceptions.ok) return giveRows([], () => exceptions.fault);
    return mapCells([text], (cell) =>
      attempt(() => {
        const print = textOf(cell);
        const transcription = exceptions.value.transcribe((part) => translator.transcribe(part), print);
        return formatBrackets(print, findUses(transcription));
      }),
    );
  });

/** Rows of sign, dots, kind, rule section and times used, of all texts together. */
export const contractionRows = (
  text: Block | null | undefined,
  exceptionList: Block | null | undefined,
): unknown[][] | Promise<unknown[][]> =>
  withTranslator("contracted", (translator) =>
    giveRows([text, exceptionList], () => {
      const exceptions = exceptionsOf(exceptionList);
      if (!exceptions.ok) return exceptions.fault;
      if (asBlock(text).flat().every(isBlank)) return "";
      return attempt(() => {
        const transcription = exceptions.value.transcribe(
          (part) => translator.transcribe(part),
          pooledText(text),
        );
        const counts = countUses(findUses(transcription));
        if (counts.length === 0) return NO_CONTRACTIONS;
        return counts.map(({ contraction: { name, dots, kind, section }, times }) => [
          name,
          dots,
          formatKind(kind),
          section,
          times,
        ]);
      });
    }),
  );

const NO_CONTRACTIONS: Fault = {
  code: "no-contractions",
  message: "The text uses no contractions: every word is spelled out in contracted braille.",
};

/** The share of each text that is readable with the taught signs. */
export const coverageOfTexts = (
  text: Block | null | undefined,
  taught: Block | null | undefined,
  measure: string | null | undefined,
  given: BrailleArguments,
): unknown[][] | Promise<unknown[][]> => {
  const code = codeOf(given.code);
  if (!isUeb(code)) return giveRows([], () => ONLY_UEB);
  return withTranslator(code, (translator) => {
    const error = firstError([taught, given.exceptions]);
    if (error !== undefined) return [[error]];
    const asked = readQuestion(taught, measure, given);
    if (!asked.ok) return giveRows([], () => asked.fault);
    const { signs, counted, exceptions } = asked.value;
    const reader = readerFor(translator, exceptions);
    return mapCells([text], (cell) =>
      attempt(() => answerOf(measureCoverage(reader.read(textOf(cell)), signs, counted, code))),
    );
  });
};

/** Signs are those of Unified English Braille; other codes can be translated, not analysed. */
export const ONLY_UEB: Fault = {
  code: "unknown-code",
  message:
    'Which signs a text uses is known for Unified English Braille: use the code "contracted" or "uncontracted".',
};

const readQuestion = (
  taught: Block | null | undefined,
  measure: string | null | undefined,
  given: BrailleArguments,
): Result<{ signs: TaughtSigns; counted: CoverageMeasure; exceptions: Exceptions }> => {
  const signs = readTaught(taught ?? []);
  if (!signs.ok) return signs;
  const counted = parseMeasure(measure);
  if (!counted.ok) return counted;
  const exceptions = exceptionsOf(given.exceptions);
  if (!exceptions.ok) return exceptions;
  return success({ signs: signs.value, counted: counted.value, exceptions: exceptions.value });
};

const parseMeasure = (measure: string | null | undefined): Result<CoverageMeasure> => {
  const wanted = (measure ?? "").trim().toLowerCase() || "words";
  const found = COVERAGE_MEASURES.find((candidate) => candidate === wanted);
  return found === undefined
    ? refusal("unknown-measure", `“${wanted}” is no measure of coverage: use "words", "signs" or "distinct".`)
    : success(found);
};
