import type { Area } from "../../domain/area";
import type { Result } from "../../domain/result";
import { refusal, success } from "../../domain/result";
import { displayText } from "../../spreadsheet/cell-display";
import type { TypedInput } from "../../spreadsheet/cell-input";
import { parseTyped } from "../../spreadsheet/cell-input";
import { copyFormula } from "../../spreadsheet/formula-rewriting";
import type { CellContent, OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { Cell, CellStyle, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";
import type { CopiedCells, GridModel, ModelChange } from "../grid/grid-model";
import type { Place } from "../grid/selection";
import { holds } from "../grid/selection";
import type { EditSettings } from "./edit-text";
import { formatEditText } from "./edit-text";
import { modelChanges, touchedArea } from "./model-changes";
import type { Target } from "./reference-target";
import { findTarget } from "./reference-target";
import { tableToExtend } from "./table-extension";
import { findBreach } from "./validation-rule";

const MOST_CHOICES = 500;

/** The open workbook as the grid sees it: typing, pasting, filling and undoing in its words. */
export class WorkbookModel implements GridModel {
  constructor(
    private readonly workbook: OpenWorkbook,
    private readonly settings: () => EditSettings,
  ) {}

  get sheets(): readonly Worksheet[] {
    return this.workbook.sheets;
  }

  get styles(): readonly CellStyle[] {
    return this.workbook.styles;
  }

  shownText(sheet: Worksheet, place: Place): string {
    const cell = cellOf(sheet, place);
    if (cell === undefined || cell.value === null) return "";
    return displayText(cell.value, this.styleOf(sheet, place).numberFormat, this.settings());
  }

  editText(sheet: Worksheet, place: Place): string {
    return formatEditText(cellOf(sheet, place), this.styleOf(sheet, place), this.settings());
  }

  enter(sheet: Worksheet, at: Place, rows: readonly (readonly string[])[]): Result<Area> {
    const area = areaOf(at, rows);
    const isEmpty = rows.every((texts) => texts.every((text) => text === ""));
    const table = isEmpty ? undefined : tableToExtend(sheet, area);
    const parsed: TypedInput[][] = [];
    for (const [down, texts] of rows.entries()) {
      const inputs: TypedInput[] = [];
      for (const [across, text] of texts.entries()) {
        const place = { row: at.row + down, column: at.column + across };
        const input = this.parse(
          sheet,
          place,
          text,
          table === undefined ? place : { ...place, row: at.row - 1 },
        );
        if (!input.ok) return input;
        inputs.push(input.value);
      }
      parsed.push(inputs);
    }
    return this.whole(
      "Type",
      () => {
        if (table !== undefined) this.workbook.growTable(table.name, rows.length);
        return this.putAll(sheet.name, at, parsed, (input) => input);
      },
      area,
    );
  }

  copy(sheet: Worksheet, area: Area): CopiedCells {
    const rows: (Cell | undefined)[][] = [];
    for (let row = area.top; row <= area.bottom; row += 1) {
      const cells: (Cell | undefined)[] = [];
      for (let column = area.left; column <= area.right; column += 1)
        cells.push(cellOf(sheet, { row, column }));
      rows.push(cells);
    }
    return { sheet: sheet.name, area, rows };
  }

  paste(sheet: Worksheet, into: Area, copied: CopiedCells): Result<Area> {
    const area = pastedArea(into, copied);
    return this.whole("Paste", () => this.putCopies(sheet.name, area, copied, true), area);
  }

  move(sheet: Worksheet, into: Area, copied: CopiedCells): Result<Area> {
    const { area: from } = copied;
    const area = areaOf({ row: into.top, column: into.left }, copied.rows);
    return this.whole(
      "Move",
      () => {
        const cleared = this.workbook.clear(copied.sheet, from);
        return cleared.ok ? this.putCopies(sheet.name, area, copied, false) : cleared;
      },
      area,
    );
  }

  clear(sheet: Worksheet, area: Area): Result<Area> {
    return this.workbook.clear(sheet.name, area);
  }

  fillDown(sheet: Worksheet, area: Area): Result<Area> {
    const single = area.top === area.bottom;
    if (single && area.top === 0) return refusal("no-row-above", "There is no row above to fill from.");
    const from = { ...area, top: single ? area.top - 1 : area.top, bottom: single ? area.top - 1 : area.top };
    const into = { ...area, top: from.top + 1 };
    return this.paste(sheet, into, this.copy(sheet, from));
  }

  insertRows(sheet: Worksheet, at: number, count: number): Result<Area> {
    const inserted = this.workbook.insertRows(sheet.name, at, count);
    return inserted.ok ? success({ ...inserted.value, left: 0, right: 0 }) : inserted;
  }

  deleteRows(sheet: Worksheet, at: number, count: number): Result<Area> {
    const deleted = this.workbook.deleteRows(sheet.name, at, count);
    return deleted.ok ? success({ top: at, bottom: at, left: 0, right: 0 }) : deleted;
  }

  undo(): { readonly sheet: string; readonly area?: Area } | undefined {
    return this.watch(() => this.workbook.undo());
  }

  redo(): { readonly sheet: string; readonly area?: Area } | undefined {
    return this.watch(() => this.workbook.redo());
  }

  onChange(listener: (changes: readonly ModelChange[]) => void): () => void {
    return this.workbook.onChange((changes) => {
      listener(modelChanges(changes));
    });
  }

  choices(sheet: Worksheet, place: Place): readonly string[] | undefined {
    const rule = sheet.validations.find(
      ({ type, areas }) => type === "list" && areas.some((area) => holds(area, place)),
    );
    const source = rule?.formula1?.trim();
    if (source === undefined || source === "") return undefined;
    const quoted = /^"(.*)"$/s.exec(source);
    if (quoted !== null)
      return (quoted[1] ?? "")
        .replaceAll('""', '"')
        .split(",")
        .map((choice) => choice.trim());
    const target = findTarget(this.workbook, source, sheet.name);
    const home = target === undefined ? undefined : this.workbook.sheet(target.sheet);
    if (target === undefined || home === undefined) return undefined;
    const found: string[] = [];
    const used = this.workbook.usedArea(home.name);
    for (let row = target.area.top; row <= Math.min(target.area.bottom, used?.bottom ?? 0); row += 1) {
      for (
        let column = target.area.left;
        column <= Math.min(target.area.right, used?.right ?? 0);
        column += 1
      ) {
        const text = this.shownText(home, { row, column });
        if (text !== "" && found.length < MOST_CHOICES) found.push(text);
      }
    }
    return found;
  }

  /** The cells that she means by an address, a table or a name. @param home - sheet of an address without one */
  findTarget(reference: string, home: string): Target | undefined {
    return findTarget(this.workbook, reference, home);
  }

  /** @param model - the cell whose format and rule count: in a new table row that of the row above */
  private parse(sheet: Worksheet, place: Place, text: string, model: Place): Result<TypedInput> {
    const settings = this.settings();
    const { numberFormat } = this.styleOf(sheet, model);
    const input = parseTyped(text, settings, { numberFormat, date1904: settings.date1904 });
    if (!input.ok) return input;
    const { content } = input.value;
    if (typeof content === "object" && content !== null && "formula" in content) return input;
    const rule = sheet.validations.find(
      ({ areas, refuses }) => refuses === true && areas.some((area) => holds(area, model)),
    );
    const breach =
      rule === undefined ? undefined : findBreach(rule, content, this.choices(sheet, model), place);
    return breach === undefined ? input : refusal("validation", breach);
  }

  private putAll<T>(
    sheet: string,
    at: Place,
    rows: readonly (readonly T[])[],
    inputOf: (item: T) => TypedInput,
  ): Result<Area> {
    for (const [down, items] of rows.entries()) {
      for (const [across, item] of items.entries()) {
        const { content, numberFormat } = inputOf(item);
        const place = { row: at.row + down, column: at.column + across };
        const format = this.formatFor(sheet, place, content, numberFormat);
        const put = this.workbook.setCell(sheet, place.row, place.column, content, format);
        if (!put.ok) return put;
      }
    }
    return success(areaOf(at, rows));
  }

  /** A number beneath a column of formatted numbers takes their format, as when a list is continued. */
  private formatFor(
    sheet: string,
    place: Place,
    content: CellContent,
    typed: string | undefined,
  ): { styleRow?: number; numberFormat?: string } {
    const above = this.workbook.cell(sheet, place.row - 1, place.column);
    const continues =
      typeof content === "number" &&
      typeof above?.value === "number" &&
      above.style !== 0 &&
      this.workbook.styleAt(sheet, place.row, place.column) === 0;
    if (continues) return { styleRow: place.row - 1 };
    const isPlain =
      this.workbook.styles[this.workbook.styleAt(sheet, place.row, place.column)]?.numberFormat === "General";
    return typed === undefined || !isPlain ? {} : { numberFormat: typed };
  }

  private putCopies(sheet: string, area: Area, copied: CopiedCells, adjust: boolean): Result<Area> {
    const height = copied.rows.length;
    const width = copied.rows[0]?.length ?? 1;
    for (let row = area.top; row <= area.bottom; row += 1) {
      for (let column = area.left; column <= area.right; column += 1) {
        const [down, across] = [(row - area.top) % height, (column - area.left) % width];
        const cell = copied.rows[down]?.[across];
        const numberFormat = this.workbook.styles[cell?.style ?? 0]?.numberFormat ?? "General";
        const moved = { rows: row - copied.area.top - down, columns: column - copied.area.left - across };
        const content = adjust ? copiedContent(cell, moved) : copiedContent(cell, { rows: 0, columns: 0 });
        const put = this.workbook.setCell(
          sheet,
          row,
          column,
          content,
          cell === undefined ? {} : { numberFormat },
        );
        if (!put.ok) return put;
      }
    }
    return success(area);
  }

  /** One step, all or nothing: where a part is refused, the parts before it are taken back. */
  private whole(label: string, edit: () => Result<Area>, area: Area): Result<Area> {
    const before = this.workbook.revision;
    const result = this.workbook.group(label, edit);
    if (!result.ok) {
      if (this.workbook.revision !== before) this.workbook.undo();
      return result;
    }
    return success(area);
  }

  private watch(step: () => boolean): { readonly sheet: string; readonly area?: Area } | undefined {
    let touched: { readonly sheet: string; readonly area?: Area } | undefined;
    const stop = this.workbook.onChange((changes, source) => {
      if (source === "edit") touched = touchedArea(changes);
    });
    const done = step();
    stop();
    return done ? (touched ?? { sheet: this.workbook.sheets[0]?.name ?? "" }) : undefined;
  }

  private styleOf(sheet: Worksheet, place: Place): CellStyle {
    const index = cellOf(sheet, place)?.style ?? sheet.columnStyles.get(place.column) ?? 0;
    return this.workbook.styles[index] ?? { numberFormat: "General" };
  }
}

const cellOf = (sheet: Worksheet, { row, column }: Place): Cell | undefined =>
  sheet.cells.get(cellKey(row, column));

function copiedContent(
  cell: Cell | undefined,
  moved: { readonly rows: number; readonly columns: number },
): CellContent {
  if (cell?.formula === undefined) return cell?.value ?? null;
  return { formula: copyFormula(cell.formula, moved.rows, moved.columns) };
}

const areaOf = (at: Place, rows: readonly (readonly unknown[])[]): Area => ({
  top: at.row,
  left: at.column,
  bottom: at.row + Math.max(1, rows.length) - 1,
  right: at.column + Math.max(1, rows[0]?.length ?? 1) - 1,
});

/** The selection where it is a whole multiple of what was copied, else as much as was copied. */
function pastedArea(into: Area, copied: CopiedCells): Area {
  const height = into.bottom - into.top + 1;
  const width = into.right - into.left + 1;
  const single = areaOf({ row: into.top, column: into.left }, copied.rows);
  return height % copied.rows.length === 0 && width % (copied.rows[0]?.length ?? 1) === 0 ? into : single;
}
