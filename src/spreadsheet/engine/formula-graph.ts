import type { FunctionLibrary } from "../function-library";
import type { OpenWorkbook } from "../open-workbook";
import { cellKey, columnOf, rowOf, type Cell, type DefinedName } from "../workbook";
import { compileFormula } from "./compile";
import { FormulaNode } from "./formula-node";
import type { Program, ProgramMode } from "./program";
import { programKey } from "./program-key";
import { placeTemplate } from "./reference-template";
import { SheetNode } from "./sheet-node";
import { resolveStructure, tableAt, type PlacedTable } from "./structured-reference";
import { isError, Reference } from "./value";
import type { ReferenceStruct } from "@borgar/fx";

/** All formulas of a workbook, compiled, with what each depends on and which wait to be calculated. */
export class FormulaGraph {
  /** Formulas to calculate, in the order in which they became dirty. */
  readonly queue: FormulaNode[] = [];
  readonly volatile = new Set<FormulaNode>();
  readonly #sheets = new Map<string, SheetNode>();
  readonly #programs = new Map<string, Program>();
  readonly #names = new Map<string, Program>();
  readonly #tableUsers = new Set<FormulaNode>();

  constructor(
    readonly workbook: OpenWorkbook,
    readonly library: FunctionLibrary,
  ) {
    this.rebuild();
  }

  /** Makes the graph anew from the workbook; compiled formulas are kept. Nothing is dirty afterwards. */
  rebuild(): void {
    this.#sheets.clear();
    this.#names.clear();
    this.#tableUsers.clear();
    this.volatile.clear();
    this.queue.length = 0;
    for (const sheet of this.workbook.sheets)
      this.#sheets.set(sheet.name.toLowerCase(), new SheetNode(sheet.name, sheet.cells));
    for (const sheet of this.#sheets.values()) {
      for (const key of this.workbook.formulaKeys(sheet.name)) this.#enter(sheet, key);
      this.#adoptSpills(sheet);
    }
  }

  sheet(name: string): SheetNode | undefined {
    return this.#sheets.get(name.toLowerCase());
  }

  get sheets(): IterableIterator<SheetNode> {
    return this.#sheets.values();
  }

  /** Takes over the workbook's present sheets after a change of structure that moved no cell. */
  refreshSheets(): void {
    // A name over a whole column of a table grows with it.
    this.#names.clear();
    for (const sheet of this.workbook.sheets) {
      const node = this.sheet(sheet.name);
      if (node) node.cells = sheet.cells;
      else this.#sheets.set(sheet.name.toLowerCase(), new SheetNode(sheet.name, sheet.cells));
    }
  }

  /** Binds anew every formula with a structured reference or a name, and marks those dirty that mean other cells now. */
  rebindTables(): void {
    for (const node of this.#tableUsers) {
      // Another row of the same table stays where it is.
      if (
        node.program.names.length === 0 &&
        node.program.tables.every(({ sections }) => sections?.includes("this row"))
      )
        continue;
      const before = node.precedents.map(describe).join();
      this.#unbind(node);
      this.#bind(node);
      if (node.precedents.map(describe).join() !== before) this.markDirty(node);
    }
  }

  /**
   * Takes a changed cell in: its old formula goes, its new one is dirty, and so is all that depends on it.
   *
   * @returns the formula that went, where cells that it filled must be emptied
   */
  refreshCell(sheet: SheetNode, key: number): FormulaNode | undefined {
    sheet.reach(key);
    const old = sheet.nodes.get(key);
    if (old) this.#leave(old);
    const owner = sheet.spillOwners.get(key);
    if (owner && owner !== old) this.markDirty(owner);
    const cell = sheet.cells.get(key);
    if (cell?.formula !== undefined) {
      const node = this.#enter(sheet, key);
      if (old?.spill) {
        node.spill = old.spill;
        sheet.spilling.add(node);
        this.#inheritSpill(sheet, old, node);
      }
      this.markDirty(node);
    } else {
      this.markDependents(sheet, key);
    }
    for (const node of sheet.blocked) {
      const { wanted } = node;
      const [row, column] = [rowOf(key), columnOf(key)];
      if (
        wanted &&
        row >= wanted.top &&
        row <= wanted.bottom &&
        column >= wanted.left &&
        column <= wanted.right
      ) {
        this.markDirty(node);
      }
    }
    return old?.spill && cell?.formula === undefined ? old : undefined;
  }

