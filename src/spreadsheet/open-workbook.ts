import type { Area } from "../domain/area";
import type { CellValue } from "../domain/cell-value";
import { refusal, success, type Result } from "../domain/result";
import { areaHolds, MAX_COLUMNS, MAX_ROWS } from "./address";
import { EditHistory, type RecordedChange, type Step } from "./edit-history";
import { copyFormula } from "./formula-rewriting";
import { addTableState, checkNewTable } from "./new-table";
import { checkRowEdit, dataRows, shiftWorkbookRows } from "./row-edit";
import { formulasThatGrow, growTableState, makeRoomBelow } from "./table-growth";
import {
  cellKey,
  columnOf,
  rowOf,
  type Cell,
  type CellStyle,
  type DefinedName,
  type NewChart,
  type NewTable,
  type StructuralEdit,
  type Table,
  type WorkbookChange,
  type WorkbookContents,
  type WorkbookDifference,
  type Worksheet,
} from "./workbook";
import {
  emptySheet,
  openSheet,
  sameCell,
  storeCell,
  styleOnly,
  type SheetState,
  type WorkbookState,
} from "./workbook-state";

/** What goes into a cell: a string is text whatever it begins with; only `{ formula }` is a formula. */
export type CellContent = CellValue | { readonly formula: string };

/** How cells are written. */
export interface WriteOptions {
  /** Cells that have no style of their own take that of the cell in this row and the same column. */
  readonly styleRow?: number;
  /** The number format that the cells get, such as `dd/mm/yyyy`. */
  readonly numberFormat?: string;
}

/** Who changed the workbook: `edit` is the user (undo and redo included), `calculation` the formula engine. */
export type ChangeSource = "edit" | "calculation";
export type ChangeListener = (changes: readonly WorkbookChange[], source: ChangeSource) => void;

/** The longest text that a cell of a saved workbook can hold, in UTF-16 units. */
export const MAX_TEXT = 32_767;

/**
 * An open workbook. All edits go through its methods: they are grouped into steps that can be undone, journalled
 * for saving, and told to listeners, once a step. Edits that cannot be made are refused with a fault and change
 * nothing. Objects that readers return are not to be kept across an edit. Sheet names match in any case.
 */
export class OpenWorkbook {
  readonly date1904: boolean;
  readonly #history = new EditHistory();
  readonly #listeners = new Set<ChangeListener>();
  readonly #journal: StructuralEdit[] = [];
  readonly #styles: CellStyle[];
  readonly #settings: Map<string, string>;
  readonly #openedSettings: ReadonlyMap<string, string>;
  #state: WorkbookState;
  #step: Step | undefined;
  #depth = 0;
  #pending: WorkbookChange[] = [];
  #revision = 0;

  constructor(contents: WorkbookContents) {
    this.date1904 = contents.date1904;
    this.#state = { sheets: contents.sheets.map(openSheet), names: contents.names };
    this.#styles = contents.styles.length > 0 ? [...contents.styles] : [{ numberFormat: "General" }];
    this.#openedSettings = new Map(contents.settings);
    this.#settings = new Map(contents.settings);
  }

  get sheets(): readonly Worksheet[] {
    return this.#state.sheets;
  }
  get names(): readonly DefinedName[] {
    return this.#state.names;
  }
  /** Styles of the file and, behind them, those that edits added. */
  get styles(): readonly CellStyle[] {
    return this.#styles;
  }
  /** Settings that Cellwright keeps in the document. */
  get settings(): ReadonlyMap<string, string> {
    return this.#settings;
  }
  /** Goes up with every edit, undo, redo and setting: the same number means nothing was done since. */
  get revision(): number {
    return this.#revision;
  }
  get canUndo(): boolean {
    return this.#history.undoable !== undefined;
  }
  get canRedo(): boolean {
    return this.#history.redoable !== undefined;
  }

