import { format, isDateFormat, isValidFormat } from "numfmt";
import type { CellValue } from "../../domain/cell-value";
import { DAYS_1904 } from "../calendar";
import { toText } from "../engine/coercion";
import { FormulaError, isError, makeError, type Value } from "../engine/value";
import type { Scope } from "../engine/program";
import { parseNumberText } from "../number-input";
import { collectCells, readRows, refuseError } from "./collecting";
import { wildcardPattern } from "./criteria";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { array, integer, logical, many, optional, range, text, trailing, value } from "./parameters";

/** Code page 1252, positions 128 to 159: what CHAR gives there. */
const CHAR_128 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

const NEGATIVE = makeError("#VALUE!", "The number of characters cannot be negative.");

function requireText(cell: CellValue): string {
  const read = toText(cell);
  if (isError(read)) throw new FormulaError(read.error, read.message);
  return read;
}

/** Where one text stands in another, counted from 1, at the earliest from `start` on. */
function findText(within: string, start: number, position: (from: string) => number): Value {
  if (start < 1 || start > within.length + 1) return makeError("#VALUE!", "The start lies outside the text.");
  const at = position(within.slice(start - 1));
  return at < 0 ? makeError("#VALUE!", "The text is not found.") : at + start;
}

function substitute(given: string, old: string, fresh: string, instance: number | undefined): Value {
  if (old === "") return given;
  if (instance === undefined) return given.replaceAll(old, () => fresh);
  if (instance < 1) return makeError("#VALUE!", "The instance is 1 or more.");
  let at = -1;
  for (let found = 0; found < instance; found++) {
    at = given.indexOf(old, at < 0 ? 0 : at + old.length);
    if (at < 0) return given;
  }
  return given.slice(0, at) + fresh + given.slice(at + old.length);
}

/** A value shown through a number format. */
function formatValue(given: CellValue, pattern: string, scope: Scope): Value {
  if (pattern === "") return "";
  if (!isValidFormat(pattern)) return makeError("#VALUE!", `“${pattern}” is not a number format.`);
  const read =
    typeof given === "string" ? (parseNumberText(given, scope.engine.settings)?.value ?? given) : given;
  if (typeof read === "boolean") return read ? "TRUE" : "FALSE";
  const number = read ?? 0;
  const shifted =
    typeof number === "number" && scope.engine.date1904 && isDateFormat(pattern)
      ? number + DAYS_1904
      : number;
  const shown = format(pattern, shifted, {
    throws: false,
    dateErrorNumber: false,
    dateSpanLarge: false,
    overflow: "\u0000",
  });
  return shown.includes("\u0000") ? makeError("#VALUE!", "The number is no date.") : shown;
}

/** The words of a text with a capital at the start and after everything that is no letter. */
const proper = (given: string): string =>
  given
    .toLowerCase()
    .replaceAll(
      /(^|[^\p{L}])(\p{L})/gu,
      (_, before: string, letter: string) => before + letter.toUpperCase(),
    );

function splitAround(
  given: string,
  delimiter: string,
  instance: number,
  fallback: CellValue | undefined,
  give: (at: number) => string,
): Value {
  const places: number[] = [];
  for (
    let at = given.indexOf(delimiter);
    at >= 0 && delimiter !== "";
    at = given.indexOf(delimiter, at + delimiter.length)
  )
    places.push(at);
  const place = instance > 0 ? places[instance - 1] : places.at(instance);
  if (place === undefined) return fallback ?? makeError("#N/A", `“${delimiter}” is not found.`);
  return give(place);
}

