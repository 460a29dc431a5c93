import { refusal, success, type Result } from "../result";
import type { Share } from "../units";
import { compareDifficulty } from "./difficulty";
import type { Sign } from "./sign";
import type { TaughtSigns } from "./taught";
import type { WordTable } from "./word-table";

/** A sign to teach, and what knowing it adds to the signs before it. */
export interface NextSign {
  readonly sign: Sign;
  /** running words that become readable with it; 0 where it only prepares for the signs after it */
  readonly gained: number;
  /** share of the running words readable then */
  readonly share: Share;
}

/**
 * Which signs to teach next, best first: greedily, each time the sign that makes most running words readable whose
 * other signs are known. A word is readable when all its signs are.
 *
 * Where no single sign completes a word, the sign comes that stands in most running words among those that lack
 * fewest signs; it gains 0. Ties go to the easier kind, then to the sign that contains fewer unknown ones, then to the
 * order of the inventory.
 *
 * How good this is. The bound of 1 − 1/e (63 %) of the best choice of n signs holds for monotone SUBMODULAR gains
 * (Nemhauser, Wolsey & Fisher 1978, Mathematical Programming 14). Readable words are not such: a word that lacks two
 * signs gains nothing from either alone, so a sign can be worth more after another than before. The bound does hold
 * where every word lacks at most one sign; there the gains simply add up, and the greedy choice is the best one. In
 * all other cases there is no guarantee, only that each step is the best single one. For the same reason a gain kept
 * from an earlier step is no upper bound and lazy evaluation (Minoux 1978) would be wrong; an inverted index keeps
 * all gains exact instead, in time proportional to the signs of the words.
 *
 * @param words - running words with their counts
 * @param most - signs at most, 1 or more; fewer come where all is readable before
 * @returns one row a sign, or `no-words`, or `nothing-to-give` where every word is readable already
 */
export const planNextSigns = (
  words: WordTable,
  taught: TaughtSigns,
  most: number,
): Result<readonly NextSign[]> => {
  if (words.size === 0) return refusal("no-words", "The text has no words: give one that has some.");
  const known = words.palette.map((sign) => taught.knows(sign));
  const gaps = findGaps(words, known);
  if (gaps.readable === gaps.total) {
    return refusal(
      "nothing-to-give",
      "Every word is readable with the taught signs already: give another text, or name the letters that are taught.",
    );
  }
  const rows: NextSign[] = [];
  const names = new Set(words.palette.flatMap(({ name }, place) => (known[place] === true ? [name] : [])));
  const isKnown = (name: string): boolean => names.has(name) || taught.names.includes(name);
  while (rows.length < most && gaps.readable < gaps.total) {
    const place = bestSign(words, gaps, isKnown);
    const sign = words.palette[place];
    if (sign === undefined) throw new RangeError("A word lacks a sign that is not in the palette.");
    const gained = gaps.gains[place] ?? 0;
    close(gaps, words, place);
    names.add(sign.name);
    rows.push({ sign, gained, share: (gaps.readable / gaps.total) as Share });
  }
  return success(rows);
};

/** What stands between the pupil and each word. */
interface Gaps {
  readonly total: number;
  readable: number;
  /** signs that each word lacks */
  readonly lacking: Uint16Array;
  /** the exclusive or of the places of the signs that each word lacks: of one sign left, its place */
  readonly mixed: Uint16Array;
  /** running words that each sign alone completes */
  readonly gains: Float64Array;
  /** 1 for the signs that are no gap any more */
  readonly closed: Uint8Array;
  /** words that lack each sign; `wordsLacking[k]` for `k` from `from[sign]` up to `from[sign + 1]` */
  readonly from: Uint32Array;
  readonly wordsLacking: Uint32Array;
}

