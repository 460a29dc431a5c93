import type { Area } from "../../domain/area";
import { cellKey } from "../workbook";
import type { FormulaNode } from "./formula-node";

/** Ranges of more columns than this are kept in a list instead of by column. */
const WIDE = 64;

/** A range that formulas depend on, once for all of them. */
interface RangeEntry {
  readonly area: Area;
  readonly users: Set<FormulaNode>;
}

/**
 * Which formulas depend on a cell of one sheet. A range is not taken apart into its cells: each of its columns keeps
 * it under at most 40 stretches of 1, 2, 4, … rows, and a cell looks through the 21 stretches that hold its row.
 */
export class DependencyIndex {
  readonly #cells = new Map<number, Set<FormulaNode>>();
  readonly #ranges = new Map<string, RangeEntry>();
  readonly #columns = new Map<number, Map<number, Set<RangeEntry>>>();
  readonly #wide = new Set<RangeEntry>();

  add(area: Area, user: FormulaNode): void {
    if (area.top === area.bottom && area.left === area.right) {
      const key = cellKey(area.top, area.left);
      const users = this.#cells.get(key);
      if (users) users.add(user);
      else this.#cells.set(key, new Set([user]));
      return;
    }
    const name = rangeName(area);
    let entry = this.#ranges.get(name);
    if (!entry) {
      this.#ranges.set(name, (entry = { area, users: new Set() }));
      this.#place(entry, true);
    }
    entry.users.add(user);
  }

  remove(area: Area, user: FormulaNode): void {
    if (area.top === area.bottom && area.left === area.right) {
      const key = cellKey(area.top, area.left);
      const users = this.#cells.get(key);
      users?.delete(user);
      if (users?.size === 0) this.#cells.delete(key);
      return;
    }
    const entry = this.#ranges.get(rangeName(area));
    if (!entry) return;
    entry.users.delete(user);
    if (entry.users.size > 0) return;
    this.#ranges.delete(rangeName(area));
    this.#place(entry, false);
  }

  /** Calls `visit` for every formula that depends on a cell; a formula may come more than once. */
  visit(row: number, column: number, visit: (user: FormulaNode) => void): void {
    const users = this.#cells.get(cellKey(row, column));
    if (users) for (const user of users) visit(user);
    const stretches = this.#columns.get(column);
    if (stretches) {
      for (let level = 0; level <= 20; level++) {
        const entries = stretches.get(stretchKey(level, row >> level));
        if (entries) for (const entry of entries) for (const user of entry.users) visit(user);
      }
    }
    for (const { area, users: wideUsers } of this.#wide) {
      if (row < area.top || row > area.bottom || column < area.left || column > area.right) continue;
      for (const user of wideUsers) visit(user);
    }
  }

  #place(entry: RangeEntry, present: boolean): void {
    const { area } = entry;
    if (area.right - area.left >= WIDE) {
      if (present) this.#wide.add(entry);
      else this.#wide.delete(entry);
      return;
    }
    for (let column = area.left; column <= area.right; column++) {
      let stretches = this.#columns.get(column);
      if (!stretches) this.#columns.set(column, (stretches = new Map()));
      for (const key of stretchesOf(area.top, area.bottom)) {
        const entries = stretches.get(key);
        if (!present) entries?.delete(entry);
        else if (entries) entries.add(entry);
        else stretches.set(key, new Set([entry]));
      }
    }
  }
}

const rangeName = (area: Area): string => `${area.top},${area.left},${area.bottom},${area.right}`;

const stretchKey = (level: number, index: number): number => level * 2_097_152 + index;

/** The fewest aligned stretches of 1, 2, 4, … rows that together make up the rows from top to bottom. */
function* stretchesOf(top: number, bottom: number): Generator<number> {
  let low = top;
  let high = bottom + 1;
  for (let level = 0; low < high; level++) {
    if (low & 1) yield stretchKey(level, low++);
    if (high & 1) yield stretchKey(level, --high);
    low >>= 1;
    high >>= 1;
  }
}
