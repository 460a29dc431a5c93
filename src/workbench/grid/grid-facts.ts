import { formatCell } from "../../spreadsheet/address";
import type { CellFacts } from "./cell-speech";
import type { GridScene } from "./grid-scene";
import { nameObject } from "./objects-view";
import type { Place } from "./selection";
import { holds, mergeAt } from "./selection";

/** Gathers what is to be said about a cell. */
export function gatherFacts(scene: GridScene, place: Place): CellFacts {
  const cell = scene.cellAt(place);
  const merge = mergeAt(place, scene.merges);
  const comment = scene.sheet.comments.find((note) => note.row === place.row && note.column === place.column);
  const validation = scene.sheet.validations.find(({ areas }) => areas.some((area) => holds(area, place)));
  const object = scene.sheet.objects.find(({ area }) => holds(area, place));
  const from = cell?.spilledFrom;
  return {
    address: formatCell(place.row, place.column),
    ...(merge === undefined ? {} : { mergedTo: formatCell(merge.bottom, merge.right) }),
    shown: scene.model.shownText(scene.sheet, place),
    value: cell?.value ?? null,
    hasFormula: cell?.formula !== undefined,
    ...(from === undefined ? {} : { spilledFrom: formatCell(from.row, from.column) }),
    notRecalculated: cell?.notRecalculated === true,
    ...(comment === undefined ? {} : { comment: comment.text }),
    choices: validation?.type === "list",
    ...(validation?.promptMessage === undefined ? {} : { prompt: validation.promptMessage }),
    ...(object === undefined ? {} : { under: nameObject(object) }),
  };
}
