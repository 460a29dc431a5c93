import type { Area } from "../../domain/area";
import { columnOf, rowOf } from "../workbook";
import type { FunctionAnswer } from "../function-library";
import type { Program } from "./program";
import type { Reference } from "./value";
import type { SheetNode } from "./sheet-node";

/** One formula cell in the dependency graph. */
export class FormulaNode {
  readonly row: number;
  readonly column: number;
  state: "clean" | "dirty" | "active" = "clean";
  /** False once its cell has another formula or none. */
  alive = true;
  /** What it was found to depend on: cells and ranges, table and names resolved. */
  precedents: readonly Reference[] = [];
  /** Where its result is spilled, or where it would be if there were room. */
  spill: Area | undefined;
  wanted: Area | undefined;
  /** Ranges that only its last calculation showed it to depend on. */
  found: Reference[] = [];
  /** Answers of promises, by call, that came since its last complete calculation. */
  answers: Map<string, FunctionAnswer> | undefined;
  /** Counts its calculations, so that answers to an earlier one are told apart. */
  generation = 0;
  /** How often it was calculated in the present pass. */
  runs = 0;

  constructor(
    readonly sheet: SheetNode,
    readonly key: number,
    readonly program: Program,
    /** An array formula of the file: the area that it fills. */
    readonly fixed: Area | undefined,
  ) {
    this.row = rowOf(key);
    this.column = columnOf(key);
  }
}
