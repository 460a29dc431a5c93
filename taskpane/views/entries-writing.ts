import { appendEntries } from "../../src/records/append-entries";
import type { AppendedRows } from "../../src/records/append-entries";
import { formatArea } from "../../src/records/cell-address";
import { KIND_NAMES, isColumnKind } from "../../src/records/column-kind";
import type { NewEntries } from "../../src/records/new-entries";
import { HostError } from "../../src/ports/sheet";
import { countInWords } from "./count-words";
import type { PaneContext } from "./pane-context";

/** What was written, and the way back. */
export interface WrittenEntries {
  /** where the rows stand and what the tables have no column for, in sentences */
  readonly words: string;
  undo(): Promise<void>;
}

const describeRows = ({ sheet, area, setUp }: AppendedRows): string =>
  `${countInWords(area.bottom - area.top + 1, "row")} in ${sheet}, ${formatArea(area)}${setUp ? ", in a table made for it" : ""}`;

/** What other columns say as well: errors and number correct follow from each other, the unit from the column. */
const IMPLIED: ReadonlySet<string> = new Set(["correct", "errors", "unit"]);

const describeLeftOut = (rows: readonly AppendedRows[]): string => {
  const kinds = [...new Set(rows.flatMap(({ leftOut }) => leftOut))].filter((kind) => !IMPLIED.has(kind));
  if (kinds.length === 0) return "";
  const names = kinds.map((kind) => (isColumnKind(kind) ? KIND_NAMES[kind] : kind));
  return ` Your table has no column for ${names.join(", ")}: that was left out. A column with such a heading keeps it next time.`;
};

/**
 * Writes records into her own tables as one step and says where they stand. A refusal is said, nothing is written, and
 * what the view holds stays.
 *
 * @returns what was written, or undefined where it was refused
 */
export const writeEntries = (
  context: PaneContext,
  entries: NewEntries,
): Promise<WrittenEntries | undefined> =>
  context.write(async (sheet) => {
    const appended = await appendEntries(sheet, context.records, entries, context.choices);
    if (!appended.ok) throw new HostError(appended.fault.message);
    const { rows, undo } = appended.value;
    return {
      words: `Written: ${rows.map(describeRows).join("; ")}.${describeLeftOut(rows)}`,
      undo,
    };
  });
