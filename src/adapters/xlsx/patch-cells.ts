import { formatArea, formatCell, parseArea } from "../../spreadsheet/address";
import { cellKey, columnOf, rowOf, type Worksheet } from "../../spreadsheet/workbook";
import { keyOfAddress } from "./cell-places";
import type { EditPlan } from "./edit-plan";
import { SharedFormula } from "./shared-formula";
import { writeCell, type CellWriting, type FileFormula } from "./write-cell";
import type { XmlAttributes, XmlHandler } from "./xml-source";
import { escapeText, setAttribute, type Splices } from "./xml-splice";
import { XlsxRefusal } from "./xlsx-refusal";

interface FormulaSource {
  readonly attributes: XmlAttributes;
  readonly start: number;
  readonly openEnd: number;
  closeStart: number;
  end: number;
  text: string;
}

/** A cell of the file while it is passed. */
interface FileCell {
  /** Place in the opened file. */
  readonly from: number;
  /** Present place; undefined where its row is deleted. */
  readonly to: number | undefined;
  readonly attributes: XmlAttributes;
  readonly start: number;
  readonly openEnd: number;
  end: number;
  formula?: FormulaSource;
  /** Places of children other than formula and value. */
  readonly rest: [number, number][];
}

/** What became of formulas, for the calculation chain: places after the edits. */
export interface FormulaChanges {
  readonly gone: Set<number>;
  readonly added: Map<number, { readonly isArray: boolean }>;
}

/** Passes the rows of a worksheet part once and collects what must change in them. */
export class CellsPatch {
  readonly formulas: FormulaChanges = { gone: new Set(), added: new Map() };
  private readonly text: string;
  private readonly groups = new Map<string, FileCell[]>();
  /** Keys to write, by row. */
  private readonly toWrite = new Map<number, Set<number>>();
  /** Rows of {@link toWrite} that no row of the file has passed yet, in order. */
  private readonly newRows: number[];
  private fromRow = -1;
  private row:
    | {
        readonly to: number | undefined;
        readonly start: number;
        readonly openEnd: number;
        readonly attributes: XmlAttributes;
        readonly empty: boolean;
      }
    | undefined;
  private pendingCells: number[] = [];
  private column = -1;
  private cell: FileCell | undefined;
  private depth = 0;
  private collecting = false;

  constructor(
    private readonly splices: Splices,
    private readonly sheet: Worksheet,
    changed: ReadonlySet<number>,
    private readonly plan: EditPlan,
    private readonly writing: CellWriting,
  ) {
    this.text = splices.original;
    for (const key of changed) this.writeLater(key);
    this.newRows = [...this.toWrite.keys()].sort((a, b) => a - b);
  }

  private writeLater(key: number): void {
    const row = rowOf(key);
    const keys = this.toWrite.get(row);
    if (keys) keys.add(key);
    else this.toWrite.set(row, new Set([key]));
  }

  /** What to tell of elements inside sheetData. */
  readonly handler: XmlHandler = {
    open: (name, attributes, start, end, empty) => {
      if (this.cell) {
        this.depth += 1;
        if (this.depth === 1 && name === "f") {
          this.cell.formula = { attributes, start, openEnd: end, closeStart: end, end, text: "" };
          this.collecting = true;
        } else if (this.depth === 1 && name !== "v" && name !== "is") this.cell.rest.push([start, end]);
      } else if (name === "c") this.openCell(attributes, start, end);
      else if (name === "row") this.openRow(attributes, start, end, empty);
    },
    text: (piece) => {
      if (this.collecting && this.cell?.formula) this.cell.formula.text += piece;
    },
    close: (name, start, end) => {
      if (this.cell && this.depth > 0) {
        this.depth -= 1;
        if (this.depth > 0) return;
        if (name === "f" && this.cell.formula) {
          Object.assign(this.cell.formula, { closeStart: start, end });
          this.collecting = false;
        } else if (name !== "v" && name !== "is") {
          const last = this.cell.rest.at(-1);
          if (last) last[1] = end;
        }
      } else if (name === "c") this.closeCell(end);
      else if (name === "row") this.closeRow(start, end);
    },
  };

  private openRow(attributes: XmlAttributes, start: number, openEnd: number, empty: boolean): void {
    const number = Number(attributes["r"]);
    this.fromRow = number >= 1 ? number - 1 : this.fromRow + 1;
    const to = this.plan.row(this.sheet.name, this.fromRow);
    this.column = -1;
    this.row = { to, start, openEnd, attributes, empty };
    if (to === undefined) return;
    this.insertRowsBefore(to, start);
    if (this.newRows[0] === to) this.newRows.shift();
    this.pendingCells = [...(this.toWrite.get(to) ?? [])].sort((a, b) => a - b);
  }

