import type { Result } from "../../domain/result";
import type { Table, WorkbookContents, WorkbookDifference, Worksheet } from "../../spreadsheet/workbook";
import { areaHolds } from "../../spreadsheet/address";
import { addChartPart, addSheetPart, checkChart, keepSettings } from "./add-parts";
import { patchCalculationChain } from "./calculation-chain";
import { addDynamicMark, NEW_METADATA } from "./dynamic-arrays";
import { EditPlan } from "./edit-plan";
import { isReadable, type KnownNames } from "./formula-safety";
import { FormulaSpelling } from "./formula-spelling";
import { findRenamedColumns } from "./header-cells";
import { PackageChanges } from "./package-changes";
import type { FormulaChanges } from "./patch-cells";
import { goneTableParts, patchLinkedParts, refuseUnsafeParts, removeTableParts } from "./patch-parts";
import { patchSheet, type ShellStep } from "./patch-sheet";
import { StyleNumbers } from "./patch-styles";
import { readStyles } from "./read-styles";
import { readTables } from "./read-tables";
import { listSheets, type XlsxOptions } from "./read-workbook";
import { openPackage } from "./workbook-kind";
import { addTablePart } from "./table-part";
import type { CellWriting } from "./write-cell";
import { childOf, childrenOf, parseXml } from "./xml-source";
import { XmlPatch } from "./xml-patch";
import { refuseInsteadOfThrowing, XlsxRefusal } from "./xlsx-refusal";

/**
 * Saves by patching: the bytes as they were opened, with the structural edits in their order and then the changed
 * cells. Parts that nothing of it concerns are copied as packed, entries keep their order, and inside a changed part
 * only the elements concerned are written anew.
 *
 * @param opened - the bytes that were read
 * @param workbook - the model as it is now
 * @param difference - what changed since
 * @returns the new file, or a fault that names the part which cannot be saved safely
 */
export const saveWorkbook = (
  opened: Uint8Array,
  workbook: WorkbookContents,
  difference: WorkbookDifference,
  options: XlsxOptions,
): Result<Uint8Array> =>
  refuseInsteadOfThrowing(() => {
    const { edits, changedCells, changedSettings } = difference;
    const isUnchanged =
      edits.length === 0 &&
      changedSettings.size === 0 &&
      [...changedCells.values()].every((keys) => keys.size === 0);
    return isUnchanged ? opened.slice() : new WorkbookSave(opened, workbook, difference, options).run();
  });

interface SheetToSave {
  readonly part: string;
  readonly sheetId: string;
  readonly model: Worksheet;
  readonly changed: ReadonlySet<number>;
  drawing: string | undefined;
  readonly steps: ShellStep[];
  formulas?: FormulaChanges;
}

class WorkbookSave {
  private readonly main: string;
  private readonly changes: PackageChanges;
  private readonly spelling: FormulaSpelling;
  private readonly plan: EditPlan;
  private readonly styles: StyleNumbers;
  private readonly sheets: SheetToSave[] = [];
  /** Names and part of the file's own sheets. */
  private readonly listed: ReturnType<typeof listSheets>;
  private readonly known: KnownNames;
  private mark: string | undefined;

  constructor(
    opened: Uint8Array,
    private readonly workbook: WorkbookContents,
    private readonly difference: WorkbookDifference,
    options: XlsxOptions,
  ) {
    const { parts, workbook: main } = openPackage(opened);
    this.main = main;
    this.changes = new PackageChanges(parts);
    this.spelling = new FormulaSpelling(options.functions);
    this.styles = new StyleNumbers(readStyles(parts, main), workbook.styles);
    this.listed = listSheets(parts, main);
    const tables = this.listed.map(({ name, part }) => ({
      name,
      tables: readTables(parts, part, this.spelling),
    }));
    const before = new EditPlan(difference.edits, tables, this.spelling);
    const renamed = findRenamedColumns(tables, before, workbook, difference.changedCells);
    this.plan = new EditPlan(difference.edits, tables, this.spelling, renamed);
    refuseUnsafeParts(parts, this.plan);
    this.known = {
      sheets: new Set(workbook.sheets.map((sheet) => sheet.name.toLowerCase())),
      tables: new Set(
        workbook.sheets.flatMap((sheet) => sheet.tables.map((table) => table.name.toLowerCase())),
      ),
    };
  }

  run(): Uint8Array {
    for (const { name, part, sheetId, kind } of this.listed) {
      if (kind !== "cells") continue;
      const gone = goneTableParts(this.changes.parts, part, this.plan);
      const steps = gone.size > 0 ? [removeTableParts(gone)] : [];
      this.addSheet(name, part, sheetId, this.changes.parts.related(part, "drawing"), steps);
    }
    for (const edit of this.difference.edits) {
      if (edit.kind !== "add-sheet") continue;
      const { part, sheetId } = addSheetPart(this.changes, this.main, edit.sheet);
      this.addSheet(edit.sheet, part, sheetId, undefined, []);
    }
    patchLinkedParts(this.changes, this.listed, this.plan, this.workbook.sheets);
    this.addCharts();
    this.addTables();
    for (const sheet of this.sheets) this.patchCells(sheet);
    this.patchNames();
    this.patchChain();
    if (!this.styles.isEmpty) {
      const part = this.changes.parts.related(this.main, "styles");
      if (part !== undefined) this.changes.setText(part, this.styles.patch(this.changes.text(part)));
    }
    keepSettings(this.changes, this.main, this.workbook.settings, this.difference.changedSettings);
    return this.changes.write();
  }

