import type { Area } from "../../domain/area";
import {
  copyFormula,
  followMovedCells,
  growFormula,
  shiftFormula,
} from "../../spreadsheet/formula-rewriting";
import { shiftArea, shiftRow, type RowShift } from "../../spreadsheet/row-shift";
import type { StructuralEdit, Table } from "../../spreadsheet/workbook";
import { forgetTables } from "./formula-safety";
import type { FormulaSpelling } from "./formula-spelling";

type PlanStep =
  | { readonly kind: "rows"; readonly edit: number; readonly sheet: string; readonly shift: RowShift }
  | {
      readonly kind: "grow";
      /** Number of its edit. */
      readonly edit: number;
      readonly sheet: string;
      readonly table: string;
      /** Data rows before. */
      readonly data: Area;
      /** The totals row before, which moves down. */
      readonly totals: Area | undefined;
      readonly count: number;
    };

/** New names of a table's columns, by the old name in lower case. */
export interface ColumnRenaming {
  readonly table: string;
  readonly names: ReadonlyMap<string, string>;
}

/**
 * What a list of structural edits does to places and formulas of the file, worked out once, so that each part is read
 * and written once however many edits there are.
 */
export class EditPlan {
  /** Names, in lower case, of tables whose rows are all deleted. */
  readonly goneTables: ReadonlySet<string>;
  private steps: PlanStep[] = [];
  private readonly addedTables = new Set<string>();
  private readonly tables = new Map<
    string,
    { readonly sheet: string; readonly table: Table; area: Area | undefined }
  >();

  /**
   * @param edits - in the order made
   * @param opened - sheets with their tables, as the file was opened
   */
  constructor(
    edits: readonly StructuralEdit[],
    opened: readonly { readonly name: string; readonly tables: readonly Table[] }[],
    private readonly spelling: FormulaSpelling,
    private readonly renamings: readonly ColumnRenaming[] = [],
  ) {
    for (const sheet of opened) {
      for (const table of sheet.tables)
        this.tables.set(table.name, { sheet: sheet.name, table, area: table.area });
    }
    edits.forEach((edit, number) => this.add(edit, number));
    this.goneTables = new Set(
      [...this.tables].filter(([, { area }]) => !area).map(([name]) => name.toLowerCase()),
    );
  }

  private add(edit: StructuralEdit, number: number): void {
    if (edit.kind === "insert-rows" || edit.kind === "delete-rows") {
      const shift: RowShift = { kind: edit.kind, at: edit.at, count: edit.count };
      this.steps.push({ kind: "rows", edit: number, sheet: edit.sheet, shift });
      for (const place of this.tables.values()) {
        if (place.sheet === edit.sheet && place.area) place.area = shiftArea(place.area, shift);
      }
    } else if (edit.kind === "add-table") this.addedTables.add(edit.table.name);
    // A table that the file does not have is written as it is in the end.
    else if (edit.kind === "grow-table" && !this.addedTables.has(edit.table)) {
      const place = this.tables.get(edit.table);
      if (!place?.area) throw new RangeError(`no table ${edit.table} to grow`);
      const { table, area } = place;
      const bottom = area.bottom - (table.totalsRow ? 1 : 0);
      const data = { ...area, top: area.top + (table.headerRow ? 1 : 0), bottom };
      const totals = table.totalsRow ? { ...area, top: area.bottom } : undefined;
      this.steps.push({
        kind: "grow",
        edit: number,
        sheet: edit.sheet,
        table: edit.table,
        data,
        totals,
        count: edit.rows,
      });
      place.area = { ...area, bottom: area.bottom + edit.rows };
    }
  }

  /** The plan of the edits after the one of that number: what happened to a thing that this one added. */
  since(edit: number): EditPlan {
    const later = new EditPlan([], [], this.spelling, this.renamings);
    later.steps = this.steps.filter((step) => step.edit > edit);
    return later;
  }

  /** Whether no reference and no place changes. */
  get isEmpty(): boolean {
    return this.steps.length === 0 && this.renamings.length === 0;
  }

  /** Whether rows of a sheet were put in or taken out. */
  movesRows(sheet: string): boolean {
    return this.steps.some((step) => step.kind === "rows" && step.sheet === sheet);
  }

  /** Whether rows of any sheet were put in or taken out. */
  get movesAnyRows(): boolean {
    return this.steps.some((step) => step.kind === "rows");
  }

  /** Where a table stands after all edits; undefined where its rows are all deleted. */
  tableArea(name: string): Area | undefined {
    return this.tables.get(name)?.area;
  }

  /** New names of a table's columns, by the old name in lower case; undefined where none changed. */
  renamedColumns(table: string): ReadonlyMap<string, string> | undefined {
    return this.renamings.find((renaming) => renaming.table === table)?.names;
  }

  /** Where a row of the opened file stands now, or undefined where it is deleted. */
  row(sheet: string, row: number): number | undefined {
    let now: number | undefined = row;
    for (const step of this.steps) {
      if (now === undefined) return undefined;
      if (step.kind === "rows" && step.sheet === sheet) now = shiftRow(now, step.shift);
    }
    return now;
  }

  /** Where an area of the opened file stands now: it follows rows, and grows with a table whose columns it spans. */
  area(sheet: string, area: Area): Area | undefined {
    let now: Area | undefined = area;
    for (const step of this.steps) {
      if (now === undefined) return undefined;
      if (step.sheet !== sheet) continue;
      if (step.kind === "rows") now = shiftArea(now, step.shift);
      else if (spansData(now, step.data)) now = { ...now, bottom: now.bottom + step.count };
    }
    return now;
  }

  /**
   * A formula of the file after all edits.
   *
   * @param formula - in the file's spelling, without `=`
   * @param home - the sheet of its cell; undefined where it names its sheets itself
   */
  formula(formula: string, home: string | undefined): string {
    let now = formula;
    for (const step of this.steps) {
      if (home !== step.sheet && !now.includes("!")) continue;
      if (step.kind === "rows") now = shiftFormula(now, home, step.sheet, step.shift);
      else {
        const { data, totals, count } = step;
        if (now.includes(String(data.bottom + 1))) now = growFormula(now, home, step.sheet, data, count);
        if (totals && now.includes(String(totals.top + 1)))
          now = followMovedCells(now, home, step.sheet, totals, count);
      }
    }
    for (const { table, names } of this.renamings) now = this.spelling.renameColumns(now, table, names);
    return forgetTables(now, this.goneTables);
  }

  /**
   * A formula that is written for the first cell of some areas and meant for all of them (a validation, a conditional
   * format): where its first rows are deleted it is written for the first row that is left.
   */
  formulaOfAreas(formula: string, sheet: string, areas: readonly Area[]): string {
    const first = areas[0];
    if (!first || this.isEmpty) return this.formula(formula, sheet);
    let row = first.top;
    while (row < first.bottom && this.row(sheet, row) === undefined) row += 1;
    return this.formula(copyFormula(formula, row - first.top, 0), sheet);
  }
}

const spansData = (area: Area, data: Area): boolean =>
  area.top === data.top && area.bottom === data.bottom && area.left >= data.left && area.right <= data.right;