const findGaps = ({ size, signs, starts, counts, palette }: WordTable, known: readonly boolean[]): Gaps => {
  const isUnknown = Uint8Array.from(known, (knows) => (knows ? 0 : 1));
  const seenIn = new Int32Array(palette.length).fill(-1);
  const from = new Uint32Array(palette.length + 1);
  const lacking = new Uint16Array(size);
  const mixed = new Uint16Array(size);
  const gains = new Float64Array(palette.length);
  // Pairs of word and sign in the order of the words, to be sorted by sign below.
  const pairWords = new Uint32Array(signs.length);
  const pairSigns = new Uint16Array(signs.length);
  let pairs = 0;
  let total = 0;
  let readable = 0;
  for (let word = 0; word < size; word++) {
    const end = starts[word + 1] ?? 0;
    for (let at = starts[word] ?? 0; at < end; at++) {
      const place = signs[at] ?? 0;
      if (isUnknown[place] === 0 || seenIn[place] === word) continue;
      seenIn[place] = word;
      lacking[word] = (lacking[word] ?? 0) + 1;
      mixed[word] = (mixed[word] ?? 0) ^ place;
      from[place + 1] = (from[place + 1] ?? 0) + 1;
      pairWords[pairs] = word;
      pairSigns[pairs++] = place;
    }
    const count = counts[word] ?? 0;
    total += count;
    if (lacking[word] === 0) readable += count;
    else if (lacking[word] === 1) gains[mixed[word] ?? 0] = (gains[mixed[word] ?? 0] ?? 0) + count;
  }
  for (let place = 0; place < palette.length; place++)
    from[place + 1] = (from[place + 1] ?? 0) + (from[place] ?? 0);
  const next = from.slice();
  const wordsLacking = new Uint32Array(pairs);
  for (let pair = 0; pair < pairs; pair++) {
    const place = pairSigns[pair] ?? 0;
    const slot = next[place] ?? 0;
    wordsLacking[slot] = pairWords[pair] ?? 0;
    next[place] = slot + 1;
  }
  const closed = new Uint8Array(palette.length);
  return { total, readable, lacking, mixed, gains, closed, from, wordsLacking };
};

/** Takes a sign as known: words that lacked it alone are readable, those that lacked one more gain by that one. */
const close = (gaps: Gaps, { counts }: WordTable, place: number): void => {
  const { lacking, mixed, gains, from, wordsLacking } = gaps;
  gains[place] = 0;
  gaps.closed[place] = 1;
  for (let at = from[place] ?? 0; at < (from[place + 1] ?? 0); at++) {
    const word = wordsLacking[at] ?? 0;
    const left = (lacking[word] ?? 0) - 1;
    lacking[word] = left;
    const rest = (mixed[word] ?? 0) ^ place;
    mixed[word] = rest;
    if (left === 0) gaps.readable += counts[word] ?? 0;
    else if (left === 1) gains[rest] = (gains[rest] ?? 0) + (counts[word] ?? 0);
  }
};

const bestSign = ({ palette, counts }: WordTable, gaps: Gaps, isKnown: (name: string) => boolean): number => {
  const gains = gaps.gains.some((gain) => gain > 0) ? gaps.gains : findPromise(gaps, counts);
  let best = -1;
  for (let place = 0; place < palette.length; place++) {
    const gain = gains[place] ?? 0;
    if (gain <= 0 || gain < (gains[best] ?? 0)) continue;
    const [sign, champion] = [palette[place], palette[best]];
    if (sign === undefined) continue;
    if (champion === undefined || gain > (gains[best] ?? 0) || compareDifficulty(sign, champion, isKnown) < 0)
      best = place;
  }
  return best;
};

/** Running words that each sign stands in, of those that lack fewest signs. */
const findPromise = (gaps: Gaps, counts: Uint32Array): Float64Array => {
  const { lacking, from, wordsLacking, closed } = gaps;
  let fewest = Infinity;
  for (const lack of lacking) if (lack > 0 && lack < fewest) fewest = lack;
  const promised = new Float64Array(closed.length);
  for (let place = 0; place < closed.length; place++) {
    if (closed[place] === 1) continue;
    for (let at = from[place] ?? 0; at < (from[place + 1] ?? 0); at++) {
      const word = wordsLacking[at] ?? 0;
      if (lacking[word] === fewest) promised[place] = (promised[place] ?? 0) + (counts[word] ?? 0);
    }
  }
  return promised;
};
