/** What a number format makes of a number. */
export type FormatKind =
  "number" | "percent" | "date" | "minutes and seconds" | "clock" | "time of day" | "text";

const known = new Map<string, FormatKind>();

function classify(format: string): FormatKind {
  const first = format.split(";")[0] ?? "";
  const codes = first
    .replace(/"[^"]*"/g, "")
    .replace(/[\\_*]./g, "")
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, "")
    .toLowerCase();
  if (codes === "@") return "text";
  if (codes === "" || codes.includes("general") || codes.includes("standard")) return "number";
  if (codes.includes("am/pm") || codes.includes("a/p")) return /[yd]/.test(codes) ? "date" : "time of day";
  if (/[yd]/.test(codes)) return "date";
  if (codes.includes("h")) return "clock";
  if (/s/.test(codes)) return "minutes and seconds";
  if (codes.includes("[m")) return "minutes and seconds";
  if (/m/.test(codes)) return "date";
  return codes.includes("%") ? "percent" : "number";
}

/**
 * What kind of thing a number format shows: `dd/mm/yyyy` a date, `mm:ss` and `[m]:ss` minutes and seconds, `h:mm`
 * a clock, `h:mm AM/PM` a time of day, `0%` a percentage.
 */
export function classifyFormat(format: string): FormatKind {
  const found = known.get(format);
  if (found !== undefined) return found;
  const kind = classify(format);
  known.set(format, kind);
  return kind;
}

/** Whether a date format shows no day, such as `mmm-yy`. */
export const showsNoDay = (format: string): boolean =>
  !/d/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|[\\_*]./g, ""));