  sheet(name: string): Worksheet | undefined {
    return this.#find(name);
  }
  cell(sheet: string, row: number, column: number): Cell | undefined {
    return this.#find(sheet)?.cells.get(cellKey(row, column));
  }
  /** Keys of the cells of a sheet that hold a formula. */
  formulaKeys(sheet: string): ReadonlySet<number> {
    return this.#find(sheet)?.formulas ?? new Set();
  }
  /** The table of that name, in any case, and its sheet. */
  table(name: string): { readonly sheet: Worksheet; readonly table: Table } | undefined {
    const wanted = name.toLowerCase();
    for (const sheet of this.#state.sheets) {
      const table = sheet.tables.find((candidate) => candidate.name.toLowerCase() === wanted);
      if (table) return { sheet, table };
    }
    return undefined;
  }
  /** The smallest area that holds every cell with a value or a formula; undefined for an empty sheet. */
  usedArea(sheet: string): Area | undefined {
    let top = MAX_ROWS;
    let left = MAX_COLUMNS;
    let bottom = -1;
    let right = -1;
    for (const [key, cell] of this.#find(sheet)?.cells ?? []) {
      if (cell.value === null && cell.formula === undefined) continue;
      const row = rowOf(key);
      const column = columnOf(key);
      if (row < top) top = row;
      if (row > bottom) bottom = row;
      if (column < left) left = column;
      if (column > right) right = column;
    }
    return bottom < 0 ? undefined : { top, left, bottom, right };
  }
  /** The number of the style of a cell, existing or not. */
  styleAt(sheet: string, row: number, column: number): number {
    const found = this.#find(sheet);
    return found?.cells.get(cellKey(row, column))?.style ?? found?.columnStyles.get(column) ?? 0;
  }

