import type { PlacedObject } from "../../spreadsheet/workbook";
import { element } from "../element";
import { HEADING_HEIGHT, HEADING_WIDTH } from "./grid-frame";
import type { GridScene } from "./grid-scene";

/** In words what lies over the cells: `chart "Words a minute"`. */
export const nameObject = ({ kind, title }: PlacedObject): string =>
  title === undefined ? `a ${kind}` : `${kind} “${title}”`;

/** Marks the places of charts and pictures, which stay in the file and are not drawn. */
export function markObjects(layer: HTMLElement, scene: GridScene): void {
  for (const mark of layer.querySelectorAll(".grid-object")) mark.remove();
  for (const object of scene.sheet.objects) {
    const { area } = object;
    const mark = element("div", "grid-object");
    const left = scene.columns.startOf(area.left);
    const top = scene.rows.startOf(area.top);
    mark.style.left = `${String(HEADING_WIDTH + left)}px`;
    mark.style.top = `${String(HEADING_HEIGHT + top)}px`;
    mark.style.width = `${String(scene.columns.startOf(area.right + 1) - left)}px`;
    mark.style.height = `${String(scene.rows.startOf(area.bottom + 1) - top)}px`;
    const label = element("p", "grid-object-label");
    const name = nameObject(object);
    label.textContent = `${name.charAt(0).toUpperCase()}${name.slice(1)}: kept in the file, not drawn here`;
    mark.append(label);
    layer.append(mark);
  }
}
