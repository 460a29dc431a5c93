/**
 * The sheet functions of the namespace BRAILLE, in the order of the design's table: parse, call, return.
 *
 * `custom-functions-metadata` reads this file to write functions.json. Its traps: only `export function` counts;
 * parameters and results are `string`, `number`, `boolean`, `unknown`, or `unknown[][]` (written out, no alias, no
 * union, and never `unknown[][] | Promise<…>`, which loses the result's dimensionality); a missing argument is
 * `null` at run time, so defaults are `x ?? 3`. Nothing is called while this file is evaluated: the build appends
 * `CustomFunctions.associate`.
 */
import { asciiOfCells, countCells, dotsOfCells, linesOfCells } from "./cell-forms";
import { giveBraille, mapBraille } from "./braille";
import { drillRows } from "./drills";
import { knownOfCells, masteredOfCells, reviewOfCells } from "./mastery";
import { celerationOfCells, changeOfCells, napOfCells, reachOfCells } from "./outlook";
import { bracketedTexts, contractionRows, coverageOfTexts } from "./passages";
import { nextRows, untaughtRows } from "./planning";
import { miscueRows, readingRow } from "./readings";
import { printOfCells } from "./reading-back";
import { signRows } from "./sign-list";
import { mirrorForSlate } from "../src/domain/braille/slate";
import { asBlock, giveRows, mapCells } from "./shape";
import {
  accuracyOfCells,
  aimOfCells,
  rateOfCells,
  trendOfCells,
  trialsOfCells,
  verdictOfCells,
} from "./scores";
import { cellErrorRows, writingRow } from "./writings";

/**
 * Translates print into Unicode braille; with taught, into partly contracted braille, which is a teaching aid.
 * @customfunction TRANSLATE
 * @param text Print, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [taught] The taught signs in print form; all other contractions are spelled out (partly contracted, not UEB)
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Unicode braille in the shape of text
 */
export function translate(
  text: unknown[][],
  code?: string,
  taught?: unknown[][],
  exceptions?: unknown[][],
): unknown[][] {
  return mapBraille(text, { code, taught, exceptions }, (cells) => cells) as unknown[][];
}

/**
 * Gives North American ASCII braille of print or of Unicode braille.
 * @customfunction ASCII
 * @param text Print or Unicode braille, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns ASCII braille in the shape of text
 */
export function ascii(text: unknown[][], code?: string, exceptions?: unknown[][]): unknown[][] {
  return mapBraille(text, { code, exceptions }, asciiOfCells) as unknown[][];
}

/**
 * Gives dot numbers, cells joined by hyphens, a blank cell as 0: 125-15-0-13.
 * @customfunction DOTS
 * @param text Print or Unicode braille, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Dot numbers in the shape of text
 */
export function dots(text: unknown[][], code?: string, exceptions?: unknown[][]): unknown[][] {
  return mapBraille(text, { code, exceptions }, dotsOfCells) as unknown[][];
}

/**
 * Counts braille cells, blank cells between words included.
 * @customfunction CELLS
 * @param text Print or Unicode braille, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns How many cells, in the shape of text
 */
export function cells(text: unknown[][], code?: string, exceptions?: unknown[][]): unknown[][] {
  return mapBraille(text, { code, exceptions }, countCells) as unknown[][];
}

/**
 * Reads Unified English Braille back into print, word by word; a cell that cannot be read stays a cell.
 * @customfunction PRINT
 * @param braille Unicode braille, ASCII braille or dot numbers (125-15-0-13), a cell or a range
 * @param [code] "contracted" (default) or "uncontracted"
 * @param [form] "unicode", "ascii" or "dots"; the first that fits unless given
 * @returns Print in the shape of braille
 */
export function print(braille: unknown[][], code?: string, form?: string): unknown[][] {
  return printOfCells(braille, code, form) as unknown[][];
}

