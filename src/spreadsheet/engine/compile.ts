import {
  parseA1Ref,
  parseStructRef,
  type ArrayExpression,
  type AstExpression,
  type BinaryExpression,
  type LambdaExpression,
  type LetExpression,
  type ReferenceIdentifier,
  type ReferenceStruct,
  type UnaryExpression,
} from "@borgar/fx";
import { ERROR_CODES, type CellValue } from "../../domain/cell-value";
import { parseFormula } from "../formula";
import { compileCall } from "./compile-call";
import { Compilation, type PartCompilers, type Place } from "./compilation";
import { dereference, intersect } from "./dereference";
import { BINARY_OPERATORS, mapBlocks, UNARY_OPERATORS } from "./operators";
import type { CompileSettings, Evaluate, Program, ProgramMode, Scope } from "./program";
import { joinAreas, overlap } from "./reference-operators";
import { makeTemplate, placeTemplate } from "./reference-template";
import { isRows, Lambda, makeError, Reference, Union, type Value } from "./value";

/**
 * Compiles a formula as it stands in a cell.
 *
 * @param formula - without its `=`
 * @returns always a program; one that cannot be calculated says why in `fault`
 */
export function compileFormula(
  formula: string,
  row: number,
  column: number,
  mode: ProgramMode,
  settings: CompileSettings,
): Program {
  const compilation = new Compilation(settings, row, column, PARTS);
  const parsed = parseFormula(formula);
  const fault = parsed.ok ? undefined : parsed.fault.message;
  const body = parsed.ok
    ? compileRoot(parsed.value, { mode, locals: new Set() }, compilation)
    : (): Value => makeError("#NAME?", fault);
  return {
    evaluate: body,
    references: compilation.references,
    tables: compilation.tables,
    names: [...compilation.names],
    fault: fault ?? compilation.fault,
    volatile: compilation.volatile,
    placed: compilation.placed,
    mayFill: compilation.mayFill,
  };
}

/** The whole formula: a name may stand for a reference, so it stays unread where blocks go through. */
function compileRoot(node: AstExpression, place: Place, compilation: Compilation): Evaluate {
  const body = compileNode(node, place, compilation);
  if (manyCells(node, compilation)) compilation.mayFill = true;
  return place.mode === "single" ? (scope) => intersect(body(scope), scope) : body;
}

const PARTS: PartCompilers = { node: compileNode, value: compileValue, spill: compileSpill };

/** Compiles a part whose references stay unread. */
function compileNode(node: AstExpression, place: Place, compilation: Compilation): Evaluate {
  switch (node.type) {
    case "Literal": {
      const { value } = node;
      return () => value;
    }
    case "ErrorLiteral": {
      const code = ERROR_CODES.find((known) => known === node.value) ?? "#VALUE!";
      const error = makeError(code);
      return () => error;
    }
    case "ReferenceIdentifier":
      return compileReference(node, place, compilation);
    case "UnaryExpression":
      return compileUnary(node, place, compilation);
    case "BinaryExpression":
      return compileBinary(node, place, compilation);
    case "ArrayExpression":
      return compileArray(node, compilation);
    case "LetExpression":
      return compileLet(node, place, compilation);
    case "LambdaExpression":
      return compileLambda(node, place, compilation);
    case "CallExpression":
      return compileCall(node, place, compilation);
  }
}

/** Compiles a part where a value is needed: references are read, and in a single place a range gives one cell. */
function compileValue(
  node: AstExpression,
  place: Place,
  compilation: Compilation,
): (scope: Scope) => CellValue | readonly (readonly CellValue[])[] {
  const body = compileNode(node, place, compilation);
  if (node.type === "Literal") return body as () => CellValue;
  if (manyCells(node, compilation)) compilation.mayFill = true;
  return place.mode === "single"
    ? (scope) => intersect(body(scope), scope)
    : (scope) => dereference(body(scope), scope);
}

