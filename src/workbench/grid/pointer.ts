import type { GridFrame } from "./grid-frame";
import type { RowsView } from "./rows-view";
import type { Place } from "./selection";

/** What the mouse, a finger or a pen asks for. */
export interface PointerCommands {
  select(place: Place, extend: boolean): void;
  selectRows(from: number, to: number): void;
  selectColumns(from: number, to: number): void;
  edit(): void;
  menu(event: MouseEvent): void;
  hover(place: Place | undefined): void;
}

/** Lets cells and headings be selected by pressing and drawing over them; a double click edits. */
export function listenToPointer(frame: GridFrame, rows: RowsView, commands: PointerCommands): void {
  let drag:
    { readonly kind: "cells" } | { readonly kind: "rows" | "columns"; readonly from: number } | undefined;
  frame.grid.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || !(event.target instanceof Element)) return;
    const place = rows.placeOf(event.target);
    const row = rowOfHeading(event.target);
    const column = columnOfHeading(event.target);
    if (place !== undefined) {
      commands.select(place, event.shiftKey);
      rows.cellAt(place)?.focus({ preventScroll: true });
      drag = event.pointerType === "mouse" ? { kind: "cells" } : undefined;
    } else if (row !== undefined) {
      commands.selectRows(row, row);
      drag = { kind: "rows", from: row };
    } else if (column !== undefined) {
      commands.selectColumns(column, column);
      drag = { kind: "columns", from: column };
    } else return;
    if (event.pointerType === "mouse") event.preventDefault();
  });
  frame.grid.addEventListener("pointerover", (event) => {
    if (!(event.target instanceof Element)) return;
    const place = rows.placeOf(event.target);
    if (drag === undefined) {
      commands.hover(place);
      return;
    }
    const row = rowOfHeading(event.target);
    const column = columnOfHeading(event.target);
    if (drag.kind === "cells" && place !== undefined) commands.select(place, true);
    else if (drag.kind === "rows" && row !== undefined)
      commands.selectRows(Math.min(drag.from, row), Math.max(drag.from, row));
    else if (drag.kind === "columns" && column !== undefined)
      commands.selectColumns(Math.min(drag.from, column), Math.max(drag.from, column));
  });
  frame.grid.addEventListener("pointerleave", () => {
    commands.hover(undefined);
  });
  addEventListener("pointerup", () => {
    drag = undefined;
  });
  frame.grid.addEventListener("dblclick", (event) => {
    if (event.target instanceof Element && rows.placeOf(event.target) !== undefined) commands.edit();
  });
  frame.grid.addEventListener("contextmenu", (event) => {
    const place = event.target instanceof Element ? rows.placeOf(event.target) : undefined;
    if (place === undefined) return;
    event.preventDefault();
    commands.menu(event);
  });
}

function rowOfHeading(target: Element): number | undefined {
  const row = target.closest<HTMLElement>(".grid-row-heading")?.parentElement?.dataset["row"];
  return row === undefined ? undefined : Number(row);
}

function columnOfHeading(target: Element): number | undefined {
  const column = target.closest<HTMLElement>(".grid-column-heading")?.dataset["column"];
  return column === undefined ? undefined : Number(column);
}