/**
 * Breaks braille into lines; several texts follow each other, each on a new line.
 * @customfunction LINES
 * @param text Print or Unicode braille, a cell or a range
 * @param [cells] Cells a line, a whole number from 1; 40 unless given
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Lines of Unicode braille, a row each
 */
export function lines(
  text: unknown[][],
  cells?: number,
  code?: string,
  exceptions?: unknown[][],
): unknown[][] {
  return giveBraille(text, { code, exceptions }, (braille) => linesOfCells(braille, cells)) as unknown[][];
}

/**
 * Gives braille as it is punched with slate and stylus: each line from its end, each cell mirrored.
 * @customfunction SLATE
 * @param text Print or Unicode braille, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Unicode braille in punching order, in the shape of text
 */
export function slate(text: unknown[][], code?: string, exceptions?: unknown[][]): unknown[][] {
  return mapBraille(text, { code, exceptions }, mirrorForSlate) as unknown[][];
}

/**
 * Shows the letters of each contraction in parentheses: t(ea)(ch).
 * @customfunction BRACKET
 * @param text Print, a cell or a range
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Print with parentheses, in the shape of text
 */
export function bracket(text: unknown[][], exceptions?: unknown[][]): unknown[][] {
  return bracketedTexts(text, exceptions) as unknown[][];
}

/**
 * Lists the contractions that texts use, most used first.
 * @customfunction CONTRACTIONS
 * @param text Print, a cell or a range
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Rows of sign, dots, kind, rule section, times used
 */
export function contractions(text: unknown[][], exceptions?: unknown[][]): unknown[][] {
  return contractionRows(text, exceptions) as unknown[][];
}

/**
 * Gives the share of a text that is readable with the taught signs, from 0 to 1.
 * @customfunction COVERAGE
 * @param text Print, a cell or a range
 * @param taught The taught signs in print form: ch, the, in wordsign, full stop
 * @param [measure] "words" (default) running words readable, "signs" contraction uses taught, "distinct" different contractions taught
 * @param [code] "contracted" (default) or "uncontracted", where letters count in place of contractions
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns The share in the shape of text
 */
export function coverage(
  text: unknown[][],
  taught: unknown[][],
  measure?: string,
  code?: string,
  exceptions?: unknown[][],
): unknown[][] {
  return coverageOfTexts(text, taught, measure, { code, exceptions }) as unknown[][];
}

/**
 * Lists the signs of texts that are not taught, most used first.
 * @customfunction UNTAUGHT
 * @param text Print, a cell or a range
 * @param taught The taught signs in print form: ch, the, in wordsign, full stop
 * @param [code] "contracted" (default) or "uncontracted"
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Rows of sign, times used, a word that has it; #N/A where all are taught
 */
export function untaught(
  text: unknown[][],
  taught: unknown[][],
  code?: string,
  exceptions?: unknown[][],
): unknown[][] {
  return untaughtRows(text, taught, { code, exceptions }) as unknown[][];
}

/**
 * Lists the signs to teach next, best first: each time the one that makes most running words readable.
 * @customfunction NEXT
 * @param text Print, a cell or a range; blank for common words of English by their frequency
 * @param taught The taught signs in print form: ch, the, in wordsign, full stop
 * @param [n] Signs at most, a whole number from 1; 10 unless given
 * @param [code] "contracted" (default) or "uncontracted", where letters are ranked
 * @param [exceptions] Two columns, word and braille, that win over the engine
 * @returns Rows of sign, kind, running words gained (of a million where text is blank), share readable then
 */
export function next(
  text: unknown[][],
  taught: unknown[][],
  n?: number,
  code?: string,
  exceptions?: unknown[][],
): unknown[][] {
  return nextRows(text, taught, n, { code, exceptions }) as unknown[][];
}

/**
 * Lists the signs of Unified English Braille.
 * @customfunction SIGNS
 * @param [kind] One kind, such as shortform, strong-groupsign, letter, digit, punctuation, indicator; all unless given
 * @returns Rows of sign, cells, dots, kind, rule section
 */
