import { readFile } from "node:fs/promises";
import path from "node:path";
import type { WordBankLibrary } from "../../ports/word-bank";
import { StoredWordBank, WORD_BANK_FILE } from "./stored-word-bank";

/**
 * The word bank in Node.
 *
 * @param directory - the build, absolute or from the working directory
 */
export const nodeWordBank = (directory: string): WordBankLibrary =>
  new StoredWordBank(() => readFile(path.resolve(directory, WORD_BANK_FILE)));
