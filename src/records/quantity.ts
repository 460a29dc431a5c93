import { tidyText } from "./cell-text";

/** A number as text holds it, and what stood after it (`wpm`, `%`, `errors`). */
export interface Quantity {
  readonly value: number;
  readonly suffix: string;
}

/** Some of a total: `45/50`, `45 out of 50`. */
export interface Fraction {
  readonly part: number;
  readonly total: number;
}

// Units that teachers write after a number; anything else ("6o", "62ish") is a slip and no number.
const UNIT =
  /^(?:%|percent|per cent|pct|[a-z]{0,4}pm|(?:correct )?(?:words?|wds?|w|letters?|signs?|cells?)(?: correct| read| right)?(?: ?(?:per|\/|a|in a) ?(?:min(?:ute)?|m))?|errors?|errs?|mistakes?|miscues?|sec(?:ond)?s?|s|min(?:ute)?s?|m|correct|right|wrong|points?|pts?|marks?|trials?|items?|contractions?|symbols?|prompts?)\.?$/i;

const NUMBER = String.raw`[+-]?(?:\d+(?:[.,]\d+)*|[.,]\d+)`;

/** A number with a decimal point or comma; undefined where a comma could mean either thing, as in `1,234`. */
function parseNumber(text: string): number | undefined {
  const commas = text.split(",").length - 1;
  const points = text.split(".").length - 1;
  if (commas === 0 && points <= 1) return Number(text);
  if (commas === 1 && points === 0)
    return /,\d{3}$/.test(text) && !/^[+-]?0?,/.test(text) ? undefined : Number(text.replace(",", "."));
  if (/^[+-]?\d{1,3}(?:,\d{3})+\.\d+$/.test(text)) return Number(text.replaceAll(",", ""));
  if (/^[+-]?\d{1,3}(?:\.\d{3})+,\d+$/.test(text)) return Number(text.replaceAll(".", "").replace(",", "."));
  return undefined;
}

/**
 * Reads a number with a word after it at most: `62`, `62,5`, `62 wpm`, `90 %`, full-width digits too.
 *
 * @returns `"ambiguous"` where a comma followed by three digits may mean a decimal or a thousand
 */
export function parseQuantity(text: string): Quantity | "ambiguous" | undefined {
  const found = new RegExp(`^(${NUMBER}) ?(%|[a-z][a-z./ ]*)?$`, "i").exec(tidyText(text));
  if (!found) return undefined;
  const value = parseNumber(found[1] ?? "");
  if (value === undefined || Number.isNaN(value)) return "ambiguous";
  const suffix = (found[2] ?? "").trim();
  return suffix === "" || UNIT.test(suffix) ? { value, suffix } : undefined;
}

/** Reads `45/50`, `45 / 50`, `45 of 50`, `45 out of 50`. */
export function parseFraction(text: string): Fraction | undefined {
  const found = /^(\d+(?:[.,]\d+)?) ?(?:\/|of|out of) ?(\d+)(?: ?\(?\d+ ?%\)?)?$/i.exec(tidyText(text));
  if (!found) return undefined;
  return { part: Number((found[1] ?? "").replace(",", ".")), total: Number(found[2]) };
}