export function signs(kind?: unknown): unknown[][] {
  return giveRows([[[kind]]], () => signRows(kind));
}

/**
 * Makes a drill: words that use a wanted sign and otherwise only taught ones, then lines of signs where too few fit.
 * @customfunction DRILL
 * @param signs The signs to practise, in print form
 * @param taught The taught signs in print form: ch, the, in wordsign, full stop
 * @param [n] Rows, a whole number from 1 to 10,000; 10 unless given
 * @param [maxCells] Cells a word or a line of signs at most; no limit unless given
 * @param [words] Words or texts to choose from; the built-in words unless given
 * @param [seed] A number; the same seed gives the same drill; 1 unless given
 * @param [code] "contracted" (default) or "uncontracted"
 * @returns Rows of words in print; a line of signs is Unicode braille
 */
export function drill(
  signs: unknown[][],
  taught: unknown[][],
  n?: number,
  maxCells?: number,
  words?: unknown[][],
  seed?: number,
  code?: string,
): unknown[][] {
  return drillRows(signs, taught, { n, maxCells, words, seed, code }) as unknown[][];
}

/**
 * Words read correctly a minute: 60 (words - errors) / seconds.
 * @customfunction WCPM
 * @param words Words attempted, a cell or a range
 * @param errors Words misread, at most as many as words
 * @param seconds Time taken in seconds, 1 or more; a clock time such as 1:30 is part of a day and gives #NUM!
 * @returns Words read correctly a minute
 */
export function wcpm(words: unknown[][], errors: unknown[][], seconds: unknown[][]): unknown[][] {
  return mapCells([words, errors, seconds], rateOfCells);
}

/**
 * The share of attempted words that were read correctly, from 0 to 1.
 * @customfunction ACCURACY
 * @param words Words attempted, more than 0, a cell or a range
 * @param errors Words misread; more errors than words give #NUM!
 * @returns The share, from 0 to 1
 */
export function accuracy(words: unknown[][], errors: unknown[][]): unknown[][] {
  return mapCells([words, errors], accuracyOfCells);
}

/**
 * Counts marks of trials: one row of correct, opportunities, prompted and no response.
 * @customfunction TRIALS
 * @param marks + or 1 correct, - or 0 wrong, P prompted, NR no response, A absent; ticks and crosses too
 * @returns Correct, opportunities, prompted, no response
 */
export function trials(marks: unknown[][]): unknown[][] {
  return giveRows([marks], () => trialsOfCells(asBlock(marks)));
}

/**
 * Scores a reading: one row of words, correct, misread, left out, swapped, added, accuracy and two rates. Errors are words misread, left out, told after the wait, and each word of a swapped pair; words added or repeated and corrected tries are none.
 * @customfunction READING
 * @param expected The text as printed, a cell or a range
 * @param heard The words heard: (sc) follows a corrected try, (told) a word told after the wait or stands in its place, ] at the end where the attempt stopped; a hyphen where nothing was read
 * @param [seconds] Time taken in seconds, 1 or more; both rates are blank unless given
 * @param [code] "contracted" (default), "uncontracted", or another table: the code whose cells are counted
 * @returns Words, correct, misread, left out, swapped, added, accuracy, words correct a minute, cells a minute
 */
export function reading(
  expected: unknown[][],
  heard: unknown[][],
  seconds?: unknown,
  code?: string,
): unknown[][] {
  return readingRow(expected, heard, seconds, code) as unknown[][];
}

/**
 * Lists what departed from a text that was read aloud, with the signs in each missed word.
 * @customfunction MISCUES
 * @param expected The text as printed, a cell or a range
 * @param heard The words heard, with the marks that READING takes
 * @param [code] "contracted" (default) or "uncontracted"
 * @returns Rows of position, expected, heard, kind (misread, left out, swapped, told, added, repeated, self-corrected), signs
 */
