import { ERROR_CODES, isCellError, type CellError, type CellValue } from "../../domain/cell-value";
import type {
  FunctionAnswer,
  FunctionLibrary,
  ParameterShape,
  SheetFunction,
} from "../../spreadsheet/function-library";
import type { TypingSettings } from "../../spreadsheet/number-input";
import { commonSize, valueAt } from "../../spreadsheet/engine/operators";
import { liftedPlaces, passArgument, type PassingSettings } from "./argument-passing";
import { CustomFunctionError, type AssociatedFunction } from "./custom-functions-runtime";
import type { BundleMetadata, FunctionMetadata } from "./function-metadata";

/** The namespace that the manifest gives the functions in Excel. */
export const NAMESPACE = "BRAILLE";

const REFUSED: CellError = {
  error: "#VALUE!",
  message: "The function could not give a result for these arguments.",
};

/**
 * The functions of a bundle as the formula engine calls them.
 *
 * @param functions - as the bundle associated them, by id in upper case
 * @throws {TypeError} where functions.json names a function that the bundle lacks
 */
export function makeLibrary(
  metadata: BundleMetadata,
  functions: ReadonlyMap<string, AssociatedFunction>,
  typing: TypingSettings = { dayOrder: "dmy", year: 1900 },
): FunctionLibrary {
  const settings: PassingSettings = { typing, passesErrors: metadata.passesErrors };
  const library = new Map<string, SheetFunction>();
  for (const declared of metadata.functions) {
    const associated = functions.get(declared.id);
    if (!associated) throw new TypeError(`functions.json names ${declared.id}, which functions.js lacks`);
    const name = `${NAMESPACE}.${declared.id}`;
    library.set(name, makeFunction(name, declared, associated, settings));
  }
  return { find: (name) => library.get(name.toUpperCase()), names: [...library.keys()] };
}

function makeFunction(
  name: string,
  { description, parameters, dimensionality }: FunctionMetadata,
  associated: AssociatedFunction,
  settings: PassingSettings,
): SheetFunction {
  const last = parameters.at(-1);
  const shapeAt = (index: number): ParameterShape | undefined =>
    parameters[index] ?? (last?.repeating ? last : undefined);
  const callOnce = (args: readonly FunctionAnswer[]): FunctionAnswer | Promise<FunctionAnswer> => {
    const passed: unknown[] = [];
    for (const [index, given] of args.entries()) {
      const shape = shapeAt(index);
      if (!shape) return { error: "#VALUE!", message: `${name} has too many arguments.` };
      const argument = passArgument(given, shape, settings);
      if ("refused" in argument) return argument.refused;
      passed.push(argument.passed);
    }
    return callAssociated(associated, passed);
  };
  return {
    name,
    description,
    parameters,
    result: { dimensionality },
    call: (args) => {
      const places = liftedPlaces(args, shapeAt);
      return places.length === 0 ? callOnce(args) : callForEach(args, places, callOnce);
    },
  };
}

function callAssociated(
  associated: AssociatedFunction,
  passed: readonly unknown[],
): FunctionAnswer | Promise<FunctionAnswer> {
  try {
    const answer = associated(...passed);
    return answer instanceof Promise ? answer.then(readAnswer, readFailure) : readAnswer(answer);
  } catch (thrown) {
    return readFailure(thrown);
  }
}

/** Single parameters that were given blocks: one call a cell, the answers in the blocks' common shape. */
function callForEach(
  args: readonly FunctionAnswer[],
  places: readonly number[],
  call: (args: readonly FunctionAnswer[]) => FunctionAnswer | Promise<FunctionAnswer>,
): FunctionAnswer | Promise<FunctionAnswer> {
  const { height, width } = commonSize(places.map((index) => args[index] ?? null));
  const answers = Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (__, column) => {
      const each = [...args];
      for (const index of places) each[index] = valueAt(args[index] ?? null, row, column);
      const answer = call(each);
      return answer instanceof Promise ? answer.then(firstCell) : firstCell(answer);
    }),
  );
  const waits = answers.some((row) => row.some((answer) => answer instanceof Promise));
  return waits ? Promise.all(answers.map((row) => Promise.all(row))) : (answers as CellValue[][]);
}

const firstCell = (answer: FunctionAnswer): CellValue =>
  Array.isArray(answer)
    ? ((answer as readonly (readonly CellValue[])[])[0]?.[0] ?? null)
    : (answer as CellValue);

function readAnswer(answer: unknown): FunctionAnswer {
  if (!Array.isArray(answer)) return readCell(answer);
  const rows = answer.map((row: unknown) => (Array.isArray(row) ? row.map(readCell) : [readCell(row)]));
  const width = Math.max(0, ...rows.map((row) => row.length));
  return rows.map((row) =>
    Array.from({ length: width }, (_, at) =>
      at < row.length ? (row[at] ?? null) : { error: "#N/A" as const },
    ),
  );
}

function readCell(cell: unknown): CellValue {
  if (cell === null || cell === undefined) return null;
  if (typeof cell === "string" || typeof cell === "boolean") return cell;
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : { error: "#NUM!" };
  if (cell instanceof CustomFunctionError) return readError(cell);
  return isCellError(cell) ? cell : REFUSED;
}

/** What was thrown: an error meant for the cell; anything else says nothing of what went wrong inside. */
const readFailure = (thrown: unknown): CellError =>
  thrown instanceof CustomFunctionError ? readError(thrown) : REFUSED;

function readError({ code, message }: CustomFunctionError): CellError {
  const error = ERROR_CODES.find((known) => known === code) ?? "#VALUE!";
  return message === "" ? { error } : { error, message };
}
