import type { CellError, CellValue } from "../../domain/cell-value";
import { parseNumberText, type TypingSettings } from "../number-input";
import { formatPlainNumber } from "./number-text";
import { isError, makeError } from "./value";

/** A value as a number: empty is 0, TRUE is 1, text is read as typed; other text is #VALUE!. */
export function toNumber(value: CellValue, settings: TypingSettings): number | CellError {
  if (typeof value === "number") return value;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "object") return value;
  const plain = /^[+-]?\d+(?:\.\d+)?$/.test(value) ? Number(value) : parseNumberText(value, settings)?.value;
  return plain ?? makeError("#VALUE!", `A number is needed here, not the text “${shorten(value)}”.`);
}

/** A value as text: empty is "", numbers in full. */
export function toText(value: CellValue): string | CellError {
  if (typeof value === "string") return value;
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? formatPlainNumber(value) : value;
}

/** A value as TRUE or FALSE: numbers other than 0 are TRUE, empty is FALSE, text only where it says so. */
export function toLogical(value: CellValue): boolean | CellError {
  if (typeof value === "boolean") return value;
  if (value === null) return false;
  if (typeof value === "number") return value !== 0;
  if (typeof value === "object") return value;
  if (/^true$/i.test(value)) return true;
  if (/^false$/i.test(value)) return false;
  return makeError("#VALUE!", `TRUE or FALSE is needed here, not the text “${shorten(value)}”.`);
}

/** A text short enough for a message. */
export const shorten = (text: string): string => (text.length > 30 ? `${text.slice(0, 29)}…` : text);

const KIND_ORDER = { number: 0, string: 1, boolean: 2 } as const;

/**
 * How two values compare: negative, 0 or positive. Numbers come before text, text before FALSE and TRUE; text
 * regardless of case; an empty cell counts as the other value's 0, "" or FALSE.
 */
export function compareValues(a: CellValue, b: CellValue): number | CellError {
  if (isError(a)) return a;
  if (isError(b)) return b;
  const left = a ?? emptyLike(b);
  const right = b ?? emptyLike(a);
  const [leftKind, rightKind] = [kindOf(left), kindOf(right)];
  if (leftKind !== rightKind) return leftKind - rightKind;
  if (typeof left === "string" && typeof right === "string") return compareTexts(left, right);
  return Number(left) - Number(right);
}

const collator = new Intl.Collator("en", { sensitivity: "accent" });

/** How two texts sort, regardless of case. */
export function compareTexts(a: string, b: string): number {
  if (a === b) return 0;
  const [left, right] = [a.toLowerCase(), b.toLowerCase()];
  if (left === right) return 0;
  return collator.compare(left, right) || (left < right ? -1 : 1);
}

const kindOf = (value: number | string | boolean): number =>
  KIND_ORDER[typeof value as keyof typeof KIND_ORDER];

function emptyLike(other: CellValue): number | string | boolean {
  if (typeof other === "string") return "";
  return typeof other === "boolean" ? false : 0;
}
