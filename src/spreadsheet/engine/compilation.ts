import type { AstExpression, ReferenceStruct } from "@borgar/fx";
import type { FunctionAnswer } from "../function-library";
import type { CompileSettings, Evaluate, ProgramMode, Scope } from "./program";
import type { ReferenceTemplate } from "./reference-template";

/** A part of a formula is compiled for one of two places: where blocks go through, or where one value is meant. */
export interface Place {
  readonly mode: ProgramMode;
  /** Names bound by LET and LAMBDA around it, in lower case. */
  readonly locals: ReadonlySet<string>;
}

type CompilePart = (node: AstExpression, place: Place, compilation: Compilation) => Evaluate;

/** How the parts of a formula are compiled, handed to those that compile one kind of part. */
export interface PartCompilers {
  /** references stay unread */
  readonly node: CompilePart;
  /** references are read: a value or rows of values */
  readonly value: (
    node: AstExpression,
    place: Place,
    compilation: Compilation,
  ) => (scope: Scope) => FunctionAnswer;
  /** the whole area of a spill, by its anchor */
  readonly spill: CompilePart;
}

/** What is gathered while one formula is compiled. */
export class Compilation {
  readonly references: ReferenceTemplate[] = [];
  readonly tables: ReferenceStruct[] = [];
  readonly names = new Set<string>();
  fault: string | undefined;
  volatile = false;
  placed = false;
  mayFill = false;

  constructor(
    readonly settings: CompileSettings,
    readonly row: number,
    readonly column: number,
    readonly parts: PartCompilers,
  ) {}
}
