import type { Day } from "../units";
import type { DirectEvidence, WordEvidence } from "./knowledge-evidence";
import type { KnowledgeSettings } from "./knowledge-settings";
import { fadeBelief, type ShareBelief } from "./mastery-estimate";
import { weighSign } from "./noisy-and";
import { absorbUse, expectedShare } from "./sign-belief";
import { isTaughtBy, priorOn, type SignBackground } from "./sign-prior";

/** What was seen of a sign. */
interface Seen {
  readonly words: number;
  readonly opportunities: number;
  readonly lastSeen: Day | undefined;
}

/** What was seen of one sign so far. */
interface SignRecord {
  readonly background: SignBackground;
  /** as it was on the last day seen, once its evidence was taken in; undefined before */
  belief: ShareBelief | undefined;
  lastSeen: Day | undefined;
  words: number;
  opportunities: number;
}

const DAYS_A_WEEK = 7;

/** What is believed of each sign, brought forward day by day: as much memory as there are signs. */
export class KnowledgeRecord {
  readonly #settings: KnowledgeSettings;
  readonly #signs: readonly SignRecord[];
  readonly #bySign: ReadonlyMap<string, SignRecord>;

  constructor(backgrounds: readonly SignBackground[], settings: KnowledgeSettings) {
    this.#settings = settings;
    this.#signs = backgrounds.map((background) => ({
      background,
      belief: undefined,
      lastSeen: undefined,
      words: 0,
      opportunities: 0,
    }));
    this.#bySign = new Map(this.#signs.map((record) => [record.background.sign, record]));
  }

  /** Takes in the evidence of one day, which is no earlier than any before. */
  meet(day: Day, words: readonly WordEvidence[], direct: readonly DirectEvidence[]): void {
    for (const { sign, correct, opportunities } of direct) {
      const record = this.#bySign.get(sign);
      if (record === undefined || opportunities === 0) continue;
      const { right, wrong } = this.#open(record, day);
      record.belief = { right: right + correct, wrong: wrong + opportunities - correct };
      record.opportunities += opportunities;
    }
    for (const { word } of words.map(withKey).sort(compareClearness)) this.#meetWord(word, day);
  }

  /** What is believed of the sign at a place of the backgrounds, on the last day met or later. */
  beliefOn(place: number, day: Day): ShareBelief {
    return this.#bringForward(this.#at(place), day);
  }

  /** What was seen of the sign at a place of the backgrounds. */
  seen(place: number): Seen {
    return this.#at(place);
  }

  #at(place: number): SignRecord {
    const record = this.#signs[place];
    if (record === undefined) throw new RangeError(`There is no sign at place ${place}.`);
    return record;
  }

  #meetWord({ signs, isRight }: WordEvidence, day: Day): void {
    const met = signs
      .filter((sign, at) => signs.indexOf(sign) === at)
      .flatMap((sign) => this.#bySign.get(sign) ?? [])
      .map((record) => {
        const belief = this.#open(record, day);
        record.words += 1;
        return { record, belief, share: expectedShare(belief) };
      });
    met.forEach(({ record, belief, share }, at) => {
      const others = met.reduce(
        (product, other, place) => (place === at ? product : product * other.share),
        1,
      );
      record.belief = absorbUse(belief, weighSign(share, others, isRight, this.#settings));
    });
  }

  /** Brings a sign forward to a day on which there is evidence of it. */
  #open(record: SignRecord, day: Day): ShareBelief {
    const belief = this.#bringForward(record, day);
    record.belief = belief;
    record.lastSeen = day;
    return belief;
  }

  #bringForward({ background, belief, lastSeen }: SignRecord, day: Day): ShareBelief {
    if (belief !== undefined && lastSeen === day) return belief;
    const prior = priorOn(background, day, this.#settings);
    if (belief === undefined || lastSeen === undefined) return prior;
    const { taught } = background;
    const wasTaughtSince =
      taught !== undefined &&
      taught !== "earlier" &&
      isTaughtBy(background, day) &&
      !isTaughtBy(background, lastSeen);
    const carried = wasTaughtSince ? this.#teach(background, belief, lastSeen, taught) : belief;
    return fadeBelief(carried, (day - lastSeen) / DAYS_A_WEEK, prior, this.#settings.keptAWeek);
  }

  /** What was seen of a sign before it was taught is kept; what was believed beforehand is not. */
  #teach(background: SignBackground, belief: ShareBelief, lastSeen: Day, taught: Day): ShareBelief {
    const before = priorOn(background, lastSeen, this.#settings);
    const after = priorOn(background, taught, this.#settings);
    return {
      right: after.right + Math.max(0, belief.right - before.right),
      wrong: after.wrong + Math.max(0, belief.wrong - before.wrong),
    };
  }
}

interface KeyedWord {
  readonly word: WordEvidence;
  readonly key: string;
}

const withKey = (word: WordEvidence): KeyedWord => ({ word, key: word.signs.join() });

/** Words right before words missed, and short before long: what tells more of a sign first; then any fixed order. */
const compareClearness = (
  { word: one, key: oneKey }: KeyedWord,
  { word: other, key: otherKey }: KeyedWord,
): number =>
  Number(other.isRight) - Number(one.isRight) ||
  one.signs.length - other.signs.length ||
  (oneKey === otherKey ? 0 : oneKey < otherKey ? -1 : 1);