  private insertRowsBefore(limit: number, at: number): void {
    while (this.newRows.length > 0 && (this.newRows[0] as number) < limit) {
      const row = this.newRows.shift() as number;
      const cells = this.writeNewCells([...(this.toWrite.get(row) ?? [])].sort((a, b) => a - b));
      const q = this.writing.qualifier;
      if (cells !== "") this.splices.insert(at, `<${q}row r="${row + 1}">${cells}</${q}row>`);
    }
  }

  private writeNewCells(keys: readonly number[]): string {
    return keys.map((key) => this.write(key, undefined, undefined)).join("");
  }

  private openCell(attributes: XmlAttributes, start: number, openEnd: number): void {
    const written = attributes["r"] === undefined ? -1 : keyOfAddress(attributes["r"]);
    this.column = written < 0 ? this.column + 1 : columnOf(written);
    const to = this.row?.to === undefined ? undefined : cellKey(this.row.to, this.column);
    this.cell = {
      from: cellKey(this.fromRow, this.column),
      to,
      attributes,
      start,
      openEnd,
      end: openEnd,
      rest: [],
    };
    this.depth = 0;
    if (to === undefined) return;
    const earlier: number[] = [];
    while (this.pendingCells.length > 0 && (this.pendingCells[0] as number) < to)
      earlier.push(this.pendingCells.shift() as number);
    if (earlier.length > 0) this.splices.insert(start, this.writeNewCells(earlier));
    if (this.pendingCells[0] === to) this.pendingCells.shift();
  }

  private closeCell(end: number): void {
    const cell = this.cell;
    this.cell = undefined;
    if (!cell) return;
    cell.end = end;
    const { formula, to } = cell;
    if (formula?.attributes["t"] === "shared") {
      const group = formula.attributes["si"] ?? "";
      const members = this.groups.get(group);
      if (members) members.push(cell);
      else this.groups.set(group, [cell]);
      return;
    }
    if (to === undefined) return;
    if (!formula) this.finishCell(cell, undefined);
    else this.finishCell(cell, this.presentFormula(cell, formula));
  }

  /** The formula of a cell after the edits, with its element as it may stay. */
  private presentFormula(cell: FileCell, source: FormulaSource): FileFormula {
    const { attributes } = source;
    let tag = this.text.slice(source.start, source.openEnd);
    const isArray = attributes["t"] === "array";
    const area = parseArea(attributes["ref"] ?? "");
    if (area && (isArray || attributes["t"] === "dataTable")) {
      const moved = this.plan.area(this.sheet.name, area);
      const sameSize = moved && moved.bottom - moved.top === area.bottom - area.top;
      if (!sameSize) this.rewriteTorn(cell, area, isArray);
      else if (formatArea(moved) !== formatArea(area)) tag = setAttribute(tag, "ref", formatArea(moved));
    }
    if (attributes["t"] === "dataTable") {
      for (const name of ["r1", "r2"]) {
        const input = attributes[name];
        if (input !== undefined) tag = setAttribute(tag, name, this.plan.formula(input, this.sheet.name));
      }
    }
    const formula = this.plan.formula(source.text, this.sheet.name);
    const inside =
      formula === source.text ? this.text.slice(source.openEnd, source.closeStart) : escapeText(formula);
    return { formula, source: tag + inside + this.text.slice(source.closeStart, source.end), isArray };
  }

  /** Rows were put into a spilled block or taken out of it: its cells are written as the model has them now. */
  private rewriteTorn(
    anchor: FileCell,
    area: { top: number; left: number; bottom: number; right: number },
    isArray: boolean,
  ): void {
    const model = anchor.to === undefined ? undefined : this.sheet.cells.get(anchor.to);
    if (!isArray || model?.array === "fixed") {
      throw new XlsxRefusal(
        "array-cut",
        `Rows were put in or taken out inside the array formula at ${formatCell(rowOf(anchor.from), columnOf(anchor.from))} of ${this.sheet.name}, which cannot be saved: undo that, or clear the array formula.`,
      );
    }
    if (anchor.to !== undefined) this.writeLater(anchor.to);
    for (let row = area.top; row <= area.bottom; row++) {
      const to = this.plan.row(this.sheet.name, row);
      for (let column = area.left; to !== undefined && column <= area.right; column++)
        this.writeLater(cellKey(to, column));
    }
  }

  private finishCell(cell: FileCell, formula: FileFormula | undefined): void {
    const { to, from, start, openEnd, end } = cell;
    if (to === undefined) return;
    if (this.toWrite.get(rowOf(to))?.has(to)) {
      this.splices.replace(start, end, this.write(to, cell, formula));
      return;
    }
    if (formula && cell.formula) this.splices.replace(cell.formula.start, cell.formula.end, formula.source);
    if (to === from && cell.attributes["r"] !== undefined) return;
    const tag = this.text.slice(start, openEnd);
    this.splices.replace(start, openEnd, setAttribute(tag, "r", formatCell(rowOf(to), columnOf(to))));
  }

