import type { ColumnEvidence } from "./column-evidence";
import type { AnyKind } from "./column-kind";

/** What a column holds speaks against a meaning so strongly that no header can outweigh it. */
export const IMPOSSIBLE = -100;

const WORDS = /^(?:words?|wds?|w)\.?$/i;
/** Whether a unit cell says that words are counted. */
export const countsWords = (unit: string): boolean => WORDS.test(unit.trim());

const CODE =
  /^(?:(?:ueb|g|gr|grade|ueb g|ueb grade)? ?[-.]? ?(?:1|2|1\.5|i|ii|one|two)|ueb|(?:partly |fully |part |full )?(?:un)?contracted(?: braille)?|con|unc|uc|c|u|unified english.*|alphabetic|ebae|.*\.(?:ctb|utb|tbl)|nemeth|ueb .*|(?:un)?contr\.?|braille.*grade.*)$/i;
const MEDIUM =
  /^(?:braille(?: ?writer)?|print|large print|lp|display|braille display|slate(?: (?:and|&) stylus)?|stylus|brailler|paper|electronic|refreshable.*|embosse[dr]|embossed braille|audio|tactile|computer|note ?taker|tablet|screen|simbraille|b|p|dual|both|hard ?copy)$/i;
const UNIT =
  /^(?:words?|wds?|letters?|signs?|cells?|contractions?|trials?|items?|symbols?|characters?|sentences?|lines?|w|l)\.?$/i;

const shareOf = (evidence: ColumnEvidence, pattern: RegExp): number =>
  evidence.texts.length === 0
    ? 0
    : evidence.texts.filter((text) => pattern.test(text)).length / evidence.texts.length;

/** Numbers only, with units or without; dates among them are tolerated where a slip can make one (7/10). */
function fitCount(evidence: ColumnEvidence, allowed: number, most = Infinity): number {
  if (allowed < 0.3) return IMPOSSIBLE;
  return (evidence.middle > most ? -6 : 0) + 3 * allowed - 1;
}

function fitSeconds(evidence: ColumnEvidence): number {
  const { share } = evidence;
  if (evidence.timeOfDay > 0.6) return IMPOSSIBLE;
  const times = share("clock", "duration");
  const allowed = times + share("number", "quantity");
  if (allowed < 0.3) return IMPOSSIBLE;
  if (times > 0.5) return 3;
  // Nobody's reading is timed at ten seconds throughout: such numbers are minutes.
  return (evidence.most <= 10 ? -5 : 1) + allowed;
}

function fitText(evidence: ColumnEvidence, numberPenalty: number): number {
  const { share } = evidence;
  if (share("date", "text date") > 0.5) return IMPOSSIBLE;
  const numeric = share("number", "percent", "clock", "duration", "fraction");
  return numeric > 0.5 ? numberPenalty : 1.5;
}

/**
 * How well what a column holds goes with a meaning: from about -10 (hardly) over 0 (it is empty) to 3 (clearly), or
 * {@link IMPOSSIBLE}.
 */
export function fitColumn(kind: AnyKind, evidence: ColumnEvidence): number {
  const { share, filled } = evidence;
  if (filled === 0) return kind === "date" && evidence.nothing > 0 ? -3 : 0;
  const numbers = share("number", "quantity", "percent");
  switch (kind) {
    case "date":
    case "introduced":
    case "startDate":
    case "goalDate": {
      const serials = evidence.least > 30000 && evidence.most < 80000 ? share("number") : 0;
      const dates = share("date", "text date") + serials;
      return dates < 0.3 ? IMPOSSIBLE : 3 * dates;
    }
    case "words":
    case "errors":
    case "opportunities":
      return (
        fitCount(evidence, numbers + 0.9 * share("fraction") + 0.8 * share("date"), 5000) -
        (kind === "words" ? share("percent", "fraction") : 0)
      );
    case "startScore":
    case "goalScore":
      return fitCount(evidence, numbers + share("fraction") + 0.5 * share("quantity"));
    case "correct":
      return (
        fitCount(evidence, Math.max(numbers + share("fraction") + 0.9 * share("date"), evidence.markShare)) -
        share("percent")
      );
    case "score":
      return fitCount(
        evidence,
        Math.max(numbers + share("fraction") + 0.9 * share("date"), evidence.markShare),
      );
    case "accuracy":
      return fitCount(evidence, numbers + share("fraction") + 0.8 * share("date"), 100) + share("percent");
    case "rate":
      return fitCount(evidence, share("number", "quantity") + 0.3 * share("percent") + 0.8 * share("date"));
    case "seconds":
      return fitSeconds(evidence);
    case "minutes":
      if (share("clock", "duration") > 0.5) return IMPOSSIBLE;
      return share("number", "quantity") < 0.3 ? IMPOSSIBLE : evidence.middle > 200 ? -6 : 1.5;
    case "pupil":
      return fitText(evidence, 0) - (evidence.textLength > 30 ? 5 : 0);
    case "sign":
      if (evidence.most > 9 || share("percent", "clock", "duration", "fraction") > 0.3) return IMPOSSIBLE;
      return fitText(evidence, share("number") > 0.9 ? -5 : 0) - (evidence.textLength > 12 ? 2 : 0);
    case "unit":
      return share("text", "mark") < 0.5 ? IMPOSSIBLE : 3 * shareOf(evidence, UNIT);
    case "code":
      return (
        fitText(evidence, evidence.most <= 2 ? 1 : -4) +
        (evidence.texts.length > 0 ? 4 * shareOf(evidence, CODE) - 2 : 0)
      );
    case "medium":
      return fitText(evidence, -6) + (evidence.texts.length > 0 ? 4 * shareOf(evidence, MEDIUM) - 1.5 : 0);
    case "support":
    case "phase":
      return fitText(evidence, 0);
    case "task":
      return fitText(evidence, -3) - 2 * shareOf(evidence, MEDIUM);
    case "material":
      return fitText(evidence, -2) - 2 * shareOf(evidence, MEDIUM);
    case "expected":
    case "response":
      return fitText(evidence, -6);
    case "note":
      return fitText(evidence, -1);
    case "measure":
    case "text":
    case "position":
    case "error kind":
    case "criterion":
    case "comprehension":
    case "other":
      return 0;
    // Columns of lists are known by their headers alone.
    default:
      return 0;
  }
}

/**
 * The one meaning that contents alone can prove under a header that says nothing: dates, m:ss, percentages, 45/50,
 * marks; with its weight.
 */
export function contentAlone(kind: AnyKind, evidence: ColumnEvidence): number {
  const { share, filled } = evidence;
  if (filled < 2) return 0;
  if (kind === "date" && share("date", "text date") >= 0.8) return 4;
  if (kind === "seconds" && share("duration") >= 0.8) return 3.5;
  if (kind === "accuracy" && share("percent") >= 0.8) return 3.5;
  if (kind === "score" && share("fraction") >= 0.8) return 3.5;
  if (kind === "correct" && evidence.markShare >= 0.8 && share("mark") > 0.3) return 3.5;
  return 0;
}
