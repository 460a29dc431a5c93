import { describe, expect, it } from "vitest";
import type { GridCommand } from "../../../src/workbench/grid/key-command";
import { commandOf } from "../../../src/workbench/grid/key-command";

const press = (keys: string): GridCommand | undefined => {
  const parts = keys.split("+");
  const has = (modifier: string): boolean => parts.slice(0, -1).includes(modifier);
  return commandOf({
    key: parts.at(-1) ?? "",
    ctrlKey: has("Ctrl"),
    metaKey: has("Cmd"),
    shiftKey: has("Shift"),
    altKey: has("Alt"),
    isComposing: has("Composing"),
  });
};

describe("commandOf", () => {
  it.each<[string, GridCommand]>([
    ["ArrowDown", { kind: "step", direction: "down", extend: false }],
    ["Shift+ArrowLeft", { kind: "step", direction: "left", extend: true }],
    ["Ctrl+ArrowUp", { kind: "jump", direction: "up", extend: false }],
    ["Ctrl+Shift+ArrowUp", { kind: "jump", direction: "up", extend: true }],
    ["Cmd+z", { kind: "undo" }],
    ["Ctrl+Shift+Z", { kind: "redo" }],
    ["Ctrl+y", { kind: "redo" }],
    ["F2", { kind: "edit" }],
    ["Shift+F2", { kind: "read-note" }],
    ["Alt+ArrowDown", { kind: "choose" }],
    ["Alt+PageDown", { kind: "next-sheet" }],
    ["Ctrl+PageUp", { kind: "previous-sheet" }],
    ["Shift+F10", { kind: "menu" }],
    ["Ctrl+Delete", { kind: "delete-rows" }],
    ["7", { kind: "type", text: "7" }],
    ["Shift+A", { kind: "type", text: "A" }],
    ["=", { kind: "type", text: "=" }],
    ["⠓", { kind: "type", text: "⠓" }],
    ["🐦", { kind: "type", text: "🐦" }],
    ["Ctrl+Alt+@", { kind: "type", text: "@" }],
  ])("%s", (keys, command) => {
    expect(press(keys)).toEqual(command);
  });

  it.each([
    ["enlarging the page", "Ctrl+="],
    ["making the page smaller", "Ctrl+-"],
    ["a new tab", "Ctrl+t"],
    ["copying, which comes as an event of its own", "Ctrl+c"],
    ["reloading", "F5"],
    ["a key of an input method", "Composing+a"],
    ["Shift alone", "Shift"],
  ])("leaves %s to the browser", (_, keys) => {
    expect(press(keys)).toBeUndefined();
  });
});
