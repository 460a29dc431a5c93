import type { Area } from "../../domain/area";
import type { GridCommand } from "./key-command";
import type { Place, Selection, Terrain } from "./selection";
import {
  isSame,
  jumpFrom,
  leadingPlace,
  nextWithin,
  pageFrom,
  selectPlace,
  selectedArea,
  stepFrom,
} from "./selection";

/** What moves need to know beside the terrain. */
export interface MoveScene extends Terrain {
  /** Height of the view for rows that scroll, CSS pixels. */
  readonly pageHeight: number;
  /** Last row and column that hold something. */
  readonly lastUsed: Place;
}

/** The selection that a command leads to; undefined where the command is not about moving or selecting. */
export function moveSelection(
  selection: Selection,
  command: GridCommand,
  scene: MoveScene,
): Selection | undefined {
  switch (command.kind) {
    case "step":
      return reach(selection, command.extend, scene, (from) => stepFrom(from, command.direction, scene));
    case "jump":
      return reach(selection, command.extend, scene, (from) => jumpFrom(from, command.direction, scene));
    case "page":
      return reach(selection, command.extend, scene, (from) =>
        pageFrom(from, command.down ? scene.pageHeight : -scene.pageHeight, scene.rows),
      );
    case "row-start":
      return reach(selection, command.extend, scene, (from) => ({ ...from, column: firstShown(scene) }));
    case "row-end":
      return reach(selection, command.extend, scene, (from) => ({
        ...from,
        column: lastFilled(from.row, scene),
      }));
    case "sheet-start":
      return reach(selection, command.extend, scene, () => ({
        row: scene.rows.visibleFrom(0, 1) ?? 0,
        column: firstShown(scene),
      }));
    case "sheet-end":
      return reach(selection, command.extend, scene, () => scene.lastUsed);
    case "advance":
      return advance(selection, command.along, command.step, scene);
    case "select-rows":
      return across(selection, scene, { left: 0, right: scene.columns.count - 1 });
    case "select-columns":
      return across(selection, scene, { top: 0, bottom: scene.rows.count - 1 });
    case "select-all":
      return across(selection, scene, { top: 0, left: 0, ...lastCorner(scene) });
    case "one-cell":
      return selectPlace(selection.active);
    default:
      return undefined;
  }
}

/** Moves the active cell, or with Shift the far corner while the active cell stays. */
function reach(
  selection: Selection,
  extend: boolean,
  scene: MoveScene,
  go: (from: Place) => Place,
): Selection {
  if (extend) return { ...selection, extent: go(selection.extent) };
  return selectPlace(leadingPlace(go(selection.active), scene.merges));
}

/** Enter and Tab: on to the next cell, or round inside a selection of several cells. */
function advance(selection: Selection, along: "rows" | "columns", step: 1 | -1, scene: MoveScene): Selection {
  const area = selectedArea(selection, scene.merges);
  const first = leadingPlace({ row: area.top, column: area.left }, scene.merges);
  const several = !isSame(first, leadingPlace({ row: area.bottom, column: area.right }, scene.merges));
  if (several) return { ...selection, active: nextWithin(selection.active, area, along, step, scene) };
  const direction = along === "rows" ? (step > 0 ? "right" : "left") : step > 0 ? "down" : "up";
  return selectPlace(stepFrom(selection.active, direction, scene));
}

function across(selection: Selection, scene: MoveScene, sides: Partial<Area>): Selection {
  const area = { ...selectedArea(selection, scene.merges), ...sides };
  return {
    active: selection.active,
    anchor: { row: area.top, column: area.left },
    extent: { row: area.bottom, column: area.right },
  };
}

const firstShown = (scene: MoveScene): number => scene.columns.visibleFrom(0, 1) ?? 0;

function lastFilled(row: number, scene: MoveScene): number {
  for (let column = scene.lastUsed.column; column > 0; column -= 1) {
    if (scene.columns.sizeOf(column) > 0 && scene.isFilled(row, column)) return column;
  }
  return firstShown(scene);
}

const lastCorner = (scene: MoveScene): Pick<Area, "bottom" | "right"> => ({
  bottom: scene.rows.count - 1,
  right: scene.columns.count - 1,
});
