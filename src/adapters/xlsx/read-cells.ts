import type { Area } from "../../domain/area";
import { areaHolds, parseArea } from "../../spreadsheet/address";
import { cellKey, columnOf, rowOf, type Cell, type Table } from "../../spreadsheet/workbook";
import { keyOfAddress } from "./cell-places";
import { parseFileValue } from "./file-values";
import type { FormulaSpelling } from "./formula-spelling";
import { SharedFormula } from "./shared-formula";
import { isTrue, type XmlAttributes } from "./xml-source";
import { XlsxRefusal } from "./xlsx-refusal";

/** Cells that a sheet may have here; a browser holds no more. */
export const MAX_CELLS = 5_000_000;

/** What the cells of a file need beside their own sheet. */
export interface CellContext {
  readonly strings: readonly string[];
  readonly spelling: FormulaSpelling;
  readonly date1904: boolean;
  /** Style numbers that exist: a cell with another one gets the default. */
  readonly styleCount: number;
  /** The numbers of `cm` that mean a dynamic array. */
  readonly dynamicMarks: ReadonlySet<string>;
}

type Draft = { -readonly [K in keyof Cell]: Cell[K] };

/** Builds the cells of one sheet while its part is read. */
export class CellReader {
  readonly cells = new Map<number, Cell>();
  private readonly shared = new Map<string, SharedFormula>();
  private readonly waiting: { cell: Draft; key: number; group: string }[] = [];
  private readonly arrays: { key: number; area: Area }[] = [];
  private row = -1;
  private column = -1;
  private key = 0;
  private attributes: XmlAttributes = {};
  private formulaAttributes: XmlAttributes | undefined;
  private formula = "";
  private value: string | undefined;

  /** @param tables - of the sheet: a formula in one may leave out its name */
  constructor(
    private readonly context: CellContext,
    private readonly tables: readonly Table[],
  ) {}

  private typed(formula: string): string {
    const table = formula.includes("[")
      ? this.tables.find((candidate) => areaHolds(candidate.area, rowOf(this.key), columnOf(this.key)))
      : undefined;
    return this.context.spelling.toTyped(formula, table?.name);
  }

  openRow(attributes: XmlAttributes): number {
    const number = Number(attributes["r"]);
    this.row = number >= 1 ? number - 1 : this.row + 1;
    this.column = -1;
    return this.row;
  }

  openCell(attributes: XmlAttributes): void {
    const key =
      attributes["r"] === undefined ? cellKey(this.row, this.column + 1) : keyOfAddress(attributes["r"]);
    if (key < 0) throw new Error(`a cell has the address ${attributes["r"] ?? ""}`);
    this.key = key;
    this.column = columnOf(key);
    this.attributes = attributes;
    this.formulaAttributes = undefined;
    this.formula = "";
    this.value = undefined;
  }

  openFormula(attributes: XmlAttributes): void {
    this.formulaAttributes = attributes;
  }

  closeFormula(text: string): void {
    this.formula = text;
  }

  /** The content of `v`, or one piece of an inline string. */
  addValue(text: string): void {
    this.value = this.value === undefined ? text : this.value + text;
  }

  closeCell(): void {
    const { t: type, s } = this.attributes;
    const number = s === undefined ? 0 : Number(s);
    const cell: Draft = {
      value:
        this.value === undefined
          ? null
          : parseFileValue(type, this.value, this.context.strings, this.context.date1904),
      style: number < this.context.styleCount ? number : 0,
    };
    if (this.formulaAttributes) this.addFormula(cell, this.formulaAttributes);
    this.cells.set(this.key, cell);
    if (this.cells.size > MAX_CELLS) {
      throw new XlsxRefusal(
        "too-large",
        `A sheet of this workbook has more than ${MAX_CELLS} cells. Delete empty formatted rows and columns in your spreadsheet program, and save a copy.`,
      );
    }
  }

  private addFormula(cell: Draft, attributes: XmlAttributes): void {
    const type = attributes["t"];
    if (type === "shared") {
      this.addShared(cell, attributes);
    } else if (type === "dataTable") {
      const { r1 = "", r2 = "", dt2D, dtr } = attributes;
      cell.formula = isTrue(dt2D) ? `TABLE(${r1},${r2})` : isTrue(dtr) ? `TABLE(${r1},)` : `TABLE(,${r1})`;
      cell.notRecalculated = true;
    } else if (this.formula !== "") {
      cell.formula = this.typed(this.formula);
      if (type !== "array") return;
      const area = parseArea(attributes["ref"] ?? "");
      const mark = this.attributes["cm"];
      cell.array = mark !== undefined && this.context.dynamicMarks.has(mark) ? "dynamic" : "fixed";
      if (!area || area.top !== rowOf(this.key) || area.left !== columnOf(this.key)) return;
      cell.spill = area;
      this.arrays.push({ key: this.key, area });
    }
  }

  private addShared(cell: Draft, attributes: XmlAttributes): void {
    const group = attributes["si"] ?? "";
    const row = rowOf(this.key);
    const column = columnOf(this.key);
    if (this.formula !== "") {
      cell.formula = this.typed(this.formula);
      if (attributes["ref"] !== undefined || !this.shared.has(group)) {
        this.shared.set(group, new SharedFormula(cell.formula, row, column));
      }
      return;
    }
    const formula = this.shared.get(group);
    if (formula) cell.formula = formula.at(row, column);
    else this.waiting.push({ cell, key: this.key, group });
  }

  /** Settles what the file told in another order: shared formulas before their first cell, cells filled by arrays. */
  finish(): ReadonlyMap<number, Cell> {
    for (const { cell, key, group } of this.waiting) {
      const formula = this.shared.get(group);
      if (formula) cell.formula = formula.at(rowOf(key), columnOf(key));
    }
    for (const { key, area } of this.arrays) {
      const origin = { row: rowOf(key), column: columnOf(key) };
      for (const filled of this.keysWithin(area)) {
        const cell = this.cells.get(filled);
        if (filled === key || !cell || cell.formula !== undefined) continue;
        this.cells.set(filled, { ...cell, spilledFrom: origin });
      }
    }
    return this.cells;
  }

  private *keysWithin(area: Area): Generator<number> {
    if ((area.bottom - area.top + 1) * (area.right - area.left + 1) > this.cells.size) {
      for (const key of this.cells.keys()) if (areaHolds(area, rowOf(key), columnOf(key))) yield key;
      return;
    }
    for (let row = area.top; row <= area.bottom; row++) {
      for (let column = area.left; column <= area.right; column++) yield cellKey(row, column);
    }
  }
}
