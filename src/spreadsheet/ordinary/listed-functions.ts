import {
  ACOS,
  ASIN,
  ATAN,
  COMBIN,
  COS,
  DEGREES,
  EVEN,
  FACT,
  ODD,
  RADIANS,
  SIN,
  TAN,
} from "@formulajs/formulajs";
import { makeError, type Value } from "../engine/value";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { number } from "./parameters";

/** What a function of the package gave: its own error objects are told by their code. */
function asValue(result: unknown): Value {
  if (typeof result === "number") return Number.isFinite(result) ? result : makeError("#NUM!");
  if (typeof result === "boolean" || typeof result === "string") return result;
  return makeError(result instanceof Error && result.message === "#DIV/0!" ? "#DIV/0!" : "#NUM!");
}

const ofOne = (name: string, calculate: (value: number) => unknown): OrdinaryFunction =>
  defineFunction(name, [number], (_, value) => asValue(calculate(value)));

const ofTwo = (name: string, calculate: (a: number, b: number) => unknown): OrdinaryFunction =>
  defineFunction(name, [number, number], (_, a, b) => asValue(calculate(a, b)));

/** Functions of one or two numbers taken from the formulajs package, each of them tested. */
export const LISTED: readonly OrdinaryFunction[] = [
  ofOne("ACOS", ACOS),
  ofOne("ASIN", ASIN),
  ofOne("ATAN", ATAN),
  // The package takes y before x.
  ofTwo("ATAN2", (x, y) => (x === 0 && y === 0 ? new Error("#DIV/0!") : Math.atan2(y, x))),
  ofTwo("COMBIN", COMBIN),
  ofOne("COS", COS),
  ofOne("DEGREES", DEGREES),
  ofOne("EVEN", EVEN),
  ofOne("FACT", FACT),
  ofOne("ODD", ODD),
  ofOne("RADIANS", RADIANS),
  ofOne("SIN", SIN),
  ofOne("TAN", TAN),
];
