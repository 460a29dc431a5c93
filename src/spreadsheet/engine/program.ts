import type { ReferenceStruct } from "@borgar/fx";
import type { CellValue } from "../../domain/cell-value";
import type { FunctionAnswer, FunctionLibrary, SheetFunction } from "../function-library";
import type { TypingSettings } from "../number-input";
import type { FormulaNode } from "./formula-node";
import type { ReferenceTemplate } from "./reference-template";
import type { SheetNode } from "./sheet-node";
import type { Reference, Rows, Value } from "./value";
import type { CellError } from "../../domain/cell-value";

/** A name bound by LET or LAMBDA while its body is calculated. */
export interface Local {
  readonly name: string;
  readonly value: Value;
  readonly outer: Local | undefined;
}

/** Where a formula is calculated: its cell, and the names bound there. */
export interface Scope {
  readonly engine: EngineAccess;
  readonly sheet: SheetNode;
  readonly row: number;
  readonly column: number;
  /** The formula's cell in the graph; absent for a formula that stands in none. */
  readonly node: FormulaNode | undefined;
  readonly local: Local | undefined;
}

export type Evaluate = (scope: Scope) => Value;

/** What compiled formulas ask of the calculation. */
export interface EngineAccess {
  readonly settings: TypingSettings;
  readonly date1904: boolean;
  /** The present moment as a serial number of the workbook's day system. */
  now(): number;
  sheet(name: string): SheetNode | undefined;
  readCell(sheet: SheetNode, row: number, column: number): CellValue;
  /** The cells of an area; whole rows and columns end where the sheet's contents end. */
  readRows(reference: Reference): Rows;
  /** The cells that a structured reference means, seen from a cell. */
  resolveTable(reference: ReferenceStruct, scope: Scope): Reference | CellError;
  /** The formula of a defined name, seen from a sheet. */
  namedProgram(name: string, sheet: SheetNode): Program | undefined;
  /** The cells that a formula's result fills. */
  spillOf(reference: Reference): Reference | undefined;
  /** Notes that the cells of an area decide the result, where only calculating shows which area it is. */
  depend(reference: Reference, scope: Scope): void;
  /** Whether a row is hidden; unless `everywhere`, only rows of tables, where a filter hides them. */
  isHidden(sheet: SheetNode, row: number, everywhere: boolean): boolean;
  call(called: SheetFunction, args: readonly FunctionAnswer[], scope: Scope): FunctionAnswer;
}

/** How a formula is read: `spills` lets blocks through, otherwise a range stands for its cell in the same row. */
export type ProgramMode = "spills" | "single";

/** What compiling needs to know. */
export interface CompileSettings {
  readonly library: FunctionLibrary;
}

/** A compiled formula, shared by all cells whose formulas differ only by where they stand. */
export interface Program {
  readonly evaluate: Evaluate;
  readonly references: readonly ReferenceTemplate[];
  readonly tables: readonly ReferenceStruct[];
  readonly names: readonly string[];
  /** The first function that is not on the list, or why the formula cannot be read. */
  readonly fault: string | undefined;
  /** Calculated anew every time. */
  readonly volatile: boolean;
  /** Its result depends on where it stands. */
  readonly placed: boolean;
  /** Its result may be a block. */
  readonly mayFill: boolean;
}