  /** Tells of every step; returns the way to stop. A listener must not edit in answer. */
  onChange(listener: ChangeListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Does several edits as one step: one undo takes all of them back. */
  group<T>(label: string, edits: () => T): T {
    this.#step ??= { label, changes: [] };
    this.#depth++;
    try {
      return edits();
    } finally {
      this.#depth--;
      if (this.#depth === 0) {
        const step = this.#step;
        this.#step = undefined;
        if (step.changes.length > 0) {
          this.#history.record(step);
          this.#revision++;
          this.#tell("edit");
        }
      }
    }
  }

  /** Writes one cell. */
  setCell(
    sheet: string,
    row: number,
    column: number,
    content: CellContent,
    options: WriteOptions = {},
  ): Result<Area> {
    return this.setCells(sheet, row, column, [[content]], options);
  }

  /**
   * Writes a block with its upper left corner there; `undefined` leaves a cell as it is. All or nothing.
   *
   * @returns the area written, or `no-sheet`, `off-sheet`, `text-too-long`, `array-cut`
   */
  setCells(
    sheet: string,
    top: number,
    left: number,
    rows: readonly (readonly (CellContent | undefined)[])[],
    options: WriteOptions = {},
  ): Result<Area> {
    const area = {
      top,
      left,
      bottom: top + rows.length - 1,
      right: left + Math.max(1, ...rows.map((row) => row.length)) - 1,
    };
    const target = this.#editable(sheet, area);
    if (!target.ok) return target;
    const tooLong = rows.some((row) =>
      row.some((content) => typeof content === "string" && content.length > MAX_TEXT),
    );
    if (tooLong) {
      return refusal(
        "text-too-long",
        `A cell holds at most ${MAX_TEXT} characters: divide the text over several cells.`,
      );
    }
    const home = target.value;
    this.group("Type", () => {
      rows.forEach((contents, r) =>
        contents.forEach((content, c) => {
          if (content === undefined) return;
          const [row, column] = [top + r, left + c];
          const found = home.cells.get(cellKey(row, column));
          const styleRow = options.styleRow;
          let style =
            found?.style ??
            (styleRow === undefined ? undefined : home.cells.get(cellKey(styleRow, column))?.style);
          style ??= home.columnStyles.get(column) ?? 0;
          if (options.numberFormat !== undefined) style = this.#styleLike(style, options.numberFormat);
          this.#write(home, cellKey(row, column), makeCell(content, style));
        }),
      );
    });
    return success(area);
  }

  /** Empties cells; their formats stay. */
  clear(sheet: string, area: Area): Result<Area> {
    const target = this.#editable(sheet, area);
    if (!target.ok) return target;
    const home = target.value;
    this.group("Clear", () => {
      for (const [key, cell] of cellsWithin(home, area)) {
        if (cell.value !== null || cell.formula !== undefined) this.#write(home, key, styleOnly(cell.style));
      }
    });
    return success(area);
  }

  /** Puts empty rows in before row `at`, with the formats of the row above and a table's calculated columns. */
  insertRows(sheet: string, at: number, count: number): Result<Area> {
    const edited = this.#moveRows({ kind: "insert-rows", sheet, at, count });
    if (!edited.ok) return edited;
    return success({ top: at, bottom: at + count - 1, left: 0, right: MAX_COLUMNS - 1 });
  }

  deleteRows(sheet: string, at: number, count: number): Result<Area> {
    const edited = this.#moveRows({ kind: "delete-rows", sheet, at, count });
    if (!edited.ok) return edited;
    return success({ top: at, bottom: at, left: 0, right: MAX_COLUMNS - 1 });
  }

  /**
   * Adds empty rows at a table's end, above its totals row: formats of the row above, calculated columns filled,
   * validations and references over whole columns extended. Where something stands below, whole rows are put in.
   *
   * @returns the area of the new rows
   */
  growTable(name: string, count: number): Result<Area> {
    const found = this.table(name);
    if (!found) return refusal("no-table", `There is no table ${name} in this workbook.`);
    const room = makeRoomBelow(this.#require(found.sheet.name), found.table, count);
    if (!room.ok) return room;
    return this.group("Add rows", () => {
      const sheet = found.sheet.name;
      if (room.value > 0) {
        const moved = this.#moveRows({ kind: "insert-rows", sheet, at: found.table.area.bottom + 1, count });
        if (!moved.ok) return moved;
      }
      return success(this.#grow(sheet, found.table.name, count));
    });
  }

  /** Adds rows with these contents at a table's end; `undefined` leaves a cell to its calculated column. */
  appendToTable(name: string, rows: readonly (readonly (CellContent | undefined)[])[]): Result<Area> {
    return this.group("Add rows", () => {
      const grown = this.growTable(name, rows.length);
      const sheet = this.table(name)?.sheet.name;
      if (!grown.ok || sheet === undefined) return grown;
      const width = grown.value.right - grown.value.left + 1;
      const { top, left } = grown.value;
      const written = this.setCells(
        sheet,
        top,
        left,
        rows.map((row) => row.slice(0, width)),
      );
      return written.ok ? grown : written;
    });
  }

  /** Adds an empty sheet behind the others. */
  addSheet(name: string): Result<string> {
    if (this.#find(name))
      return refusal("sheet-exists", `There is a sheet ${name} already: choose another name.`);
    if (name.trim() === "" || name.length > 31 || /[\\/?*[\]:]|^'|'$/.test(name)) {
      return refusal("sheet-name", "A sheet's name has 1 to 31 characters and none of \\ / ? * [ ] :");
    }
    this.group("Add sheet", () => {
      const after = { ...this.#state, sheets: [...this.#state.sheets, emptySheet(name)] };
      this.#restructure({ kind: "add-sheet", sheet: name }, after);
    });
    return success(name);
  }

  /**
   * Makes a table at the top of an empty sheet, or of a new one behind the others: headings, formats, calculated
   * columns, validations. Its other cells are left blank.
   */
  addTable(table: NewTable): Result<Area> {
    const names = new Set(
      this.#state.sheets.flatMap(({ tables }) => tables.map(({ name }) => name.toLowerCase())),
    );
    const known = this.#find(table.sheet);
    const allowed = checkNewTable(table, names, known);
    if (!allowed.ok) return allowed;
    return this.group("Add table", () => {
      if (!known) {
        const made = this.addSheet(table.sheet);
        if (!made.ok) return made;
      }
      const named = { ...table, sheet: known?.name ?? table.sheet };
      const target = this.#editable(named.sheet, { top: 0, left: 0, bottom: 0, right: 0 });
      if (!target.ok) return target;
      this.#restructure(
        { kind: "add-table", sheet: named.sheet, table: named },
        addTableState(this.#state, named),
      );
      const home = this.#require(named.sheet);
      const rows = Math.max(1, named.rows);
      named.columns.forEach(({ name, formula, numberFormat = "General", font }, column) => {
        this.#write(home, cellKey(0, column), { value: name, style: home.columnStyles.get(column) ?? 0 });
        const style = this.#styleLike(home.columnStyles.get(column) ?? 0, numberFormat, font);
        for (let row = 1; row <= rows; row++) {
          const cell = formula === undefined ? styleOnly(style) : { value: null, formula, style };
          this.#write(home, cellKey(row, column), cell);
        }
      });
      return success({ top: 0, left: 0, bottom: rows, right: named.columns.length - 1 });
    });
  }

  /** Adds a chart of the spreadsheet's own kind: kept in the file, shown as a marked place. */
  addChart(chart: NewChart): Result<Area> {
    const target = this.#editable(chart.sheet, {
      ...chart.area,
      bottom: chart.area.top,
      right: chart.area.left,
    });
    if (!target.ok) return target;
    const home = target.value;
    this.group("Add chart", () => {
      const object = { kind: "chart", title: chart.title, area: chart.area } as const;
      const sheets = this.#state.sheets.map((sheet) =>
        sheet === home ? { ...sheet, objects: [...sheet.objects, object] } : sheet,
      );
      this.#restructure({ kind: "add-chart", chart }, { ...this.#state, sheets });
    });
    return success(chart.area);
  }

  /** Keeps a setting in the document; not a step that undo takes back. */
  keepSetting(key: string, value: string): void {
    if (this.#settings.get(key) === value) return;
    this.#settings.set(key, value);
    this.#revision++;
  }

  /** Takes the last step back; false where there is none. */
  undo(): boolean {
    const step = this.#history.takeUndo();
    if (!step) return false;
    for (const change of step.changes.toReversed()) this.#replay(change, "before");
    this.#revision++;
    this.#tell("edit");
    return true;
  }

  /** Does the step last undone again; false where there is none. */
  redo(): boolean {
    const step = this.#history.takeRedo();
    if (!step) return false;
    for (const change of step.changes) this.#replay(change, "after");
    this.#revision++;
    this.#tell("edit");
    return true;
  }

  /** What a save needs beside the bytes that were opened. */
  difference(): WorkbookDifference {
    const changedCells = new Map<string, Set<number>>();
    for (const sheet of this.#state.sheets) {
      const keys = new Set<number>();
      for (const [key, before] of sheet.baseline) if (!sameCell(before, sheet.cells.get(key))) keys.add(key);
      if (keys.size > 0) changedCells.set(sheet.name, keys);
    }
    const changedSettings = new Set(
      [...this.#settings]
        .filter(([key, value]) => this.#openedSettings.get(key) !== value)
        .map(([key]) => key),
    );
    return { edits: [...this.#journal], changedCells, changedSettings };
  }

  /** For the calculation alone: puts a result into a cell, without a step. {@link announce} tells of it. */
  storeResult(sheet: string, key: number, cell: Cell | undefined): void {
    storeCell(this.#require(sheet), key, cell);
  }

  /** For the calculation alone: tells listeners which results it stored. */
  announce(stored: ReadonlyMap<string, readonly number[]>): void {
    for (const [sheet, keys] of stored)
      if (keys.length > 0) this.#pending.push({ kind: "cells", sheet, keys });
    this.#tell("calculation");
  }

  #find(name: string): SheetState | undefined {
    const exact = this.#state.sheets.find((sheet) => sheet.name === name);
    if (exact) return exact;
    const wanted = name.toLowerCase();
    return this.#state.sheets.find((sheet) => sheet.name.toLowerCase() === wanted);
  }

  #require(name: string): SheetState {
    const sheet = this.#find(name);
    if (!sheet) throw new RangeError(`no sheet ${name}`);
    return sheet;
  }

  #editable(name: string, area: Area): Result<SheetState> {
    const sheet = this.#find(name);
    if (!sheet) return refusal("no-sheet", `There is no sheet ${name} in this workbook.`);
    if (sheet.kind !== "cells")
      return refusal("no-cells", `${sheet.name} has no cells that could be edited.`);
    if (area.top < 0 || area.left < 0 || area.bottom >= MAX_ROWS || area.right >= MAX_COLUMNS) {
      return refusal("off-sheet", "That is beyond the edge of the sheet.");
    }
    for (const [, cell] of cellsWithin(sheet, area)) {
      const anchor = cell.spilledFrom
        ? sheet.cells.get(cellKey(cell.spilledFrom.row, cell.spilledFrom.column))
        : cell;
      const fixed = anchor?.array === "fixed" ? anchor.spill : undefined;
      if (!fixed) continue;
      if (areaHolds(area, fixed.top, fixed.left) && areaHolds(area, fixed.bottom, fixed.right)) continue;
      return refusal("array-cut", "This cell is part of an array formula: change or clear the whole array.");
    }
    return success(sheet);
  }

  #write(home: SheetState, key: number, cell: Cell | undefined): void {
    const sheet = this.#require(home.name);
    const found = sheet.cells.get(key);
    const before = found?.spilledFrom ? styleOnly(found.style) : found;
    storeCell(sheet, key, cell);
    const changes = this.#step?.changes ?? [];
    const last = changes.at(-1);
    if (last?.kind === "cells" && last.sheet === sheet.name) {
      const recorded = last.cells.get(key);
      if (recorded) recorded.after = cell;
      else last.cells.set(key, { before, after: cell });
    } else {
      changes.push({ kind: "cells", sheet: sheet.name, cells: new Map([[key, { before, after: cell }]]) });
    }
    this.#noteCell(sheet.name, key);
  }

  #noteCell(sheet: string, key: number): void {
    const last = this.#pending.at(-1);
    if (last?.kind === "cells" && last.sheet === sheet) (last.keys as number[]).push(key);
    else this.#pending.push({ kind: "cells", sheet, keys: [key] });
  }

  #restructure(edit: StructuralEdit, after: WorkbookState): void {
    this.#step?.changes.push({ kind: "structure", edit, before: this.#state, after });
    this.#state = after;
    this.#journal.push(edit);
    this.#pending.push({ kind: "structure", edit, undone: false });
  }

  #replay(change: RecordedChange, side: "before" | "after"): void {
    if (change.kind === "structure") {
      this.#state = change[side];
      if (side === "before") this.#journal.pop();
      else this.#journal.push(change.edit);
      this.#pending.push({ kind: "structure", edit: change.edit, undone: side === "before" });
      return;
    }
    const sheet = this.#require(change.sheet);
    for (const [key, recorded] of change.cells) {
      storeCell(sheet, key, recorded[side]);
      this.#noteCell(sheet.name, key);
    }
  }

  #tell(source: ChangeSource): void {
    const changes = this.#pending;
    this.#pending = [];
    if (changes.length === 0) return;
    for (const listener of [...this.#listeners]) listener(changes, source);
  }

  #moveRows(edit: Extract<StructuralEdit, { kind: "insert-rows" | "delete-rows" }>): Result<true> {
    const { at, count } = edit;
    const target = this.#editable(edit.sheet, { top: at, bottom: at + count - 1, left: 0, right: -1 });
    if (!target.ok) return target;
    const home = target.value;
    if (count < 1) return refusal("no-rows", "Choose at least one row.");
    if (edit.kind === "insert-rows" && [...home.cells.keys()].some((key) => rowOf(key) + count >= MAX_ROWS)) {
      return refusal("sheet-full", "The last rows of the sheet are in use, so no row can be put in.");
    }
    const allowed = checkRowEdit(home, edit);
    if (!allowed.ok) return allowed;
    this.group(edit.kind === "insert-rows" ? "Insert rows" : "Delete rows", () => {
      const named = { ...edit, sheet: home.name };
      this.#restructure(named, shiftWorkbookRows(this.#state, home.name, named));
      if (edit.kind === "insert-rows") this.#dressRows(this.#require(home.name), at, count);
    });
    return success(true);
  }

  /** New rows look like the row above, and have the calculated columns of a table that they fell into. */
  #dressRows(sheet: SheetState, at: number, count: number): void {
    for (const [key, cell] of at === 0
      ? []
      : cellsWithin(sheet, { top: at - 1, bottom: at - 1, left: 0, right: MAX_COLUMNS - 1 })) {
      const bare = styleOnly(cell.style);
      const heading = sheet.tables.some(
        (table) =>
          table.headerRow && table.area.top === at - 1 && areaHolds(table.area, at - 1, columnOf(key)),
      );
      if (!bare || heading) continue;
      for (let row = at; row < at + count; row++) this.#write(sheet, cellKey(row, columnOf(key)), bare);
    }
    for (const table of sheet.tables) {
      const data = dataRows(table);
      if (at >= data.top && at + count - 1 <= data.bottom) this.#fillCalculated(sheet, table, at, count);
    }
  }

