import type { Area } from "../../domain/area";
import type { Result } from "../../domain/result";
import { formatArea, formatCell } from "../../spreadsheet/address";
import type { EditOutcome } from "./cell-speech";
import { countOf, describeEdit } from "./cell-speech";
import type { GridCommand } from "./key-command";
import type { GridScene } from "./grid-scene";
import type { Place } from "./selection";

/** What an edit did: where, and the words for it; or why it was refused. */
export type EditReport =
  | { readonly ok: true; readonly area?: Area; readonly said?: string; readonly sheet?: string }
  | { readonly ok: false; readonly said: string };

/** Enters a text into a cell and describes the outcome. */
export function enterText(scene: GridScene, place: Place, text: string): EditReport {
  const table = scene.sheet.tables.find(
    ({ area }) => area.bottom + 1 === place.row && place.column >= area.left && place.column <= area.right,
  );
  const before = calculatedBeside(scene, place);
  const entered = scene.model.enter(scene.sheet, place, [[text]]);
  if (!entered.ok) return { ok: false, said: entered.fault.message };
  const said = describeEdit(outcomeOf(scene, place, text, { table: table?.name, calculated: before }));
  return { ok: true, area: entered.value, ...(said === undefined ? {} : { said }) };
}

/** How things stood before an edit: the table right above the cell, what calculated columns of its row showed. */
interface Before {
  readonly table: string | undefined;
  readonly calculated: ReadonlyMap<string, string>;
}

/** What a cell shows after an edit, with its spill and what happened in its table's row. */
export function outcomeOf(scene: GridScene, place: Place, typed: string, before: Before): EditOutcome {
  const cell = scene.cellAt(place);
  const spill = cell?.spill;
  const cells = spill === undefined ? 1 : (spill.bottom - spill.top + 1) * (spill.right - spill.left + 1);
  const grown = scene.tableAt(place)?.name;
  const calculated = [...calculatedBeside(scene, place)].flatMap(([column, shown]) =>
    shown === "" || shown.startsWith("#") || before.calculated.get(column) === shown
      ? []
      : [{ column, shown }],
  );
  return {
    address: formatCell(place.row, place.column),
    typed,
    shown: scene.model.shownText(scene.sheet, place),
    value: cell?.value ?? null,
    hasFormula: cell?.formula !== undefined,
    ...(spill === undefined || cells < 2
      ? {}
      : { spill: { range: formatArea(spill).replace(":", " to "), cells } }),
    ...(grown === undefined || grown !== before.table ? {} : { newRow: grown }),
    calculated,
  };
}

/** What the calculated columns of a table show in the row of a cell, by heading; the cell itself left out. */
export function calculatedBeside(scene: GridScene, place: Place): ReadonlyMap<string, string> {
  const table = scene.tableAt(place);
  const shown = new Map<string, string>();
  for (const [index, column] of (table?.columns ?? []).entries()) {
    const at = { row: place.row, column: (table?.area.left ?? 0) + index };
    const isOther = column.formula !== undefined && at.column !== place.column;
    if (isOther) shown.set(column.name, scene.model.shownText(scene.sheet, at));
  }
  return shown;
}

/** Carries out a command that changes cells; undefined where the command is another kind. */
export function runEdit(scene: GridScene, command: GridCommand, area: Area): EditReport | undefined {
  const count = area.bottom - area.top + 1;
  switch (command.kind) {
    case "clear":
      return reportOf(
        scene.model.clear(scene.sheet, shrinkToUsed(scene, area)),
        () => `${formatArea(area)} cleared.`,
      );
    case "fill-down":
      return reportOf(
        scene.model.fillDown(scene.sheet, area),
        (filled) => `Filled down to ${formatCell(filled.bottom, filled.right)}.`,
      );
    case "insert-rows":
      return reportOf(
        scene.model.insertRows(scene.sheet, area.top, count),
        () => `${countOf(count, "row")} inserted above row ${String(area.top + count + 1)}.`,
      );
    case "delete-rows":
      return reportOf(
        scene.model.deleteRows(scene.sheet, area.top, count),
        () => `${countOf(count, "row")} deleted. Control Z brings back.`,
      );
    case "undo":
      return stepReport(scene.model.undo(), "Undone", "Nothing to undo.");
    case "redo":
      return stepReport(scene.model.redo(), "Done again", "Nothing to do again.");
    default:
      return undefined;
  }
}

function reportOf(result: Result<Area>, say: (area: Area) => string): EditReport {
  return result.ok
    ? { ok: true, area: result.value, said: say(result.value) }
    : { ok: false, said: result.fault.message };
}

function stepReport(
  step: { readonly sheet: string; readonly area?: Area } | undefined,
  done: string,
  none: string,
): EditReport {
  if (step === undefined) return { ok: false, said: none };
  const { sheet, area } = step;
  return area === undefined
    ? { ok: true, sheet, said: `${done}.` }
    : { ok: true, sheet, area, said: `${done}, ${formatArea(area)}.` };
}

/** A selection of whole columns reaches to the last cell in use, not to the end of the sheet. */
export const shrinkToUsed = (scene: GridScene, area: Area): Area => ({
  ...area,
  bottom: Math.max(area.top, Math.min(area.bottom, scene.lastUsed.row)),
  right: Math.max(area.left, Math.min(area.right, scene.lastUsed.column)),
});
