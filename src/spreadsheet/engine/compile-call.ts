import type { AstExpression, CallExpression } from "@borgar/fx";
import type { CellValue } from "../../domain/cell-value";
import type { FunctionAnswer, ParameterShape, SheetFunction } from "../function-library";
import { ordinaryFunction } from "../ordinary/ordinary-library";
import type { OrdinaryFunction, Parameter } from "../ordinary/ordinary-function";
import type { Compilation, Place } from "./compilation";
import { dereference, intersect } from "./dereference";
import { mapBlocks } from "./operators";
import type { Evaluate, Scope } from "./program";
import { FormulaError, isError, isRows, Lambda, makeError, type Value } from "./value";

/** Compiles a call: of a LAMBDA, a custom function, or an ordinary function on the list. */
export function compileCall(node: CallExpression, place: Place, compilation: Compilation): Evaluate {
  // The callee is an expression where a LAMBDA is called on the spot; the parser's types know identifiers alone.
  const callee = node.callee as AstExpression | CallExpression["callee"];
  if (callee.type !== "Identifier")
    return compileLambdaCall(compilation.parts.node(callee, place, compilation), node, place, compilation);
  const name = callee.name.toUpperCase().replace(/^_XLFN\.(?:_XLWS\.)?/, "");
  if (place.locals.has(name.toLowerCase())) {
    const local = compilation.parts.node(
      { type: "ReferenceIdentifier", kind: "name", value: callee.name },
      place,
      compilation,
    );
    return compileLambdaCall(local, node, place, compilation);
  }
  const [first] = node.arguments as readonly (AstExpression | null)[];
  if (name === "ANCHORARRAY" && first) return compilation.parts.spill(first, place, compilation);
  if (name === "SINGLE" && first) {
    const body = compilation.parts.node(first, place, compilation);
    return (scope) => intersect(body(scope), scope);
  }
  const custom = compilation.settings.library.find(name);
  if (custom) return compileCustom(custom, node, place, compilation);
  const ordinary = ordinaryFunction(name);
  if (ordinary) return compileOrdinary(ordinary, node, place, compilation);
  const message = `${callee.name} is not a function that Cellwright calculates.`;
  compilation.fault ??= message;
  return () => makeError("#NAME?", message);
}

function compileLambdaCall(
  callee: Evaluate,
  node: CallExpression,
  place: Place,
  compilation: Compilation,
): Evaluate {
  const args = argumentsOf(node).map(
    (argument) => argument && compilation.parts.node(argument, place, compilation),
  );
  return (scope) => {
    const called = callee(scope);
    if (isError(called)) return called;
    if (!(called instanceof Lambda)) return makeError("#VALUE!", "Only a LAMBDA can be called like this.");
    if (args.length > called.parameters) return makeError("#VALUE!", "The LAMBDA has fewer parameters.");
    return called.call(args.map((argument) => argument?.(scope)));
  };
}

const argumentsOf = (node: CallExpression): readonly (AstExpression | null)[] => node.arguments;

function compileCustom(
  called: SheetFunction,
  node: CallExpression,
  place: Place,
  compilation: Compilation,
): Evaluate {
  const given = argumentsOf(node);
  const { parameters } = called;
  const repeating = parameters.at(-1)?.repeating === true;
  if (given.length > parameters.length && !repeating) return wrongCount(called.name, "too many");
  const required = parameters.filter((shape) => !shape.optional && !shape.repeating).length;
  if (given.length < required) return wrongCount(called.name, "too few");
  if (called.result.dimensionality === "matrix") compilation.mayFill = true;
  const args = given.map((argument, index) => {
    const shape: ParameterShape | undefined = parameters[index] ?? parameters.at(-1);
    if (!argument) return (): FunctionAnswer => null;
    const inner: Place = shape?.dimensionality === "matrix" ? { ...place, mode: "spills" } : place;
    if (shape?.dimensionality !== "matrix") return compilation.parts.value(argument, inner, compilation);
    const body = compilation.parts.node(argument, inner, compilation);
    return (scope: Scope): FunctionAnswer => dereference(body(scope), scope);
  });
  const missing = Math.max(0, parameters.length - given.length - (repeating ? 1 : 0));
  const filler: FunctionAnswer[] = Array.from({ length: missing }, () => null);
  return (scope) => scope.engine.call(called, [...args.map((argument) => argument(scope)), ...filler], scope);
}

function wrongCount(name: string, count: "too many" | "too few"): Evaluate {
  const error = makeError("#VALUE!", `${name} has ${count} arguments.`);
  return () => error;
}

type Compiled = { readonly parameter: Parameter<unknown>; readonly body: Evaluate | undefined };

