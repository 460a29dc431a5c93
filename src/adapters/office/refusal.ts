import { HostError } from "../../ports/sheet";
import type { OfficeHost } from "./office-host";

/** What an Office.js error code means for the teacher. Source: Excel.ErrorCodes of the published typings. */
const ADVICE: Readonly<Record<string, string>> = {
  AccessDenied: "The sheet or workbook is protected. Take the protection off (Review tab), then try again.",
  ApiNotFound: "This version of Excel is too old for this. Update Excel, or use the workbench page.",
  UnsupportedFeature: "This version of Excel is too old for this. Update Excel, or use the workbench page.",
  UnsupportedOperation: "Excel cannot do this here. Update Excel, or use the workbench page.",
  NotImplemented: "Excel cannot do this here. Update Excel, or use the workbench page.",
  UnsupportedSheet: "This kind of sheet has no cells. Choose an ordinary sheet.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Escape in it, then try again.",
  InsertDeleteConflict:
    "What stands beneath the table cannot move down, because it would tear another table or a merged cell. Make room beneath, then try again.",
  FilteredRangeConflict: "The table is filtered. Show all its rows (Data tab, Clear), then try again.",
  MergedRangeConflict: "Merged cells are in the way. Unmerge them, then try again.",
  PivotTableRangeConflict: "A PivotTable is in the way. Choose another place, then try again.",
  NonBlankCellOffSheet: "There is no room left on the sheet. Choose another sheet.",
  ItemAlreadyExists: "Something of this name is there already. Choose another name.",
  InvalidArgument: "Excel does not accept this place or name. Check the name and the area, then try again.",
  InvalidReference: "Excel does not accept this place. Check the area, then try again.",
  InvalidSelection: "Excel does not accept this place. Check the area, then try again.",
  FormulaLengthExceedsLimit: "A formula is longer than Excel allows (8,192 characters). Shorten it.",
  OperationCellsExceedLimit: "That is more than Excel takes at once. Choose fewer rows.",
  RangeExceedsLimit: "That is more than Excel takes at once. Choose fewer rows.",
  RequestPayloadSizeLimitExceeded: "That is more than Excel takes at once. Choose fewer rows.",
  ResponsePayloadSizeLimitExceeded: "That is more than Excel gives at once. Choose fewer rows.",
  RequestAborted: "Excel broke off. Try again.",
  Conflict: "Someone else changed the workbook at the same moment. Try again.",
  InactiveWorkbook: "The workbook is not active. Click into it, then try again.",
};

/** The code of an Office.js error, or undefined for anything else. */
export const officeErrorCode = (error: unknown): string | undefined =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : undefined;

/**
 * The HostError for an error of Office.js; anything else, such as a TypeError of our own, comes back as it is.
 *
 * @param subject - what was asked for, such as `the sheet "Probes"`: named where it does not exist
 */
export const explainRefusal = (error: unknown, subject: string): unknown => {
  const code = officeErrorCode(error);
  if (code === undefined) return error;
  if (code === "ItemNotFound") {
    return new HostError(`There is no ${subject} in this workbook. Check its name.`, { cause: error });
  }
  const advice =
    ADVICE[code] ?? `Excel refused (${code}). Try again; if it stays so, save, close and open the workbook.`;
  return new HostError(advice, { cause: error });
};

/**
 * Runs a batch that only reads.
 * @throws {HostError} where Excel refuses
 */
export async function askExcel<T>(
  host: OfficeHost,
  subject: string,
  batch: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  try {
    return await host.run(batch);
  } catch (error) {
    throw explainRefusal(error, subject);
  }
}

/**
 * Runs a batch that writes, with this add-in's own events off. The batch queues its last operations without a sync
 * of its own; they are flushed here. If Excel refuses, `takeBack` removes what was already written.
 *
 * @throws {HostError} where Excel refuses
 */
export async function writeToExcel<T>(
  host: OfficeHost,
  subject: string,
  batch: (
    context: Excel.RequestContext,
    onRefusal: (takeBack: () => Promise<void>) => void,
  ) => Promise<() => T>,
): Promise<T> {
  return askExcel(host, subject, async (context) => {
    let takeBack: (() => Promise<void>) | undefined;
    context.runtime.enableEvents = false;
    try {
      const answer = await batch(context, (undo) => (takeBack = undo));
      context.runtime.enableEvents = true;
      await context.sync();
      return answer();
    } catch (error) {
      // A refused operation ends its batch: what stood before it is done, and events are still off.
      await takeBack?.().catch(() => undefined);
      context.runtime.enableEvents = true;
      await context.sync().catch(() => undefined);
      throw error;
    }
  });
}
