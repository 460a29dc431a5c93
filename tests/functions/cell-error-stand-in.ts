import { vi } from "vitest";

/** As much of Excel's error object as the functions use. */
export class CellErrorStandIn extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

/** Puts the stand-in where Excel's runtime has its own. */
export const standInForCustomFunctions = (): void => {
  const ErrorCode = { invalidValue: "#VALUE!", notAvailable: "#N/A", invalidNumber: "#NUM!" };
  vi.stubGlobal("CustomFunctions", { Error: CellErrorStandIn, ErrorCode });
};

/** What a call gives, with each error as its code and message; an error of the whole call is its one cell. */
export const answerOfCall = async (call: () => unknown): Promise<unknown[][]> => {
  try {
    const rows = (await call()) as unknown[][];
    return rows.map((row) => row.map(shown));
  } catch (error) {
    if (error instanceof CellErrorStandIn) return [[shown(error)]];
    throw error;
  }
};

const shown = (cell: unknown): unknown =>
  cell instanceof CellErrorStandIn ? { code: cell.code, message: cell.message } : cell;
