import { formatSheetName } from "../../spreadsheet/address";
import type { NewChart, Worksheet } from "../../spreadsheet/workbook";
import { EMPTY_DRAWING, formatChart, formatChartAnchor } from "./chart-part";
import type { PackageChanges } from "./package-changes";
import type { ShellStep } from "./patch-sheet";
import { findSettingsPart, formatSettings, formatSettingsProperties, readSettings } from "./settings-part";
import { childOf, descendants, parseXml } from "./xml-source";
import { escapeAttribute } from "./xml-splice";
import { XmlPatch } from "./xml-patch";
import { XlsxRefusal } from "./xlsx-refusal";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** A worksheet part without cells. */
export const EMPTY_SHEET = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${OFFICE}"><dimension ref="A1"/><sheetData/></worksheet>`;

/** Adds an empty sheet behind the others. @returns its part and its sheetId */
export const addSheetPart = (
  changes: PackageChanges,
  workbook: string,
  name: string,
): { part: string; sheetId: string } => {
  const part = changes.freeName((number) => `xl/worksheets/sheet${number}.xml`);
  changes.addPart(part, EMPTY_SHEET, `${SPREADSHEET}.worksheet+xml`);
  const id = changes.addRelationship(workbook, "worksheet", part);
  const patch = new XmlPatch(parseXml(changes.text(workbook)));
  const q = patch.document.scope.fileQualifier("") ?? "";
  const sheets = childOf(patch.root, "sheets");
  if (!sheets) throw new XlsxRefusal("damaged-file", `The part ${workbook} lists no sheets.`);
  const sheetId = String(
    Math.max(0, ...sheets.children.map((sheet) => Number(sheet.attributes["sheetId"]) || 0)) + 1,
  );
  const r = patch.document.scope.fileQualifier("r");
  // The prefix may be declared further in than at the root: then this element declares its own.
  const relationship = r ? `${r}id="${id}"` : `xmlns:r="${OFFICE}" r:id="${id}"`;
  patch.append(sheets, `<${q}sheet name="${escapeAttribute(name)}" sheetId="${sheetId}" ${relationship}/>`);
  changes.setText(workbook, patch.apply());
  return { part, sheetId };
};

/** The elements that may follow `drawing` in a worksheet; ECMA-376 part 1, 18.3.1.99. */
const AFTER_DRAWING = new Set([
  "legacyDrawing",
  "legacyDrawingHF",
  "drawingHF",
  "picture",
  "oleObjects",
  "controls",
  "webPublishItems",
  "tableParts",
  "extLst",
]);

/**
 * Adds a chart part, hung on the sheet's drawing or on a new one.
 *
 * @param sheetPart - of the sheet, in the file or new
 * @param chart - references at their present place
 * @returns what the sheet's own part needs for a drawing that it did not have
 */
export const addChartPart = (
  changes: PackageChanges,
  sheetPart: string,
  chart: NewChart,
  sheets: readonly Worksheet[],
  knownDrawing: string | undefined,
): { drawing: string; step: ShellStep | undefined } => {
  const part = changes.freeName((number) => `xl/charts/chart${number}.xml`);
  changes.addPart(
    part,
    formatChart(chart, sheets),
    "application/vnd.openxmlformats-officedocument.drawingml.chart+xml",
  );
  let drawing = knownDrawing;
  let step: ShellStep | undefined;
  if (drawing === undefined) {
    drawing = changes.freeName((number) => `xl/drawings/drawing${number}.xml`);
    changes.addPart(drawing, EMPTY_DRAWING, "application/vnd.openxmlformats-officedocument.drawing+xml");
    const id = changes.addRelationship(sheetPart, "drawing", drawing);
    step = (patch, qualifier) => {
      const element = `<${qualifier}drawing xmlns:r="${OFFICE}" r:id="${id}"/>`;
      const next = patch.root.children.find(
        (child) => AFTER_DRAWING.has(child.name) || child.name === "mc:AlternateContent",
      );
      if (next) patch.insertBefore(next, element);
      else patch.append(patch.root, element);
    };
  }
  const relationship = changes.addRelationship(drawing, "chart", part);
  const patch = new XmlPatch(parseXml(changes.text(drawing)));
  const ids = [...descendants(patch.root)]
    .filter((one) => one.name === "xdr:cNvPr")
    .map((one) => Number(one.attributes["id"]) || 0);
  patch.append(patch.root, formatChartAnchor(chart, Math.max(1, ...ids) + 1, relationship));
  changes.setText(drawing, patch.apply());
  return { drawing, step };
};

/** Keeps settings in the project's own part, made where the file has none. */
export const keepSettings = (
  changes: PackageChanges,
  workbook: string,
  settings: ReadonlyMap<string, string>,
  changed: ReadonlySet<string>,
): void => {
  if (changed.size === 0) return;
  const kept = readSettings(changes.parts, workbook);
  for (const key of changed) {
    const value = settings.get(key);
    if (value === undefined) kept.delete(key);
    else kept.set(key, value);
  }
  const known = findSettingsPart(changes.parts, workbook);
  if (known !== undefined) {
    changes.setText(known, formatSettings(kept));
    return;
  }
  const part = changes.freeName((number) => `customXml/item${number}.xml`);
  const properties = part.replace("item", "itemProps");
  changes.addPart(part, formatSettings(kept), "application/xml");
  changes.addPart(
    properties,
    formatSettingsProperties("{6F1C2A54-3D0E-4B7A-9C55-0E5A6D3B1F27}"),
    "application/vnd.openxmlformats-officedocument.customXmlProperties+xml",
  );
  changes.addRelationship(workbook, "customXml", part);
  changes.addRelationship(part, "customXmlProps", properties);
};

/** The sheet that a reference of a chart names must exist, or the chart would be broken. */
export const checkChart = (chart: NewChart, sheets: readonly Worksheet[]): void => {
  for (const reference of [chart.x, ...chart.series.map((one) => one.y)]) {
    const known = sheets.some((sheet) =>
      [`${formatSheetName(sheet.name)}!`, `'${sheet.name.replaceAll("'", "''")}'!`].some((prefix) =>
        reference.startsWith(prefix),
      ),
    );
    if (!known)
      throw new XlsxRefusal(
        "chart-reference",
        `The chart ${chart.title} refers to ${reference}, which is on no sheet of this workbook: make the chart again.`,
      );
  }
};
