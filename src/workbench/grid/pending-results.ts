import { isCellError } from "../../domain/cell-value";
import { cellKey } from "../../spreadsheet/workbook";
import { describeEdit } from "./cell-speech";
import { calculatedBeside, outcomeOf } from "./grid-edits";
import type { ModelChange } from "./grid-model";
import type { GridScene } from "./grid-scene";
import type { Place } from "./selection";

/** Edits whose result is still being worked out, to be told once it is there. */
export class PendingResults {
  private readonly waiting = new Map<string, { readonly place: Place; readonly typed: string }>();

  clear(): void {
    this.waiting.clear();
  }

  /** Remembers an edit where its cell is still busy. */
  expect(scene: GridScene, place: Place, typed: string): void {
    if (isBusy(scene, place)) this.waiting.set(idOf(scene, place), { place, typed });
  }

  /** The words for results that came with these changes. */
  settle(scene: GridScene, changes: readonly ModelChange[]): string | undefined {
    const said: string[] = [];
    for (const [id, { place, typed }] of this.waiting) {
      const changed = changes.some(
        ({ sheet, keys }) =>
          sheet === scene.sheet.name &&
          (keys === undefined || keys.includes(cellKey(place.row, place.column))),
      );
      if (!changed || id !== idOf(scene, place) || isBusy(scene, place)) continue;
      this.waiting.delete(id);
      const words = describeEdit(
        outcomeOf(scene, place, typed, { table: undefined, calculated: calculatedBeside(scene, place) }),
      );
      if (words !== undefined) said.push(words);
    }
    return said.length === 0 ? undefined : said.join(" ");
  }
}

const idOf = (scene: GridScene, place: Place): string =>
  `${String(cellKey(place.row, place.column))} ${scene.sheet.name}`;

function isBusy(scene: GridScene, place: Place): boolean {
  const value = scene.cellAt(place)?.value;
  return isCellError(value) && value.error === "#BUSY!";
}
