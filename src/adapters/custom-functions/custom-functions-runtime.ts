/** The codes of errors as Excel's runtime for custom functions names them. */
const ERROR_CODES = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
} as const;

/** An error as a custom function throws it, or returns it inside a block. */
export class CustomFunctionError extends Error {
  override readonly name = "CustomFunctionError";
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

/** A function of the bundle, before its arguments are checked. */
export type AssociatedFunction = (...args: readonly unknown[]) => unknown;

/** What a bundle of custom functions finds under the global name `CustomFunctions`. */
export interface CustomFunctionsRuntime {
  associate(id: string | Readonly<Record<string, AssociatedFunction>>, called?: AssociatedFunction): void;
  readonly Error: typeof CustomFunctionError;
  readonly ErrorCode: typeof ERROR_CODES;
}

/** A stand-in for Excel's runtime, which gathers the functions that a bundle associates with their ids. */
export function makeRuntime(): {
  runtime: CustomFunctionsRuntime;
  functions: ReadonlyMap<string, AssociatedFunction>;
} {
  const functions = new Map<string, AssociatedFunction>();
  const runtime: CustomFunctionsRuntime = {
    associate(id, called) {
      const entries = typeof id === "string" ? { [id]: called } : id;
      for (const [each, associated] of Object.entries(entries))
        if (associated) functions.set(each.toUpperCase(), associated);
    },
    Error: CustomFunctionError,
    ErrorCode: ERROR_CODES,
  };
  return { runtime, functions };
}
