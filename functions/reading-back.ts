/** What the sheet functions PRINT and SLATE give. */
import { fromAscii, parseCells, parseDots, type Cells } from "../src/domain/braille/cell";
import { parseAnyCells } from "../src/domain/contraction/cell-notation";
import { lexiconOfTable, type Lexicon } from "../src/domain/reading-back/lexicon";
import { readPrint } from "../src/domain/reading-back/print";
import { refusal, type Result } from "../src/domain/result";
import type { WordBank } from "../src/ports/word-bank";
import { codeOf, isUeb } from "./braille";
import { textOf } from "./cell-reading";
import { withTranslator, withWordBank } from "./function-host";
import { giveRows, mapCells, type Block } from "./shape";

const FORMS: Readonly<Record<string, (text: string) => Result<Cells>>> = {
  "": parseAnyCells,
  unicode: parseCells,
  ascii: fromAscii,
  dots: parseDots,
};

const lexicons = new WeakMap<WordBank, Map<string, Lexicon>>();

/** The words of a bank by their braille, gathered when first needed. */
const lexiconOf = (bank: WordBank, code: "contracted" | "uncontracted"): Lexicon => {
  const ofBank = lexicons.get(bank) ?? new Map<string, Lexicon>();
  lexicons.set(bank, ofBank);
  const lexicon = ofBank.get(code) ?? lexiconOfTable(bank.table(code));
  ofBank.set(code, lexicon);
  return lexicon;
};

/** Print of each cell of a range, whose braille is in the form named or in the first that fits. */
export const printOfCells = (
  braille: Block | null | undefined,
  code: string | null | undefined,
  form: string | null | undefined,
): unknown[][] | Promise<unknown[][]> => {
  const parse = FORMS[textOf(form).trim().toLowerCase()];
  if (parse === undefined)
    return giveRows(
      [],
      () =>
        refusal("not-a-choice", 'The form is "unicode", "ascii" or "dots"; leave it out to have it found.')
          .fault,
    );
  const named = codeOf(code);
  if (!isUeb(named))
    return giveRows(
      [],
      () =>
        refusal(
          "unknown-code",
          'Braille is read back in Unified English Braille only: use the code "contracted" or "uncontracted".',
        ).fault,
    );
  return withTranslator(named, (translator) =>
    withWordBank((bank) =>
      mapCells([braille], (cell) => {
        const cells = parse(textOf(cell));
        if (!cells.ok) return cells.fault;
        return readPrint(cells.value, {
          code: named,
          lexicon: lexiconOf(bank, named),
          write: (print) => translator.translate(print),
        }).print;
      }),
    ),
  );
};
