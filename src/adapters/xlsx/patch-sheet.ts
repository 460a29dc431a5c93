import type { Area } from "../../domain/area";
import { columnOf, rowOf, type Worksheet } from "../../spreadsheet/workbook";
import type { EditPlan } from "./edit-plan";
import { CellsPatch, type FormulaChanges } from "./patch-cells";
import { growDimension, SheetShellPatch } from "./patch-sheet-shell";
import type { CellWriting } from "./write-cell";
import { XmlPatch } from "./xml-patch";
import { parseXml, scanXml, type XmlHandler } from "./xml-source";
import { Splices } from "./xml-splice";
import { XlsxRefusal } from "./xlsx-refusal";

export interface PatchedSheet {
  readonly text: string;
  readonly formulas: FormulaChanges;
}

/** A step of a save that wants to change the sheet around its cells, such as hanging a drawing on it. */
export type ShellStep = (patch: XmlPatch, qualifier: string) => void;

/**
 * A worksheet part after the edits: its changed cells, moved rows, and all that names rows or cells.
 *
 * @param text - the part as the file has it
 * @param name - for messages
 * @param sheet - the sheet as the model has it now
 * @param changed - keys at their present place
 * @param steps - further changes around the cells
 */
export const patchSheet = (
  text: string,
  name: string,
  sheet: Worksheet,
  changed: ReadonlySet<number>,
  plan: EditPlan,
  writing: Omit<CellWriting, "qualifier">,
  steps: readonly ShellStep[] = [],
): PatchedSheet => {
  const data = findSheetData(text, name);
  const splices = new Splices(text);
  const shift = data.end - data.start;
  const shell = parseXml(text.slice(0, data.start) + text.slice(data.end));
  const patch = new XmlPatch(shell, splices, (at) => (at <= data.start ? at : at + shift));
  const qualifier = shell.scope.fileQualifier("");
  if (qualifier === undefined) {
    throw new XlsxRefusal(
      "other-namespace",
      `The part ${name} is written in a format that cannot be saved here. Save the workbook as .xlsx in your spreadsheet program and open that copy.`,
    );
  }
  const cells = new CellsPatch(splices, sheet, changed, plan, { ...writing, qualifier });
  if (changed.size > 0 || !plan.isEmpty) {
    passRows(text, name, data, cells, splices, qualifier);
  }
  new SheetShellPatch(patch, sheet.name, plan, sheet.frozen.rows).apply();
  growDimension(patch, plan, sheet.name, areaOf(changed, sheet));
  for (const step of steps) step(patch, qualifier);
  return { text: patch.apply(), formulas: cells.formulas };
};

interface SheetData {
  /** After its open tag and at its close tag; both after the tag where it is empty. */
  readonly start: number;
  readonly end: number;
  readonly empty: boolean;
  readonly tagStart: number;
}

/** Found by its tags; {@link passRows} meets them again as elements, or the part is refused. */
const findSheetData = (text: string, name: string): SheetData => {
  const open = /<((?:[^\s<>/:]+:)?sheetData)(?:\s[^<>]*)?\/?>/.exec(text);
  const close = open ? text.lastIndexOf(`</${open[1] ?? ""}`) : -1;
  if (!open) throw noCells(name);
  const start = open.index + open[0].length;
  if (open[0].endsWith("/>")) return { start, end: start, empty: true, tagStart: open.index };
  if (close < start) throw noCells(name);
  return { start, end: close, empty: false, tagStart: open.index };
};

const noCells = (name: string): XlsxRefusal =>
  new XlsxRefusal(
    "damaged-file",
    `The cells of the part ${name} cannot be found, so it cannot be saved. Open the workbook in your spreadsheet program and save a copy.`,
  );

/** Tells the patch of all inside sheetData, at places of the whole text. */
const passRows = (
  text: string,
  partName: string,
  data: SheetData,
  cells: CellsPatch,
  splices: Splices,
  qualifier: string,
): void => {
  let inside = false;
  let met = false;
  const handler: XmlHandler = {
    open(name, attributes, start, end, empty) {
      if (inside) cells.handler.open(name, attributes, start, end, empty);
      else if (name === "sheetData" && end === data.start) inside = met = true;
    },
    close(name, start, end) {
      if (inside && name === "sheetData") {
        inside = false;
        met &&= start === data.end;
      } else if (inside) cells.handler.close(name, start, end);
    },
    text(piece) {
      if (inside) cells.handler.text?.(piece);
    },
  };
  scanXml(text, handler);
  if (!met) throw noCells(partName);
  if (!data.empty) {
    cells.finish(data.end);
    return;
  }
  const before = splices.size;
  cells.finish(data.end);
  if (splices.size === before) return;
  splices.replace(
    data.tagStart,
    data.start,
    `${text.slice(data.tagStart, data.start).replace(/\s*\/>$/, "")}>`,
  );
  splices.insert(data.end, `</${qualifier}sheetData>`);
};

const areaOf = (keys: ReadonlySet<number>, sheet: Worksheet): Area | undefined => {
  let area: Area | undefined;
  for (const key of keys) {
    if (!sheet.cells.has(key)) continue;
    const row = rowOf(key);
    const column = columnOf(key);
    area = area
      ? {
          top: Math.min(area.top, row),
          left: Math.min(area.left, column),
          bottom: Math.max(area.bottom, row),
          right: Math.max(area.right, column),
        }
      : { top: row, left: column, bottom: row, right: column };
  }
  return area;
};