  #inheritSpill(sheet: SheetNode, old: FormulaNode, heir: FormulaNode): void {
    const { spill } = old;
    for (let row = spill?.top ?? 0; spill && row <= spill.bottom; row++) {
      for (let column = spill.left; column <= spill.right; column++) {
        const key = cellKey(row, column);
        if (sheet.spillOwners.get(key) === old) sheet.spillOwners.set(key, heir);
      }
    }
  }

  /** Marks a formula, and all that depends on it, to be calculated. */
  markDirty(node: FormulaNode): void {
    const waiting = [node];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (next.state !== "clean" || !next.alive) continue;
      next.state = "dirty";
      next.sheet.countDirty(next.column, 1);
      this.queue.push(next);
      const add = (user: FormulaNode): void => {
        if (user.state === "clean") waiting.push(user);
      };
      next.sheet.dependents.visit(next.row, next.column, add);
      const { spill } = next;
      for (let row = spill?.top ?? 0; spill && row <= spill.bottom; row++) {
        for (let column = spill.left; column <= spill.right; column++)
          next.sheet.dependents.visit(row, column, add);
      }
    }
  }

  /** Marks all that depends on a cell. */
  markDependents(sheet: SheetNode, key: number): void {
    sheet.dependents.visit(rowOf(key), columnOf(key), (user) => this.markDirty(user));
  }

  /** Notes that a formula was calculated. */
  markClean(node: FormulaNode): void {
    if (node.state === "clean") return;
    node.state = "clean";
    node.sheet.countDirty(node.column, -1);
  }

  /** The program of a defined name, seen from a sheet: one of the sheet's own goes before one of the workbook. */
  named(name: string, sheet: SheetNode): Program | undefined {
    const wanted = name.toLowerCase();
    const local = `${sheet.name.toLowerCase()}\u0000${wanted}`;
    const known = this.#names.get(local);
    if (known) return known;
    const isIt = (candidate: DefinedName): boolean => candidate.name.toLowerCase() === wanted;
    const found =
      this.workbook.names.find(
        (candidate) => isIt(candidate) && candidate.sheet?.toLowerCase() === sheet.name.toLowerCase(),
      ) ?? this.workbook.names.find((candidate) => isIt(candidate) && candidate.sheet === undefined);
    if (!found) return undefined;
    const program = compileFormula(found.formula, 0, 0, "spills", { library: this.library });
    this.#names.set(local, program);
    return program;
  }

  /** The cells that a structured reference means in the formula of this cell. */
  resolveTable(
    reference: ReferenceStruct,
    sheet: SheetNode,
    row: number,
    column: number,
  ): Reference | ReturnType<typeof resolveStructure> {
    const placed = this.#tableOf(reference, sheet, row, column);
    if (!placed) {
      const message = reference.table
        ? `There is no table ${reference.table}.`
        : "This cell stands in no table.";
      return { error: "#REF!", message };
    }
    const area = resolveStructure(reference, placed, { sheet: sheet.name, row });
    const home = this.sheet(placed.sheet);
    return "error" in area || !home ? area : new Reference(home, area);
  }

  #tableOf(
    reference: ReferenceStruct,
    sheet: SheetNode,
    row: number,
    column: number,
  ): PlacedTable | undefined {
    if (reference.table) {
      const found = this.workbook.table(reference.table);
      return found && { sheet: found.sheet.name, table: found.table };
    }
    const table = tableAt(this.workbook.sheet(sheet.name)?.tables ?? [], row, column);
    return table && { sheet: sheet.name, table };
  }

  /** The compiled formula of a cell. */
  program(formula: string, row: number, column: number, mode: ProgramMode): Program {
    const key = programKey(formula, row, column);
    const place = key === undefined ? `${row},${column}\u0003${formula}` : key;
    const cached = this.#programs.get(mode + place);
    if (cached) return cached;
    const program = compileFormula(formula, row, column, mode, { library: this.library });
    this.#programs.set(mode + place, program);
    return program;
  }

  /** Notes a range that a formula was found to depend on while it was calculated. */
  addFound(node: FormulaNode, reference: Reference): void {
    reference.sheet.dependents.add(reference.area, node);
    node.found.push(reference);
  }

  /** Forgets the ranges found while a formula was calculated before. */
  dropFound(node: FormulaNode): void {
    for (const { sheet, area } of node.found) {
      if (
        !node.precedents.some(
          (other) => other.sheet === sheet && describe(other) === describe({ sheet, area } as Reference),
        )
      ) {
        sheet.dependents.remove(area, node);
      }
    }
    node.found.length = 0;
  }

  #enter(sheet: SheetNode, key: number): FormulaNode {
    const cell = sheet.cells.get(key);
    if (cell?.formula === undefined) throw new RangeError("no formula there");
    const mode = cell.array === undefined ? "single" : "spills";
    const program = this.program(cell.formula, rowOf(key), columnOf(key), mode);
    const node = new FormulaNode(sheet, key, program, cell.array === "fixed" ? cell.spill : undefined);
    sheet.add(node);
    this.#bind(node);
    if (program.volatile) this.volatile.add(node);
    return node;
  }

  #leave(node: FormulaNode): void {
    this.markClean(node);
    node.alive = false;
    this.dropFound(node);
    this.#unbind(node);
    this.volatile.delete(node);
    this.#tableUsers.delete(node);
    node.sheet.remove(node);
    node.sheet.spilling.delete(node);
    node.sheet.blocked.delete(node);
  }

  #bind(node: FormulaNode): void {
    const precedents: Reference[] = [];
    this.#collect(node.program, node, precedents, new Set());
    node.precedents = precedents;
    for (const { sheet, area } of precedents) sheet.dependents.add(area, node);
  }

  #unbind(node: FormulaNode): void {
    for (const { sheet, area } of node.precedents) sheet.dependents.remove(area, node);
    node.precedents = [];
  }

  #collect(program: Program, node: FormulaNode, into: Reference[], seen: Set<Program>): void {
    if (seen.has(program)) return;
    seen.add(program);
    for (const template of program.references) {
      const sheet = template.sheet === undefined ? node.sheet : this.sheet(template.sheet);
      const area = placeTemplate(template, node.row, node.column);
      if (sheet && area) into.push(new Reference(sheet, area));
    }
    if (program.tables.length > 0 || program.names.length > 0) this.#tableUsers.add(node);
    for (const reference of program.tables) {
      const cells = this.resolveTable(reference, node.sheet, node.row, node.column);
      if (cells instanceof Reference) into.push(cells);
      else if (!isError(cells)) throw new TypeError("a structured reference gave no cells");
    }
    for (const written of program.names) {
      const mark = written.lastIndexOf("!");
      const sheet =
        mark < 0
          ? node.sheet
          : this.sheet(written.slice(0, mark).replace(/^'|'$/g, "").replaceAll("''", "'"));
      const named = sheet && this.named(written.slice(mark + 1), sheet);
      if (named) this.#collect(named, node, into, seen);
    }
  }

  /** Spilled cells of the file belong to their formulas from the start. */
  #adoptSpills(sheet: SheetNode): void {
    for (const node of sheet.nodes.values()) {
      const spill = sheet.cells.get(node.key)?.spill;
      if (!spill) continue;
      node.spill = spill;
      sheet.spilling.add(node);
      for (let row = spill.top; row <= spill.bottom; row++) {
        for (let column = spill.left; column <= spill.right; column++) {
          const key = cellKey(row, column);
          const cell: Cell | undefined = sheet.cells.get(key);
          if (cell?.spilledFrom?.row === node.row && cell.spilledFrom.column === node.column)
            sheet.spillOwners.set(key, node);
        }
      }
    }
  }
}

const describe = ({ sheet, area }: Reference): string =>
  `${sheet.name}!${area.top},${area.left},${area.bottom},${area.right}`;
