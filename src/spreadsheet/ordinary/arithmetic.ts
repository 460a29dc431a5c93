import type { CellValue } from "../../domain/cell-value";
import { checkNumber } from "../engine/operators";
import { FormulaError, makeError, Reference, Union, type Value } from "../engine/value";
import type { Scope } from "../engine/program";
import { cellKey } from "../workbook";
import { collectNumbers, readRows, refuseError } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { integer, many, number, optional, range, trailing } from "./parameters";
import { SUMMARIES } from "./statistics";

const DIVISION = makeError("#DIV/0!");

/**
 * A number rounded to decimal places, halves away from zero, as it is written in decimal: 1.005 to two places is
 * 1.01.
 */
export function roundDecimal(value: number, places: number, round: (size: number) => number): number {
  const size = shiftDecimal(Math.abs(value), places);
  return Math.sign(value) * shiftDecimal(round(size), -places);
}

/** A number times a power of ten, without the error of multiplying in binary. */
function shiftDecimal(size: number, places: number): number {
  const [digits = "0", exponent = "0"] = size.toPrecision(15).split("e");
  return Number(`${digits}e${Number(exponent) + places}`);
}

const rounding = (name: string, round: (size: number) => number, places: typeof integer): OrdinaryFunction =>
  defineFunction(name, [number, trailing(places)], (_, value, digits = 0) =>
    roundDecimal(value, digits, round),
  );

/** To the nearest multiple below (towards zero or minus infinity) or above. */
function toMultiple(value: number, step: number, round: (quotient: number) => number): Value {
  if (step === 0) return 0;
  if (value > 0 && step < 0) return makeError("#NUM!");
  return round(Number((value / step).toPrecision(15))) * step;
}

/** Sums, rounding and plain arithmetic. */
export const ARITHMETIC: readonly OrdinaryFunction[] = [
  defineFunction("SUM", [many(range)], (scope, values) => checkNumber(sum(collectNumbers(values, scope)))),
  defineFunction("SUMSQ", [many(range)], (scope, values) =>
    sum(collectNumbers(values, scope).map((each) => each * each)),
  ),
  defineFunction("PRODUCT", [many(range)], (scope, values) => {
    const numbers = collectNumbers(values, scope);
    return numbers.length === 0 ? 0 : checkNumber(numbers.reduce((product, each) => product * each, 1));
  }),
  defineFunction("SUMPRODUCT", [many({ ...range, kind: "array" })], (scope, values) =>
    sumProduct(values, scope),
  ),
  defineFunction("SUBTOTAL", [integer, many(range)], (scope, code, values) => {
    const summary = SUMMARIES[code % 100];
    if (!summary || code > 111 || code < 1)
      return makeError("#VALUE!", "SUBTOTAL knows the numbers 1 to 11 and 101 to 111.");
    return summary([visibleCells(values, scope, code > 100)], scope);
  }),
  defineFunction("ABS", [number], (_, value) => Math.abs(value)),
  defineFunction("SIGN", [number], (_, value) => Math.sign(value)),
  defineFunction("INT", [number], (_, value) => Math.floor(value)),
  defineFunction("MOD", [number, number], (_, value, divisor) => {
    if (divisor === 0) return DIVISION;
    const rest = value - divisor * Math.floor(value / divisor);
    return Math.abs(rest) < Math.abs(divisor) * 1e-15 ? 0 : rest;
  }),
  defineFunction("QUOTIENT", [number, number], (_, value, divisor) =>
    divisor === 0 ? DIVISION : Math.trunc(value / divisor),
  ),
  rounding("ROUND", (size) => Math.floor(size + 0.5), integer),
  rounding("ROUNDUP", Math.ceil, integer),
  rounding("ROUNDDOWN", Math.floor, integer),
  rounding("TRUNC", Math.floor, integer),
  defineFunction("MROUND", [number, number], (_, value, step) =>
    value * step < 0
      ? makeError("#NUM!")
      : step === 0
        ? 0
        : roundDecimal(value / step, 0, (size) => Math.floor(size + 0.5)) * step,
  ),
  defineFunction("CEILING", [number, number], (_, value, step) => toMultiple(value, step, Math.ceil)),
  defineFunction("FLOOR", [number, number], (_, value, step) =>
    step === 0 && value !== 0 ? DIVISION : toMultiple(value, step, Math.floor),
  ),
  defineFunction(
    "CEILING.MATH",
    [number, optional(number), optional(number)],
    (_, value, step = 1, mode = 0) =>
      toMultiple(value, Math.abs(step), value < 0 && mode !== 0 ? Math.floor : Math.ceil),
  ),
  defineFunction("FLOOR.MATH", [number, optional(number), optional(number)], (_, value, step = 1, mode = 0) =>
    toMultiple(value, Math.abs(step), value < 0 && mode !== 0 ? Math.ceil : Math.floor),
  ),
  defineFunction("SQRT", [number], (_, value) => (value < 0 ? makeError("#NUM!") : Math.sqrt(value))),
  defineFunction("POWER", [number, number], (_, base, power) =>
    base === 0 && power <= 0 ? (power === 0 ? makeError("#NUM!") : DIVISION) : checkNumber(base ** power),
  ),
  defineFunction("EXP", [number], (_, value) => checkNumber(Math.exp(value))),
  defineFunction("LN", [number], (_, value) => (value <= 0 ? makeError("#NUM!") : Math.log(value))),
  defineFunction("LOG10", [number], (_, value) => (value <= 0 ? makeError("#NUM!") : Math.log10(value))),
  defineFunction("LOG", [number, optional(number)], (_, value, base = 10) => {
    if (value <= 0 || base <= 0) return makeError("#NUM!");
    if (base === 1) return DIVISION;
    return base === 10 ? Math.log10(value) : base === 2 ? Math.log2(value) : Math.log(value) / Math.log(base);
  }),
  defineFunction("PI", [], () => Math.PI),
];