/** Whether a part may be a range of more than one cell; a name may always be. */
function manyCells(node: AstExpression, compilation: Compilation): boolean {
  if (node.type === "BinaryExpression")
    return node.operator === ":" || node.operator === " " || node.operator === ",";
  if (node.type === "UnaryExpression") return node.operator === "#";
  if (node.type !== "ReferenceIdentifier") return false;
  if (node.kind === "name") return true;
  if (node.kind === "table") {
    const struct = parseStructRef(node.value);
    return !(struct?.sections?.includes("this row") && struct.columns?.length === 1);
  }
  const reference = parseA1Ref(node.value);
  if (!reference || !("range" in reference)) return false;
  return !makeTemplate(reference, compilation.row, compilation.column).isCell;
}

function compileReference(node: ReferenceIdentifier, place: Place, compilation: Compilation): Evaluate {
  if (node.kind === "name") return compileName(node.value, place, compilation);
  if (node.kind === "table") return compileTable(node.value, compilation);
  const reference = parseA1Ref(node.value);
  if (!reference || !("range" in reference) || (reference.context?.length ?? 0) > 1) {
    compilation.fault ??= `Cellwright cannot follow the reference ${node.value} to another workbook or several sheets.`;
    return () => makeError("#REF!", `The reference ${node.value} cannot be followed.`);
  }
  const template = makeTemplate(reference, compilation.row, compilation.column);
  compilation.references.push(template);
  const { sheet } = template;
  return (scope) => {
    const target = sheet === undefined ? scope.sheet : scope.engine.sheet(sheet);
    if (!target) return makeError("#REF!", `There is no sheet ${sheet ?? ""}.`);
    const area = placeTemplate(template, scope.row, scope.column);
    return area ? new Reference(target, area) : makeError("#REF!");
  };
}

function compileName(written: string, place: Place, compilation: Compilation): Evaluate {
  const mark = written.lastIndexOf("!");
  const name = written.slice(mark + 1).toLowerCase();
  const sheetName = mark < 0 ? undefined : written.slice(0, mark).replace(/^'|'$/g, "").replaceAll("''", "'");
  if (sheetName === undefined && place.locals.has(name)) {
    return (scope) => {
      let local = scope.local;
      while (local && local.name !== name) local = local.outer;
      return local?.value;
    };
  }
  compilation.names.add(written);
  const asTable: ReferenceStruct = { table: name, columns: [], sections: [] };
  if (sheetName === undefined) compilation.tables.push(asTable);
  return (scope) => {
    const sheet = sheetName === undefined ? scope.sheet : scope.engine.sheet(sheetName);
    const program = sheet && scope.engine.namedProgram(name, sheet);
    const rows = program || sheetName !== undefined ? undefined : scope.engine.resolveTable(asTable, scope);
    if (rows instanceof Reference) return rows;
    if (!program)
      return makeError("#NAME?", `There is no name ${written}; text belongs between quotation marks.`);
    return program.evaluate(scope);
  };
}

function compileTable(written: string, compilation: Compilation): Evaluate {
  const reference = parseStructRef(written);
  if (!reference) {
    compilation.fault ??= `The reference ${written} cannot be read.`;
    return () => makeError("#REF!", `The reference ${written} cannot be read.`);
  }
  compilation.tables.push(reference);
  return (scope) => scope.engine.resolveTable(reference, scope);
}

function compileUnary(node: UnaryExpression, place: Place, compilation: Compilation): Evaluate {
  const [operand] = node.arguments;
  if (!operand) return () => makeError("#VALUE!");
  if (node.operator === "#") return compileSpill(operand, place, compilation);
  if (node.operator === "@") {
    const body = compileNode(operand, place, compilation);
    return (scope) => intersect(body(scope), scope);
  }
  const operator = UNARY_OPERATORS[node.operator];
  if (!operator) throw new RangeError(`no operator ${node.operator}`);
  const body = compileValue(operand, place, compilation);
  return (scope) => {
    const value = body(scope);
    const { settings } = scope.engine;
    return isRows(value)
      ? value.map((row) => row.map((cell) => operator(cell, settings)))
      : operator(value, settings);
  };
}

/** `D2#`: all cells that the formula in D2 fills. */
function compileSpill(operand: AstExpression, place: Place, compilation: Compilation): Evaluate {
  const body = compileNode(operand, place, compilation);
  compilation.mayFill = true;
  return (scope) => {
    const anchor = body(scope);
    if (!(anchor instanceof Reference)) return anchor;
    return (
      scope.engine.spillOf(anchor) ??
      makeError("#REF!", "There is no formula with a spilled result in that cell.")
    );
  };
}

