import { spellTable, type WordTable } from "../../domain/contraction/word-table";
import type { WordBank } from "../../ports/word-bank";
import { BANK_PALETTE, CAPITAL, decodeIndex, printOfSigns, type WordIndex } from "./index-format";

/** A {@link WordBank} over the bytes of its file; words are put together when they are asked for. */
export class IndexedWordBank implements WordBank {
  readonly syllables: Uint8Array;
  readonly #index: WordIndex;
  readonly #contracted: WordTable;
  #uncontracted: WordTable | undefined;
  #places: Map<string, number> | undefined;

  /** @throws {TypeError} where the bytes are no word bank of this build */
  constructor(bytes: Uint8Array) {
    const index = decodeIndex(bytes);
    this.#index = index;
    this.syllables = index.syllables;
    this.#contracted = {
      size: index.size,
      palette: BANK_PALETTE,
      signs: index.signs,
      starts: index.starts,
      counts: index.counts,
      cells: countCells(index),
      word: (word) => printOfSigns(index.signs, index.starts[word] ?? 0, index.starts[word + 1] ?? 0),
    };
  }

  table(code: "contracted" | "uncontracted"): WordTable {
    if (code === "contracted") return this.#contracted;
    return (this.#uncontracted ??= spellTable(this.#contracted));
  }

  suitsDrill(word: number): boolean {
    const { listed, signs, starts } = this.#index;
    return listed[word] === 1 && signs[starts[word] ?? 0] !== CAPITAL;
  }

  find(word: string): number | undefined {
    this.#places ??= new Map(
      Array.from({ length: this.#index.size }, (_, place) => [this.#contracted.word(place), place] as const),
    );
    return this.#places.get(word);
  }
}

const countCells = ({ size, signs, starts }: WordIndex): Uint16Array => {
  const widths = BANK_PALETTE.map(({ cells }) => cells.length);
  const cells = new Uint16Array(size);
  for (let word = 0; word < size; word++) {
    let sum = 0;
    for (let at = starts[word] ?? 0; at < (starts[word + 1] ?? 0); at++) sum += widths[signs[at] ?? 0] ?? 0;
    cells[word] = sum;
  }
  return cells;
};
