import type { Sheet } from "../ports/sheet";
import type { FoundBlock } from "./found-block";
import { TABLE_ORDER, TABLE_PLANS } from "./table-plans";
import { undoable } from "./undoable-writes";
import type { Written } from "./undoable-writes";

const numbered = (name: string, number: number): string => (number === 1 ? name : `${name}${number}`);

/** The name with the least number behind it that none of these has. */
const freeName = (name: string, taken: ReadonlySet<string>): string => {
  let number = 1;
  while (taken.has(numbered(name, number).toLowerCase())) number += 1;
  return numbered(name, number);
};

/**
 * Makes the tables for these kinds of records, each on a sheet of its own; a name that is taken gets a number.
 *
 * @returns the sheets made, for undoing
 */
export async function setUpTables(sheet: Sheet, kinds: readonly FoundBlock["kind"][]): Promise<Written[]> {
  const outlines = await sheet.outline();
  const sheets = new Set(
    outlines.filter(({ used, tables }) => used || tables.length > 0).map(({ name }) => name.toLowerCase()),
  );
  const tables = new Set(outlines.flatMap((outline) => outline.tables.map(({ name }) => name.toLowerCase())));
  const known = new Set(outlines.map(({ name }) => name.toLowerCase()));
  const written: Written[] = [];
  for (const kind of kinds) {
    const plan = TABLE_PLANS[kind];
    const name = freeName(plan.name, tables);
    const home = freeName(plan.sheet, sheets);
    // A calculated column names its own table.
    const columns = plan.columns.map((column) =>
      column.formula === undefined
        ? column
        : { ...column, formula: column.formula.replaceAll(`${plan.name}[[`, `${name}[[`) },
    );
    const area = await sheet.addTable({ name, sheet: home, columns });
    if (known.has(home.toLowerCase())) continue;
    written.push({ kind: "sheet", sheet: home, area, rows: [] });
  }
  return written;
}

/** What setting up made. */
export interface SetUp {
  readonly kinds: readonly FoundBlock["kind"][];
  /** takes all of it back */
  undo(): Promise<void>;
}

/**
 * Sets a workbook up with every table that it lacks, each on a sheet of its own with formats, choices and calculated
 * columns, as one step.
 *
 * @param blocks - what the workbook holds already; a kind that it has is not set up again
 */
export async function setUpWorkbook(sheet: Sheet, blocks: readonly FoundBlock[] = []): Promise<SetUp> {
  const had = new Set(blocks.filter(({ leftOut }) => !leftOut).map(({ kind }) => kind));
  const kinds = TABLE_ORDER.filter((kind) => !had.has(kind));
  const written: Written[] = [];
  const undo = await undoable(
    sheet,
    async () => {
      for (const kind of kinds) written.push(...(await setUpTables(sheet, [kind])));
    },
    written,
  );
  return { kinds, undo };
}
