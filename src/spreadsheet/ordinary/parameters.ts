import type { CellError, CellValue } from "../../domain/cell-value";
import { toLogical, toNumber, toText } from "../engine/coercion";
import { dereference } from "../engine/dereference";
import { isRows, Lambda, makeError, type Rows, type Value } from "../engine/value";
import type { BlockValue, Parameter, ParameterKind } from "./ordinary-function";

const parameter = <T>(
  kind: ParameterKind,
  read: Parameter<T>["read"],
  passesErrors = false,
): Parameter<T> => ({
  kind,
  optional: false,
  many: false,
  passesErrors,
  emptyIsMissing: false,
  read,
});

const asCell = (value: Value): CellValue => (value === undefined ? null : (value as CellValue));

/** One number. */
export const number = parameter("scalar", (value, { engine }) => toNumber(asCell(value), engine.settings));
/** One number without its decimals. */
export const integer = parameter("scalar", (value, { engine }) => {
  const read = toNumber(asCell(value), engine.settings);
  return typeof read === "number" ? Math.trunc(read) : read;
});
/** One text. */
export const text = parameter("scalar", (value) => toText(asCell(value)));
/** TRUE or FALSE. */
export const logical = parameter("scalar", (value) => toLogical(asCell(value)));
/** One value of any kind, errors excepted. */
export const value = parameter<CellValue>("scalar", asCell);
/** One value of any kind, errors included. */
export const anyValue = parameter<CellValue>("scalar", asCell, true);
/** A value or a block of values, errors included, read. */
export const block = parameter<BlockValue>("block", (given, scope) => dereference(given, scope), true);
/** Cells or values, not read yet. */
export const range = parameter<Value>("range", (given) => given, true);
/** Rows of values. */
export const array = parameter<Rows>(
  "array",
  (given, scope) => {
    const read = dereference(given, scope);
    return isRows(read) ? read : [[read]];
  },
  true,
);
/** An argument that is calculated only when it is called. */
export const lazy = parameter<() => Value>("lazy", (given) => () => given, true);
/** A function made by LAMBDA. */
export const lambda = parameter<Lambda>("range", (given): Lambda | CellError =>
  given instanceof Lambda ? given : makeError("#VALUE!", "A LAMBDA is needed here."),
);

/** The same parameter, which need not be given; left empty between commas it counts as not given. */
export const optional = <T>(given: Parameter<T>): Parameter<T | undefined> => ({
  ...given,
  optional: true,
  emptyIsMissing: true,
});

/** The same parameter, which need not be given; left empty after a comma it is 0, "" or FALSE. */
export const trailing = <T>(given: Parameter<T>): Parameter<T | undefined> => ({ ...given, optional: true });

/** One or more of the same parameter. */
export const many = <T>(given: Parameter<T>): Parameter<T[]> => ({
  ...given,
  many: true,
  read: given.read as unknown as Parameter<T[]>["read"],
});
