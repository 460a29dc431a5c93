import type { Sheet, SheetOutline } from "../../src/ports/sheet";
import type { FoundBlock } from "../../src/records/found-block";
import { bestMatch } from "../../src/records/header-words";
import { TABLE_PLANS } from "../../src/records/table-plans";
import { countInWords } from "./count-words";

/** Rows from the top of a sheet among which headings are looked for. */
const LOOKED_AT = 30;
/** Headings of probes that must stand in a row before its want of dates is worth telling. */
const CLEAR_HEADINGS = 2;
const RESULTS: ReadonlySet<string> = new Set([
  "words",
  "errors",
  "correct",
  "seconds",
  "rate",
  "accuracy",
  "score",
  "pupil",
  "task",
]);

const describeBlock = ({ kind, range, records }: FoundBlock): string =>
  `${kind === "probes" ? "probes" : TABLE_PLANS[kind].name.toLowerCase()} in ${range} (${countInWords(records.length, "row")})`;

/** A row of headings of probes without one of dates, if the sheet has one. */
async function findDateless(sheet: Sheet, { name, used }: SheetOutline): Promise<number | undefined> {
  if (used === undefined) return undefined;
  const { values } = await sheet.read(name, {
    ...used,
    bottom: Math.min(used.bottom, used.top + LOOKED_AT - 1),
  });
  const at = values.findIndex((row) => {
    const kinds = row.map((value) => (typeof value === "string" ? bestMatch(value)?.kind : undefined));
    const results = new Set(kinds.filter((kind) => kind !== undefined && RESULTS.has(kind)));
    return results.size >= CLEAR_HEADINGS && !kinds.includes("date");
  });
  return at < 0 ? undefined : used.top + at + 1;
}

/**
 * Says of every sheet what was found there, for a workbook in which no table of probes was found: that it is empty, what
 * else it holds, or that its table has no dates.
 */
export async function describeSheets(
  sheet: Sheet,
  blocks: readonly FoundBlock[],
): Promise<readonly string[]> {
  const lines: string[] = [];
  for (const outline of await sheet.outline()) {
    const { name } = outline;
    const here = blocks.filter((block) => block.sheet === name);
    const left = here.filter(({ leftOut }) => leftOut);
    const used = here.filter(({ leftOut }) => !leftOut);
    if (left.length > 0) lines.push(`${name}: you left out ${left.map(({ range }) => range).join(", ")}.`);
    if (used.length > 0) lines.push(`${name}: ${used.map(describeBlock).join("; ")}.`);
    if (here.length > 0) continue;
    if (outline.used === undefined) {
      lines.push(`${name}: empty.`);
      continue;
    }
    const row = await findDateless(sheet, outline);
    lines.push(
      row === undefined
        ? `${name}: no row of headings with a date and a result.`
        : `${name}: row ${String(row)} looks like headings of probes, but no column is of dates. Add a column headed Date with the day of each probe.`,
    );
  }
  return lines;
}
