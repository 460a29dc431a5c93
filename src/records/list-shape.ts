import type { AnyKind } from "./column-kind";
import type { ListName } from "./found-block";
import { matchHeader } from "./header-words";
import { normaliseHeader } from "./header-text";

/** How a list is known: by its headers alone, because its words and texts prove nothing. */
export interface ListShape {
  readonly kind: ListName;
  /** all of these must be there */
  readonly needs: readonly AnyKind[];
  /** and one of these, where there are any */
  readonly oneOf: readonly AnyKind[];
  readonly others: readonly AnyKind[];
}

/** In this order: a table that fits several is the first. Source: common practice, no source. */
const SHAPES: readonly ListShape[] = [
  {
    kind: "miscues",
    needs: ["expected", "response"],
    oneOf: ["position", "error kind"],
    others: ["date", "pupil", "task"],
  },
  {
    kind: "lessons",
    needs: ["date", "minutes"],
    oneOf: ["held", "workedOn"],
    others: ["pupil", "note"],
  },
  { kind: "exceptions", needs: ["word", "braille"], oneOf: [], others: [] },
  { kind: "words", needs: ["word"], oneOf: ["list", "origin", "pupil", "braille"], others: [] },
  { kind: "passages", needs: ["title", "passageText"], oneOf: [], others: [] },
  {
    kind: "pupils",
    needs: ["pupil"],
    oneOf: ["cellsPerLine", "minutesPlanned", "teacher"],
    others: ["code", "note"],
  },
];

/** Kinds that say that a table is about probes or goals, where a list does not ask for them itself. */
const STRANGE: readonly AnyKind[] = [
  "date",
  "errors",
  "correct",
  "rate",
  "accuracy",
  "score",
  "seconds",
  "sign",
  "goalScore",
  "goalDate",
  "response",
];

/** Headers after {@link normaliseHeader}. Source: common practice, no source. */
const HEADERS: Partial<Record<AnyKind, RegExp>> = {
  teacher: /^(teacher|tutor|qtvi|tvi|specialist teacher|teacher name|name teacher)$/,
  cellsPerLine:
    /^(cell per line|cell line|line length|cell|display cell|display length|cell display|cell per row|cell row)$/,
  minutesPlanned:
    /^((weekly )?minute (planned|per week|week|weekly|due|agreed|in plan|plan)|(planned|weekly|agreed) minute|minute planned (per )?week|service minute)$/,
  minutes: /^(minute|minute given|length minute|duration minute|minute taught|lesson minute|minute lesson)$/,
  held: /^(held|lesson held|attended|attendance|took place|taken place|given|status|present|happened|done)$/,
  workedOn: /^(worked on|work done|focus|content|topic|what did|what done|lesson content|activity|task)$/,
  word: /^(word|drill word|practice word|spelling)$/,
  list: /^(list|word list|set|group|theme|topic|list name)$/,
  origin: /^(source|origin|from|where from|taken from|book|found)$/,
  title: /^(title|passage|passage title|story|name|text title|passage name)$/,
  passageText: /^(text|passage text|full text|whole text|story text|words passage|passage word)$/,
  braille: /^(braille|cell|braille wanted|exception|own braille|braille word|braille own)$/,
  expected: /^(expected|expected word|word|target word|word expected|print|text word|word text)$/,
  position: /^(position|word position|place|at word|word)$/,
};

const NEAR = 0.75;
const CLEAR = 0.9;

/** A heading that only a list of words uses, and that is too short to survive its normalising: for whom a word is. */
const FOR_WHOM = /^\s*for(?: whom)?\s*$/i;

const fits = (header: string, kind: AnyKind): boolean => {
  const pattern = HEADERS[kind];
  const words = normaliseHeader(header);
  if (pattern?.test(words) === true) return true;
  if (kind === "pupil" && FOR_WHOM.test(header)) return true;
  // What has words of its own here must not be taken for what those words mean among probes.
  return (
    (pattern === undefined || kind === "expected" || kind === "position") &&
    (matchHeader(header).get(kind) ?? 0) >= NEAR
  );
};

/** Gives each header a meaning of the shape, each meaning once, or undefined where the shape does not fit. */
function assign(shape: ListShape, headers: readonly string[]): (AnyKind | undefined)[] | undefined {
  const kinds: (AnyKind | undefined)[] = headers.map(() => undefined);
  for (const kind of [...shape.needs, ...shape.oneOf, ...shape.others]) {
    const place = headers.findIndex((header, at) => kinds[at] === undefined && fits(header, kind));
    if (place >= 0) kinds[place] = kind;
    else if (shape.needs.includes(kind)) return undefined;
  }
  if (shape.oneOf.length > 0 && !shape.oneOf.some((kind) => kinds.includes(kind))) return undefined;
  const isStrange = headers.some(
    (header, at) =>
      kinds[at] === undefined && STRANGE.some((kind) => (matchHeader(header).get(kind) ?? 0) >= CLEAR),
  );
  return isStrange ? undefined : kinds;
}

/** What a row of headers is as a list. */
export interface ListHeaders {
  readonly kind: ListName;
  /** one a header; undefined for a column that is none of ours */
  readonly kinds: readonly (AnyKind | undefined)[];
}

/**
 * The lists that headers may stand for, the most telling first: `Word, Braille` is a list of exceptions or one of words
 * with their braille, and only the cells beneath can tell.
 */
export function matchLists(headers: readonly string[]): readonly ListHeaders[] {
  return SHAPES.flatMap((shape) => {
    const kinds = assign(shape, headers);
    return kinds ? [{ kind: shape.kind, kinds }] : [];
  });
}

const LONGEST_HEADER = 40;
const firsts = new Map<string, boolean>();

/** Whether a text can be the first header of a list; a memo, because it is asked for every row of a long sheet. */
export function couldHeadList(text: string): boolean {
  if (text.length > LONGEST_HEADER) return false;
  const before = firsts.get(text);
  if (before !== undefined) return before;
  const could = SHAPES.some(({ needs, oneOf, others }) =>
    [...needs, ...oneOf, ...others].some((kind) => fits(text, kind)),
  );
  if (firsts.size > 5000) firsts.clear();
  firsts.set(text, could);
  return could;
}
