import type { EditPlan } from "./edit-plan";
import { moveAnchor } from "./patch-sheet-shell";
import { descendants, parseXml } from "./xml-source";
import { XmlPatch } from "./xml-patch";

/**
 * A drawing part after the edits: its objects follow the rows under them, and text that a shape takes from a cell
 * follows that cell.
 *
 * @param sheet - the sheet that the drawing lies on; undefined for a chart sheet or the shapes within a chart
 */
export const patchDrawing = (text: string, sheet: string | undefined, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const element of descendants(patch.root)) {
    if (
      sheet !== undefined &&
      (element.name === "xdr:twoCellAnchor" || element.name === "xdr:oneCellAnchor")
    ) {
      const behaviour = element.attributes["editAs"] ?? "twoCell";
      if (plan.movesRows(sheet))
        moveAnchor(patch, element, plan, sheet, behaviour !== "absolute", behaviour === "twoCell");
    }
    const link = element.attributes["textlink"];
    if (link) patch.setAttribute(element, "textlink", plan.formula(link, sheet));
  }
  return patch.apply();
};
