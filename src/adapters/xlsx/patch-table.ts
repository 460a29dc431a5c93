import type { Area } from "../../domain/area";
import { formatArea, parseArea } from "../../spreadsheet/address";
import { formatFileText, parseFileText } from "./cell-text";
import type { EditPlan } from "./edit-plan";
import { descendants, parseXml, type XmlElement } from "./xml-source";
import { XmlPatch } from "./xml-patch";

/** The name of a table by its part. */
export const tableName = (text: string): string => {
  const { attributes } = parseXml(text).root;
  return attributes["displayName"] ?? attributes["name"] ?? "";
};

/**
 * A table part after the edits: its area, filter and sorting, its formulas, and new names of columns.
 *
 * @param text - the part
 * @param sheet - the sheet that the table lies on
 */
export const patchTable = (text: string, sheet: string, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  const { root } = patch;
  const name = tableName(text);
  const area = plan.tableArea(name);
  const renamed = plan.renamedColumns(name);
  if (!area) throw new RangeError(`the table ${name} is gone`);
  const before = parseArea(root.attributes["ref"] ?? "");
  if (before && formatArea(before) !== formatArea(area)) patch.setAttribute(root, "ref", formatArea(area));
  const move = (element: XmlElement, from: Area, to: Area | undefined): void => {
    if (to && formatArea(from) !== formatArea(to)) patch.setAttribute(element, "ref", formatArea(to));
  };
  const totals = Number(root.attributes["totalsRowCount"] ?? 0);
  for (const element of descendants(root)) {
    const { ref } = element.attributes;
    const own = parseArea(ref ?? "");
    if (element.name === "autoFilter" && own) {
      // A filter over the whole table grows with it; some writers give the header row alone, which only moves.
      const whole = before && formatArea(own) === formatArea({ ...before, bottom: before.bottom - totals });
      move(element, own, whole ? { ...area, bottom: area.bottom - totals } : plan.area(sheet, own));
    } else if ((element.name === "sortState" || element.name === "sortCondition") && own) {
      move(element, own, plan.area(sheet, own));
    } else if (element.name === "calculatedColumnFormula" || element.name === "totalsRowFormula") {
      patch.setText(element, plan.formula(element.text, sheet));
    } else if (element.name === "tableColumn") {
      const now = renamed?.get(parseFileText(element.attributes["name"] ?? "").toLowerCase());
      // A line break in a heading is written `_x000a_` in an attribute.
      if (now !== undefined)
        patch.setAttribute(element, "name", formatFileText(now).replaceAll("\n", "_x000a_"));
    }
  }
  return patch.apply();
};
