const ONES =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

const SMALL = new Map<string, number>([
  ...ONES.map((word, value) => [word, value] as const),
  ...TENS.map((word, value) => [word, 10 * value] as const).filter(([word]) => word !== ""),
]);

/**
 * A whole number read out in English words, without hyphens and without "and".
 *
 * @param value - 0 to 999,999
 * @returns words in order; undefined where the number is outside that range
 */
export function spellNumber(value: number): readonly string[] | undefined {
  if (!Number.isInteger(value) || value < 0 || value > 999_999) return undefined;
  if (value >= 1000) {
    const rest = value % 1000;
    return [
      ...(spellNumber(Math.floor(value / 1000)) ?? []),
      "thousand",
      ...(rest === 0 ? [] : (spellNumber(rest) ?? [])),
    ];
  }
  if (value >= 100) {
    const rest = value % 100;
    return [ONES[Math.floor(value / 100)] ?? "", "hundred", ...(rest === 0 ? [] : (spellNumber(rest) ?? []))];
  }
  if (value < 20) return [ONES[value] ?? ""];
  return [TENS[Math.floor(value / 10)] ?? "", ...(value % 10 === 0 ? [] : [ONES[value % 10] ?? ""])];
}

/** Numbers that a run of words can stand for, longest run first: how many words, and the value. */
export interface ReadNumber {
  readonly length: number;
  readonly value: number;
}

const LONGEST = 12;

/**
 * The longest number read out at one place, as a count (one hundred and five) or as a year (nineteen ninety nine).
 *
 * @param words - lower case, hyphens already split
 * @param start - place of the first word
 * @param wanted - which values are of interest
 * @returns how many words it takes up and its value, or undefined
 */
export function readNumberAt(
  words: readonly string[],
  start: number,
  wanted: (value: number) => boolean,
): ReadNumber | undefined {
  for (let length = Math.min(LONGEST, words.length - start); length > 0; length -= 1) {
    const run = words.slice(start, start + length);
    const value = [valueOf(run), yearOf(run)].find((found) => found !== undefined && wanted(found));
    if (value !== undefined) return { length, value };
  }
  return undefined;
}

function valueOf(run: readonly string[]): number | undefined {
  let total = 0;
  let group = 0;
  let room = Infinity;
  for (const [place, word] of run.entries()) {
    if (word === "and" && place > 0 && place < run.length - 1) continue;
    const small = SMALL.get(word);
    if (small !== undefined) {
      // "twenty five" but not "five twenty" nor "ten five"
      if (small >= room || (small === 0 && run.length > 1)) return undefined;
      group += small;
      room = small >= 20 ? 10 : 0;
    } else if (word === "hundred" && group > 0 && group < 100) {
      group *= 100;
      room = 100;
    } else if (word === "thousand" && group > 0 && total === 0) {
      total = group * 1000;
      group = 0;
      room = Infinity;
    } else return undefined;
  }
  return total + group;
}

/** A year from 1100 to 2099 said as two numbers: nineteen ninety nine, twenty twenty six. */
function yearOf(run: readonly string[]): number | undefined {
  const century = SMALL.get(run[0] ?? "");
  if (century === undefined || century < 11 || century > 20) return undefined;
  const rest = valueOf(run.slice(1));
  return rest === undefined || rest < 10 || rest > 99 || run.length < 2 ? undefined : century * 100 + rest;
}