/** Texts and their parts. */
export const TEXT: readonly OrdinaryFunction[] = [
  defineFunction("TEXT", [value, text], (scope, given, pattern) => formatValue(given, pattern, scope)),
  defineFunction("VALUE", [value], (scope, given) => {
    if (typeof given === "number") return given;
    if (given === null) return 0;
    const number =
      typeof given === "string" ? parseNumberText(given, scope.engine.settings)?.value : undefined;
    return number ?? makeError("#VALUE!", "The text is no number.");
  }),
  defineFunction("TEXTJOIN", [text, logical, many(range)], (scope, delimiter, skipEmpty, values) => {
    const texts = values
      .flatMap((each) => collectCells(each, scope))
      .map((cell) => requireText(refuseError(cell)));
    return (skipEmpty ? texts.filter((each) => each !== "") : texts).join(delimiter);
  }),
  ...["CONCAT", "CONCATENATE"].map((name) =>
    defineFunction(name, [many(range)], (scope, values) =>
      values
        .flatMap((each) => collectCells(each, scope))
        .map((cell) => requireText(refuseError(cell)))
        .join(""),
    ),
  ),
  defineFunction("LEFT", [text, trailing(integer)], (_, given, count = 1) =>
    count < 0 ? NEGATIVE : given.slice(0, count),
  ),
  defineFunction("RIGHT", [text, trailing(integer)], (_, given, count = 1) =>
    count < 0 ? NEGATIVE : given.slice(Math.max(0, given.length - count)),
  ),
  defineFunction("MID", [text, integer, integer], (_, given, start, count) =>
    start < 1 || count < 0
      ? makeError("#VALUE!", "The start is 1 or more, the number of characters 0 or more.")
      : given.slice(start - 1, start - 1 + count),
  ),
  defineFunction("LEN", [text], (_, given) => given.length),
  defineFunction("FIND", [text, text, optional(integer)], (_, wanted, within, start = 1) =>
    findText(within, start, (rest) => rest.indexOf(wanted)),
  ),
  defineFunction("SEARCH", [text, text, optional(integer)], (_, wanted, within, start = 1) =>
    findText(within, start, (rest) => rest.search(wildcardPattern(wanted, false))),
  ),
  defineFunction("SUBSTITUTE", [text, text, text, optional(integer)], (_, given, old, fresh, instance) =>
    substitute(given, old, fresh, instance),
  ),
  defineFunction("REPLACE", [text, integer, integer, text], (_, given, start, count, fresh) =>
    start < 1 || count < 0 ? NEGATIVE : given.slice(0, start - 1) + fresh + given.slice(start - 1 + count),
  ),
  defineFunction("TRIM", [text], (_, given) => given.replaceAll(/ +/g, " ").replaceAll(/^ | $/g, "")),
  defineFunction("CLEAN", [text], (_, given) => given.replaceAll(/[\u0000-\u001f]/g, "")),
  defineFunction("UPPER", [text], (_, given) => given.toUpperCase()),
  defineFunction("LOWER", [text], (_, given) => given.toLowerCase()),
  defineFunction("PROPER", [text], (_, given) => proper(given)),
  defineFunction("EXACT", [text, text], (_, a, b) => a === b),
  defineFunction("REPT", [text, integer], (_, given, count) =>
    count < 0 || given.length * count > 1_000_000
      ? makeError("#VALUE!", "The result would be too long.")
      : given.repeat(count),
  ),
  defineFunction("CHAR", [integer], (_, code) => {
    if (code < 1 || code > 255) return makeError("#VALUE!", "CHAR takes a number from 1 to 255.");
    return code >= 128 && code < 160 ? (CHAR_128[code - 128] ?? "") : String.fromCharCode(code);
  }),
  defineFunction("CODE", [text], (_, given) => {
    if (given === "") return makeError("#VALUE!", "The text is empty.");
    const place = CHAR_128.indexOf(given[0] ?? "");
    const code = given.charCodeAt(0);
    return place >= 0 ? place + 128 : code < 256 ? code : 63;
  }),
  defineFunction("UNICHAR", [integer], (_, code) =>
    code < 1 || code > 0x10_ff_ff || (code >= 0xd8_00 && code < 0xe0_00)
      ? makeError("#VALUE!")
      : String.fromCodePoint(code),
  ),
  defineFunction(
    "UNICODE",
    [text],
    (_, given) => given.codePointAt(0) ?? makeError("#VALUE!", "The text is empty."),
  ),
  defineFunction("T", [range], (scope, given) => {
    const [first = null] = collectCells(given, scope);
    return typeof first === "string" || isError(first) ? first : "";
  }),
  defineFunction("N", [range], (scope, given) => {
    const [first = null] = collectCells(given, scope);
    return typeof first === "number" || isError(first) ? first : first === true ? 1 : 0;
  }),
  defineFunction(
    "TEXTBEFORE",
    [text, text, optional(integer), optional(integer), optional(integer), optional(value)],
    (_, given, delimiter, instance = 1, __, ___, fallback) =>
      splitAround(given, delimiter, instance, fallback, (at) => given.slice(0, at)),
  ),
  defineFunction(
    "TEXTAFTER",
    [text, text, optional(integer), optional(integer), optional(integer), optional(value)],
    (_, given, delimiter, instance = 1, __, ___, fallback) =>
      splitAround(given, delimiter, instance, fallback, (at) => given.slice(at + delimiter.length)),
  ),
  defineFunction(
    "TEXTSPLIT",
    [text, optional(array), optional(array)],
    (scope, given, columns, rows) => {
      const marks = (delimiters: typeof columns): string[] =>
        readRows(delimiters, scope)
          .flat()
          .map(requireText)
          .filter((mark) => mark !== "");
      const split = (whole: string, delimiters: typeof columns): string[] => {
        const escaped = delimiters
          ? marks(delimiters).map((mark) => mark.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&"))
          : [];
        return escaped.length > 0 ? whole.split(new RegExp(escaped.join("|"))) : [whole];
      };
      const lines = split(given, rows).map((line) => split(line, columns));
      const width = Math.max(...lines.map((line) => line.length));
      return lines.map((line) => Array.from({ length: width }, (_, at) => line[at] ?? makeError("#N/A")));
    },
    { fills: true },
  ),
];
