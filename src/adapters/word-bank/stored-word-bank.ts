import type { WordBank, WordBankLibrary } from "../../ports/word-bank";
import { IndexedWordBank } from "./indexed-word-bank";

/** The name of the bank's file in the build. */
export const WORD_BANK_FILE = "word-bank.bin";

/** The bank read once, when first asked for; a failure is not kept, so that the next call tries again. */
export class StoredWordBank implements WordBankLibrary {
  readonly #read: () => Promise<Uint8Array>;
  #loading: Promise<WordBank> | undefined;
  #bank: WordBank | undefined;

  /** @param read - the bytes of the bank's file */
  constructor(read: () => Promise<Uint8Array>) {
    this.#read = read;
  }

  load(): Promise<WordBank> {
    this.#loading ??= this.#read()
      .then((bytes) => (this.#bank = new IndexedWordBank(bytes)))
      .catch((failure: unknown) => {
        this.#loading = undefined;
        throw failure;
      });
    return this.#loading;
  }

  loaded(): WordBank | undefined {
    return this.#bank;
  }
}
