import { createEmptyCard, fsrs, Rating, type Grade } from "ts-fsrs";
import type { Day } from "../../domain/units";
import type { Recall, Scheduler } from "../../ports/scheduler";

const GRADES: Readonly<Record<Recall, Grade>> = {
  forgotten: Rating.Again,
  unsteady: Rating.Hard,
  remembered: Rating.Good,
};

const MILLISECONDS = 86_400_000;
/** Serial numbers and dates both count whole days here; which day is the first does not matter to a difference. */
const dateOf = (day: number): Date => new Date(day * MILLISECONDS);
const dayOf = (date: Date): Day => Math.floor(date.getTime() / MILLISECONDS) as Day;

/**
 * The schedule of the package ts-fsrs: without chance, in whole days, with its own weights, which are not fitted to
 * pupils who read braille (from memory).
 */
export const createFsrsScheduler = (): Scheduler => {
  const schedule = fsrs({ enable_fuzz: false, enable_short_term: false });
  return {
    nextCheck(occasions) {
      const first = occasions[0];
      if (first === undefined) return undefined;
      let card = createEmptyCard(dateOf(Math.floor(first.day)));
      for (const { day, recall } of occasions) {
        card = schedule.next(card, dateOf(Math.floor(day)), GRADES[recall]).card;
      }
      return dayOf(card.due);
    },
  };
};
