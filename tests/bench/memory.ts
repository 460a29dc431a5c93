/** How much memory translation keeps over a million distinct texts. */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { nodeTranslatorLibrary } from "../../src/adapters/liblouis/node-engine";
import { MEMO_CAPACITY } from "../../src/adapters/liblouis/word-memo";
import { SHIPPED_ENGINE, type BenchFigure } from "./figure";

const TEXTS = 1_000_000;
/** The memo has forgotten half several times by then, and is as full as at the end: whole halves lie between. */
const SETTLED = TEXTS - 24 * (MEMO_CAPACITY / 2);
const MOST_GROWTH = 5;
const LETTERS = "bcdfghklmnprstvz";

/** A text of its own for every number: six consonants and vowels, no word of any list. */
const textOf = (number: number): string => {
  let text = "";
  for (let rest = number, place = 0; place < 5; place += 1, rest >>= 4)
    text += LETTERS.charAt(rest & 15) + (place < 3 ? "a" : "");
  return text;
};

/** Measures the heap with the memo full, and again at the end. */
export default async function run(): Promise<BenchFigure[]> {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const used = (): number => {
    collect();
    return process.memoryUsage().heapUsed / 2 ** 20;
  };
  const translator = await nodeTranslatorLibrary(SHIPPED_ENGINE).translator("contracted");
  translator.translate("braille");
  const empty = used();
  let settled = 0;
  for (let number = 0; number < TEXTS; number += 1) {
    translator.translate(textOf(number));
    if (number + 1 === SETTLED) settled = used();
  }
  const end = used();
  return [
    {
      name: `translation: heap held by the memo, ${MEMO_CAPACITY} entries at most, after ${TEXTS} distinct texts`,
      value: Number((end - empty).toPrecision(3)),
      unit: "MB",
      against: `after ${SETTLED} texts: ${(settled - empty).toPrecision(3)} MB`,
      ratio: Number((end / settled).toPrecision(3)),
      goal: `at most ${MOST_GROWTH} MB more than after ${SETTLED} texts`,
      met: end - settled <= MOST_GROWTH,
    },
  ];
}
