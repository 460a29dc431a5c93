import type { ReferenceStruct } from "@borgar/fx";
import type { CellError, CellValue } from "../domain/cell-value";
import type { FormulaNode } from "./engine/formula-node";
import { FormulaNode as Node } from "./engine/formula-node";
import { FormulaGraph } from "./engine/formula-graph";
import { dereference } from "./engine/dereference";
import type { EngineAccess, Program, Scope } from "./engine/program";
import type { SheetNode } from "./engine/sheet-node";
import { findRoom, fitBlock, shown, writeSpill } from "./engine/spilling";
import { isError, isRows, makeError, Reference, type Rows } from "./engine/value";
import { formatCell, MAX_COLUMNS, MAX_ROWS } from "./address";
import { dateOfSerial, serialOfDate, DAYS_1904, type DayOrder } from "./calendar";
import { parseFormula } from "./formula";
import type { FunctionAnswer, FunctionLibrary, SheetFunction } from "./function-library";
import type { TypingSettings } from "./number-input";
import type { OpenWorkbook } from "./open-workbook";
import { cellKey, columnOf, rowOf, type Cell, type StructuralEdit, type WorkbookChange } from "./workbook";

/** What the calculation is given beside the workbook. */
export interface CalculationSettings {
  readonly library: FunctionLibrary;
  /** The present moment as a serial number of the 1900 day system, for TODAY and NOW. */
  readonly now: () => number;
  /** Which comes first in a date written as text: `dmy` unless given. */
  readonly dayOrder?: DayOrder;
}

/** A library without custom functions. */
export const NO_FUNCTIONS: FunctionLibrary = { find: () => undefined, names: [] };

const BUSY = makeError("#BUSY!", "The result is being worked out.");

/** Thrown where a formula reads cells that must be calculated first. */
class NotReady extends Error {
  override readonly name = "NotReady";
  constructor(readonly reference: Reference) {
    super("cells to be calculated first");
  }
}

/**
 * The calculation of an open workbook: it follows every edit, and calculates anew only what depends on it. Results
 * are in the workbook's cells when an edit returns, those of promises later.
 */
export class Calculation implements EngineAccess {
  readonly date1904: boolean;
  readonly #workbook: OpenWorkbook;
  readonly #now: () => number;
  #settings: TypingSettings;
  readonly #stop: () => void;
  #graph: FormulaGraph;
  #stored = new Map<string, number[]>();
  #started: { key: string; promise: Promise<FunctionAnswer> }[] = [];
  #waiting = 0;
  #scheduled = false;
  #opening = true;
  #whenIdle: (() => void)[] = [];

