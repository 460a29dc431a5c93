import { readNumberAt, spellNumber } from "./number-words";
import { splitReadingWords, type ReadingWord } from "./reading-words";

/** A word heard, or a mark that the listener set between words. */
export type HeardItem =
  | { readonly kind: "word"; readonly word: ReadingWord }
  /** the try before it was put right by the reader */
  | { readonly kind: "self-corrected"; readonly tried: ReadingWord | undefined }
  /** the word before it, or the one that should stand here, was told after the wait */
  | { readonly kind: "told" };

/** What was heard, ready to be aligned. */
export interface Heard {
  readonly items: readonly HeardItem[];
  /** the text ended with `]`: the attempt stops at the last aligned word */
  readonly stopped: boolean;
}

const MARK = /\((sc|told)\)/gi;

/**
 * Reads what a listener wrote down: words, `(sc)` after a try that the reader corrected, `(told)` after a word told
 * after the wait or in its place, and a closing `]` where the attempt stopped.
 *
 * Numbers are made alike: digits that the expected text does not have are read out, and numbers read out become the
 * digits that it has.
 *
 * @param text - the response as noted
 * @param expected - keys of the expected words, for the numbers
 */
export function parseHeard(text: string, expected: ReadonlySet<string>): Heard {
  const trimmed = text.trimEnd();
  const stopped = trimmed.endsWith("]");
  const items: HeardItem[] = [];
  const body = stopped ? trimmed.slice(0, -1) : trimmed;
  let from = 0;
  const addWords = (piece: string): void => {
    for (const word of alikeNumbers(splitReadingWords(piece), expected)) items.push({ kind: "word", word });
  };
  for (const mark of body.matchAll(MARK)) {
    addWords(body.slice(from, mark.index));
    from = mark.index + mark[0].length;
    if (mark[1]?.toLowerCase() === "told") items.push({ kind: "told" });
    else {
      const before = items.at(-1);
      if (before?.kind === "word") items.pop();
      items.push({ kind: "self-corrected", tried: before?.kind === "word" ? before.word : undefined });
    }
  }
  addWords(body.slice(from));
  return { items, stopped };
}

function alikeNumbers(words: readonly ReadingWord[], expected: ReadonlySet<string>): readonly ReadingWord[] {
  const wanted = (value: number): boolean => expected.has(String(value));
  const keys = words.map(({ key }) => key);
  const alike: ReadingWord[] = [];
  for (let place = 0; place < words.length;) {
    const word = words[place];
    if (word === undefined) break;
    const found = /^\d+$/.test(word.key) ? undefined : readNumberAt(keys, place, wanted);
    if (found !== undefined) {
      const shown = words.slice(place, place + found.length).map((part) => part.shown);
      alike.push({ shown: shown.join(" "), key: String(found.value) });
      place += found.length;
      continue;
    }
    const spelled =
      /^\d+$/.test(word.key) && !expected.has(word.key) ? spellNumber(Number(word.key)) : undefined;
    alike.push(...(spelled?.map((part) => ({ shown: part, key: part })) ?? [word]));
    place += 1;
  }
  return alike;
}