function compileBinary(node: BinaryExpression, place: Place, compilation: Compilation): Evaluate {
  const [first, second] = node.arguments;
  if (!first || !second) return () => makeError("#VALUE!");
  if (node.operator === ":" || node.operator === " " || node.operator === ",") {
    return compileReferenceOperator(node.operator, first, second, place, compilation);
  }
  const operator = BINARY_OPERATORS[node.operator];
  if (!operator) throw new RangeError(`no operator ${node.operator}`);
  const left = compileValue(first, place, compilation);
  const right = compileValue(second, place, compilation);
  return (scope) => {
    const a = left(scope);
    const b = right(scope);
    const { settings } = scope.engine;
    if (!isRows(a) && !isRows(b)) return operator(a, b, settings);
    return mapBlocks([a, b], ([x = null, y = null]) => operator(x, y, settings));
  };
}

function compileReferenceOperator(
  operator: ":" | " " | ",",
  first: AstExpression,
  second: AstExpression,
  place: Place,
  compilation: Compilation,
): Evaluate {
  const left = compileNode(first, place, compilation);
  const right = compileNode(second, place, compilation);
  return (scope) => {
    const a = left(scope);
    const b = right(scope);
    const parts = [a, b].map((value) =>
      value instanceof Union ? value.parts : value instanceof Reference ? [value] : undefined,
    );
    const [from, to] = parts;
    if (!from || !to) return makeError("#VALUE!", "Two references are needed here.");
    if (operator === ",") return new Union([...from, ...to]);
    const [one, other] = [from[0], to[0]];
    if (!one || !other || one.sheet !== other.sheet)
      return makeError("#VALUE!", "Both references must be on the same sheet.");
    const area = operator === ":" ? joinAreas(one.area, other.area) : overlap(one.area, other.area);
    if (!area) return makeError("#NULL!", "The two ranges have no cell in common.");
    const joined = new Reference(one.sheet, area);
    if (operator === ":") scope.engine.depend(joined, scope);
    return joined;
  };
}

function compileArray(node: ArrayExpression, compilation: Compilation): Evaluate {
  const rows = node.elements.map((row) =>
    row.map((element): CellValue => {
      if (element.type === "Literal") return element.value;
      return element.type === "ErrorLiteral"
        ? makeError(ERROR_CODES.find((known) => known === element.value) ?? "#VALUE!")
        : makeError("#VALUE!");
    }),
  );
  const width = rows[0]?.length ?? 0;
  if (rows.some((row) => row.length !== width)) {
    compilation.fault ??= "The rows between braces differ in length.";
    return () => makeError("#VALUE!", "The rows between braces differ in length.");
  }
  compilation.mayFill = true;
  return () => rows;
}

function compileLet(node: LetExpression, place: Place, compilation: Compilation): Evaluate {
  let locals = place.locals;
  const steps = node.declarations.map(({ id, init }) => {
    const body = init ? compileNode(init, { ...place, locals }, compilation) : (): Value => null;
    const name = id.name.toLowerCase();
    locals = new Set([...locals, name]);
    return { name, body };
  });
  const result = node.body ? compileNode(node.body, { ...place, locals }, compilation) : (): Value => null;
  return (scope) => {
    let inner = scope;
    for (const { name, body } of steps) {
      inner = { ...inner, local: { name, value: body(inner), outer: inner.local } };
    }
    return result(inner);
  };
}

function compileLambda(node: LambdaExpression, place: Place, compilation: Compilation): Evaluate {
  const parameters = node.params.map(({ name }) => name.toLowerCase());
  const locals = new Set([...place.locals, ...parameters]);
  const body = node.body ? compileNode(node.body, { ...place, locals }, compilation) : (): Value => null;
  return (scope) =>
    new Lambda(parameters.length, (args) => {
      let inner = scope;
      parameters.forEach((name, index) => {
        inner = { ...inner, local: { name, value: args[index], outer: inner.local } };
      });
      return body(inner);
    });
}
