import type { ParameterShape } from "../../spreadsheet/function-library";

/** One function as functions.json declares it; ids carry no namespace. */
export interface FunctionMetadata {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly ParameterShape[];
  readonly dimensionality: "scalar" | "matrix";
}

/** The contents of functions.json. */
export interface BundleMetadata {
  readonly functions: readonly FunctionMetadata[];
  /** Error cells are handed to parameters of type `any`, instead of becoming the result. */
  readonly passesErrors: boolean;
}

const TYPES = ["string", "number", "boolean", "any"] as const;

/**
 * Reads functions.json.
 *
 * @throws {TypeError} where it has another form: it was not built together with the bundle
 */
export function parseMetadata(text: string): BundleMetadata {
  const root: unknown = JSON.parse(text);
  if (!isRecord(root) || !Array.isArray(root["functions"]))
    throw new TypeError("functions.json lists no functions");
  return {
    functions: root["functions"].map(parseFunction),
    passesErrors: root["allowErrorForDataTypeAny"] === true,
  };
}

function parseFunction(given: unknown): FunctionMetadata {
  if (!isRecord(given) || typeof given["id"] !== "string")
    throw new TypeError("functions.json has a function without an id");
  const { id, description, parameters, result } = given;
  return {
    id: id.toUpperCase(),
    description: typeof description === "string" ? description : "",
    parameters: Array.isArray(parameters) ? parameters.map(parseParameter) : [],
    dimensionality: isRecord(result) && result["dimensionality"] === "matrix" ? "matrix" : "scalar",
  };
}

function parseParameter(given: unknown): ParameterShape {
  if (!isRecord(given)) throw new TypeError("functions.json has a parameter that is no object");
  const { name, type, dimensionality, optional, repeating } = given;
  return {
    name: typeof name === "string" ? name : "",
    type: TYPES.find((known) => known === type) ?? "any",
    dimensionality: dimensionality === "matrix" ? "matrix" : "scalar",
    optional: optional === true,
    repeating: repeating === true,
  };
}

const isRecord = (given: unknown): given is Record<string, unknown> =>
  typeof given === "object" && given !== null;
