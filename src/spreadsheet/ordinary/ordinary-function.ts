import type { CellError, CellValue } from "../../domain/cell-value";
import type { Scope } from "../engine/program";
import type { Rows, Value } from "../engine/value";

/**
 * How a function takes an argument: `scalar` is one value, and a block there gives a block of results; `block` is
 * read but may be a block; `range` is not read yet; `array` is always rows; `lazy` is calculated when called.
 */
export type ParameterKind = "scalar" | "block" | "range" | "array" | "lazy";

/** One parameter of a function; a value that it cannot use becomes an error. */
export interface Parameter<T> {
  readonly kind: ParameterKind;
  readonly optional: boolean;
  /** Takes all further arguments; the function gets them as an array. */
  readonly many: boolean;
  /** An error is an argument like any other. */
  readonly passesErrors: boolean;
  /** An argument left empty between commas counts as not given. */
  readonly emptyIsMissing: boolean;
  readonly read: (value: Value, scope: Scope) => T | CellError;
}

/** A function of the spreadsheet's own kind. */
export interface OrdinaryFunction {
  readonly name: string;
  readonly parameters: readonly Parameter<unknown>[];
  /** Its result may be a block. */
  readonly fills: boolean;
  readonly volatile: boolean;
  /** It asks where its reference is, never what the cells hold. */
  readonly unread: boolean;
  readonly evaluate: (scope: Scope, args: readonly unknown[]) => Value;
}

type Arguments<P extends readonly Parameter<unknown>[]> = {
  [K in keyof P]: P[K] extends Parameter<infer T> ? T : never;
};

/** What a definition says beside its parameters. */
export interface Traits {
  readonly fills?: boolean;
  readonly volatile?: boolean;
  readonly unread?: boolean;
}

/** Defines a function: its name, its parameters, and what it gives; the arguments arrive read and checked. */
export function defineFunction<const P extends readonly Parameter<unknown>[]>(
  name: string,
  parameters: P,
  evaluate: (scope: Scope, ...args: Arguments<P>) => Value,
  traits: Traits = {},
): OrdinaryFunction {
  return {
    name,
    parameters,
    fills: traits.fills ?? false,
    volatile: traits.volatile ?? false,
    unread: traits.unread ?? false,
    // The reader of each parameter made the argument, so its type is that of the parameter.
    evaluate: (scope, args) => evaluate(scope, ...(args as Arguments<P>)),
  };
}

/** A block or a single value, read. */
export type BlockValue = CellValue | Rows;