  constructor(workbook: OpenWorkbook, settings: CalculationSettings) {
    this.#workbook = workbook;
    this.date1904 = workbook.date1904;
    this.#now = settings.now;
    this.#settings = { dayOrder: settings.dayOrder ?? "dmy", year: dateOfSerial(settings.now()).year };
    this.#graph = new FormulaGraph(workbook, settings.library);
    this.#stop = workbook.onChange((changes, source) => {
      if (source === "edit") this.#follow(changes);
    });
    this.#markAll();
    this.recalculate();
    this.#opening = false;
  }

  /** Stops following the workbook. */
  close(): void {
    this.#stop();
  }

  /** Takes another set of custom functions, and calculates everything anew. */
  useLibrary(library: FunctionLibrary): void {
    this.#graph = new FormulaGraph(this.#workbook, library);
    this.#markAll();
    this.recalculate();
  }

  /** Calculates what is dirty, and formulas such as TODAY. */
  recalculate(): void {
    this.#settings = { ...this.#settings, year: dateOfSerial(this.#now()).year };
    for (const node of this.#graph.volatile) {
      if (node.state === "clean") this.#refresh(node);
    }
    const { queue } = this.#graph;
    const pass: FormulaNode[] = [];
    for (let index = 0; index < queue.length; index++) {
      const node = queue[index];
      if (!node || node.state === "clean") continue;
      pass.push(node);
      this.#visit(node);
    }
    for (const node of pass) node.runs = 0;
    queue.length = 0;
    const stored = this.#stored;
    this.#stored = new Map();
    this.#workbook.announce(stored);
    if (this.#waiting === 0) for (const resolve of this.#whenIdle.splice(0)) resolve();
  }

  /** Calculates a formula such as TODAY; what depends on it is dirty only where its value changed. */
  #refresh(node: FormulaNode): void {
    try {
      if (this.#evaluate(node)) this.#graph.markDependents(node.sheet, node.key);
    } catch (thrown) {
      if (!(thrown instanceof NotReady)) throw thrown;
      this.#graph.markDirty(node);
    }
  }

  /** Resolves once no promise of a function is awaited any more. */
  async idle(): Promise<void> {
    while (this.#waiting > 0 || this.#scheduled) {
      await new Promise<void>((resolve) => this.#whenIdle.push(resolve));
    }
  }

  /**
   * The value of a formula that stands in no cell, seen from a cell of a sheet.
   *
   * @param formula - without its `=`
   * @returns a value or rows of values; an error is a value too
   */
  async evaluate(
    formula: string,
    at: { sheet: string; row: number; column: number },
  ): Promise<FunctionAnswer> {
    const parsed = parseFormula(formula);
    if (!parsed.ok) return makeError("#NAME?", parsed.fault.message);
    const sheet = this.#graph.sheet(at.sheet);
    if (!sheet) throw new RangeError(`no sheet ${at.sheet}`);
    const program = this.#graph.program(formula, at.row, at.column, "spills");
    if (program.fault !== undefined) return makeError("#NAME?", program.fault);
    const node = new Node(sheet, cellKey(at.row, at.column), program, undefined);
    for (;;) {
      const value = this.#run(node);
      const started = this.#started.splice(0);
      if (started.length === 0) return value;
      node.answers ??= new Map();
      for (const { key, promise } of started) node.answers.set(key, await settle(promise));
    }
  }

  /** The rows or the value of the cells of a reference, for those who draw or read. */
  readCell(sheet: SheetNode, row: number, column: number): CellValue {
    return sheet.cells.get(cellKey(row, column))?.value ?? null;
  }

  readRows({ sheet, area }: Reference): Rows {
    const bottom =
      area.bottom === MAX_ROWS - 1 ? Math.max(area.top, Math.min(area.bottom, sheet.lastRow)) : area.bottom;
    const right =
      area.right === MAX_COLUMNS - 1
        ? Math.max(area.left, Math.min(area.right, sheet.lastColumn))
        : area.right;
    const rows: CellValue[][] = [];
    for (let row = area.top; row <= bottom; row++) {
      const line: CellValue[] = [];
      const start = cellKey(row, area.left);
      for (let key = start; key <= start + right - area.left; key++)
        line.push(sheet.cells.get(key)?.value ?? null);
      rows.push(line);
    }
    return rows;
  }

  get settings(): TypingSettings {
    return this.#settings;
  }
  now(): number {
    return this.#now() - (this.date1904 ? DAYS_1904 : 0);
  }
  sheet(name: string): SheetNode | undefined {
    return this.#graph.sheet(name);
  }
  namedProgram(name: string, sheet: SheetNode): Program | undefined {
    return this.#graph.named(name, sheet);
  }
  resolveTable(reference: ReferenceStruct, scope: Scope): Reference | CellError {
    const cells = this.#graph.resolveTable(reference, scope.sheet, scope.row, scope.column);
    return cells instanceof Reference || isError(cells) ? cells : makeError("#REF!");
  }

  spillOf({ sheet, area, isCell }: Reference): Reference | undefined {
    if (!isCell) return undefined;
    const node = sheet.nodes.get(cellKey(area.top, area.left));
    if (!node) return undefined;
    if (node.spill) return new Reference(sheet, node.spill);
    return node.program.mayFill ? new Reference(sheet, area) : undefined;
  }

  isHidden({ name }: SheetNode, row: number, everywhere: boolean): boolean {
    const sheet = this.#workbook.sheet(name);
    if (sheet?.rowHeights.get(row) !== 0) return false;
    return everywhere || sheet.tables.some(({ area }) => row >= area.top && row <= area.bottom);
  }

  depend(reference: Reference, scope: Scope): void {
    if (!scope.node) return;
    if (scope.node.alive && scope.node.sheet.nodes.get(scope.node.key) === scope.node)
      this.#graph.addFound(scope.node, reference);
    let dirty = false;
    reference.sheet.visitDirty(reference.area, () => (dirty = true));
    if (dirty) throw new NotReady(reference);
  }

  call(called: SheetFunction, args: readonly FunctionAnswer[], scope: Scope): FunctionAnswer {
    const { node } = scope;
    if (node?.answers) {
      const known = node.answers.get(callKey(called, args));
      if (known !== undefined) return known;
    }
    const answer = called.call(args);
    if (!isPromise(answer)) return answer;
    this.#started.push({ key: callKey(called, args), promise: answer });
    return BUSY;
  }

  #follow(changes: readonly WorkbookChange[]): void {
    for (const change of changes)
      if (change.kind === "structure") this.#restructure(change.edit, change.undone);
    for (const change of changes) {
      if (change.kind !== "cells") continue;
      const sheet = this.#graph.sheet(change.sheet);
      if (sheet) for (const key of change.keys) this.#refreshCell(sheet, key);
    }
    this.recalculate();
  }

  #refreshCell(sheet: SheetNode, key: number): void {
    const gone = this.#graph.refreshCell(sheet, key);
    if (gone) this.#tellFilled(gone, writeSpill(this.#workbook, gone, undefined, []));
  }

  #restructure(edit: StructuralEdit, undone: boolean): void {
    if (edit.kind === "add-chart") return this.#graph.refreshSheets();
    if (edit.kind === "grow-table") {
      this.#graph.refreshSheets();
      this.#graph.rebindTables();
      return;
    }
    this.#graph.rebuild();
    if (undone || edit.kind === "add-sheet" || edit.kind === "add-table") return this.#markAll();
    for (const sheet of this.#graph.sheets) {
      for (const node of sheet.nodes.values()) if (concerns(node, edit)) this.#graph.markDirty(node);
    }
  }

  #markAll(): void {
    for (const sheet of this.#graph.sheets)
      for (const node of sheet.nodes.values()) this.#graph.markDirty(node);
  }

  /** Calculates a formula after all that it depends on. */
  #visit(root: FormulaNode): void {
    const stack = [root];
    for (let node = stack.at(-1); node; node = stack.at(-1)) {
      if (node.state === "clean" || !node.alive) {
        stack.pop();
        continue;
      }
      if (node.state === "dirty") {
        node.state = "active";
        const pushed = stack.length;
        for (const { sheet, area } of node.precedents) if (!this.#pushDirty(sheet, area, stack)) break;
        if (stack.length > pushed) continue;
      }
      // A cycle leaves the cells in it calculated.
      if ((node.state as string) === "clean") continue;
      try {
        this.#evaluate(node);
        this.#graph.markClean(node);
      } catch (thrown) {
        if (!(thrown instanceof NotReady)) throw thrown;
        this.#pushDirty(thrown.reference.sheet, thrown.reference.area, stack);
      }
    }
  }

  /** Puts formulas that must come first on the stack; false where one of them is waiting for this one already. */
  #pushDirty(sheet: SheetNode, area: Reference["area"], stack: FormulaNode[]): boolean {
    let cycle: FormulaNode | undefined;
    const found: FormulaNode[] = [];
    sheet.visitDirty(area, (node) => {
      if (node.state === "active") cycle ??= node;
      else found.push(node);
    });
    if (cycle) {
      this.#breakCycle(stack, cycle);
      return false;
    }
    for (const node of found.reverse()) stack.push(node);
    return true;
  }

  #breakCycle(stack: readonly FormulaNode[], first: FormulaNode): void {
    const members = stack.slice(stack.indexOf(first)).filter((node) => node.state === "active");
    const path = [...members.slice(0, 6), first].map((node) => formatCell(node.row, node.column)).join(" → ");
    const error = makeError("#CALC!", `This formula depends on itself (${path}): change one of these cells.`);
    for (const node of members) {
      this.#graph.markClean(node);
      this.#store(node, error);
    }
  }

  /** Calculates one formula into its cell; answers whether its value changed. */
  #evaluate(node: FormulaNode): boolean {
    if (++node.runs > 50) {
      return this.#store(
        node,
        makeError("#CALC!", "This formula’s result moves the cells that it depends on: change one of them."),
      );
    }
    const { fault } = node.program;
    if (fault !== undefined) return this.#keepFileValue(node, fault);
    this.#graph.dropFound(node);
    node.generation++;
    const value = this.#run(node);
    this.#await(node);
    return this.#store(node, value);
  }

  #run(node: FormulaNode): CellValue | Rows {
    const scope: Scope = {
      engine: this,
      sheet: node.sheet,
      row: node.row,
      column: node.column,
      node,
      local: undefined,
    };
    try {
      return dereference(node.program.evaluate(scope), scope);
    } catch (thrown) {
      this.#started.length = 0;
      if (thrown instanceof NotReady) throw thrown;
      if (thrown instanceof RangeError && /call stack/i.test(thrown.message)) {
        return makeError("#NUM!", "This formula calls itself without an end.");
      }
      // Whatever went wrong inside one formula, the workbook around it stays usable.
      const reason = thrown instanceof Error ? thrown.name : "unknown";
      return makeError("#VALUE!", `Cellwright could not calculate this formula (${reason}).`);
    }
  }

  #await(node: FormulaNode): void {
    const started = this.#started.splice(0);
    if (started.length === 0) {
      node.answers = undefined;
      return;
    }
    const { generation } = node;
    let left = started.length;
    this.#waiting += started.length;
    for (const { key, promise } of started) {
      void settle(promise).then((answer) => {
        this.#waiting--;
        left--;
        if (node.alive && node.generation === generation) {
          node.answers ??= new Map();
          node.answers.set(key, answer);
          if (left === 0) this.#graph.markDirty(node);
        }
        this.#schedule();
      });
    }
  }

  #schedule(): void {
    if (this.#scheduled) return;
    this.#scheduled = true;
    queueMicrotask(() => {
      this.#scheduled = false;
      this.recalculate();
    });
  }

  /** A formula that cannot be calculated here keeps the file's value; one typed here says why it has none. */
  #keepFileValue(node: FormulaNode, fault: string): boolean {
    const cell = node.sheet.cells.get(node.key);
    if (!cell) return false;
    const fromFile = cell.value !== null && !(isError(cell.value) && cell.value.error === "#NAME?");
    if (!fromFile) return this.#store(node, makeError("#NAME?", fault));
    if (!cell.notRecalculated) this.#put(node.sheet, node.key, { ...cell, notRecalculated: true });
    return false;
  }

  #store(node: FormulaNode, value: CellValue | Rows): boolean {
    if (node.fixed) return this.#fill(node, node.fixed, fitBlock(value, node.fixed));
    if (!isRows(value)) return this.#fill(node, undefined, [[value]]);
    if (value.length === 0 || value[0]?.length === 0)
      return this.#fill(node, undefined, [[makeError("#CALC!", "The result is empty.")]]);
    const room = findRoom(this.#workbook, node, value);
    if (!isError(room)) return this.#fill(node, room, value);
    node.wanted = {
      top: node.row,
      left: node.column,
      bottom: node.row + value.length - 1,
      right: node.column + (value[0]?.length ?? 1) - 1,
    };
    const changed = this.#fill(node, undefined, [[room]]);
    node.sheet.blocked.add(node);
    return changed;
  }

  /** Writes a formula's result into its own cell and those that it fills. */
  #fill(node: FormulaNode, area: Cell["spill"], rows: Rows): boolean {
    const { sheet } = node;
    sheet.blocked.delete(node);
    const keys = node.spill || area ? writeSpill(this.#workbook, node, area, rows) : [];
    node.spill = area;
    if (area) sheet.spilling.add(node);
    else sheet.spilling.delete(node);
    this.#tellFilled(node, keys);
    const before = sheet.cells.get(node.key);
    if (!before) return false;
    const value = shown(rows[0]?.[0] ?? null);
    const { spill: oldSpill, notRecalculated, array, ...rest } = before;
    const keepsArray = array === "fixed" || (array === "dynamic" && node.program.mayFill);
    const after: Cell = {
      ...rest,
      value: this.#opening && nearlySame(before.value, value) ? before.value : value,
      ...(keepsArray && { array }),
      ...(area && { spill: area }),
    };
    const same =
      identical(before.value, after.value) &&
      !notRecalculated &&
      array === after.array &&
      JSON.stringify(oldSpill) === JSON.stringify(area);
    if (same) return keys.length > 0;
    this.#put(sheet, node.key, after);
    return true;
  }

  /** Marks dirty what depends on cells that a spilled result filled or left, or waits for them to be empty. */
  #tellFilled(node: FormulaNode, keys: readonly number[]): void {
    const { sheet } = node;
    for (const key of keys) {
      this.#note(sheet.name, key);
      sheet.dependents.visit(rowOf(key), columnOf(key), (user) => {
        if (user !== node) this.#graph.markDirty(user);
      });
      for (const blocked of sheet.blocked)
        if (blocked !== node && reaches(blocked, key)) this.#graph.markDirty(blocked);
    }
  }

  #put(sheet: SheetNode, key: number, cell: Cell): void {
    this.#workbook.storeResult(sheet.name, key, cell);
    this.#note(sheet.name, key);
  }

  #note(sheet: string, key: number): void {
    const keys = this.#stored.get(sheet);
    if (keys) keys.push(key);
    else this.#stored.set(sheet, [key]);
  }
}

