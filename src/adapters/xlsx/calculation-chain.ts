import { formatCell } from "../../spreadsheet/address";
import { columnOf, rowOf } from "../../spreadsheet/workbook";
import { keyOfAddress } from "./cell-places";
import type { EditPlan } from "./edit-plan";
import type { FormulaChanges } from "./patch-cells";
import { childrenOf, parseXml } from "./xml-source";
import { XmlPatch } from "./xml-patch";

/**
 * The calculation chain after the edits: cells that hold no formula any more leave it, new ones join at its end. An
 * entry for a cell without a formula makes spreadsheet programs call a file damaged.
 *
 * Source: ECMA-376 part 1, 18.6.1 (c): an entry without `i` belongs to the sheet of the entry before it.
 *
 * @param sheets - name and changes of formulas by sheetId
 * @returns the part, or undefined where nothing is left and it must go
 */
export const patchCalculationChain = (
  text: string,
  sheets: ReadonlyMap<string, { readonly name: string; readonly formulas: FormulaChanges | undefined }>,
  plan: EditPlan,
): string | undefined => {
  const patch = new XmlPatch(parseXml(text));
  const q = patch.document.scope.fileQualifier("") ?? "";
  let sheetId = "";
  /** The sheet that an entry without `i` would belong to, after the removals so far. */
  let inherited = "";
  let left = 0;
  const present = new Set<string>();
  for (const entry of childrenOf(patch.root, "c")) {
    sheetId = entry.attributes["i"] ?? sheetId;
    const sheet = sheets.get(sheetId);
    const key = keyOfAddress(entry.attributes["r"] ?? "");
    const row = sheet ? plan.row(sheet.name, rowOf(key)) : rowOf(key);
    const now = row === undefined ? undefined : formatCell(row, columnOf(key));
    const newKey = now === undefined ? -1 : keyOfAddress(now);
    if (now === undefined || sheet?.formulas?.gone.has(newKey)) {
      patch.remove(entry);
      continue;
    }
    if (row !== rowOf(key)) patch.setAttribute(entry, "r", now);
    if (entry.attributes["i"] === undefined && inherited !== sheetId) patch.setAttribute(entry, "i", sheetId);
    inherited = sheetId;
    present.add(`${sheetId} ${newKey}`);
    left += 1;
  }
  for (const [id, { formulas }] of sheets) {
    for (const [key, { isArray }] of [...(formulas?.added ?? [])].sort(([a], [b]) => a - b)) {
      if (present.has(`${id} ${key}`)) continue;
      patch.append(
        patch.root,
        `<${q}c r="${formatCell(rowOf(key), columnOf(key))}" i="${id}"${isArray ? ' a="1"' : ""}/>`,
      );
      left += 1;
    }
  }
  return left === 0 ? undefined : patch.apply();
};