export function miscues(expected: unknown[][], heard: unknown[][], code?: string): unknown[][] {
  return miscueRows(expected, heard, code) as unknown[][];
}

/**
 * Scores writing, cell by cell: one row of cells expected, right, changed, left out, added, and two shares. Ranges with as many cells are compared item by item. Dot accuracy is 1 less the dots that differ of the dots in either, over all pairs of cells.
 * @customfunction WRITING
 * @param expected The print that was to be written, or Unicode braille
 * @param written Unicode braille, dot numbers joined by hyphens (125-15, 0 a blank) or ASCII braille; a space where nothing was written
 * @param [code] "contracted" (default), "uncontracted", another table, or "signs" where the items are signs
 * @returns Cells expected, right, changed, left out, added, cell accuracy, dot accuracy
 */
export function writing(expected: unknown[][], written: unknown[][], code?: string): unknown[][] {
  return writingRow(expected, written, code) as unknown[][];
}

/**
 * Lists the cells that were not written as expected and what happened: missed dot, added dot, reversal, inversion, one row lower, contraction not used and so on.
 * @customfunction CELLERRORS
 * @param expected The print that was to be written, or Unicode braille
 * @param written Unicode braille, dot numbers joined by hyphens (125-15, 0 a blank) or ASCII braille; a space where nothing was written
 * @param [code] "contracted" (default), "uncontracted", another table, or "signs" where the items are signs
 * @returns Rows of position, expected cell, written cell, dots expected, dots written, kind of error
 */
export function cellerrors(expected: unknown[][], written: unknown[][], code?: string): unknown[][] {
  return cellErrorRows(expected, written, code) as unknown[][];
}

/**
 * How fast scores change: one row of change a week, low and high (95 %), and points.
 * @customfunction TREND
 * @param dates The dates of the scores
 * @param scores One score for each date; pairs with a blank are skipped
 * @param [method] "theil-sen" (default) or "least-squares"
 * @returns Change a week, low, high, points; low and high are #N/A under 6 points
 */
export function trend(dates: unknown[][], scores: unknown[][], method?: string): unknown[][] {
  return giveRows([dates, scores, [[method]]], () => trendOfCells(dates, scores, method));
}

/**
 * The value of the aim line on a date, held at the goal after the goal's date.
 * @customfunction AIM
 * @param startDate Date at which the aim line starts
 * @param startScore Score at the start
 * @param goalDate Date of the goal, after the start date
 * @param goalScore Score of the goal
 * @param date The date asked about, a cell or a range
 * @returns The aim line's value
 */
export function aim(
  startDate: unknown[][],
  startScore: unknown[][],
  goalDate: unknown[][],
  goalScore: unknown[][],
  date: unknown[][],
): unknown[][] {
  return mapCells([startDate, startScore, goalDate, goalScore, date], aimOfCells);
}

/**
 * Whether scores are on the way to the goal: too few points, below aim, unclear, on aim, above aim or goal met.
 * @customfunction VERDICT
 * @param dates The dates of the scores, without those before a change of phase
 * @param scores One score for each date; pairs with a blank are skipped
 * @param startDate Date at which the aim line starts
 * @param startScore Score at the start
 * @param goalDate Date of the goal, after the start date
 * @param goalScore Score of the goal; under the start, lower is better
 * @returns The verdict in words
 */
export function verdict(
  dates: unknown[][],
  scores: unknown[][],
  startDate: unknown,
  startScore: unknown,
  goalDate: unknown,
  goalScore: unknown,
): unknown {
  const ends = [startDate, startScore, goalDate, goalScore];
  return giveRows([dates, scores, [ends]], () => verdictOfCells(dates, scores, ends))[0]?.[0];
}

/**
 * When the trend reaches the goal if it goes on: one row of date, earliest and latest (95 %).
 * @customfunction REACHES
 * @param dates The dates of the scores, on six days or more
 * @param scores One score for each date; several a day count by their median; pairs with a blank are skipped
 * @param goal Score of the goal
 * @returns Date, earliest, latest; #N/A where the trend may be level, goes away from the goal, or has passed it
 */
