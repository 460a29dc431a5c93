import { isCellError } from "../../domain/cell-value";
import type { Cell, CellStyle } from "../../spreadsheet/workbook";
import { formatFont } from "./cell-look";
import type { GridScene } from "./grid-scene";
import type { LookSheet } from "./look-sheet";
import type { Place } from "./selection";
import { mergeAt } from "./selection";
import { bandOf } from "./table-banding";

/** How far a long text is drawn over empty cells beside it. */
const MOST_CELLS_OVERFLOWED = 12;
const PADDING = 8;

/** Draws cells: text, look, marks and alignment; not where they lie. */
export class CellPainter {
  private readonly pen = document.createElement("canvas").getContext("2d");
  private readonly widths = new Map<string, number>();

  constructor(private readonly looks: LookSheet) {}

  /** Draws one cell into its element. */
  paint(into: HTMLElement, scene: GridScene, place: Place): void {
    const cell = scene.cellAt(place);
    const index = scene.styleAt(place);
    const style = scene.model.styles[index] ?? { numberFormat: "General" };
    const table = scene.tableAt(place);
    const shown = scene.model.shownText(scene.sheet, place);
    const band = table === undefined ? {} : bandOf(table, place, this.looks.page.paper);
    into.className = `grid-cell ${this.looks.classOf(index, style, band, scene.sheet.showGridLines)}`;
    const align = alignment(style, cell);
    into.classList.toggle("to-right", align === "right");
    into.classList.toggle("to-center", align === "center");
    into.classList.toggle("is-merged", mergeAt(place, scene.merges) !== undefined);
    into.classList.toggle("is-wrapped", style.wrap === true);
    into.classList.toggle(
      "has-comment",
      scene.sheet.comments.some((note) => note.row === place.row && note.column === place.column),
    );
    into.classList.toggle("is-stale", cell?.notRecalculated === true);
    into.classList.toggle("is-error", isCellError(cell?.value));
    const text = textElement(into);
    const room = scene.sizeOf(place).width - PADDING;
    const width = shown === "" ? 0 : this.measure(shown, style);
    const isNumber = typeof cell?.value === "number";
    const isClipped = isNumber && width > room + 2;
    setText(text, isClipped ? "#".repeat(Math.max(1, Math.floor(room / 8))) : shown);
    if (isClipped) into.dataset["value"] = shown;
    else delete into.dataset["value"];
    if (into.tabIndex !== 0) hearCell(into, undefined);
    const spare =
      !isNumber && style.wrap !== true && width > room && align === "left" ? emptyBeside(scene, place) : 0;
    into.classList.toggle("overflows", spare > 0);
    text.style.maxWidth = spare > 0 ? `${String(Math.min(width + 4, room + spare))}px` : "";
  }

  private measure(text: string, style: CellStyle): number {
    if (this.pen === null) return 0;
    const key = `${formatFont(style)}|${text}`;
    const known = this.widths.get(key);
    if (known !== undefined) return known;
    if (this.widths.size > 20_000) this.widths.clear();
    this.pen.font = formatFont(style);
    const longest = text.includes("\n")
      ? Math.max(...text.split("\n").map((line) => this.pen?.measureText(line).width ?? 0))
      : this.pen.measureText(text.slice(0, 400)).width;
    this.widths.set(key, longest);
    return longest;
  }
}

/**
 * Adds words that are heard and not seen to what a cell shows: for a number that does not fit the number itself, for
 * the active cell the rest of its name. Words in the cell are heard by every screen reader, a label is not.
 *
 * @param name - the cell's whole name, which begins with what it shows; undefined for a cell without the focus
 */
export function hearCell(cell: HTMLElement, name: string | undefined): void {
  const shown = cell.querySelector(".grid-text");
  const value = cell.dataset["value"];
  const isHidden = value !== undefined;
  const visible = isHidden ? "" : (shown?.textContent ?? "");
  const rest =
    name === undefined ? (value ?? "") : name.startsWith(visible) ? name.slice(visible.length) : name;
  if (isHidden) shown?.setAttribute("aria-hidden", "true");
  else shown?.removeAttribute("aria-hidden");
  const known = cell.querySelector(".heard");
  if (rest === "") known?.remove();
  else if (known !== null) setText(known, rest);
  else {
    const words = document.createElement("span");
    words.className = "heard";
    words.textContent = rest;
    cell.append(words);
  }
}

/** The same text put in again would be told to screen readers as a change. */
function setText(into: Element, text: string): void {
  if (into.textContent !== text) into.textContent = text;
}

function textElement(cell: HTMLElement): HTMLElement {
  const first = cell.firstElementChild;
  if (first instanceof HTMLElement) return first;
  const text = document.createElement("span");
  text.className = "grid-text";
  cell.append(text);
  return text;
}

function alignment(style: CellStyle, cell: Cell | undefined): "left" | "center" | "right" {
  if (style.horizontal === "center" || style.horizontal === "right" || style.horizontal === "left")
    return style.horizontal;
  if (typeof cell?.value === "number") return "right";
  return typeof cell?.value === "boolean" || isCellError(cell?.value) ? "center" : "left";
}

/** Width of the empty cells to the right that a long text may be drawn over, CSS pixels. */
function emptyBeside(scene: GridScene, { row, column }: Place): number {
  if (mergeAt({ row, column }, scene.merges) !== undefined) return 0;
  let width = 0;
  for (let at = column + 1; at <= column + MOST_CELLS_OVERFLOWED && at < scene.columns.count; at += 1) {
    if (scene.isFilled(row, at) || mergeAt({ row, column: at }, scene.merges) !== undefined) break;
    width += scene.columns.sizeOf(at);
  }
  return width;
}