function compileOrdinary(
  called: OrdinaryFunction,
  node: CallExpression,
  place: Place,
  compilation: Compilation,
): Evaluate {
  const given = argumentsOf(node);
  const last = called.parameters.at(-1);
  if (given.length > called.parameters.length && !last?.many) return wrongCount(called.name, "too many");
  const required = called.parameters.filter((parameter) => !parameter.optional).length;
  if (given.length < required) return wrongCount(called.name, "too few");
  if (called.volatile) compilation.volatile = true;
  if (called.fills) compilation.mayFill = true;
  const references = compilation.references.length;
  const single = called.parameters.filter((parameter) => !parameter.many);
  const compiled: Compiled[] = single.map((parameter, index) => ({
    parameter,
    body: compileArgument(given[index], parameter, place, compilation),
  }));
  const rest = last?.many
    ? given
        .slice(single.length)
        .map((argument) => ({ parameter: last, body: compileArgument(argument, last, place, compilation) }))
    : undefined;
  if (called.unread) {
    compilation.references.length = references;
    compilation.placed = true;
  }
  const lifts = compiled.some(({ parameter }) => parameter.kind === "scalar");
  return (scope) => {
    try {
      return callOrdinary(called, compiled, rest, lifts, scope);
    } catch (thrown) {
      if (thrown instanceof FormulaError) return thrown.cellError;
      throw thrown;
    }
  };
}

function compileArgument(
  argument: AstExpression | null | undefined,
  parameter: Parameter<unknown>,
  place: Place,
  compilation: Compilation,
): Evaluate | undefined {
  if (!argument) {
    // An empty place between commas is an empty value; an argument that is not there at all is undefined.
    return argument === null && !parameter.emptyIsMissing ? (): Value => null : undefined;
  }
  switch (parameter.kind) {
    case "scalar":
    case "block":
      return compilation.parts.value(argument, place, compilation);
    case "array":
      return compilation.parts.node(argument, { ...place, mode: "spills" }, compilation);
    case "range":
    case "lazy":
      return compilation.parts.node(argument, place, compilation);
  }
}

function callOrdinary(
  called: OrdinaryFunction,
  compiled: readonly Compiled[],
  rest: readonly Compiled[] | undefined,
  lifts: boolean,
  scope: Scope,
): Value {
  const values: Value[] = [];
  let blocks = false;
  for (const { parameter, body } of compiled) {
    const value: Value = parameter.kind === "lazy" || !body ? undefined : body(scope);
    values.push(value);
    if (parameter.kind === "scalar" && isRows(value)) blocks = true;
  }
  if (lifts && blocks) {
    const places = compiled.flatMap(({ parameter }, index) => (parameter.kind === "scalar" ? [index] : []));
    const given = places.map((index) =>
      values[index] === undefined ? null : (values[index] as FunctionAnswer),
    );
    return mapBlocks(given, (cells) => {
      const each = [...values];
      places.forEach((index, at) => {
        if (values[index] !== undefined) each[index] = cells[at];
      });
      try {
        return asCell(callWith(called, compiled, each, rest, scope), scope);
      } catch (thrown) {
        if (thrown instanceof FormulaError) return thrown.cellError;
        throw thrown;
      }
    });
  }
  return callWith(called, compiled, values, rest, scope);
}

function asCell(value: Value, scope: Scope): CellValue {
  const read = dereference(value, scope);
  return isRows(read) ? (read[0]?.[0] ?? null) : read;
}

function callWith(
  called: OrdinaryFunction,
  compiled: readonly Compiled[],
  values: readonly Value[],
  rest: readonly Compiled[] | undefined,
  scope: Scope,
): Value {
  const args: unknown[] = [];
  for (let index = 0; index < compiled.length; index++) {
    const { parameter, body } = compiled[index] as Compiled;
    const read = readArgument(parameter, body, values[index], scope);
    if (isError(read) && !parameter.passesErrors) return read;
    args.push(read);
  }
  if (rest) {
    const collected: unknown[] = [];
    for (const { parameter, body } of rest) {
      const value: Value = parameter.kind === "lazy" || !body ? undefined : body(scope);
      const read = readArgument(parameter, body, value, scope);
      if (isError(read) && !parameter.passesErrors) return read;
      collected.push(read);
    }
    args.push(collected);
  }
  return called.evaluate(scope, args);
}

function readArgument(
  parameter: Parameter<unknown>,
  body: Evaluate | undefined,
  value: Value,
  scope: Scope,
): unknown {
  if (!body) return parameter.kind === "lazy" && !parameter.optional ? (): Value => null : undefined;
  if (parameter.kind === "lazy") return () => body(scope);
  if (!parameter.passesErrors && isError(value)) return value;
  return parameter.read(value, scope);
}
