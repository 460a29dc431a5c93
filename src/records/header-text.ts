/** A header's words made alike: lower case, singular, abbreviations written out, units and signs as words. */

const ABBREVIATIONS: Readonly<Record<string, string>> = {
  dt: "date",
  dte: "date",
  dates: "date",
  wk: "week",
  stud: "student",
  stu: "student",
  pup: "pupil",
  children: "child",
  wd: "word",
  wds: "word",
  wrd: "word",
  wrds: "word",
  err: "error",
  errs: "error",
  eror: "error",
  mist: "mistake",
  misc: "miscue",
  corr: "correct",
  corrects: "correct",
  cor: "correct",
  crct: "correct",
  acc: "accuracy",
  accur: "accuracy",
  att: "attempted",
  attd: "attempted",
  attempt: "attempted",
  attempts: "attempted",
  opp: "opportunity",
  opps: "opportunity",
  opportunities: "opportunity",
  min: "minute",
  mins: "minute",
  mn: "minute",
  mns: "minute",
  sec: "second",
  secs: "second",
  pct: "percent",
  perc: "percent",
  prcnt: "percent",
  percentage: "percent",
  resp: "response",
  exp: "expected",
  expd: "expected",
  lvl: "level",
  lev: "level",
  mat: "material",
  supp: "support",
  ph: "phase",
  ltr: "letter",
  ltrs: "letter",
  contr: "contraction",
  psg: "passage",
  pass: "passage",
  tot: "total",
  ttl: "total",
  num: "number",
  nr: "number",
  no: "number",
  nos: "number",
  obs: "observation",
  comms: "comment",
  accurate: "accuracy",
  accurately: "accuracy",
  correctly: "correct",
  ques: "question",
  qs: "question",
  stories: "story",
  activities: "activity",
  abilities: "ability",
  inits: "initial",
  practise: "practice",
  colour: "color",
  programme: "program",
};

const FILLERS = new Set([
  "of",
  "the",
  "a",
  "an",
  "in",
  "number",
  "for",
  "and",
  "or",
  "was",
  "were",
  "is",
  "to",
  "by",
  "with",
  "this",
  "my",
  "we",
]);

const KEEP_S = new Set([
  "pass",
  "class",
  "less",
  "miss",
  "news",
  "braille",
  "success",
  "process",
  "progress",
  "ss",
  "address",
  "focus",
  "status",
  "analysis",
  "basis",
  "plus",
  "minus",
  "thus",
]);

const singular = (word: string): string =>
  word.length > 3 && word.endsWith("s") && !KEEP_S.has(word) && !word.endsWith("ss")
    ? word.slice(0, -1)
    : word;

/**
 * A header as plain words: `"No. of Errs (words)"` is `error word`, `"Words/min"` is `word per minute`, `"%"` is
 * `percent`, `"min:sec"` is `minsec`.
 */
export function normaliseHeader(header: string): string {
  return header
    .normalize("NFKC")
    .replace(/([a-z])([A-Z][a-z])/g, "$1 $2")
    .toLowerCase()
    .replace(/[’'`´]s\b/g, "")
    .replace(/[’'`´]/g, "")
    .replace(
      /\b(?:h{1,2}|hrs?|hours?) ?: ?(?:m{1,2}|mins?|minutes?)(?: ?: ?(?:s{1,2}|secs?|seconds?))?\b/g,
      " hourmin ",
    )
    .replace(/\b(?:m{1,2}|mins?|minutes?) ?[:.] ?(?:s{1,2}|secs?|seconds?)\b/g, " minsec ")
    .replace(/\b(?:mins?|minutes?) ?(?:&|and|\/|\+|,) ?(?:secs?|seconds?)\b/g, " minsec ")
    .replace(/%(?:age)?/g, " percent ")
    .replace(/\bper cent(?:age)?\b/g, " percent ")
    .replace(/#|№|\bn[o°º]\.(?=\s|$)/g, " ")
    .replace(/\/ ?(?:1 )?(?:minute|mins?|m)\b\.?/g, " per minute ")
    .replace(/\b(?:a|each|in (?:1|one|a)|per (?:1|one)|1) (?:minute|min)\b/g, " per minute ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .split(" ")
    .map((word) => ABBREVIATIONS[word] ?? singular(word))
    .map((word) => ABBREVIATIONS[word] ?? word)
    .filter((word) => !FILLERS.has(word))
    .join(" ");
}
