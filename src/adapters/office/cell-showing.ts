import { HostError } from "../../ports/sheet";
import type { OfficeHost } from "./office-host";
import { askExcel } from "./refusal";

/**
 * Brings a cell on the screen and selects it.
 *
 * @param place - row and column count from zero
 * @throws {HostError} where the sheet is gone or hidden
 */
export async function showCell(
  host: OfficeHost,
  place: { readonly sheet: string; readonly row: number; readonly column: number },
): Promise<void> {
  await askExcel(host, `sheet "${place.sheet}"`, async (context) => {
    const sheet = context.workbook.worksheets.getItem(place.sheet);
    sheet.load("visibility");
    await context.sync();
    if (sheet.visibility !== "Visible") {
      throw new HostError(
        `The sheet "${place.sheet}" is hidden. Show it first (right-click a tab, Unhide), then try again.`,
      );
    }
    sheet.activate();
    sheet.getRangeByIndexes(place.row, place.column, 1, 1).select();
    await context.sync();
  });
}
