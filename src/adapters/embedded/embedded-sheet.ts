import type { Area } from "../../domain/area";
import type { Result } from "../../domain/result";
import type {
  Block,
  CellInput,
  ChartRequest,
  NewTable,
  RowsTarget,
  Sheet,
  SheetChange,
  SheetOutline,
} from "../../ports/sheet";
import { HostError } from "../../ports/sheet";
import { formatArea, formatCell, formatSheetName } from "../../spreadsheet/address";
import { copyFormula } from "../../spreadsheet/formula-rewriting";
import { dataRows } from "../../spreadsheet/row-edit";
import type { CellContent, OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { WorkbookChange, Worksheet } from "../../spreadsheet/workbook";
import { cellKey, columnOf, rowOf, type Table } from "../../spreadsheet/workbook";
import { changesBySheet } from "./changed-areas";
import { readBlock, storedContent } from "./sheet-block";
import { describeTable, isBlankTable } from "./table-making";

/** Rows and columns that a chart made by us takes. */
const CHART_ROWS = 18;
const CHART_COLUMNS = 8;

/** What the adapter needs of the formula engine: when results that need time are there. */
export interface Settling {
  idle(): Promise<void>;
}

/** The {@link Sheet} port over the project's own spreadsheet, for the workbench and the command line. */
export class EmbeddedSheet implements Sheet {
  readonly #workbook: OpenWorkbook;
  readonly #calculation: Settling | undefined;
  /** Our own steps, newest last: the workbook's revision right after each, and of how many of its steps it is made. */
  readonly #ownSteps: { readonly revision: number; readonly parts: number }[] = [];

  /** @param calculation - keeps the workbook's formulas calculated; without it formulas have no values */
  constructor(workbook: OpenWorkbook, calculation?: Settling) {
    this.#workbook = workbook;
    this.#calculation = calculation;
  }

  async outline(): Promise<readonly SheetOutline[]> {
    return this.#workbook.sheets.map((sheet) => {
      const used = this.#workbook.usedArea(sheet.name);
      return {
        name: sheet.name,
        hidden: sheet.visibility !== "visible",
        ...(used === undefined ? {} : { used }),
        tables: sheet.tables.map(({ name, area, headerRow, totalsRow }) => ({
          name,
          area,
          headerRow,
          totalsRow,
        })),
      };
    });
  }

  async read(sheetName: string, area: Area): Promise<Block> {
    await this.#calculation?.idle();
    return readBlock(this.#workbook, this.#requireSheet(sheetName), area);
  }

  async appendRows(
    target: RowsTarget,
    rows: readonly (readonly CellInput[])[],
  ): Promise<{ sheet: string; area: Area }> {
    return "table" in target ? this.#appendToTable(target.table, rows) : this.#appendToRange(target, rows);
  }

  async writeBlock(
    sheetName: string,
    at: { readonly row: number; readonly column: number },
    rows: readonly (readonly CellInput[])[],
  ): Promise<Area> {
    const width = rows[0]?.length ?? 0;
    if (width === 0) throw new HostError("There is nothing to write: give at least one row with one cell.");
    requireWidth(rows, width);
    return this.#step(() => {
      const known = this.#workbook.sheet(sheetName);
      if (known === undefined) take(this.#workbook.addSheet(sheetName));
      const contents = rows.map((row, down) =>
        row.map((input, across) => this.#stored(sheetName, at.row + down, at.column + across, input)),
      );
      return take(this.#workbook.setCells(sheetName, at.row, at.column, contents));
    });
  }

  async addTable(request: NewTable): Promise<Area> {
    const rows = request.rows ?? [];
    requireWidth(rows, request.columns.length);
    return this.#step(() => {
      const area = take(this.#workbook.addTable(describeTable(request)));
      if (rows.length === 0) return area;
      const contents = rows.map((row, down) =>
        row.map((input, across) => this.#stored(request.sheet, 1 + down, across, input)),
      );
      take(this.#workbook.setCells(request.sheet, 1, 0, contents));
      return area;
    });
  }

  async removeRows(name: string, rows: readonly number[]): Promise<void> {
    const found = this.#workbook.table(name);
    if (found === undefined) throw noTable(name);
    const { sheet, table } = found;
    const data = dataRows(table);
    const wanted = [...new Set(rows)].sort((a, b) => b - a);
    if (wanted.some((row) => row < data.top || row > data.bottom))
      throw new HostError(`The table "${name}" has no such row. Read it again and try once more.`);
    const taken = wanted.length > data.bottom - data.top ? wanted.slice(0, -1) : wanted;
    requireNothingBeside(sheet, table, taken);
    this.#step(() => {
      const kept = wanted.filter((row) => !taken.includes(row));
      for (const row of kept) this.#blankRow(sheet, table, row);
      for (const row of taken) take(this.#workbook.deleteRows(sheet.name, row, 1));
      return data;
    });
  }

  async group<T>(writes: () => Promise<T>): Promise<T> {
    const before = this.#ownSteps.length;
    try {
      const answer = await writes();
      const made = this.#ownSteps.splice(before);
      const last = made.at(-1);
      if (last) {
        const parts = made.reduce((sum, step) => sum + step.parts, 0);
        this.#ownSteps.push({ revision: last.revision, parts });
      }
      return answer;
    } catch (error) {
      while (this.#ownSteps.length > before) await this.undo();
      throw error;
    }
  }

  async addChart(request: ChartRequest): Promise<void> {
    const sheet = this.#requireSheet(request.sheet);
    const { row, column } = request.at;
    const area = { top: row, left: column, bottom: row + CHART_ROWS - 1, right: column + CHART_COLUMNS - 1 };
    let summaryRow = area.bottom + 1;
    while (isFilled(sheet, summaryRow, column)) summaryRow += 1;
    const reference = (part: Area): string => `${formatSheetName(sheet.name)}!${absolute(part)}`;
    this.#step(() => {
      take(
        this.#workbook.addChart({
          sheet: sheet.name,
          title: request.title,
          xTitle: request.xTitle,
          yTitle: request.yTitle,
          x: reference(request.x),
          series: request.series.map(({ name, y }) => ({ name, y: reference(y) })),
          area,
        }),
      );
      return take(this.#workbook.setCell(sheet.name, summaryRow, column, request.summary));
    });
  }

  async readSetting(key: string): Promise<string | undefined> {
    return this.#workbook.settings.get(key);
  }

  async keepSetting(key: string, value: string): Promise<void> {
    const own = this.#ownSteps.at(-1);
    const isNewest = own?.revision === this.#workbook.revision;
    this.#workbook.keepSetting(key, value);
    // A setting is no step of the history: what was written last can still be taken back.
    if (own && isNewest) this.#ownSteps.splice(-1, 1, { ...own, revision: this.#workbook.revision });
  }

  onChange(listener: (change: SheetChange) => void): () => void {
    let isListening = true;
    const tell = (changes: readonly WorkbookChange[]): void => {
      for (const change of changesBySheet(changes)) if (isListening) listener(change);
    };
    const stop = this.#workbook.onChange((changes, source) => {
      // Results come while their edit is still being told of: what was typed is told first.
      if (source === "edit") tell(changes);
      else
        queueMicrotask(() => {
          tell(changes);
        });
    });
    return () => {
      isListening = false;
      stop();
    };
  }

  async undo(): Promise<void> {
    const own = this.#ownSteps.at(-1);
    if (own?.revision !== this.#workbook.revision) {
      throw new HostError("The workbook was changed since: undo those changes first (Ctrl+Z in the grid).");
    }
    this.#ownSteps.pop();
    for (let part = 0; part < own.parts; part += 1) this.#workbook.undo();
    // The step before may be ours too: it is the newest now, whatever number the undo gave the workbook.
    const before = this.#ownSteps.pop();
    if (before) this.#ownSteps.push({ ...before, revision: this.#workbook.revision });
  }

  #appendToTable(name: string, rows: readonly (readonly CellInput[])[]): { sheet: string; area: Area } {
    const found = this.#workbook.table(name);
    if (found === undefined) throw noTable(name);
    const { sheet, table } = found;
    requireWidth(rows, table.area.right - table.area.left + 1);
    const last = table.area.bottom - (table.totalsRow ? 1 : 0);
    const contents = rows.map((row) =>
      row.map((input, across) => this.#stored(sheet.name, last, table.area.left + across, input)),
    );
    if (!isBlankTable(sheet, table)) {
      const area = this.#step(() => take(this.#workbook.appendToTable(table.name, contents)));
      return { sheet: sheet.name, area };
    }
    const area = this.#step(() => {
      const first = take(this.#workbook.setCells(sheet.name, last, table.area.left, contents.slice(0, 1)));
      if (contents.length === 1) return first;
      const added = take(this.#workbook.appendToTable(table.name, contents.slice(1)));
      return { ...added, top: last };
    });
    return { sheet: sheet.name, area };
  }

  #appendToRange(
    { sheet: sheetName, area }: { readonly sheet: string; readonly area: Area },
    rows: readonly (readonly CellInput[])[],
  ): { sheet: string; area: Area } {
    const sheet = this.#requireSheet(sheetName);
    requireWidth(rows, area.right - area.left + 1);
    for (let row = area.bottom + 1; row <= area.bottom + rows.length; row += 1) {
      for (let column = area.left; column <= area.right; column += 1) {
        if (!isFilled(sheet, row, column)) continue;
        throw new HostError(
          `${formatCell(row, column)} on ${sheet.name}, beneath the last row, is not empty. Insert rows there and try again.`,
        );
      }
    }
    const contents = rows.map((row, down) =>
      row.map((input, across): CellContent | undefined => {
        const column = area.left + across;
        if (input !== undefined) return this.#stored(sheet.name, area.bottom, column, input);
        const above = sheet.cells.get(cellKey(area.bottom, column))?.formula;
        return above === undefined ? undefined : { formula: copyFormula(above, down + 1, 0) };
      }),
    );
    const top = area.bottom + 1;
    const written = this.#step(() => {
      const placed = take(
        this.#workbook.setCells(sheet.name, top, area.left, contents, { styleRow: area.bottom }),
      );
      return placed;
    });
    return { sheet: sheet.name, area: written };
  }

  /** Empties what was typed into a row of a table; its formulas stay. */
  #blankRow(sheet: Worksheet, { area }: Table, row: number): void {
    const blank: (CellContent | undefined)[] = [];
    for (let column = area.left; column <= area.right; column += 1)
      blank.push(sheet.cells.get(cellKey(row, column))?.formula === undefined ? null : undefined);
    take(this.#workbook.setCells(sheet.name, row, area.left, [blank]));
  }

  #stored(sheet: string, row: number, column: number, input: CellInput): CellContent | undefined {
    return storedContent(
      this.#workbook,
      input,
      this.#workbook.styles[this.#workbook.styleAt(sheet, row, column)],
    );
  }

  /** One step of the workbook, all or nothing: where a part is refused, the parts before it are taken back. */
  #step(edits: () => Area): Area {
    const before = this.#workbook.revision;
    try {
      const area = this.#workbook.group("Write", edits);
      this.#ownSteps.push({ revision: this.#workbook.revision, parts: 1 });
      return area;
    } catch (error) {
      if (this.#workbook.revision !== before) this.#workbook.undo();
      throw error;
    }
  }

  #requireSheet(name: string): Worksheet {
    const sheet = this.#workbook.sheet(name);
    if (sheet === undefined) {
      throw new HostError(`There is no sheet named "${name}" in this workbook. Check the name on its tab.`);
    }
    return sheet;
  }
}

