import { isReadable } from "../contraction/coverage";
import type { PassageReader } from "../contraction/passage";
import type { Sign } from "../contraction/sign";
import type { TaughtSigns } from "../contraction/taught";
import type { Share } from "../units";

/** A passage of the teacher's own. */
export interface Passage {
  readonly title: string;
  readonly text: string;
}

/** A passage with how much of it a pupil can read. */
export interface RankedPassage<P extends Passage = Passage> {
  readonly passage: P;
  readonly words: number;
  /** cells of its words with a blank cell between two; dashes that stand by themselves are not counted */
  readonly cells: number;
  /** running words readable, of all */
  readonly share: Share;
  /** the words that are not readable yet, each once, in order */
  readonly unreadable: readonly string[];
  /** the signs that they lack, each once, in order */
  readonly lacking: readonly Sign[];
}

/**
 * Passages ranked by the share of their running words that a pupil can read, the most readable first; of equal ones
 * the longer, then the earlier. Passages without words are left out.
 *
 * @param reader - of the code that the pupil reads
 */
export const rankPassages = <P extends Passage>(
  passages: readonly P[],
  reader: PassageReader,
  taught: TaughtSigns,
): RankedPassage<P>[] =>
  passages
    .flatMap((passage) => {
      const words = reader.read(passage.text);
      if (words.length === 0) return [];
      const unreadable = words.filter((word) => !isReadable(word, taught));
      const lacking = unreadable.flatMap(({ signs }) => signs.filter((sign) => !taught.knows(sign)));
      return {
        passage,
        words: words.length,
        cells: words.reduce((sum, { cells }) => sum + cells + 1, -1),
        share: ((words.length - unreadable.length) / words.length) as Share,
        unreadable: [...new Set(unreadable.map(({ word }) => word))],
        lacking: [...new Map(lacking.map((sign) => [sign.name, sign])).values()],
      };
    })
    .sort((one, other) => other.share - one.share || other.words - one.words);

/** Ends of sentences that are none: common practice, no source. */
const ABBREVIATION = /(?:^|[\s(“"‘'])(?:Mr|Mrs|Ms|Dr|St|No|p|pp|vs|e\.g|i\.e|[A-Z])\.$/;

/** Closing marks, and no small letter after them as in “Stop!” said Avocet. */
const END = /[.!?…]+["”’')\]]*(?=\s+[^\s\p{Ll}]|\s*$)/gu;

/**
 * The sentences of a text, each with its closing marks; a line break in place of a full stop ends one only where the
 * line is empty.
 */
export const splitSentences = (text: string): string[] =>
  text.split(/(?:\r\n|\r|\n)\s*(?:\r\n|\r|\n)/).flatMap((paragraph) => {
    const sentences: string[] = [];
    let start = 0;
    for (const { 0: marks, index } of paragraph.matchAll(END)) {
      const end = index + marks.length;
      if (ABBREVIATION.test(paragraph.slice(start, end))) continue;
      sentences.push(tidy(paragraph.slice(start, end)));
      start = end;
    }
    return [...sentences, tidy(paragraph.slice(start))].filter((sentence) => sentence !== "");
  });

const tidy = (text: string): string => text.replace(/\s+/g, " ").trim();
