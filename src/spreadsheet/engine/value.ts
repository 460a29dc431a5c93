import type { Area } from "../../domain/area";
import type { CellError, CellValue, ErrorCode } from "../../domain/cell-value";
import type { SheetNode } from "./sheet-node";

/** A block of values: rows of equal length. */
export type Rows = readonly (readonly CellValue[])[];

/** Cells of one sheet, not read yet. */
export class Reference {
  constructor(
    readonly sheet: SheetNode,
    readonly area: Area,
  ) {}
  get height(): number {
    return this.area.bottom - this.area.top + 1;
  }
  get width(): number {
    return this.area.right - this.area.left + 1;
  }
  get isCell(): boolean {
    return this.area.top === this.area.bottom && this.area.left === this.area.right;
  }
}

/** Several areas in one argument: `(A1:A3,C1)`. */
export class Union {
  constructor(readonly parts: readonly Reference[]) {}
}

/** A function value made by LAMBDA. */
export class Lambda {
  constructor(
    readonly parameters: number,
    readonly call: (args: readonly Value[]) => Value,
  ) {}
}

/** What a part of a formula can be; `undefined` is an argument that is not there. */
export type Value = CellValue | Rows | Reference | Union | Lambda | undefined;

/** An error value with its sentence. */
export const makeError = (error: ErrorCode, message?: string): CellError =>
  message === undefined ? { error } : { error, message };

/** Thrown inside a function to give an error as its result. */
export class FormulaError extends Error {
  override readonly name = "FormulaError";
  readonly cellError: CellError;
  constructor(error: ErrorCode, message?: string) {
    super(message ?? error);
    this.cellError = makeError(error, message);
  }
}

/** Whether a value is a block, read. */
export const isRows = (value: Value): value is Rows => Array.isArray(value);

/** Whether anything is an error value. */
export const isError = (value: unknown): value is CellError =>
  typeof value === "object" && value !== null && "error" in value;