const sum = (numbers: readonly number[]): number => {
  let total = 0;
  for (const each of numbers) total += each;
  return total;
};

function sumProduct(values: readonly Value[], scope: Scope): CellValue {
  const blocks = values.map((value) => readRows(value, scope));
  const [first] = blocks;
  if (
    !first ||
    blocks.some((block) => block.length !== first.length || block[0]?.length !== first[0]?.length)
  ) {
    return makeError("#VALUE!", "The ranges of SUMPRODUCT differ in size.");
  }
  let total = 0;
  first.forEach((row, r) =>
    row.forEach((_, c) => {
      let product = 1;
      for (const block of blocks) {
        const cell = refuseError(block[r]?.[c] ?? null);
        product *= typeof cell === "number" ? cell : 0;
      }
      total += product;
    }),
  );
  return checkNumber(total);
}

/**
 * The cells that SUBTOTAL counts: none that holds a SUBTOTAL itself, and no hidden row where the code is above 100.
 * With a code below, rows of a table that are hidden count as filtered out and are left out too.
 */
function visibleCells(values: readonly Value[], scope: Scope, skipHidden: boolean): CellValue[][] {
  const cells: CellValue[][] = [];
  for (const value of values.flatMap((given): readonly Value[] =>
    given instanceof Union ? given.parts : [given],
  )) {
    if (!(value instanceof Reference)) throw new FormulaError("#VALUE!", "SUBTOTAL needs cells.");
    const { sheet, area } = value;
    scope.engine.readRows(value).forEach((row, r) => {
      if (scope.engine.isHidden(sheet, area.top + r, skipHidden)) return;
      row.forEach((cell, c) => {
        const formula = sheet.cells.get(cellKey(area.top + r, area.left + c))?.formula;
        if (formula === undefined || !/\b(?:SUBTOTAL|AGGREGATE)\(/i.test(formula)) cells.push([cell]);
      });
    });
  }
  return cells;
}
