import type { PlainSign, Sign } from "../../../src/domain/contraction/sign";
import { findContraction } from "../../../src/domain/contraction/inventory";
import { PLAIN_SIGNS } from "../../../src/domain/contraction/sign";
import type { TaughtSigns } from "../../../src/domain/contraction/taught";
import { parseSigns, parseTaught } from "../../../src/domain/contraction/taught";
import { tabulateWords, type WordTable } from "../../../src/domain/contraction/word-table";

/** The sign of that name. */
export const signNamed = (name: string): Sign => {
  const sign = findContraction(name) ?? PLAIN_SIGNS.find((plain: PlainSign) => plain.name === name);
  if (sign === undefined) throw new TypeError(`no sign ${name}`);
  return sign;
};

/** A table of words with counts and the names of their signs, parted by blanks, a blank in a name written as _. */
export const tableOf = (
  rows: readonly (readonly [word: string, count: number, signs: string])[],
): WordTable => {
  const table = tabulateWords(
    rows.map(([word, , names]) => {
      const sequence = names.split(" ").map((name) => signNamed(name.replace("_", " ")));
      return {
        word,
        sequence,
        signs: [...new Set(sequence)],
        contractions: [],
        cells: sequence.reduce((sum, { cells }) => sum + cells.length, 0),
      };
    }),
  );
  return { ...table, counts: Uint32Array.from(rows, ([, count]) => count) };
};

/** What a list of taught signs makes known. */
export const taughtSigns = (...cells: string[]): TaughtSigns => {
  const parsed = parseTaught(cells);
  if (!parsed.ok) throw new TypeError(parsed.fault.message);
  return parsed.value;
};

/** The signs of a list. */
export const signsNamed = (...cells: string[]): readonly Sign[] => {
  const parsed = parseSigns(cells);
  if (!parsed.ok) throw new TypeError(parsed.fault.message);
  return parsed.value;
};
