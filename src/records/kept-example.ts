import type { Sheet } from "../ports/sheet";

/** The key under which is kept what the example wrote. */
export const EXAMPLE_SETTING = "example";

/** Rows of the example as they were written; `null` where a formula stood or nothing. */
export interface ExampleRows {
  readonly sheet: string;
  /** where the rows began; not kept by older versions */
  readonly column?: number;
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
}

/** Reads what was kept; damaged text is none. */
export function parseKept(text: string | undefined): readonly ExampleRows[] {
  if (text === undefined || text === "") return [];
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? (kept as ExampleRows[]) : [];
  } catch {
    return [];
  }
}

/** Whether the workbook holds an example that can be removed. */
export const holdsExample = async (sheet: Sheet): Promise<boolean> =>
  parseKept(await sheet.readSetting(EXAMPLE_SETTING)).length > 0;
