import type { Area } from "../../domain/area";
import { areasMeet } from "../address";
import { cellKey, columnOf, rowOf, type Cell } from "../workbook";
import { DependencyIndex } from "./dependency-index";
import type { FormulaNode } from "./formula-node";

/** What the calculation keeps about one sheet. */
export class SheetNode {
  readonly nodes = new Map<number, FormulaNode>();
  /** Formula cells by column and row, to find those within a range. */
  readonly columns = new Map<number, Map<number, FormulaNode>>();
  /** How many formula cells of a column wait to be calculated. */
  readonly dirtyInColumn = new Map<number, number>();
  readonly dependents = new DependencyIndex();
  /** The formula whose result fills a cell. */
  readonly spillOwners = new Map<number, FormulaNode>();
  /** Formulas with a spilled result, and formulas whose result found no room. */
  readonly spilling = new Set<FormulaNode>();
  readonly blocked = new Set<FormulaNode>();
  dirty = 0;
  /** The last row and column that ever held a cell. */
  lastRow = 0;
  lastColumn = 0;

  constructor(
    readonly name: string,
    public cells: ReadonlyMap<number, Cell>,
  ) {
    for (const key of cells.keys()) this.reach(key);
  }

  /** Notes that a cell is in use. */
  reach(key: number): void {
    const row = rowOf(key);
    const column = columnOf(key);
    if (row > this.lastRow) this.lastRow = row;
    if (column > this.lastColumn) this.lastColumn = column;
  }

  add(node: FormulaNode): void {
    this.nodes.set(node.key, node);
    let column = this.columns.get(node.column);
    if (!column) this.columns.set(node.column, (column = new Map()));
    column.set(node.row, node);
  }

  remove(node: FormulaNode): void {
    this.nodes.delete(node.key);
    this.columns.get(node.column)?.delete(node.row);
  }

  /** Notes that a formula cell waits to be calculated, or no longer does. */
  countDirty(column: number, by: 1 | -1): void {
    this.dirty += by;
    this.dirtyInColumn.set(column, (this.dirtyInColumn.get(column) ?? 0) + by);
  }

  /** Calls `visit` for every formula not yet calculated anew that decides the cells of an area. */
  visitDirty(area: Area, visit: (node: FormulaNode) => void): void {
    if (this.dirty === 0) return;
    if (area.top === area.bottom && area.left === area.right) {
      const key = cellKey(area.top, area.left);
      const node = this.nodes.get(key) ?? this.spillOwners.get(key);
      if (node && node.state !== "clean") visit(node);
      return;
    }
    for (const [column, count] of this.dirtyInColumn) {
      if (count > 0 && column >= area.left && column <= area.right) this.#visitColumn(column, area, visit);
    }
    for (const node of this.spilling) {
      if (node.state !== "clean" && node.spill && areasMeet(node.spill, area)) visit(node);
    }
  }

  #visitColumn(column: number, area: Area, visit: (node: FormulaNode) => void): void {
    const nodes = this.columns.get(column);
    if (!nodes) return;
    if (area.bottom - area.top < nodes.size) {
      for (let row = area.top; row <= area.bottom; row++) {
        const node = nodes.get(row);
        if (node && node.state !== "clean") visit(node);
      }
      return;
    }
    for (const [row, node] of nodes) {
      if (row >= area.top && row <= area.bottom && node.state !== "clean") visit(node);
    }
  }
}
