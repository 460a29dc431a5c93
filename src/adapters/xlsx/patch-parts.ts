import type { Worksheet } from "../../spreadsheet/workbook";
import type { EditPlan } from "./edit-plan";
import type { PackageChanges } from "./package-changes";
import { patchChart } from "./patch-chart";
import { patchComments, patchLegacyDrawing } from "./patch-comments";
import { patchDrawing } from "./patch-drawing";
import { patchControl, patchPivotCache, patchPivotTable } from "./patch-linked-parts";
import type { ShellStep } from "./patch-sheet";
import { patchTable, tableName } from "./patch-table";
import type { ListedSheet } from "./read-workbook";
import type { WorkbookPackage } from "./workbook-package";
import { childOf } from "./xml-source";
import { XlsxRefusal } from "./xlsx-refusal";

/** Parts that name rows in ways that are not followed here, by a piece of their content type. */
const UNSAFE_FOR_ROWS: readonly (readonly [string, string])[] = [
  ["revisionlog", "the record of changes of a shared workbook"],
  ["volatiledependencies", "links to live data"],
  ["tablesinglecells", "cells bound to an XML map"],
  ["macrosheet", "a macro sheet"],
];

/** @throws {XlsxRefusal} `signed`, or `unsafe-part` where rows moved in a file with parts that would not follow */
export const refuseUnsafeParts = (parts: WorkbookPackage, plan: EditPlan): void => {
  if (parts.relationships("").some((one) => one.type === "origin" && one.target.includes("_xmlsignatures"))) {
    throw new XlsxRefusal(
      "signed",
      "This workbook is signed, and a change would break its signature (part _xmlsignatures). Take the signature off in your spreadsheet program, or save a copy there and open that.",
    );
  }
  if (!plan.movesAnyRows) return;
  for (const { name } of parts.entries) {
    const type = parts.contentType(name).toLowerCase();
    const unsafe = UNSAFE_FOR_ROWS.find(([piece]) => type.includes(piece));
    if (unsafe) {
      throw new XlsxRefusal(
        "unsafe-part",
        `Rows cannot be put in or taken out of this workbook, because its part ${name} holds ${unsafe[1]}: undo that, and do it in your spreadsheet program.`,
      );
    }
  }
};

/** The ids of a sheet's relationships to tables whose rows are all deleted. */
export const goneTableParts = (parts: WorkbookPackage, sheetPart: string, plan: EditPlan): Set<string> => {
  const tables = parts
    .relationships(sheetPart)
    .filter((one) => one.type === "table" && parts.has(one.target));
  return new Set(
    tables
      .filter(({ target }) => plan.goneTables.has(tableName(parts.text(target)).toLowerCase()))
      .map(({ id }) => id),
  );
};

/** The step that takes tables out of the list of their sheet. */
export const removeTableParts =
  (ids: ReadonlySet<string>): ShellStep =>
  (patch) => {
    const list = childOf(patch.root, "tableParts");
    if (!list) return;
    const gone = list.children.filter((child) => ids.has(child.attributes["r:id"] ?? ""));
    if (gone.length === list.children.length) patch.remove(list);
    else {
      for (const child of gone) patch.remove(child);
      if (list.attributes["count"] !== undefined)
        patch.setAttribute(list, "count", String(list.children.length - gone.length));
    }
  };

/** Lets all parts beside the sheets follow the edits. */
export const patchLinkedParts = (
  changes: PackageChanges,
  sheets: readonly ListedSheet[],
  plan: EditPlan,
  models: readonly Worksheet[],
): void => {
  if (plan.isEmpty) return;
  const change = (part: string, patch: (text: string) => string): void =>
    changes.setText(part, patch(changes.text(part)));
  for (const { name, part, kind } of sheets) {
    const home = kind === "cells" ? name : undefined;
    for (const { type, target, external } of changes.parts.relationships(part)) {
      if (external || !changes.parts.has(target)) continue;
      if (type === "drawing") change(target, (text) => patchDrawing(text, home, plan));
      if (home === undefined) continue;
      if (type === "table") {
        if (plan.goneTables.has(tableName(changes.text(target)).toLowerCase()))
          changes.removePart(target, part);
        else change(target, (text) => patchTable(text, home, plan));
      } else if (type === "ctrlProp") change(target, (text) => patchControl(text, home, plan));
      else if (!plan.movesRows(home)) continue;
      else if (type === "comments" || type === "threadedComment")
        change(target, (text) => patchComments(text, home, plan));
      else if (type === "vmlDrawing") change(target, (text) => patchLegacyDrawing(text, home, plan));
      else if (type === "pivotTable") change(target, (text) => patchPivotTable(text, target, home, plan));
    }
  }
  for (const { name } of changes.parts.entries) {
    const type = changes.parts.contentType(name).toLowerCase();
    if (type.endsWith("drawingml.chart+xml") || type.endsWith("chartex+xml"))
      change(name, (text) => patchChart(text, plan, models));
    else if (type.endsWith("chartshapes+xml")) change(name, (text) => patchDrawing(text, undefined, plan));
    else if (type.endsWith("pivotcachedefinition+xml")) change(name, (text) => patchPivotCache(text, plan));
  }
};
