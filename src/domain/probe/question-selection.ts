import type { Sign } from "../contraction/sign";
import type { TaughtSigns } from "../contraction/taught";
import type { WordTable } from "../contraction/word-table";
import { KNOWLEDGE_SETTINGS, type KnowledgeSettings } from "../progress/knowledge-settings";
import type { ShareBelief } from "../progress/mastery-estimate";
import { chanceOfWord, weighSign } from "../progress/noisy-and";
import { absorbUse, beliefOf, expectedShare, varianceOf } from "../progress/sign-belief";

/** What a probe is to find out. */
export interface QuestionWish {
  /** the signs in question, each once; they need not be taught */
  readonly wanted: readonly Sign[];
  /** what is believed of signs, by name; a sign that is missing counts as known */
  readonly beliefs: ReadonlyMap<string, ShareBelief>;
  readonly taught: TaughtSigns;
  /** words at most */
  readonly most: number;
  /** cells a word at most */
  readonly mostCells: number;
  /** whether a word may be taken at all */
  readonly accepts: (word: number) => boolean;
  readonly settings?: Pick<KnowledgeSettings, "slip" | "guess">;
}

/** One word of a probe. */
export interface Question {
  readonly word: string;
  /** the signs in question that it has */
  readonly asks: readonly Sign[];
  /** by how much it is expected to lower the variance of their shares, those words before it answered */
  readonly lowers: number;
}

/** The words of a probe, most telling first. */
export interface QuestionChoice {
  readonly questions: readonly Question[];
  /** the variances of the shares of all signs in question added up: now, and as expected after these words */
  readonly before: number;
  readonly after: number;
  /** signs in question that no word asks that may be taken */
  readonly unasked: readonly Sign[];
}

/**
 * The words that are expected to tell most about certain signs: greedily, each the one that lowers the sum of the
 * variances of their shares most, given the words chosen before it. A word may be taken if all of its signs are taught
 * or in question. Its other signs count as they are believed: one that is shaky makes a word tell less.
 *
 * What a word will say is not known beforehand; each of its two outcomes counts by its chance. The share expected stays
 * the same on average, so for the next word the belief keeps its mean and takes the variance that is expected.
 *
 * Source: greedy choice of experiments by expected variance, after Cohn, Ghahramani & Jordan 1996, Journal of
 * Artificial Intelligence Research 4 (from memory); of words that tell the same, the first of the table.
 */
export const chooseQuestions = (table: WordTable, wish: QuestionWish): QuestionChoice => {
  const asking = new Asking(table, wish);
  const before = asking.uncertainty();
  // A word tells less the more was asked, so what it would tell at first bounds what it tells later.
  const candidates = asking
    .candidates()
    .map((word) => ({ word, bound: asking.gain(word) }))
    .sort((one, other) => other.bound - one.bound || one.word - other.word);
  const taken = new Set<number>();
  const questions: Question[] = [];
  while (questions.length < wish.most) {
    let best: { readonly word: number; readonly gain: number } | undefined;
    for (const { word, bound } of candidates) {
      if (best !== undefined && bound <= best.gain) break;
      if (taken.has(word)) continue;
      const gain = asking.gain(word);
      if (best === undefined || gain > best.gain) best = { word, gain };
    }
    if (best === undefined) break;
    taken.add(best.word);
    questions.push({ word: table.word(best.word), asks: asking.asksOf(best.word), lowers: best.gain });
    asking.expect(best.word);
  }
  const asked = new Set(candidates.flatMap(({ word }) => asking.asksOf(word)));
  const askable = new Set([...asked].map(({ name }) => name));
  const unasked = wish.wanted.filter(({ name }) => !askable.has(name));
  return { questions, before, after: asking.uncertainty(), unasked };
};

/** The words of a table as questions, and what is expected to be believed once some are answered. */
class Asking {
  readonly #table: WordTable;
  readonly #wish: QuestionWish;
  readonly #settings: Pick<KnowledgeSettings, "slip" | "guess">;
  /** by place in the palette: the share expected, which stays; the belief of a sign in question, which sharpens */
  readonly #shares: Float64Array;
  readonly #beliefs: (ShareBelief | undefined)[];

  constructor(table: WordTable, wish: QuestionWish) {
    this.#table = table;
    this.#wish = wish;
    this.#settings = wish.settings ?? KNOWLEDGE_SETTINGS;
    const wanted = new Set(wish.wanted.map(({ name }) => name));
    this.#shares = Float64Array.from(table.palette, ({ name }) => {
      const belief = wish.beliefs.get(name);
      return belief === undefined ? 1 : expectedShare(belief);
    });
    this.#beliefs = table.palette.map(({ name }) => (wanted.has(name) ? wish.beliefs.get(name) : undefined));
  }

  /** The words that may be taken and have a sign in question. */
  candidates(): number[] {
    const { size, palette, cells } = this.#table;
    const { taught, accepts, mostCells } = this.#wish;
    const isAllowed = palette.map((sign, place) => this.#beliefs[place] !== undefined || taught.knows(sign));
    const found: number[] = [];
    for (let word = 0; word < size; word++) {
      const places = this.#placesIn(word);
      if (
        (cells[word] ?? 0) <= mostCells &&
        places.some((place) => this.#beliefs[place] !== undefined) &&
        places.every((place) => isAllowed[place]) &&
        accepts(word)
      )
        found.push(word);
    }
    return found;
  }

  /** The signs in question that a word has. */
  asksOf(word: number): readonly Sign[] {
    return this.#placesIn(word).flatMap((place) =>
      this.#beliefs[place] === undefined ? [] : (this.#table.palette[place] ?? []),
    );
  }

  /** By how much a word is expected to lower the sum of the variances. */
  gain(word: number): number {
    let gain = 0;
    this.#visit(word, (belief, expected) => {
      gain += varianceOf(belief) - expected;
    });
    return gain;
  }

  /** Takes a word as asked. */
  expect(word: number): void {
    this.#visit(word, (belief, expected, place) => {
      this.#beliefs[place] = beliefOf(expectedShare(belief), expected);
    });
  }

  /** The sum of the variances of the signs in question that the table has. */
  uncertainty(): number {
    return this.#beliefs.reduce((sum, belief) => sum + (belief === undefined ? 0 : varianceOf(belief)), 0);
  }

  /** Gives each sign in question of a word with the variance that is expected once it is answered. */
  #visit(word: number, visit: (belief: ShareBelief, expected: number, place: number) => void): void {
    const places = this.#placesIn(word);
    const shareAt = (place: number): number => this.#shares[place] ?? 1;
    const all = places.reduce((product, place) => product * shareAt(place), 1);
    const right = chanceOfWord(all, this.#settings);
    for (const place of places) {
      const belief = this.#beliefs[place];
      if (belief === undefined) continue;
      const own = shareAt(place);
      const after = (isRight: boolean): number =>
        varianceOf(absorbUse(belief, weighSign(own, all / own, isRight, this.#settings)));
      visit(belief, right * after(true) + (1 - right) * after(false), place);
    }
  }

  /** The places in the palette of a word's signs, each once. */
  #placesIn(word: number): readonly number[] {
    const { signs, starts } = this.#table;
    const places: number[] = [];
    for (let at = starts[word] ?? 0; at < (starts[word + 1] ?? 0); at++) {
      const place = signs[at] ?? 0;
      if (!places.includes(place)) places.push(place);
    }
    return places;
  }
}
