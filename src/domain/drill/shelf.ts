/**
 * Words for one sign in one place, those with the smallest keys first.
 *
 * No more words are kept than a drill takes: at most so many can have been taken from the shelf by way of others.
 */
export class Shelf {
  readonly #most: number;
  #words: { readonly word: number; readonly key: number }[] = [];
  #limit = Infinity;
  #sorted = false;
  #next = 0;

  /** @param most - words that a drill takes */
  constructor(most: number) {
    this.#most = most;
  }

  /** Puts a word on the shelf; one that stands there already may come twice. */
  add(word: number, key: number): void {
    if (key >= this.#limit || this.#words.at(-1)?.word === word) return;
    this.#words.push({ word, key });
    this.#sorted = false;
    if (this.#words.length >= 2 * this.#most) this.#sort();
  }

  /** The first word that is not among those taken, or undefined. */
  firstBut(taken: ReadonlySet<number>): number | undefined {
    if (!this.#sorted) this.#sort();
    for (; this.#next < this.#words.length; this.#next++) {
      const word = this.#words[this.#next]?.word;
      if (word !== undefined && !taken.has(word)) return word;
    }
    return undefined;
  }

  #sort(): void {
    this.#words.sort((one, other) => one.key - other.key || one.word - other.word);
    this.#words.length = Math.min(this.#words.length, this.#most);
    if (this.#words.length === this.#most) this.#limit = this.#words.at(-1)?.key ?? Infinity;
    this.#sorted = true;
  }
}
