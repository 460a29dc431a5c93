/** An expected refusal: a stable code and a sentence that says what to do. */
export interface Fault {
  readonly code: string;
  readonly message: string;
}

/** Either a value or the fault that stood in its way; never both, never an exception. */
export type Result<T, F extends Fault = Fault> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: F };

/** A successful {@link Result}. */
export const success = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

/** A refused {@link Result}. */
export const refusal = <C extends string>(
  code: C,
  message: string,
): { readonly ok: false; readonly fault: { readonly code: C; readonly message: string } } => ({
  ok: false,
  fault: { code, message },
});