const reaches = (node: FormulaNode, key: number): boolean => {
  const { wanted } = node;
  const [row, column] = [rowOf(key), columnOf(key)];
  return (
    wanted !== undefined &&
    row >= wanted.top &&
    row <= wanted.bottom &&
    column >= wanted.left &&
    column <= wanted.right
  );
};

/** Whether rows put in or taken out may change a formula's result, as far as its own cell shows. */
function concerns(node: FormulaNode, edit: StructuralEdit): boolean {
  if (edit.kind !== "insert-rows" && edit.kind !== "delete-rows") return false;
  const cell = node.sheet.cells.get(node.key);
  if (!cell || cell.value === null || node.program.volatile || node.program.placed) return true;
  if (cell.array === "dynamic" && !cell.spill) return true;
  if (cell.formula?.includes("#REF!") || node.program.names.length > 0) return true;
  return node.precedents.some(
    ({ area }) => area.top !== area.bottom && area.top <= edit.at && area.bottom >= edit.at - 1,
  );
}

function identical(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  return isError(a) && isError(b) && a.error === b.error && a.message === b.message;
}

/** A file keeps 15 to 17 digits of a number; a difference in the last of them is none. */
const nearlySame = (a: CellValue, b: CellValue): boolean =>
  typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= Math.abs(a) * 1e-14;

const callKey = (called: SheetFunction, args: readonly FunctionAnswer[]): string =>
  called.name + JSON.stringify(args);

const isPromise = (answer: FunctionAnswer | Promise<FunctionAnswer>): answer is Promise<FunctionAnswer> =>
  typeof answer === "object" && answer !== null && "then" in answer;

const settle = (promise: Promise<FunctionAnswer>): Promise<FunctionAnswer> =>
  promise.catch(() => makeError("#VALUE!", "The function could not give a result."));

/** The present moment of a computer's clock as a serial number of the 1900 day system, in local time. */
export function serialOfClock(clock: Date): number {
  const day = serialOfDate(clock.getFullYear(), clock.getMonth() + 1, clock.getDate()) ?? 0;
  return day + (clock.getHours() * 3600 + clock.getMinutes() * 60 + clock.getSeconds()) / 86_400;
}
