import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import { HostError } from "../../ports/sheet";
import type {
  Block,
  CellInput,
  ChartRequest,
  NewColumn,
  NewTable,
  RowsTarget,
  Sheet,
  SheetChange,
  SheetOutline,
} from "../../ports/sheet";
import { fillFormula } from "./filled-formula";
import { cellAt, describeWorkbook, isFilled, usedArea } from "./memory-workbook";
import type { DescribedSheet, MemoryTable, MemoryWorkbook, MemoryWorksheet } from "./memory-workbook";

type Rows = readonly (readonly CellInput[])[];

const requireWidth = (rows: Rows, width: number): void => {
  const odd = rows.findIndex((row) => row.length !== width);
  if (odd >= 0) {
    throw new HostError(
      `Row ${odd + 1} has ${rows[odd]?.length ?? 0} cells, but ${width} are needed: give one for every column.`,
    );
  }
};

const formulaOf = ({ formula }: NewColumn): CellInput => (formula === undefined ? undefined : { formula });

/** Whether a table has one row, with nothing in it but formulas. */
const isBlankTable = (sheet: MemoryWorksheet, { area, totalsRow }: MemoryTable): boolean => {
  const row = area.bottom - (totalsRow ? 1 : 0);
  if (row !== area.top + 1) return false;
  const cells = (sheet.rows[row] ?? []).slice(area.left, area.right + 1);
  return cells.every((cell) => !isFilled(cell) || cell?.formula !== null);
};

/**
 * A workbook in memory behind the {@link Sheet} port: the reference for the contract, and what tests of records
 * and views read from. It does not calculate: the value of a formula that was written or filled is `null`.
 */
export class MemorySheet implements Sheet {
  #workbook: MemoryWorkbook;
  readonly #steps: MemoryWorkbook[] = [];
  readonly #listeners = new Set<(change: SheetChange) => void>();

  /** @param sheets - what the workbook starts with, in tab order */
  constructor(sheets: readonly DescribedSheet[]) {
    this.#workbook = describeWorkbook(sheets);
  }

  /** Charts added so far, for tests to look at. */
  get charts(): readonly ChartRequest[] {
    return this.#workbook.charts;
  }

  /** The column of a table made through the port that a cell of its rows belongs to, for tests to look at. */
  columnAt(sheetName: string, row: number, column: number): NewColumn | undefined {
    const { tables } = this.#requireSheet(sheetName);
    const table = tables.find(({ area }) => row > area.top && row <= area.bottom);
    return table?.columns?.[column - table.area.left];
  }

