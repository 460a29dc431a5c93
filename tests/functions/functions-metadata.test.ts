import { fileURLToPath } from "node:url";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { beforeAll, describe, expect, it } from "vitest";

interface Metadata {
  functions: {
    id: string;
    name: string;
    description: string;
    parameters: {
      name: string;
      type: string;
      dimensionality?: string;
      optional?: boolean;
      description?: string;
    }[];
    result: { type?: string; dimensionality?: string };
    options?: Record<string, boolean>;
  }[];
}

/** Each function's parameters and result: `[]` a block, `?` may be left out. Source: the project's design, "Sheet functions". */
const TABLE: Readonly<Record<string, readonly [parameters: string, result: string]>> = {
  TRANSLATE: ["text:any[] code?:string taught?:any[] exceptions?:any[]", "[]"],
  ASCII: ["text:any[] code?:string exceptions?:any[]", "[]"],
  DOTS: ["text:any[] code?:string exceptions?:any[]", "[]"],
  CELLS: ["text:any[] code?:string exceptions?:any[]", "[]"],
  PRINT: ["braille:any[] code?:string form?:string", "[]"],
  LINES: ["text:any[] cells?:number code?:string exceptions?:any[]", "[]"],
  SLATE: ["text:any[] code?:string exceptions?:any[]", "[]"],
  BRACKET: ["text:any[] exceptions?:any[]", "[]"],
  CONTRACTIONS: ["text:any[] exceptions?:any[]", "[]"],
  COVERAGE: ["text:any[] taught:any[] measure?:string code?:string exceptions?:any[]", "[]"],
  UNTAUGHT: ["text:any[] taught:any[] code?:string exceptions?:any[]", "[]"],
  NEXT: ["text:any[] taught:any[] n?:number code?:string exceptions?:any[]", "[]"],
  SIGNS: ["kind?:any", "[]"],
  DRILL: ["signs:any[] taught:any[] n?:number maxCells?:number words?:any[] seed?:number code?:string", "[]"],
  WCPM: ["words:any[] errors:any[] seconds:any[]", "[]"],
  ACCURACY: ["words:any[] errors:any[]", "[]"],
  TRIALS: ["marks:any[]", "[]"],
  READING: ["expected:any[] heard:any[] seconds?:any code?:string", "[]"],
  MISCUES: ["expected:any[] heard:any[] code?:string", "[]"],
  WRITING: ["expected:any[] written:any[] code?:string", "[]"],
  CELLERRORS: ["expected:any[] written:any[] code?:string", "[]"],
  TREND: ["dates:any[] scores:any[] method?:string", "[]"],
  AIM: ["startDate:any[] startScore:any[] goalDate:any[] goalScore:any[] date:any[]", "[]"],
  VERDICT: ["dates:any[] scores:any[] startDate:any startScore:any goalDate:any goalScore:any", ""],
  REACHES: ["dates:any[] scores:any[] goal:any", "[]"],
  CELERATION: ["dates:any[] rates:any[]", ""],
  NAP: ["before:any[] after:any[] lowerIsBetter?:boolean", "[]"],
  CHANGE: ["before:any[] after:any[]", "[]"],
  MASTERED: ["dates:any[] correct:any[] opportunities:any[] share?:number run?:any least?:number", ""],
  KNOWN: ["dates:any[] correct:any[] opportunities:any[] asOf?:any", "[]"],
  REVIEW: ["dates:any[] correct:any[] opportunities:any[]", ""],
};

let metadata: Metadata;
let errors: readonly string[];

beforeAll(async () => {
  const file = fileURLToPath(new URL("../../functions/functions.ts", import.meta.url));
  const generated = await generateCustomFunctionsMetadata(file);
  errors = generated.errors;
  metadata = JSON.parse(generated.metadataJson) as Metadata;
});

describe("functions.json", () => {
  it("is generated without a complaint, in the order of the design's table", () => {
    expect(errors).toEqual([]);
    expect(metadata.functions.map(({ id }) => id)).toEqual(Object.keys(TABLE));
  });

  it.each(Object.entries(TABLE))(
    "%s has parameters and a result of the right type and shape",
    (id, [parameters, result]) => {
      const found = metadata.functions.find((candidate) => candidate.id === id);
      const written = found?.parameters.map(
        ({ name, type, dimensionality, optional }) =>
          `${name}${optional === true ? "?" : ""}:${type}${dimensionality === "matrix" ? "[]" : ""}`,
      );
      expect(written?.join(" ")).toBe(parameters);
      expect(found?.result.dimensionality).toBe(result === "[]" ? "matrix" : undefined);
    },
  );

  it("describes every function and parameter, names none like a cell, and makes none volatile", () => {
    for (const { id, name, description, parameters, options } of metadata.functions) {
      expect(name).toBe(id);
      expect(name).toMatch(/^[A-Z]{3,}$/);
      expect(description).toMatch(/\w.*\.$/s);
      expect(options?.volatile).toBeUndefined();
      for (const parameter of parameters)
        expect(parameter.description, `${id}: ${parameter.name}`).toMatch(/\w{3}/);
    }
  });
});
