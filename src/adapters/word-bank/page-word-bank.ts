import type { WordBankLibrary } from "../../ports/word-bank";
import { StoredWordBank, WORD_BANK_FILE } from "./stored-word-bank";

/**
 * The word bank in a page: the workbench, the pane, an Excel webview.
 *
 * @param base - the folder of the build on the page's own origin, ending with a slash
 */
export const pageWordBank = (base: URL | string): WordBankLibrary =>
  new StoredWordBank(async () => {
    const address = new URL(WORD_BANK_FILE, base);
    const response = await fetch(address);
    if (!response.ok) throw new Error(`${address.pathname}: ${response.status} ${response.statusText}`);
    return new Uint8Array(await response.arrayBuffer());
  });
