import { isCellError } from "../domain/cell-value";
import type { Day } from "../domain/units";
import type { CandidateBlock } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { isBlank, saysNothing } from "./cell-text";
import type { AnyKind, ColumnKind } from "./column-kind";
import { textAt } from "./data-rows";
import { readDayCell } from "./day-cell";
import type { DayOrder } from "./day-text";
import { columnOf } from "./found-block";
import type { CellFault, FoundColumn } from "./found-block";
import { readMeasureCell } from "./measure-cell";

/** The cells of one row of a list, read by what their columns mean; what cannot be read becomes a fault. */
export class ListCells {
  /** faults of this row so far */
  readonly faults: CellFault[] = [];
  /** a date can be read once the day order is known */
  waits = false;

  constructor(
    readonly block: CandidateBlock,
    readonly row: number,
    private readonly order: DayOrder | undefined,
  ) {}

  get source(): { readonly sheet: string; readonly row: number } {
    return { sheet: this.block.cells.sheet, row: this.row + 1 };
  }

  /** Whether none of the list's columns holds anything in this row but a formula. */
  get isBlank(): boolean {
    const { cells, columns } = this.block;
    return columns.every(
      ({ column, kinds }) =>
        kinds.length === 0 || cells.formula(this.row, column) !== null || cells.isBlank(this.row, column),
    );
  }

  column(kind: AnyKind): FoundColumn | undefined {
    return columnOf(this.block.columns, kind);
  }

  /** The text of a cell, trimmed; undefined where it is blank or there is no such column. */
  text(kind: AnyKind): string | undefined {
    const column = this.column(kind);
    if (!column) return undefined;
    const value = this.block.cells.value(this.row, column.column);
    if (isCellError(value)) {
      this.complain(
        kind,
        "error-cell",
        `This cell holds the error ${value.error}. Put it right, or type the text.`,
      );
      return undefined;
    }
    const text = textAt(this.block, this.row, column.column);
    return text === "" ? undefined : text;
  }

  /** The text of a cell that must hold one. */
  required(kind: AnyKind, code: string, message: string): string | undefined {
    const before = this.faults.length;
    const text = this.text(kind);
    if (text === undefined && this.faults.length === before) this.complain(kind, code, message);
    return text;
  }

  /** The pupil: the cell's, or the sheet's name where no column says. */
  pupil(): string | undefined {
    if (!this.column("pupil")) return this.block.cells.sheet;
    return this.required("pupil", "no-pupil", "The pupil is missing. Type the pupil's code or initials.");
  }

  /** A day; undefined for a blank, for a fault and where the day order is open. */
  day(kind: AnyKind): Day | undefined {
    const column = this.column(kind);
    if (!column) return undefined;
    const { cells } = this.block;
    const value = cells.value(this.row, column.column);
    if (typeof value === "string" && saysNothing(value)) return undefined;
    const read = readDayCell(value, cells.format(this.row, column.column), this.order);
    if (read.kind === "waiting") this.waits = true;
    if (read.kind === "fault") this.complain(kind, read.complaint.code, read.complaint.message);
    return read.kind === "day" ? read.day : undefined;
  }

  /** Minutes, 0 or more; m:ss is understood. */
  minutes(kind: AnyKind): number | undefined {
    return this.measure(kind, "minutes");
  }

  /**
   * A whole number, 1 or more.
   *
   * @param name - what it is, for the message
   */
  count(kind: AnyKind, name: string): number | undefined {
    const column = this.column(kind);
    if (!column) return undefined;
    const value = this.block.cells.value(this.row, column.column);
    if (isBlank(value)) return undefined;
    const number = typeof value === "number" ? value : Number(typeof value === "string" ? value.trim() : NaN);
    if (Number.isInteger(number) && number >= 1) return number;
    this.complain(kind, "no-count", `Type the ${name} as a whole number, 1 or more.`);
    return undefined;
  }

  complain(kind: AnyKind, code: string, message: string): void {
    const column = this.column(kind) ?? this.block.columns[0];
    if (column) this.faults.push(faultAt(this.block.cells.sheet, this.row, column.column, { code, message }));
  }

  private measure(kind: AnyKind, as: ColumnKind): number | undefined {
    const column = this.column(kind);
    if (!column) return undefined;
    const { cells } = this.block;
    const form = { shares: false, marks: false, clock: "m:ss", clocks: false } as const;
    const read = readMeasureCell(
      as,
      cells.value(this.row, column.column),
      cells.format(this.row, column.column),
      form,
    );
    if (read.kind === "fault") this.complain(kind, read.complaint.code, read.complaint.message);
    return read.kind === "value" ? read.value : undefined;
  }
}
