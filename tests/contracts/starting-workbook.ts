import type { Area } from "../../src/domain/area";
import type { CellValue } from "../../src/domain/cell-value";

/** A cell to start with: a value, or a formula (leading `=`) with the value that it has. */
type StartingCell = CellValue | { readonly formula: string; readonly value: CellValue };

/** A table to start with; its cells, headings and totals stand in the sheet's rows. */
interface StartingTable {
  readonly name: string;
  /** with header and totals row */
  readonly area: Area;
  readonly totalsRow?: boolean;
  /** calculated columns: heading and formula */
  readonly calculated?: Readonly<Record<string, string>>;
}

/** A sheet to start with: rows from A1 on, `null` for an empty cell. */
export interface StartingSheet {
  readonly name: string;
  readonly hidden?: boolean;
  readonly rows: readonly (readonly StartingCell[])[];
  readonly formats?: readonly { readonly area: Area; readonly format: string }[];
  readonly tables?: readonly StartingTable[];
}

/** What every host is given to start with, sheets in tab order. */
export type StartingWorkbook = readonly StartingSheet[];

const area = (top: number, left: number, bottom: number, right: number): Area => ({
  top,
  left,
  bottom,
  right,
});

const CALCULATED = "=Probes[[#This Row],[Words]]-Probes[[#This Row],[Errors]]";

/** A plain range under a title, with a formula in its last column that is no table's. */
const log: StartingSheet = {
  name: "Reading log",
  rows: [
    ["Reading aloud, autumn"],
    [],
    ["Date", "Pupil", "Words", "Errors", "Right"],
    [46300, "Heron", 62, 4, { formula: "=C4-D4", value: 58 }],
    [46307, "Heron", 66, 3, { formula: "=C5-D5", value: 63 }],
  ],
  formats: [
    { area: area(3, 0, 4, 0), format: "dd/mm/yyyy" },
    { area: area(3, 4, 4, 4), format: "0.0" },
  ],
};

/** A table with a calculated column, a totals row, and a note beneath it. */
const probes: StartingSheet = {
  name: "Probes",
  rows: [
    ["Date", "Pupil", "Words", "Errors", "Correct"],
    [46300, "Plover", 31, 5, { formula: CALCULATED, value: 26 }],
    [46307, "Plover", 35, 4, { formula: CALCULATED, value: 31 }],
    ["Total", null, null, null, { formula: "=SUBTOTAL(109,Probes[Correct])", value: 57 }],
    [],
    ["Kept by the class teacher"],
  ],
  formats: [{ area: area(1, 0, 2, 0), format: "yyyy-mm-dd" }],
  tables: [{ name: "Probes", area: area(0, 0, 3, 4), totalsRow: true, calculated: { Correct: CALCULATED } }],
};

/** A table without totals row, with text directly beneath it and a column of its own beside it. */
const stacked: StartingSheet = {
  name: "Stacked",
  rows: [
    ["Sign", "Introduced", null, "Beside"],
    ["ea", 46280, null, "one"],
    ["ch", 46287, null, "two"],
    ["Directly beneath", null, null, "three"],
  ],
  formats: [{ area: area(1, 1, 2, 1), format: "d mmm yyyy" }],
  tables: [{ name: "Taught", area: area(0, 0, 2, 1) }],
};

/** Every kind of value, on a hidden sheet. */
const kept: StartingSheet = {
  name: "Kept",
  hidden: true,
  rows: [
    [true, 0.25, "=not a formula", { formula: "=1/0", value: { error: "#DIV/0!" } }],
    [null, -3, "⠓⠑⠗⠕⠝", false],
  ],
  formats: [{ area: area(0, 1, 0, 1), format: "0%" }],
};

const empty: StartingSheet = { name: "Empty", rows: [] };

/** The workbook that the contract reads and writes. */
export const STARTING_WORKBOOK: StartingWorkbook = [log, probes, stacked, kept, empty];
