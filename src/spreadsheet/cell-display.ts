import { format, isDateFormat } from "numfmt";
import type { CellValue } from "../domain/cell-value";
import { DAYS_1904, type DayOrder } from "./calendar";

/** How values are shown. */
export interface DisplaySettings {
  readonly date1904: boolean;
  /** Shows the built-in short date, which every computer shows in its own order. */
  readonly dayOrder: DayOrder;
}

/** ECMA-376 Part 1, 18.8.30: number format 14, which programs show in the computer's own short form. */
const SHORT_DATE = "mm-dd-yy";

/**
 * The text that a cell shows: its value by its number format. An impossible date shows as `######`, an error as
 * its code, an empty cell as nothing.
 *
 * @param characters - how many characters fit, for the format General; 11 unless given
 */
export function displayText(
  value: CellValue,
  numberFormat: string,
  settings: DisplaySettings,
  characters = 11,
): string {
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string" && !numberFormat.includes("@")) return value;
  const pattern =
    numberFormat === SHORT_DATE ? (settings.dayOrder === "dmy" ? "dd/mm/yyyy" : "m/d/yyyy") : numberFormat;
  if (typeof value === "number" && /^general$/i.test(pattern)) return generalText(value, characters);
  const shifted =
    typeof value === "number" && settings.date1904 && isDateFormat(pattern) ? value + DAYS_1904 : value;
  return format(pattern, shifted, {
    throws: false,
    dateErrorNumber: false,
    dateSpanLarge: false,
    overflow: "######",
  });
}

/** A number in the format General, rounded so that it fits; an exponent where it cannot. */
function generalText(value: number, characters: number): string {
  const plain = format("General", value);
  if (plain.length <= characters) return plain;
  for (let digits = Math.min(10, characters); digits > 0; digits--) {
    const rounded = format("General", Number(value.toPrecision(digits)));
    if (rounded.length <= characters) return rounded;
  }
  return "#".repeat(Math.max(1, characters));
}
