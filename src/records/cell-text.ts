import type { CellValue } from "../domain/cell-value";

/**
 * A cell's text for comparing and parsing: full-width digits and signs folded, every kind of space and dash made
 * plain, outer blanks cut.
 */
export const tidyText = (text: string): string => (PLAIN.test(text) ? text : fold(text));

/** Plain letters with single spaces between: nothing to fold. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/;

const fold = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(/[\u2010-\u2015\u2212\uFE58\uFE63\uFF0D]/g, "-")
    .replace(/[\u200B-\u200D\u2060\uFEFF]/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** Whether a cell shows nothing: empty, or text of blanks only. */
export const isBlank = (value: CellValue | undefined): boolean =>
  value === null || value === undefined || (typeof value === "string" && tidyText(value) === "");

// Words for "nothing was measured", common practice, no source.
const NOTHING =
  /^(?:(?:on|at|was|had|is|all) (?:an? )?)?(?:(?:school|pupil|student|child|class) )?(?:-+|\.+|\/|\?+|n\.?\s?[/.]?\s?a\.?|n\/?[dtr]|none|nil|null|tbd|tba|not (?:tested|done|given|taken|assessed|probed|in|here|available|applicable|scored|administered|present|at school|today)|no (?:probe|data|test|score|school|lesson|class|session|reading|show)|absent|abs\.?|abscent|absence|away|ill|sick|unwell|excused|missing|holidays?|half[ -]term|vacation|break|closed|school closed|snow day|cancell?ed|postponed|skipped|trip|field trip|out|pupil absent|student absent|teacher absent|left early|refused|fire drill|assembly|appointment|suspended|in hospital|hospital|inset(?: day)?|strike|not seen|no time|did not (?:read|attend|come|test)|didn['’]t (?:read|attend|come|test))(?:[ (,;:].*)?[.!]?$/i;

/** Whether a text says that nothing was measured: "absent", "n/a", "-", "holiday". */
export const saysNothing = (text: string): boolean => NOTHING.test(tidyText(text));

/** Whether a text says that the pupil was not there or no probe was held, as against a mere dash. */
export const saysAbsent = (text: string): boolean => saysNothing(text) && /[a-z]{3}/i.test(text);

const SUMMARY =
  /^(?:(?:[a-z'’.-]+ ){0,2}(?:grand )?(?:sub-?)?(?:totals?|sums?|averages?|avg\.?|ave\.?|means?|medians?|max(?:imum)?|min(?:imum)?|counts?|std\.?(?: dev\.?(?:iation)?)?|sd|standard deviation|range|best|highest|lowest|trend|slope)|(?:goal|target|aim|aim line|criterion|benchmark|norm)s?)(?: (?:score|rate|of|for|this|so|to|wcpm|wpm|words|correct|accuracy|percent|%)(?: .*)?)?(?: ?\(.*\))? ?[:=]?(?: ?[\d.,]+ ?%?)?$/i;

/** Whether a text labels a row of totals, averages or a goal, such as "Total", "Class average:", "Mean (Oct)". */
export const labelsSummary = (text: string): boolean => {
  const tidy = tidyText(text);
  return tidy.length <= 40 && SUMMARY.test(tidy);
};

const AGGREGATE =
  /^=\s*(?:ROUND\(|IFERROR\()?\s*(?:AVERAGE|SUM|MEDIAN|SUBTOTAL|AGGREGATE|MAX|MIN|COUNTA?|STDEV|STDEV\.[SP]|MODE|SLOPE)[A-Z.]*\(/i;

/** Whether a formula sums up other rows: AVERAGE, SUM, MEDIAN, SUBTOTAL and the like at its head. */
export const sumsUp = (formula: string | null): boolean => formula !== null && AGGREGATE.test(formula);
