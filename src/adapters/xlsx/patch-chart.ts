import { isCellError } from "../../domain/cell-value";
import type { Worksheet } from "../../spreadsheet/workbook";
import { formatFileText } from "./cell-text";
import { valuesOf } from "./chart-part";
import type { EditPlan } from "./edit-plan";
import { childOf, childrenOf, descendants, parseXml, type XmlElement } from "./xml-source";
import { escapeText } from "./xml-splice";
import { XmlPatch } from "./xml-patch";

/**
 * A chart part after the edits: its references follow their cells. Where a reference grew, the values that the chart
 * keeps of it grow too, so that a program that does not calculate draws the new points.
 *
 * @param sheets - as the model has them now
 */
export const patchChart = (text: string, plan: EditPlan, sheets: readonly Worksheet[]): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const element of descendants(patch.root)) {
    if (element.name !== "c:f" && element.name !== "cx:f") {
      for (const child of childrenOf(element, "c:f")) {
        const now = plan.formula(child.text, undefined);
        if (now !== child.text) growCache(patch, element, now, sheets);
      }
      continue;
    }
    patch.setText(element, plan.formula(element.text, undefined));
  }
  return patch.apply();
};

/** @param reference - `c:numRef` or `c:strRef`, whose formula is now `formula` */
const growCache = (
  patch: XmlPatch,
  reference: XmlElement,
  formula: string,
  sheets: readonly Worksheet[],
): void => {
  const cache = childOf(reference, "c:numCache") ?? childOf(reference, "c:strCache");
  const count = childOf(cache, "c:ptCount");
  const values = valuesOf(formula, sheets);
  if (!cache || !count || values.length <= Number(count.attributes["val"])) return;
  const before = Number(count.attributes["val"]);
  const prefix = /^<((?:[^\s:>]+:)?)/.exec(patch.document.text.slice(cache.start, cache.openEnd))?.[1] ?? "";
  patch.setAttribute(count, "val", String(values.length));
  const points = values
    .slice(before)
    .map((value, index) => {
      const shown = isCellError(value)
        ? value.error
        : value === null
          ? ""
          : typeof value === "boolean"
            ? String(Number(value))
            : String(value);
      if (shown === "") return "";
      return `<${prefix}pt idx="${before + index}"><${prefix}v>${escapeText(formatFileText(shown))}</${prefix}v></${prefix}pt>`;
    })
    .join("");
  const extension = childOf(cache, "c:extLst");
  if (extension) patch.insertBefore(extension, points);
  else patch.append(cache, points);
};