export function reaches(dates: unknown[][], scores: unknown[][], goal: unknown): unknown[][] {
  return giveRows([dates, scores, [[goal]]], () => reachOfCells(dates, scores, goal));
}

/**
 * The factor by which a rate grows a week; 2 is doubled in seven days.
 * @customfunction CELERATION
 * @param dates The dates of the rates
 * @param rates One rate for each date, above 0 because 0 has no logarithm (#NUM!); pairs with a blank are skipped
 * @returns The factor a week
 */
export function celeration(dates: unknown[][], rates: unknown[][]): unknown {
  return giveRows([dates, rates], () => celerationOfCells(dates, rates))[0]?.[0];
}

/**
 * Non-overlap of all pairs: in how many pairs the score after is better, 0 to 1, 0.5 is chance; with its interval.
 * @customfunction NAP
 * @param before The scores before the change
 * @param after The scores after it
 * @param [lowerIsBetter] TRUE where fewer is better, such as errors; FALSE unless given
 * @returns NAP, low, high (95 %)
 */
export function nap(before: unknown[][], after: unknown[][], lowerIsBetter?: boolean): unknown[][] {
  return giveRows([before, after, [[lowerIsBetter]]], () => napOfCells(before, after, lowerIsBetter));
}

/**
 * The change of the mean in percent, corrected for few scores; it says what came after, not because of what.
 * @customfunction CHANGE
 * @param before The scores before the change, two or more, 0 or more and not all 0 (#NUM!)
 * @param after The scores after it, likewise
 * @returns Percentage change, low, high (95 %)
 */
export function change(before: unknown[][], after: unknown[][]): unknown[][] {
  return giveRows([before, after], () => changeOfCells(before, after));
}

/**
 * The date on which a sign was mastered, or: not yet.
 * @customfunction MASTERED
 * @param dates The dates of the trials
 * @param correct How many were correct; more than opportunities give #NUM!
 * @param opportunities How many were asked; days with too few are pooled with the next
 * @param [share] The share that counts, above 0 and at most 1; 0.8 unless given
 * @param [run] Consecutive occasions, such as 3 (default), or text such as "3 of 5"
 * @param [least] Opportunities that make an occasion; 10 unless given
 * @returns The date, or: not yet
 */
export function mastered(
  dates: unknown[][],
  correct: unknown[][],
  opportunities: unknown[][],
  share?: number,
  run?: unknown,
  least?: number,
): unknown {
  const trials = [dates, correct, opportunities] as const;
  const wanted = { share, run, least };
  return giveRows([...trials, [[share, run, least]]], () => masteredOfCells(trials, wanted))[0]?.[0];
}

/**
 * The share that a pupil is expected to get right, with forgetting: one row of share, low and high (95 %).
 * @customfunction KNOWN
 * @param dates The dates of the trials
 * @param correct How many were correct; more than opportunities give #NUM!
 * @param opportunities How many were asked
 * @param [asOf] The date asked about; the last date unless given, and later trials take no part
 * @returns Expected share right, low, high
 */
export function known(
  dates: unknown[][],
  correct: unknown[][],
  opportunities: unknown[][],
  asOf?: unknown,
): unknown[][] {
  const trials = [dates, correct, opportunities] as const;
  return giveRows([...trials, [[asOf]]], () => knownOfCells(trials, asOf));
}

/**
 * The date on which to check a sign again, from how well it was known on each date; it judges no mastery.
 * @customfunction REVIEW
 * @param dates The dates of the trials
 * @param correct How many were correct; more than opportunities give #NUM!
 * @param opportunities How many were asked
 * @returns The date
 */
export function review(dates: unknown[][], correct: unknown[][], opportunities: unknown[][]): unknown {
  const trials = [dates, correct, opportunities] as const;
  return giveRows(trials, () => reviewOfCells(trials))[0]?.[0];
}