  private addSheet(
    name: string,
    part: string,
    sheetId: string,
    drawing: string | undefined,
    steps: ShellStep[],
  ): void {
    const model = this.workbook.sheets.find((sheet) => sheet.name === name);
    if (!model) throw new RangeError(`the model lacks the sheet ${name}`);
    const changed = this.difference.changedCells.get(name) ?? new Set<number>();
    this.sheets.push({ part, sheetId, model, changed, drawing, steps });
  }

  private addCharts(): void {
    this.difference.edits.forEach((edit, number) => {
      if (edit.kind !== "add-chart") return;
      const later = this.plan.since(number);
      const home = this.sheets.find((sheet) => sheet.model.name === edit.chart.sheet);
      if (!home)
        throw new XlsxRefusal(
          "no-sheet",
          `The chart ${edit.chart.title} lies on the sheet ${edit.chart.sheet}, which this workbook does not have.`,
        );
      const chart = {
        ...edit.chart,
        x: later.formula(edit.chart.x, undefined),
        series: edit.chart.series.map(({ name, y }) => ({ name, y: later.formula(y, undefined) })),
        area: later.area(edit.chart.sheet, edit.chart.area) ?? edit.chart.area,
      };
      checkChart(chart, this.workbook.sheets);
      const { drawing, step } = addChartPart(
        this.changes,
        home.part,
        chart,
        this.workbook.sheets,
        home.drawing,
      );
      home.drawing = drawing;
      if (step) home.steps.push(step);
    });
  }

  /** Tables made since: behind the charts, because their list stands behind a sheet's drawing. */
  private addTables(): void {
    let added = 0;
    for (const edit of this.difference.edits) {
      if (edit.kind !== "add-table") continue;
      const home = this.sheets.find((sheet) => sheet.model.name === edit.sheet);
      const table = home?.model.tables.find(({ name }) => name === edit.table.name);
      if (!home || !table) continue;
      home.steps.push(addTablePart(this.changes, home.part, home.model, table, this.spelling, added));
      added += 1;
    }
  }

  private patchCells(sheet: SheetToSave): void {
    if (sheet.changed.size === 0 && sheet.steps.length === 0 && this.plan.isEmpty) return;
    const { text, formulas } = patchSheet(
      this.changes.text(sheet.part),
      sheet.part,
      sheet.model,
      sheet.changed,
      this.plan,
      this.writing(sheet.model.tables),
      sheet.steps,
    );
    sheet.formulas = formulas;
    this.changes.setText(sheet.part, text);
  }

  private writing(tables: readonly Table[]): Omit<CellWriting, "qualifier"> {
    return {
      spelling: this.spelling,
      dynamicMark: () => (this.mark ??= this.makeDynamicMark()),
      isReadable: (formula) => isReadable(formula, this.known),
      styleNumber: (style) => this.styles.numberFor(style),
      tableAt: (row, column) => tables.find((table) => areaHolds(table.area, row, column))?.name,
    };
  }

  private makeDynamicMark(): string {
    const part = this.changes.parts.related(this.main, "sheetMetadata");
    if (part === undefined) {
      const name = this.changes.freeName((number) =>
        number === 1 ? "xl/metadata.xml" : `xl/metadata${number}.xml`,
      );
      this.changes.addPart(
        name,
        NEW_METADATA,
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml",
      );
      this.changes.addRelationship(this.main, "sheetMetadata", name);
      return "1";
    }
    const added = addDynamicMark(this.changes.text(part));
    if (!added)
      throw new XlsxRefusal(
        "other-metadata",
        `A formula that fills several cells cannot be saved beside the metadata of this workbook (${part}): clear that formula, or type it in your spreadsheet program.`,
      );
    this.changes.setText(part, added.text);
    return added.mark;
  }

  private patchNames(): void {
    if (this.plan.isEmpty) return;
    const patch = new XmlPatch(parseXml(this.changes.text(this.main)));
    for (const element of childrenOf(childOf(patch.root, "definedNames"), "definedName")) {
      const local = element.attributes["localSheetId"];
      const home = local === undefined ? undefined : this.listed[Number(local)]?.name;
      patch.setText(element, this.plan.formula(element.text, home));
    }
    this.changes.setText(this.main, patch.apply());
  }

  private patchChain(): void {
    const part = this.changes.parts.related(this.main, "calcChain");
    if (part === undefined) return;
    const sheets = new Map(
      this.sheets.map(({ sheetId, model, formulas }) => [sheetId, { name: model.name, formulas }]),
    );
    const text = patchCalculationChain(this.changes.text(part), sheets, this.plan);
    if (text === undefined) this.changes.removePart(part, this.main);
    else this.changes.setText(part, text);
  }
}
