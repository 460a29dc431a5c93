import type { Direction } from "./selection";

/** What a key press asks of the grid. */
export type GridCommand =
  | { readonly kind: "step" | "jump"; readonly direction: Direction; readonly extend: boolean }
  | { readonly kind: "page"; readonly down: boolean; readonly extend: boolean }
  | { readonly kind: "row-start" | "sheet-start" | "sheet-end"; readonly extend: boolean }
  | { readonly kind: "row-end"; readonly extend: boolean }
  | { readonly kind: "advance"; readonly along: "rows" | "columns"; readonly step: 1 | -1 }
  | { readonly kind: "select-rows" | "select-columns" | "select-all" | "one-cell" }
  | { readonly kind: "edit" }
  | { readonly kind: "type"; readonly text: string }
  | {
      readonly kind:
        "choose" | "clear" | "fill-down" | "undo" | "redo" | "find" | "find-next" | "find-previous";
    }
  | { readonly kind: "go-to" | "insert-rows" | "delete-rows" | "menu" | "next-sheet" | "previous-sheet" }
  | { readonly kind: "read-note" };

/** The part of a KeyboardEvent that decides. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly isComposing: boolean;
}

const DIRECTIONS: Readonly<Record<string, Direction>> = {
  ArrowUp: "up",
  ArrowDown: "down",
  ArrowLeft: "left",
  ArrowRight: "right",
};

/** Keys with Ctrl (Command on a Mac). Ctrl with + and − stay with the browser: they enlarge the page. */
const WITH_CONTROL: Readonly<Record<string, GridCommand>> = {
  a: { kind: "select-all" },
  d: { kind: "fill-down" },
  f: { kind: "find" },
  g: { kind: "go-to" },
  i: { kind: "insert-rows" },
  y: { kind: "redo" },
  z: { kind: "undo" },
  Delete: { kind: "delete-rows" },
  " ": { kind: "select-columns" },
  PageDown: { kind: "next-sheet" },
  PageUp: { kind: "previous-sheet" },
};

/** The command of a key pressed while a cell, not its editor, has the focus; undefined leaves it to the browser. */
export function commandOf(press: KeyPress): GridCommand | undefined {
  if (press.isComposing) return undefined;
  const control = press.ctrlKey || press.metaKey;
  const extend = press.shiftKey;
  const direction = DIRECTIONS[press.key];
  if (press.altKey) return withAlt(press, control);
  if (direction !== undefined) return { kind: control ? "jump" : "step", direction, extend };
  if (control) {
    if (press.key === "Home") return { kind: "sheet-start", extend };
    if (press.key === "End") return { kind: "sheet-end", extend };
    if (press.shiftKey && press.key.toLowerCase() === "z") return { kind: "redo" };
    return press.shiftKey
      ? undefined
      : WITH_CONTROL[press.key.length === 1 ? press.key.toLowerCase() : press.key];
  }
  return withoutControl(press, extend);
}

/** Alt with a key: where a browser keeps Ctrl+PageDown for its own tabs, Alt+PageDown changes the sheet. */
function withAlt(press: KeyPress, control: boolean): GridCommand | undefined {
  if (press.key === "ArrowDown" && !control) return { kind: "choose" };
  if (press.key === "PageDown") return { kind: "next-sheet" };
  if (press.key === "PageUp") return { kind: "previous-sheet" };
  return isTyped(press) && control ? { kind: "type", text: press.key } : undefined;
}

function withoutControl(press: KeyPress, extend: boolean): GridCommand | undefined {
  switch (press.key) {
    case "Home":
      return { kind: "row-start", extend };
    case "End":
      return { kind: "row-end", extend };
    case "PageDown":
      return { kind: "page", down: true, extend };
    case "PageUp":
      return { kind: "page", down: false, extend };
    case "Enter":
      return { kind: "advance", along: "columns", step: extend ? -1 : 1 };
    case "Tab":
      return { kind: "advance", along: "rows", step: extend ? -1 : 1 };
    case "Escape":
      return { kind: "one-cell" };
    case "F2":
      return extend ? { kind: "read-note" } : { kind: "edit" };
    case "F3":
      return { kind: extend ? "find-previous" : "find-next" };
    case "F10":
      return extend ? { kind: "menu" } : undefined;
    case "ContextMenu":
      return { kind: "menu" };
    case "Delete":
      return { kind: "clear" };
    case "Backspace":
      return { kind: "type", text: "" };
    case " ":
      return extend ? { kind: "select-rows" } : { kind: "type", text: " " };
    default:
      return isTyped(press) ? { kind: "type", text: press.key } : undefined;
  }
}

/** One character, as against the name of a key such as `F5`; two code units are one emoji. */
const isTyped = (press: KeyPress): boolean => [...press.key].length === 1;
