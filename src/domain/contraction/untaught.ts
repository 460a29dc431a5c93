import type { Transcription } from "../braille/transcription";
import { inventoryOrder } from "./difficulty";
import type { Sign } from "./sign";
import type { TaughtSigns } from "./taught";
import { readPieces } from "./usage";

/** A sign that a text uses and the pupil has not been taught. */
export interface UntaughtSign {
  readonly sign: Sign;
  readonly times: number;
  /** the first word that has it, without the punctuation around it unless it is that */
  readonly word: string;
}

/**
 * The signs of a text that are not taught: most used first, then in the order of the inventory.
 *
 * @param transcription - in Unified English Braille, contracted or uncontracted
 */
export const findUntaught = (transcription: Transcription, taught: TaughtSigns): UntaughtSign[] => {
  const found = new Map<string, { readonly sign: Sign; times: number; readonly place: number }>();
  for (const { sign, printStart } of readPieces(transcription)) {
    if (taught.knows(sign)) continue;
    const known = found.get(sign.name);
    if (known === undefined) found.set(sign.name, { sign, times: 1, place: printStart });
    else known.times++;
  }
  return [...found.values()]
    .sort((one, other) => other.times - one.times || inventoryOrder(one.sign) - inventoryOrder(other.sign))
    .map(({ sign, times, place }) => ({ sign, times, word: wordAt(transcription.print, place, sign) }));
};

const wordAt = (print: string, place: number, { kind }: Sign): string => {
  const start = print.slice(0, place).search(/\S*$/);
  const token = /^\S*/.exec(print.slice(start))?.[0] ?? "";
  return kind === "punctuation" ? token : trimWord(token);
};

/** A word without the punctuation around it; what holds no letter or digit stays as it is. */
export const trimWord = (token: string): string =>
  token.replace(/^[^\p{L}\p{M}\p{N}]+(?=.*[\p{L}\p{N}])|(?<=[\p{L}\p{M}\p{N}])[^\p{L}\p{M}\p{N}]+$/gu, "");
