import { areasMeet, formatArea, parseArea } from "../../spreadsheet/address";
import type { EditPlan } from "./edit-plan";
import { descendants, parseXml } from "./xml-source";
import { XmlPatch } from "./xml-patch";
import { XlsxRefusal } from "./xlsx-refusal";

/** Where a pivot table takes its rows from follows the edits. */
export const patchPivotCache = (text: string, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const element of descendants(patch.root)) {
    const { ref, sheet } = element.attributes;
    const area = parseArea(ref ?? "");
    if (element.name !== "worksheetSource" && element.name !== "rangeSet") continue;
    if (!area || sheet === undefined) continue;
    const moved = plan.area(sheet, area);
    if (moved && formatArea(moved) !== formatArea(area))
      patch.setAttribute(element, "ref", formatArea(moved));
  }
  return patch.apply();
};

/** A pivot table moves with its rows; rows put in or taken out inside it cannot be saved. */
export const patchPivotTable = (text: string, part: string, sheet: string, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const element of descendants(patch.root)) {
    const area = parseArea(element.attributes["ref"] ?? "");
    if (element.name !== "location" || !area) continue;
    const moved = plan.area(sheet, area);
    if (!moved || moved.bottom - moved.top !== area.bottom - area.top) {
      throw new XlsxRefusal(
        "pivot-cut",
        `Rows were put in or taken out inside a pivot table of ${sheet} (${part}), which cannot be saved: undo that, or change the pivot table in your spreadsheet program.`,
      );
    }
    if (!areasMeet(moved, area) || moved.top !== area.top)
      patch.setAttribute(element, "ref", formatArea(moved));
  }
  return patch.apply();
};

/** The cells that a form control is linked to follow the edits. */
export const patchControl = (text: string, sheet: string | undefined, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const name of ["fmlaLink", "fmlaRange", "fmlaGroup", "fmlaTxbx"]) {
    const formula = patch.root.attributes[name];
    if (formula !== undefined) patch.setAttribute(patch.root, name, plan.formula(formula, sheet));
  }
  return patch.apply();
};