  private write(key: number, cell: FileCell | undefined, before: FileFormula | undefined): string {
    const model = this.sheet.cells.get(key);
    const tag = cell && this.text.slice(cell.start, cell.openEnd);
    const rest = cell?.rest.map(([start, end]) => this.text.slice(start, end)).join("") ?? "";
    const written = writeCell(this.writing, key, model, tag, before, rest);
    const holdsFormula = model?.formula !== undefined && written.includes(`<${this.writing.qualifier}f`);
    if (before && !holdsFormula) this.formulas.gone.add(key);
    else if (holdsFormula && !before) this.formulas.added.set(key, { isArray: model.spill !== undefined });
    return written;
  }

  private closeRow(closeStart: number, end: number): void {
    const row = this.row;
    this.row = undefined;
    if (!row) return;
    if (row.to === undefined) {
      this.splices.remove(row.start, end);
      return;
    }
    const added = this.writeNewCells(this.pendingCells);
    this.pendingCells = [];
    let tag = this.text.slice(row.start, row.openEnd);
    if (row.to !== this.fromRow || row.attributes["r"] === undefined)
      tag = setAttribute(tag, "r", String(row.to + 1));
    const spans = /^(\d+):(\d+)$/.exec(row.attributes["spans"] ?? "");
    const columns = [...(this.toWrite.get(row.to) ?? [])].map((key) => columnOf(key) + 1);
    if (spans && columns.length > 0) {
      const [first, last] = [Math.min(Number(spans[1]), ...columns), Math.max(Number(spans[2]), ...columns)];
      if (`${first}:${last}` !== row.attributes["spans"])
        tag = setAttribute(tag, "spans", `${first}:${last}`);
    }
    if (row.empty && added !== "") {
      const q = this.writing.qualifier;
      this.splices.replace(row.start, end, `${tag.replace(/\s*\/>$/, ">")}${added}</${q}row>`);
      return;
    }
    this.splices.replace(row.start, row.openEnd, tag);
    if (added !== "") this.splices.insert(closeStart, added);
  }

  /**
   * Writes what no row of the file came after, and the formulas that cells share.
   *
   * @param at - the end of the rows
   */
  finish(at: number): void {
    this.insertRowsBefore(Infinity, at);
    for (const members of this.groups.values()) this.finishGroup(members);
  }

  /** A group of cells that share a formula stays one where all of them still follow from its first cell. */
  private finishGroup(members: readonly FileCell[]): void {
    const first = members.find((cell) => cell.formula?.text);
    if (!first?.formula) {
      for (const cell of members) this.finishCell(cell, undefined);
      return;
    }
    const shared = new SharedFormula(first.formula.text, rowOf(first.from), columnOf(first.from));
    const now = members.map((cell) => {
      const own = cell.formula?.text || shared.at(rowOf(cell.from), columnOf(cell.from));
      return this.plan.formula(own, this.sheet.name);
    });
    const firstNow = now[members.indexOf(first)] ?? "";
    const keepsGroup = first.to !== undefined && !this.losesFormula(first, firstNow);
    const sharedNow = keepsGroup
      ? new SharedFormula(firstNow, rowOf(first.to), columnOf(first.to))
      : undefined;
    const together =
      sharedNow !== undefined &&
      members.every(
        (cell, index) =>
          cell.to === undefined || sharedNow.at(rowOf(cell.to), columnOf(cell.to)) === now[index],
      );
    members.forEach((cell, index) => {
      if (!cell.formula || cell.to === undefined) return;
      const formula = now[index] ?? "";
      this.finishCell(cell, {
        formula,
        source: this.sharedSource(cell.formula, formula, together),
        isArray: false,
      });
    });
  }

  private losesFormula(cell: FileCell, formula: string): boolean {
    if (cell.to === undefined || !this.toWrite.get(rowOf(cell.to))?.has(cell.to)) return false;
    const model = this.sheet.cells.get(cell.to);
    const table = this.writing.tableAt(rowOf(cell.to), columnOf(cell.to));
    return model?.formula === undefined || model.formula !== this.writing.spelling.toTyped(formula, table);
  }

  private sharedSource(source: FormulaSource, formula: string, together: boolean): string {
    let tag = this.text.slice(source.start, source.openEnd);
    if (!together) {
      for (const name of ["t", "ref", "si"]) tag = setAttribute(tag, name, undefined);
      return `${tag.replace(/\s*\/>$/, ">")}${escapeText(formula)}</${this.writing.qualifier}f>`;
    }
    const area = parseArea(source.attributes["ref"] ?? "");
    const moved = area && this.plan.area(this.sheet.name, area);
    if (moved && formatArea(area) !== formatArea(moved)) tag = setAttribute(tag, "ref", formatArea(moved));
    const inside =
      source.text === "" || source.text === formula
        ? this.text.slice(source.openEnd, source.closeStart)
        : escapeText(formula);
    return tag + inside + this.text.slice(source.closeStart, source.end);
  }
}
