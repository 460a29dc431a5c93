import type { CellValue } from "../domain/cell-value";
import { countMarks } from "../domain/probe/trials";
import type { Day } from "../domain/units";
import type { CellInput } from "../ports/sheet";
import { tidyText } from "./cell-text";
import { formatDayLike, formatIsoDay } from "./day-style";
import { parseDayText } from "./day-text";
import type { DayOrder } from "./day-text";
import { parseDurationText } from "./duration";
import type { ClockMeaning } from "./duration";
import { normaliseHeader } from "./header-text";
import { classifyFormat } from "./number-format";
import { parseQuantity } from "./quantity";

/** The cells of one column that were typed, newest last, and the format of the cell that is to be filled. */
export interface ColumnStyle {
  readonly header: string;
  readonly typed: readonly { readonly value: CellValue; readonly format: string }[];
  readonly nextFormat: string;
}

const round = (value: number): number => Math.round(value * 1e9) / 1e9;
const two = (number: number): string => String(number).padStart(2, "0");

/** The newest cell for which a reading exists. */
const newest = <T>(
  style: ColumnStyle,
  read: (value: CellValue, format: string) => T | undefined,
): T | undefined => {
  for (let at = style.typed.length - 1; at >= 0; at -= 1) {
    const cell = style.typed[at];
    const found = cell && read(cell.value, cell.format);
    if (found !== undefined) return found;
  }
  return undefined;
};

/** A day as the column writes it: a true date, or text in her form and order. */
export function styleDay(style: ColumnStyle, day: Day, order: DayOrder | undefined): CellInput {
  const example = newest(style, (value) =>
    typeof value === "number" ? value : typeof value === "string" && parseDayText(value) ? value : undefined,
  );
  if (typeof example === "number") return day;
  // Without a date to go by, a bare serial under a general format would show as a number.
  if (example === undefined) return classifyFormat(style.nextFormat) === "date" ? day : formatIsoDay(day);
  const texts = style.typed.flatMap(({ value }) => (typeof value === "string" ? [value] : []));
  const padded = texts.some((text) => /(?:^|[^\d])0\d(?:\D|$)/.test(text));
  return formatDayLike(example, day, order ?? "dmy", padded);
}

/** A time as the column writes it: seconds, m:ss as text or as a part of a day, a clock value, text with units. */
export function styleSeconds(style: ColumnStyle, seconds: number, clock: ClockMeaning): CellInput {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  const example = newest(style, (value, format) =>
    typeof value === "number"
      ? { format }
      : typeof value === "string" && parseDurationText(value)
        ? { text: tidyText(value) }
        : undefined,
  );
  const format = example?.format ?? (example ? "@" : style.nextFormat);
  const shown = classifyFormat(format);
  if (shown === "minutes and seconds") return seconds / 86400;
  if (shown === "clock") return (clock === "m:ss" ? seconds * 60 : seconds) / 86400;
  if (example?.text === undefined) {
    const asksForColon = !example && /\bminsec\b/.test(normaliseHeader(style.header));
    return asksForColon ? `${minutes}:${two(whole % 60)}` : seconds;
  }
  const { text } = example;
  if (/^\d+:\d{2}:\d{2}$/.test(text)) {
    return `${/^\d\d:/.test(text) ? two(Math.floor(minutes / 60)) : Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(whole % 60)}`;
  }
  if (/^\d+:\d{2}/.test(text)) return `${/^0\d:/.test(text) ? two(minutes) : minutes}:${two(whole % 60)}`;
  const units = /^(\d+)( ?)([a-z]+\.?)(,? ?)(?:and )?(\d+)( ?)([a-z]+\.?)$/i.exec(text);
  if (units) return `${minutes}${units[2]}${units[3]}${units[4]}${whole % 60}${units[6]}${units[7]}`;
  const single = /^[\d.,]+( ?)(s[a-z]*\.?)$/i.exec(text);
  return single ? `${seconds}${single[1]}${single[2]}` : seconds;
}

/** A number as the column writes it: plain, or with the unit that stands in its other cells. */
export function styleNumber(style: ColumnStyle, number: number): CellInput {
  const example = newest(style, (value) => (value === null || typeof value === "object" ? undefined : value));
  if (typeof example !== "string") return number;
  const quantity = parseQuantity(example);
  if (!quantity || quantity === "ambiguous") return number;
  const suffix = /^[^a-z%]*?( ?)([a-z%].*)$/i.exec(example.trim());
  if (!suffix) return number;
  const written = /\d,\d/.test(example) ? String(number).replace(".", ",") : String(number);
  return `${written}${suffix[1]}${suffix[2]}`;
}

/** A share as the column writes accuracy: 0.9, 90, 90 % as number or text. */
export function styleAccuracy(style: ColumnStyle, share: number): CellInput {
  const percent = round(share * 100);
  const example = newest(style, (value, format) =>
    value === null || typeof value === "object" ? undefined : { value, format },
  );
  if (!example)
    return classifyFormat(style.nextFormat) === "percent"
      ? share
      : /%|percent/i.test(style.header)
        ? percent
        : share;
  if (typeof example.value === "string" && example.value.includes("%"))
    return styleNumber({ ...style, typed: [example] }, percent);
  if (classifyFormat(example.format) === "percent") return share;
  const numbers = style.typed.flatMap(({ value }) => (typeof value === "number" ? [value] : []));
  return numbers.every((value) => value <= 1) ? share : percent;
}

/** A mark as the column writes it: the same sign as in its other cells, where one of that outcome stands there. */
export function styleMark(style: ColumnStyle, mark: string | number): CellInput {
  const outcome = (value: CellValue): string | undefined => {
    if (value === null || typeof value === "object") return undefined;
    const counted = countMarks([value]);
    return counted.ok ? JSON.stringify(counted.value) : undefined;
  };
  const wanted = outcome(mark);
  const same = newest(style, (value) =>
    wanted !== undefined && outcome(value) === wanted ? value : undefined,
  );
  return same ?? mark;
}

/** A text in the spelling that the column has for it already, whatever the case given. */
export function styleText(style: ColumnStyle, text: string): CellInput {
  const fold = (value: string): string => tidyText(value).toLowerCase();
  const same = newest(style, (value) =>
    (typeof value === "string" || typeof value === "number") && fold(String(value)) === fold(text)
      ? value
      : undefined,
  );
  return same ?? text;
}
