import { parseSignItems } from "../contraction/taught";
import type { Sign } from "../contraction/sign";
import { parseMark } from "./trials";

/** What a listener can mark at a sign that was to be named or copied. */
export const SIGN_MARKS = ["correct", "incorrect", "prompted", "no response"] as const;
export type SignMark = (typeof SIGN_MARKS)[number];

/** A sign of a row and what became of it. */
export interface MarkedSign {
  readonly sign: Sign;
  readonly mark: SignMark;
}

/** None begins like a formula, and none but in words can be taken for braille. */
const WRITTEN: Readonly<Record<SignMark, string>> = {
  correct: "✓",
  incorrect: "✗",
  prompted: "prompted",
  "no response": "no response",
};

/** The marks of a row of signs as its response has them: `✓, ✗, prompted, no response`. */
export const formatSignMarks = (marks: readonly SignMark[]): string =>
  marks.map((mark) => WRITTEN[mark]).join(", ");

/** Signs as the expected text has them, by their names: `ch, in wordsign, full stop`. */
export const formatSigns = (signs: readonly Sign[]): string => signs.map(({ name }) => name).join(", ");

/** A mark that no cells of ASCII braille could be meant by. */
const CLEAR_MARK = /[✓✔✗✘]|prompted|no response/u;

/**
 * The signs of a row with the mark of each: `ch, sh, the` with `✓, ✗, prompted`, or with a run such as `+-P`. Signs
 * marked absent are left out, and so are those after the last mark.
 *
 * @param expected - signs as {@link parseSignItems} reads them
 * @param response - marks, parted by commas, semicolons, line breaks or spaces
 * @param isWriting - where the response could be braille as well: then one mark at least must be none
 * @returns undefined where these are no signs with their marks
 */
export const readMarkedSigns = (
  expected: string,
  response: string,
  isWriting: boolean,
): readonly MarkedSign[] | undefined => {
  if (response.trim() === "" || (isWriting && !CLEAR_MARK.test(response))) return undefined;
  const signs = parseSignItems([expected]);
  if (!signs.ok || signs.value.length === 0) return undefined;
  const outcomes = splitItems(response).map(parseMark);
  if (outcomes.length > signs.value.length) return undefined;
  const marked: MarkedSign[] = [];
  for (const [place, mark] of outcomes.entries()) {
    const sign = signs.value[place];
    if (sign === undefined || mark === undefined) return undefined;
    if (mark !== "absent") marked.push({ sign, mark });
  }
  return marked;
};

const splitItems = (response: string): readonly string[] => {
  const text = response.trim();
  if (/[,;\n]/.test(text)) return text.split(/[,;\n]/).filter((part) => part.trim() !== "");
  if (parseMark(text) !== undefined) return [text];
  const parts = text.split(/\s+/);
  // A run of signs such as ✓✗✓ or ++-.
  return parts.length === 1 ? [...text] : parts;
};
