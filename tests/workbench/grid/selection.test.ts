import { describe, expect, it } from "vitest";
import type { Area } from "../../../src/domain/area";
import { makeAxis } from "../../../src/workbench/grid/axis";
import type { GridCommand } from "../../../src/workbench/grid/key-command";
import type { Place } from "../../../src/workbench/grid/selection";
import { selectArea, selectPlace, selectedArea } from "../../../src/workbench/grid/selection";
import type { MoveScene } from "../../../src/workbench/grid/selection-moves";
import { moveSelection } from "../../../src/workbench/grid/selection-moves";

const area = (top: number, left: number, bottom: number, right: number): Area => ({
  top,
  left,
  bottom,
  right,
});
const at = (row: number, column: number): Place => ({ row, column });

/**
 * Rows drawn as text, `x` filled: a block, a gap, a lone cell. Row 6 and column 4 are hidden; the cells of rows 8–9
 * and columns 1–2 are merged.
 */
const DRAWN = ["xx.x", "xx..", "xx..", "....", "x...", "x...", "x...", "....", ".x.."];
const scene: MoveScene = {
  rows: makeAxis(100, 20, new Map([[6, 0]])),
  columns: makeAxis(26, 60, new Map([[4, 0]])),
  merges: [area(8, 1, 9, 2)],
  isFilled: (row, column) => DRAWN[row]?.[column] === "x",
  pageHeight: 200,
  lastUsed: at(8, 3),
};

const go = (from: Place, command: GridCommand): Place | undefined =>
  moveSelection(selectPlace(from), command, scene)?.active;

describe("moving the active cell", () => {
  it.each([
    ["down", at(0, 0), "down", at(1, 0)],
    ["not beyond the first row", at(0, 0), "up", at(0, 0)],
    ["not beyond the last column", at(0, 25), "right", at(0, 25)],
    ["past a hidden row", at(5, 0), "down", at(7, 0)],
    ["past a hidden column", at(0, 3), "right", at(0, 5)],
    ["back past a hidden row", at(7, 0), "up", at(5, 0)],
    ["into a merged area, to its first cell", at(9, 0), "right", at(8, 1)],
    ["out of a merged area past all of it", at(8, 1), "down", at(10, 1)],
    ["out of a merged area to the right", at(8, 1), "right", at(8, 3)],
  ] as const)("one step: %s", (_, from, direction, to) => {
    expect(go(from, { kind: "step", direction, extend: false })).toEqual(to);
  });

  it.each([
    ["to the end of a run", at(0, 0), "down", at(2, 0)],
    ["across a gap to the next run", at(2, 0), "down", at(4, 0)],
    ["from an empty cell to the first filled one", at(3, 0), "down", at(4, 0)],
    ["across a gap to the right", at(0, 1), "right", at(0, 3)],
    ["to the edge where nothing follows", at(8, 3), "right", at(8, 25)],
    ["up to the edge", at(3, 3), "up", at(0, 3)],
    ["past the hidden row inside a run", at(4, 0), "down", at(5, 0)],
  ] as const)("a jump: %s", (_, from, direction, to) => {
    expect(go(from, { kind: "jump", direction, extend: false })).toEqual(to);
  });

  it.each<[string, Place, GridCommand, Place]>([
    ["Home goes to the first column", at(2, 3), { kind: "row-start", extend: false }, at(2, 0)],
    ["End goes to the last filled cell of the row", at(1, 0), { kind: "row-end", extend: false }, at(1, 1)],
    ["Ctrl+Home goes to the first cell", at(8, 3), { kind: "sheet-start", extend: false }, at(0, 0)],
    [
      "Ctrl+End goes to the last used row and column",
      at(0, 0),
      { kind: "sheet-end", extend: false },
      at(8, 3),
    ],
    ["Page Down moves by a window", at(0, 0), { kind: "page", down: true, extend: false }, at(11, 0)],
    ["Page Up stops at the top", at(3, 0), { kind: "page", down: false, extend: false }, at(0, 0)],
    ["Enter goes down", at(0, 0), { kind: "advance", along: "columns", step: 1 }, at(1, 0)],
    ["Shift+Tab goes left", at(0, 1), { kind: "advance", along: "rows", step: -1 }, at(0, 0)],
  ])("%s", (_, from, command, to) => {
    expect(go(from, command)).toEqual(to);
  });
});

describe("selecting several cells", () => {
  const extended = (from: Place, ...commands: GridCommand[]) =>
    commands.reduce(
      (selection, command) => moveSelection(selection, command, scene) ?? selection,
      selectPlace(from),
    );

  it("Shift with an arrow moves the far corner; the active cell stays", () => {
    const selection = extended(
      at(1, 0),
      { kind: "step", direction: "down", extend: true },
      { kind: "step", direction: "right", extend: true },
    );
    expect(selection.active).toEqual(at(1, 0));
    expect(selectedArea(selection, [])).toEqual(area(1, 0, 2, 1));
  });

  it("grows so that no merged cell is cut", () => {
    const selection = extended(at(7, 2), { kind: "step", direction: "down", extend: true });
    expect(selectedArea(selection, scene.merges)).toEqual(area(7, 1, 9, 2));
  });

  it("goes back to one cell by Escape", () => {
    const selection = extended(
      at(0, 0),
      { kind: "jump", direction: "down", extend: true },
      { kind: "one-cell" },
    );
    expect(selectedArea(selection, [])).toEqual(area(0, 0, 0, 0));
  });

  it("Tab goes round inside the selection, row by row", () => {
    let selection = selectArea(area(0, 0, 1, 1));
    const seen: Place[] = [];
    for (let press = 0; press < 4; press += 1) {
      selection = moveSelection(selection, { kind: "advance", along: "rows", step: 1 }, scene) ?? selection;
      seen.push(selection.active);
    }
    expect(seen).toEqual([at(0, 1), at(1, 0), at(1, 1), at(0, 0)]);
    expect(selectedArea(selection, [])).toEqual(area(0, 0, 1, 1));
  });

  it("Enter goes round column by column, backwards with Shift", () => {
    const selection = moveSelection(
      selectArea(area(0, 0, 1, 1)),
      { kind: "advance", along: "columns", step: -1 },
      scene,
    );
    expect(selection?.active).toEqual(at(1, 1));
  });

  it.each<[string, GridCommand, Area]>([
    ["whole rows", { kind: "select-rows" }, area(1, 0, 1, 25)],
    ["whole columns", { kind: "select-columns" }, area(0, 1, 99, 1)],
    ["the whole sheet", { kind: "select-all" }, area(0, 0, 99, 25)],
  ])("selects %s with the active cell unmoved", (_, command, wanted) => {
    const selection = moveSelection(selectPlace(at(1, 1)), command, scene);
    expect(selection && selectedArea(selection, [])).toEqual(wanted);
    expect(selection?.active).toEqual(at(1, 1));
  });

  it("leaves other commands to others", () => {
    expect(moveSelection(selectPlace(at(0, 0)), { kind: "clear" }, scene)).toBeUndefined();
  });
});