  /** Types into a cell as the teacher would, past the port: listeners are told. */
  typeInto(sheetName: string, row: number, column: number, value: CellValue): void {
    const cell = cellAt(this.#requireSheet(sheetName), row, column);
    cell.value = value;
    cell.formula = null;
    this.#tell(sheetName, { top: row, left: column, bottom: row, right: column });
  }

  async outline(): Promise<readonly SheetOutline[]> {
    return this.#workbook.sheets.map((sheet) => {
      const used = usedArea(sheet);
      const tables = sheet.tables.map(({ name, area, totalsRow }) => ({
        name,
        area,
        headerRow: true,
        totalsRow,
      }));
      return { name: sheet.name, hidden: sheet.hidden, ...(used && { used }), tables };
    });
  }

  async read(sheetName: string, area: Area): Promise<Block> {
    const sheet = this.#requireSheet(sheetName);
    const rows = Array.from({ length: area.bottom - area.top + 1 }, (_, down) =>
      Array.from({ length: area.right - area.left + 1 }, (__, across) =>
        cellAt(sheet, area.top + down, area.left + across),
      ),
    );
    return {
      sheet: sheet.name,
      area,
      values: rows.map((cells) => cells.map((cell) => cell.value)),
      formats: rows.map((cells) => cells.map((cell) => cell.format)),
      formulas: rows.map((cells) => cells.map((cell) => cell.formula)),
    };
  }

  async appendRows(target: RowsTarget, rows: Rows): Promise<{ sheet: string; area: Area }> {
    const { sheet, area, table } = this.#locate(target);
    requireWidth(rows, area.right - area.left + 1);
    const lastRow = area.bottom - (table?.totalsRow ? 1 : 0);
    if (!table) this.#requireEmptyBelow(sheet, area, rows.length);
    this.#remember();
    const top = table && isBlankTable(sheet, table) ? lastRow : lastRow + 1;
    const added = rows.length - (lastRow + 1 - top);
    if (table && added > 0) this.#pushDown(sheet, table, lastRow, added);
    rows.forEach((row, index) => {
      row.forEach((input, across) => {
        this.#append(sheet, table, lastRow, top + index, area.left + across, input);
      });
    });
    const written = { top, left: area.left, bottom: top + rows.length - 1, right: area.right };
    this.#tell(sheet.name, written);
    return { sheet: sheet.name, area: written };
  }

  async writeBlock(
    sheetName: string,
    at: { readonly row: number; readonly column: number },
    rows: Rows,
  ): Promise<Area> {
    const width = rows[0]?.length ?? 0;
    if (width === 0) throw new HostError("There is nothing to write: give at least one row with one cell.");
    requireWidth(rows, width);
    this.#remember();
    let sheet = this.#workbook.sheets.find((candidate) => candidate.name === sheetName);
    if (!sheet)
      this.#workbook.sheets.push((sheet = { name: sheetName, hidden: false, rows: [], tables: [] }));
    rows.forEach((row, down) => {
      row.forEach((input, across) => {
        if (input !== undefined) this.#put(sheet, at.row + down, at.column + across, input);
      });
    });
    const area = {
      top: at.row,
      left: at.column,
      bottom: at.row + rows.length - 1,
      right: at.column + width - 1,
    };
    this.#tell(sheetName, area);
    return area;
  }

  async addTable({ name, sheet: sheetName, columns, rows = [] }: NewTable): Promise<Area> {
    if (columns.length === 0) throw new HostError("A table needs at least one column. Name one.");
    requireWidth(rows, columns.length);
    const taken = this.#workbook.sheets.some(({ tables }) =>
      tables.some((table) => table.name.toLowerCase() === name.toLowerCase()),
    );
    if (taken) throw new HostError(`There is a table named "${name}" already. Choose another name.`);
    const known = this.#workbook.sheets.find((candidate) => candidate.name === sheetName);
    if (known && (usedArea(known) || known.tables.length > 0))
      throw new HostError(`The sheet "${sheetName}" is not empty. Choose another name for the new sheet.`);
    this.#remember();
    let sheet = this.#workbook.sheets.find((candidate) => candidate.name === sheetName);
    if (!sheet)
      this.#workbook.sheets.push((sheet = { name: sheetName, hidden: false, rows: [], tables: [] }));
    const area = { top: 0, left: 0, bottom: Math.max(1, rows.length), right: columns.length - 1 };
    const calculated: Record<string, string> = {};
    for (const column of columns) if (column.formula !== undefined) calculated[column.name] = column.formula;
    sheet.tables.push({ name, area, totalsRow: false, calculated, columns });
    const contents: Rows = rows.length > 0 ? rows : [columns.map(() => undefined)];
    columns.forEach((column, across) => {
      this.#put(sheet, 0, across, column.name);
      contents.forEach((row, down) => {
        cellAt(sheet, down + 1, across).format = column.format ?? "General";
        const input = row[across] ?? (row[across] === null ? null : formulaOf(column));
        if (input !== undefined) this.#put(sheet, down + 1, across, input);
      });
    });
    this.#tell(sheetName, area);
    return area;
  }

  async removeRows(tableName: string, rows: readonly number[]): Promise<void> {
    const { sheet, table } = this.#locate({ table: tableName });
    if (!table) return;
    const { top, bottom, left, right } = table.area;
    const last = bottom - (table.totalsRow ? 1 : 0);
    if (rows.some((row) => row <= top || row > last))
      throw new HostError(`The table "${tableName}" has no such row. Read it again and try once more.`);
    this.#remember();
    const sorted = [...new Set(rows)].sort((a, b) => b - a);
    for (const row of sorted) {
      const { area } = table;
      const isLast = area.bottom - (table.totalsRow ? 1 : 0) === top + 1;
      for (let column = left; column <= right; column++) {
        const cells = sheet.rows.map((each) => each[column]);
        if (isLast) {
          const cell = cellAt(sheet, row, column);
          if (cell.formula === null) cell.value = null;
          continue;
        }
        for (let at = row; at < sheet.rows.length; at++) {
          const below = cells[at + 1] ?? { value: null, formula: null, format: "General" };
          Object.assign(cellAt(sheet, at, column), { ...below });
        }
      }
      if (!isLast) table.area = { ...area, bottom: area.bottom - 1 };
    }
    this.#tell(sheet.name);
  }

  async addChart(request: ChartRequest): Promise<void> {
    const sheet = this.#requireSheet(request.sheet);
    this.#remember();
    this.#workbook.charts.push(request);
    let row = request.at.row;
    while (isFilled(sheet.rows[row]?.[request.at.column])) row++;
    this.#put(sheet, row, request.at.column, request.summary);
  }

  async readSetting(key: string): Promise<string | undefined> {
    return this.#workbook.settings[key];
  }

  async keepSetting(key: string, value: string): Promise<void> {
    this.#workbook.settings[key] = value;
  }

  onChange(listener: (change: SheetChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async undo(): Promise<void> {
    const before = this.#steps.pop();
    if (!before) throw new HostError("There is nothing to undo.");
    this.#workbook = before;
    for (const sheet of before.sheets) this.#tell(sheet.name);
  }

  async group<T>(writes: () => Promise<T>): Promise<T> {
    const before = this.#steps.length;
    try {
      const answer = await writes();
      this.#steps.splice(before + 1);
      return answer;
    } catch (error) {
      if (this.#steps.length > before) {
        this.#steps.splice(before + 1);
        await this.undo();
      }
      throw error;
    }
  }

  #remember(): void {
    this.#steps.push(structuredClone(this.#workbook));
  }

  #tell(sheet: string, area?: Area): void {
    for (const listener of this.#listeners) listener(area ? { sheet, area } : { sheet });
  }

  #requireSheet(name: string): MemoryWorksheet {
    const sheet = this.#workbook.sheets.find((candidate) => candidate.name === name);
    if (!sheet)
      throw new HostError(`There is no sheet named "${name}" in this workbook. Check the name on its tab.`);
    return sheet;
  }

  #locate(target: RowsTarget): { sheet: MemoryWorksheet; area: Area; table?: MemoryTable } {
    if (!("table" in target)) return { sheet: this.#requireSheet(target.sheet), area: target.area };
    for (const sheet of this.#workbook.sheets) {
      const table = sheet.tables.find((candidate) => candidate.name === target.table);
      if (table) return { sheet, area: table.area, table };
    }
    throw new HostError(
      `There is no table named "${target.table}" in this workbook. Check its name in the table's settings.`,
    );
  }

  #requireEmptyBelow(sheet: MemoryWorksheet, area: Area, count: number): void {
    for (let row = area.bottom + 1; row <= area.bottom + count; row++) {
      for (let column = area.left; column <= area.right; column++) {
        if (isFilled(sheet.rows[row]?.[column])) {
          throw new HostError(
            `Row ${row + 1}, beneath the last row, is not empty. Make room there and try again.`,
          );
        }
      }
    }
  }

  /** Moves the totals row and whatever else stands beneath the table down, in the table's own columns. */
  #pushDown(sheet: MemoryWorksheet, table: MemoryTable, lastRow: number, count: number): void {
    for (let row = sheet.rows.length - 1; row > lastRow; row--) {
      for (let column = table.area.left; column <= table.area.right; column++) {
        const cell = sheet.rows[row]?.[column];
        if (cell) Object.assign(cellAt(sheet, row + count, column), cell);
        if (cell) Object.assign(cell, { value: null, formula: null, format: "General" });
      }
    }
    table.area = { ...table.area, bottom: table.area.bottom + count };
  }

  #append(
    sheet: MemoryWorksheet,
    table: MemoryTable | undefined,
    above: number,
    row: number,
    column: number,
    input: CellInput,
  ): void {
    const model = cellAt(sheet, above, column);
    cellAt(sheet, row, column).format = model.format;
    if (input !== undefined) return this.#put(sheet, row, column, input);
    const heading = table && String(cellAt(sheet, table.area.top, column).value);
    const calculated = heading === undefined ? undefined : table?.calculated[heading];
    const formula = calculated ?? (table ? null : model.formula);
    if (formula)
      this.#put(sheet, row, column, {
        formula: fillFormula(formula, { row: above, column }, { row, column }),
      });
  }

  #put(sheet: MemoryWorksheet, row: number, column: number, input: Exclude<CellInput, undefined>): void {
    const cell = cellAt(sheet, row, column);
    const isFormula = typeof input === "object" && input !== null && "formula" in input;
    cell.value = isFormula || input === "" ? null : input;
    cell.formula = isFormula ? input.formula : null;
  }
}
