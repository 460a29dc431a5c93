/** How the sheet functions say what a pupil cannot read yet and what to teach next. */
import { formatKind } from "../src/domain/contraction/inventory";
import type { Exceptions } from "../src/domain/contraction/exceptions";
import { planNextSigns } from "../src/domain/contraction/sequence";
import { findUntaught } from "../src/domain/contraction/untaught";
import { overrideWords, tabulateWords, type WordTable } from "../src/domain/contraction/word-table";
import type { Fault } from "../src/domain/result";
import type { Translator } from "../src/ports/translator";
import type { WordBank } from "../src/ports/word-bank";
import { codeOf, exceptionsOf, isUeb, readTaught, type BrailleArguments } from "./braille";
import { countOf, pooledText } from "./cell-reading";
import { withTranslator, withWordBank } from "./function-host";
import { attempt, ONLY_UEB, readerFor } from "./passages";
import { asBlock, giveRows, isBlank, type Block } from "./shape";

/** Rows of sign, times used and a word that has it, of all texts together. */
export const untaughtRows = (
  text: Block | null | undefined,
  taught: Block | null | undefined,
  given: BrailleArguments,
): unknown[][] | Promise<unknown[][]> => {
  const code = codeOf(given.code);
  if (!isUeb(code)) return giveRows([], () => ONLY_UEB);
  return withTranslator(code, (translator) =>
    giveRows([text, taught, given.exceptions], () => {
      const signs = readTaught(taught ?? []);
      if (!signs.ok) return signs.fault;
      const exceptions = exceptionsOf(given.exceptions);
      if (!exceptions.ok) return exceptions.fault;
      if (isBlankBlock(text)) return "";
      return attempt(() => {
        const transcription = exceptions.value.transcribe(
          (part) => translator.transcribe(part),
          pooledText(text),
        );
        const rows = findUntaught(transcription, signs.value);
        return rows.length === 0 ? ALL_TAUGHT : rows.map(({ sign, times, word }) => [sign.name, times, word]);
      });
    }),
  );
};

const isBlankBlock = (block: Block | null | undefined): boolean => asBlock(block).flat().every(isBlank);

const ALL_TAUGHT: Fault = {
  code: "nothing-to-give",
  message: "Every sign of the text is taught.",
};

/** Signs that NEXT gives where n is missing: our choice, no source. */
const USUAL_ROWS = 10;

/** The bank's counts are told as running words in so many. */
const MILLION = 1_000_000;

/** Rows of sign, kind, running words gained and share readable then; of the word bank where the text is blank. */
export const nextRows = (
  text: Block | null | undefined,
  taught: Block | null | undefined,
  n: unknown,
  given: BrailleArguments,
): unknown[][] | Promise<unknown[][]> => {
  const code = codeOf(given.code);
  if (!isUeb(code)) return giveRows([], () => ONLY_UEB);
  const lists = [text, taught, [[n]], given.exceptions];
  return withTranslator(code, (translator) => {
    const plan = (tableOf: (exceptions: Exceptions) => WordTable, unit: (table: WordTable) => number) =>
      giveRows(lists, () => {
        const signs = readTaught(taught ?? []);
        if (!signs.ok) return signs.fault;
        const exceptions = exceptionsOf(given.exceptions);
        if (!exceptions.ok) return exceptions.fault;
        const most = countOf(n, "n", USUAL_ROWS);
        if (!most.ok) return most.fault;
        return attempt(() => {
          const table = tableOf(exceptions.value);
          const planned = planNextSigns(table, signs.value, most.value);
          if (!planned.ok) return planned.fault;
          const of = unit(table);
          return planned.value.map(({ sign, gained, share }) => [
            sign.name,
            formatKind(sign.kind),
            Math.round(gained * of),
            share,
          ]);
        });
      });
    if (isBlankBlock(text))
      return withWordBank((bank) =>
        plan((exceptions) => bankTable(bank, translator, exceptions), perMillion),
      );
    return plan(
      (exceptions) => tabulateWords(readerFor(translator, exceptions).read(pooledText(text))),
      () => 1,
    );
  });
};

const perMillion = ({ counts }: WordTable): number => MILLION / counts.reduce((sum, count) => sum + count, 0);

/** The bank's words, those of the teacher's exceptions in her own braille. */
const bankTable = (bank: WordBank, translator: Translator, exceptions: Exceptions): WordTable => {
  const table = bank.table(translator.code === "uncontracted" ? "uncontracted" : "contracted");
  if (exceptions.size === 0) return table;
  const reader = readerFor(translator, exceptions);
  const own = new Map(
    exceptions.words.flatMap((word) => {
      const [place, [read]] = [bank.find(word), reader.read(word)];
      return place === undefined || read === undefined ? [] : [[place, read] as const];
    }),
  );
  return own.size === 0 ? table : overrideWords(table, own);
};