  #fillCalculated(sheet: SheetState, table: Table, top: number, count: number): void {
    table.columns.forEach((column, index) => {
      if (column.formula === undefined) return;
      for (let row = top; row < top + count; row++) {
        const at = table.area.left + index;
        const style = sheet.cells.get(cellKey(row, at))?.style ?? 0;
        const above = sheet.cells.get(cellKey(row - 1, at))?.formula;
        // Where the column's formula has relative references, only a cell says from which row they count.
        const relative = copyFormula(column.formula, 1, 0) !== column.formula;
        const formula = relative && above !== undefined ? copyFormula(above, 1, 0) : column.formula;
        this.#write(sheet, cellKey(row, at), { value: null, formula, style });
      }
    });
  }

  #grow(sheetName: string, tableName: string, count: number): Area {
    const before = this.#require(sheetName);
    const table = before.tables.find((candidate) => candidate.name === tableName);
    if (!table) throw new RangeError(`no table ${tableName}`);
    const { left, right } = table.area;
    const grown = formulasThatGrow(this.#state.sheets, sheetName, table, count);
    this.#restructure(
      { kind: "grow-table", sheet: sheetName, table: tableName, rows: count },
      growTableState(this.#state, sheetName, tableName, count),
    );
    for (const { sheet, key, cell } of grown) this.#write(this.#require(sheet), key, cell);
    const home = this.#require(sheetName);
    const top = dataRows(table).bottom + 1;
    for (let column = left; column <= right; column++) {
      if (table.totalsRow) {
        const totals = home.cells.get(cellKey(top, column));
        this.#write(home, cellKey(top + count, column), totals);
      }
      const above = home.cells.get(cellKey(top - 1, column));
      for (let row = top; row < top + count; row++)
        this.#write(home, cellKey(row, column), styleOnly(above?.style ?? 0));
    }
    const after = home.tables.find((candidate) => candidate.name === tableName) ?? table;
    this.#fillCalculated(home, after, top, count);
    return { top, bottom: top + count - 1, left, right };
  }

  /** A style that differs from another by number format and font alone: one of the file where there is one. */
  #styleLike(style: number, numberFormat: string, font?: string): number {
    const base = this.#styles[style] ?? { numberFormat: "General" };
    if (base.numberFormat === numberFormat && (font === undefined || base.font?.name === font)) return style;
    const like = {
      ...base,
      numberFormat,
      ...(font === undefined ? {} : { font: { ...base.font, name: font } }),
    };
    const wanted = JSON.stringify(like);
    const found = this.#styles.findIndex((candidate) => JSON.stringify(candidate) === wanted);
    if (found >= 0) return found;
    this.#styles.push(like);
    return this.#styles.length - 1;
  }
}

function makeCell(content: CellContent, style: number): Cell | undefined {
  if (content === null) return styleOnly(style);
  if (typeof content === "object" && "formula" in content) {
    return { value: null, formula: content.formula.replace(/^\s*=/, ""), style, array: "dynamic" };
  }
  return { value: content, style };
}

/** The cells of a sheet that exist within an area. */
function* cellsWithin(sheet: SheetState, area: Area): Generator<[number, Cell]> {
  const size = (area.bottom - area.top + 1) * (area.right - area.left + 1);
  if (size > sheet.cells.size) {
    for (const [key, cell] of sheet.cells) if (areaHolds(area, rowOf(key), columnOf(key))) yield [key, cell];
    return;
  }
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const key = cellKey(row, column);
      const cell = sheet.cells.get(key);
      if (cell) yield [key, cell];
    }
  }
}
