import type { Seconds } from "../units";

/**
 * How long a reader is given before a word is told, by print convention. Touch readers and pupils with motor or speech
 * needs are often given longer.
 *
 * Source: rules of timed reading (US Department of Education slides, archived), rule 8.
 */
export const USUAL_WAIT = 3 as Seconds;

const NOTED = /\btold after (\d+(?:[.,]\d+)?) ?s(?:ec(?:onds?|s)?)?\b\.?/i;

/**
 * The wait of a probe as its note has it: `Told after 5 s`. The usual one where the note says nothing.
 *
 * @param note - the probe's note
 */
export const waitOfNote = (note: string | undefined): Seconds => {
  const noted = Number(NOTED.exec(note ?? "")?.[1]?.replace(",", "."));
  return (noted > 0 ? noted : USUAL_WAIT) as Seconds;
};

/**
 * A note that keeps the wait with the probe; what it said of one before is replaced. The usual wait need not be noted.
 *
 * @param note - what the teacher wrote
 * @param wait - more than 0
 */
export const noteWait = (note: string, wait: Seconds): string => {
  const rest = note.replace(NOTED, "").replace(/\s+/gu, " ").trim();
  if (wait === USUAL_WAIT) return rest;
  const kept = `Told after ${wait} s.`;
  return rest === "" ? kept : `${rest.replace(/(?<![.!?…])$/u, ".")} ${kept}`;
};