/** The value of an edit, or its fault thrown as the host's refusal. */
function take<T>(result: Result<T>): T {
  if (!result.ok) throw new HostError(result.fault.message);
  return result.value;
}

function requireWidth(rows: readonly (readonly CellInput[])[], width: number): void {
  const wrong = rows.find((row) => row.length !== width);
  if (wrong !== undefined) {
    throw new HostError(
      `Each row needs ${String(width)} cells, one a column; one has ${String(wrong.length)}.`,
    );
  }
}

const noTable = (name: string): HostError =>
  new HostError(
    `There is no table named "${name}" in this workbook. Check its name in the table's settings.`,
  );

/** Whole rows of the sheet go: what stands beside the table would go with them. */
function requireNothingBeside(sheet: Worksheet, { name, area }: Table, rows: readonly number[]): void {
  const gone = new Set(rows);
  for (const [key, cell] of sheet.cells) {
    const [row, column] = [rowOf(key), columnOf(key)];
    if (!gone.has(row) || (column >= area.left && column <= area.right)) continue;
    if (cell.value === null && cell.formula === undefined) continue;
    throw new HostError(
      `${formatCell(row, column)} on ${sheet.name}, beside the table ${name}, is not empty, and whole rows would go. Delete the rows in the spreadsheet program.`,
    );
  }
}

function isFilled(sheet: Worksheet, row: number, column: number): boolean {
  const cell = sheet.cells.get(cellKey(row, column));
  return cell !== undefined && (cell.value !== null || cell.formula !== undefined);
}

/** `$A$4:$A$9` */
const absolute = (area: Area): string => formatArea(area).replaceAll(/([A-Z]+)(\d+)/g, "$$$1$$$2");
