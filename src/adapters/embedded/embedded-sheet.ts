import type { Area } from "../../domain/area";
import type { Result } from "../../domain/result";
import type {
  Block,
  CellInput,
  ChartRequest,
  RowsTarget,
  Sheet,
  SheetChange,
  SheetOutline,
} from "../../ports/sheet";
import { HostError } from "../../ports/sheet";
import { formatArea, formatCell, formatSheetName } from "../../spreadsheet/address";
import { copyFormula } from "../../spreadsheet/formula-rewriting";
import type { CellContent, OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { WorkbookChange, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";
import { changesBySheet } from "./changed-areas";
import { readBlock, storedContent } from "./sheet-block";

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
  /** Revisions of the workbook right after our own steps, newest last. */
  readonly #ownSteps: number[] = [];

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
    this.#workbook.keepSetting(key, value);
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
    if (this.#ownSteps.at(-1) !== this.#workbook.revision) {
      throw new HostError("The workbook was changed since: undo those changes first (Ctrl+Z in the grid).");
    }
    this.#ownSteps.pop();
    this.#workbook.undo();
    // The step before may be ours too: it is the newest now, whatever number the undo gave the workbook.
    if (this.#ownSteps.length > 0) this.#ownSteps[this.#ownSteps.length - 1] = this.#workbook.revision;
  }

  #appendToTable(name: string, rows: readonly (readonly CellInput[])[]): { sheet: string; area: Area } {
    const found = this.#workbook.table(name);
    if (found === undefined) {
      throw new HostError(
        `There is no table named "${name}" in this workbook. Check its name in the table's settings.`,
      );
    }
    const { sheet, table } = found;
    requireWidth(rows, table.area.right - table.area.left + 1);
    const last = table.area.bottom - (table.totalsRow ? 1 : 0);
    const contents = rows.map((row) =>
      row.map((input, across) => this.#stored(sheet.name, last, table.area.left + across, input)),
    );
    return {
      sheet: sheet.name,
      area: this.#step(() => take(this.#workbook.appendToTable(table.name, contents))),
    };
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
      this.#ownSteps.push(this.#workbook.revision);
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

function isFilled(sheet: Worksheet, row: number, column: number): boolean {
  const cell = sheet.cells.get(cellKey(row, column));
  return cell !== undefined && (cell.value !== null || cell.formula !== undefined);
}

/** `$A$4:$A$9` */
const absolute = (area: Area): string => formatArea(area).replaceAll(/([A-Z]+)(\d+)/g, "$$$1$$$2");
