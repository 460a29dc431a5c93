import type { WordTable } from "../contraction/word-table";

/** Where in a word a sign is met: it is the whole word, or its first, a middle or its last sign. */
export const SIGN_PLACES = ["whole", "start", "middle", "end"] as const;

const [WHOLE, START, MIDDLE, END] = SIGN_PLACES.map((_, place) => place) as [number, number, number, number];

/**
 * Visits every meeting with wanted signs in a word, in order.
 *
 * @param isWanted - 1 for the wanted signs of the table's palette
 * @param visit - receives the sign's place in the palette and an index into {@link SIGN_PLACES}
 */
export const meetSigns = (
  { signs, starts }: WordTable,
  word: number,
  isWanted: Uint8Array,
  visit: (sign: number, place: number) => void,
): void => {
  const [from, to] = [starts[word] ?? 0, starts[word + 1] ?? 0];
  for (let at = from; at < to; at++) {
    const sign = signs[at] ?? 0;
    if (isWanted[sign] === 1)
      visit(sign, to - from === 1 ? WHOLE : at === from ? START : at === to - 1 ? END : MIDDLE);
  }
};
