import type { Fault, Result } from "../../domain/result";

/** A file that cannot be read or patched safely; inside this adapter only, answered as a Fault at its edge. */
export class XlsxRefusal extends Error {
  override readonly name = "XlsxRefusal";
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Runs a step of reading or saving and turns whatever stood in its way into a Fault.
 *
 * A file is foreign input: besides our own refusals, the zip and XML libraries throw their own errors at bytes that
 * make no sense, and those become the fault `damaged-file`.
 *
 * @param step - what to run
 * @returns its value, or the fault with a sentence that says what to do
 */
export const refuseInsteadOfThrowing = <T>(step: () => T): Result<T> => {
  try {
    return { ok: true, value: step() };
  } catch (thrown) {
    return { ok: false, fault: faultOf(thrown) };
  }
};

const faultOf = (thrown: unknown): Fault => {
  if (thrown instanceof XlsxRefusal) return { code: thrown.code, message: thrown.message };
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    code: "damaged-file",
    message: `This workbook is damaged and was left as it is (${reason}). Open it in your spreadsheet program, let it repair the file, save a copy, and open the copy here.`,
  };
};
