import type { Cell, StructuralEdit } from "./workbook";
import type { WorkbookState } from "./workbook-state";

/** One thing that an edit did, with what is needed to take it back and to do it again. */
export type RecordedChange =
  | {
      readonly kind: "cells";
      readonly sheet: string;
      readonly cells: Map<number, { readonly before: Cell | undefined; after: Cell | undefined }>;
    }
  | {
      readonly kind: "structure";
      readonly edit: StructuralEdit;
      readonly before: WorkbookState;
      readonly after: WorkbookState;
    };

/** What she did by one action: it is undone and redone as a whole. */
export interface Step {
  readonly label: string;
  readonly changes: RecordedChange[];
}

/** The steps that can be undone and redone, newest last. */
export class EditHistory {
  readonly #done: Step[] = [];
  readonly #undone: Step[] = [];

  /** Keeps a step; what was undone before can no longer be redone. */
  record(step: Step): void {
    this.#done.push(step);
    this.#undone.length = 0;
  }

  /** The step to undo next, or undefined. */
  get undoable(): Step | undefined {
    return this.#done.at(-1);
  }

  /** The step to redo next, or undefined. */
  get redoable(): Step | undefined {
    return this.#undone.at(-1);
  }

  takeUndo(): Step | undefined {
    const step = this.#done.pop();
    if (step) this.#undone.push(step);
    return step;
  }

  takeRedo(): Step | undefined {
    const step = this.#undone.pop();
    if (step) this.#done.push(step);
    return step;
  }
}
