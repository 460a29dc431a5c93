import type { OfficeHost } from "./office-host";
import { areaOf, PLACE, rangeOf, readBlock } from "./cell-transfer";
import { writeToExcel } from "./refusal";
import { loadProtection } from "./sheet-protection";

/** How a file spells an add-in's function: `_xldudf_BRAILLE_CELLS(` stands for `BRAILLE.CELLS(`. */
const asTyped = (formula: string, namespace: string): string =>
  formula.replace(new RegExp(`_xldudf_${namespace}_(\\w+)(?=\\()`, "gi"), `${namespace}.$1`);

/**
 * Enters again every formula that shows #NAME? and calls a function of this namespace: Excel leaves them so when
 * the workbook was opened before the add-in was loaded. Protected sheets are left alone.
 *
 * @param namespace - `BRAILLE`
 * @returns how many formulas were entered again, and the protected sheets that were passed over
 */
export async function reenterFormulas(
  host: OfficeHost,
  namespace: string,
): Promise<{ readonly entered: number; readonly passedOver: readonly string[] }> {
  const calls = new RegExp(`(?:\\b${namespace}\\.|_xldudf_${namespace}_)\\w+\\(`, "i");
  return writeToExcel(host, "workbook", async (context) => {
    const sheets = context.workbook.worksheets;
    sheets.load("items/name");
    await context.sync();
    const asked = sheets.items.map((sheet) => ({ sheet, used: sheet.getUsedRangeOrNullObject(true) }));
    for (const { sheet, used } of asked) {
      used.load(PLACE);
      loadProtection(sheet);
    }
    await context.sync();
    let entered = 0;
    const passedOver: string[] = [];
    for (const { sheet, used } of asked) {
      if (used.isNullObject) continue;
      const { area, values, formulas } = await readBlock(context, sheet.name, areaOf(used));
      const broken = formulas.flatMap((row, down) =>
        row.flatMap((formula, across) => {
          const value = values[down]?.[across];
          const unknown = typeof value === "object" && value !== null && value.error === "#NAME?";
          return unknown && formula !== null && calls.test(formula) ? [{ down, across, formula }] : [];
        }),
      );
      if (broken.length > 0 && sheet.protection.protected) {
        passedOver.push(sheet.name);
        continue;
      }
      for (const { down, across, formula } of broken) {
        const [row, column] = [area.top + down, area.left + across];
        rangeOf(sheet, { top: row, left: column, bottom: row, right: column }).formulas = [
          [asTyped(formula, namespace)],
        ];
      }
      entered += broken.length;
      await context.sync();
    }
    return () => ({ entered, passedOver });
  });
}
