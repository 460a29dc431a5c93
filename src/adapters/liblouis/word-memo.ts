/** How many entries a memo holds at most: about 12 MB of words of ordinary length. */
export const MEMO_CAPACITY = 65_536;

/**
 * A bounded memo of two generations. New entries go into the young one; when it holds half the capacity it
 * becomes the old one and what was old is forgotten. An entry found in the old generation is carried over, so
 * that what is used often stays. Both steps take constant time.
 */
export class WordMemo<T> {
  readonly #half: number;
  #young = new Map<string, T>();
  #old = new Map<string, T>();

  /** @param capacity - entries held at most, 2 or more */
  constructor(capacity: number = MEMO_CAPACITY) {
    this.#half = Math.floor(capacity / 2);
  }

  get size(): number {
    return this.#young.size + this.#old.size;
  }

  /** The entry kept for a word, or undefined. */
  get(word: string): T | undefined {
    const young = this.#young.get(word);
    if (young !== undefined) return young;
    const old = this.#old.get(word);
    if (old !== undefined) {
      this.#old.delete(word);
      this.keep(word, old);
    }
    return old;
  }

  /** Keeps an entry; may forget the least lately used half. */
  keep(word: string, entry: T): void {
    if (this.#young.size >= this.#half) {
      this.#old = this.#young;
      this.#young = new Map();
    }
    this.#young.set(word, entry);
  }

  clear(): void {
    this.#young = new Map();
    this.#old = new Map();
  }
}
