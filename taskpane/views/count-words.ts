const WORDS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** A count in words: `no faults`, `one fault`, `twelve faults`, `117 faults`. */
export const countInWords = (count: number, one: string, many = `${one}s`): string =>
  `${WORDS[count] ?? String(count)} ${count === 1 ? one : many}`;

/** The same with a capital, to begin a sentence. */
export const beginSentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
