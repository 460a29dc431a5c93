import type { Area } from "../../domain/area";
import {
  formatArea,
  MAX_COLUMNS,
  MAX_ROWS,
  parseArea,
  parseCell,
  formatCell,
} from "../../spreadsheet/address";
import { parseAreas } from "./cell-places";
import type { EditPlan } from "./edit-plan";
import { childOf, descendants, type XmlElement } from "./xml-source";
import type { XmlPatch } from "./xml-patch";

/** Containers that may not be empty, and whether they count their children. */
const CONTAINERS: ReadonlyMap<string, boolean> = new Map([
  ["mergeCells", true],
  ["dataValidations", true],
  ["hyperlinks", false],
  ["rowBreaks", true],
  ["protectedRanges", false],
  ["ignoredErrors", false],
  ["cellWatches", false],
  ["x14:dataValidations", true],
  ["x14:conditionalFormattings", false],
  ["x14:sparklines", false],
  ["x14:protectedRanges", false],
  ["x14:ignoredErrors", false],
]);

/** Attributes that hold one area, by element; the element goes where its area is gone. */
const AREA_ATTRIBUTES: ReadonlyMap<string, string> = new Map([
  ["mergeCell", "ref"],
  ["hyperlink", "ref"],
  ["autoFilter", "ref"],
  ["sortState", "ref"],
  ["sortCondition", "ref"],
  ["conditionalFormatting", "sqref"],
  ["dataValidation", "sqref"],
  ["protectedRange", "sqref"],
  ["ignoredError", "sqref"],
  ["cellWatch", "r"],
  ["inputCells", "r"],
]);

/** Everything of a worksheet part around its cells that names rows or cells: moved, grown or taken out. */
export class SheetShellPatch {
  private readonly removed = new Set<XmlElement>();
  private readonly parents = new Map<XmlElement, XmlElement>();

  /**
   * @param patch - over the part without the inside of its sheetData
   * @param frozenRows - rows that are frozen after all edits
   */
  constructor(
    private readonly patch: XmlPatch,
    private readonly sheet: string,
    private readonly plan: EditPlan,
    private readonly frozenRows: number,
  ) {
    for (const element of descendants(patch.root)) {
      for (const child of element.children) this.parents.set(child, element);
    }
  }

  apply(): void {
    if (this.plan.isEmpty) return;
    this.move(this.patch.root);
    this.tidyContainers(this.patch.root);
  }

  private move(element: XmlElement): void {
    if (element.name === "sheetData") return;
    const attribute = AREA_ATTRIBUTES.get(element.name);
    if (attribute !== undefined && element.attributes[attribute] !== undefined) {
      if (!this.moveAreas(element, attribute)) return;
    }
    const list = childOf(element, "xm:sqref");
    if (list && this.movedAreas(list.text).length === 0) {
      this.remove(element);
      return;
    }
    this.moveOther(element);
    for (const child of element.children) this.move(child);
  }

  /** False where the element is gone. */
  private moveAreas(element: XmlElement, attribute: string): boolean {
    const moved = this.movedAreas(element.attributes[attribute] ?? "");
    const pointless =
      element.name === "mergeCell" &&
      moved.every((area) => area.top === area.bottom && area.left === area.right);
    if (moved.length === 0 || pointless) {
      this.remove(element);
      return false;
    }
    this.setAreas(element, attribute, moved);
    return true;
  }

  private setAreas(element: XmlElement, attribute: string, areas: readonly Area[]): void {
    const before = element.attributes[attribute] ?? "";
    const text = areas.map(formatPlace).join(" ");
    // The file may write a single cell as A1:A1 or with dollars: only a place that moved is written anew.
    if (parseAreas(before).map(formatPlace).join(" ") !== text)
      this.patch.setAttribute(element, attribute, text);
  }

  private movedAreas(list: string): Area[] {
    return parseAreas(list).flatMap((area) => this.plan.area(this.sheet, area) ?? []);
  }

  private moveOther(element: XmlElement): void {
    const { attributes } = element;
    switch (element.name) {
      case "pane":
        this.movePane(element);
        break;
      case "sheetView":
      case "customSheetView":
        this.moveCell(element, "topLeftCell");
        break;
      case "selection":
        this.moveCell(element, "activeCell");
        if (attributes["sqref"] !== undefined) {
          const moved = this.movedAreas(attributes["sqref"]);
          if (moved.length > 0) this.setAreas(element, "sqref", moved);
          else {
            this.patch.setAttribute(element, "sqref", undefined);
            this.patch.setAttribute(element, "activeCell", undefined);
          }
        }
        break;
      case "brk":
        if (this.parents.get(element)?.name === "rowBreaks") this.moveBreak(element);
        break;
      case "hyperlink":
        this.moveFormulaAttribute(element, "location");
        break;
      case "cfvo":
      case "x14:cfvo":
        if (attributes["type"] === "formula") this.moveFormulaAttribute(element, "val");
        break;
      case "controlPr":
        for (const name of ["linkedCell", "listFillRange"]) this.moveFormulaAttribute(element, name);
        break;
      case "formula":
      case "formula1":
      case "formula2":
      case "xm:f":
        this.patch.setText(
          element,
          this.plan.formulaOfAreas(element.text, this.sheet, this.areasAround(element)),
        );
        break;
      case "xm:sqref":
        this.moveList(element);
        break;
      case "anchor":
        moveAnchor(
          this.patch,
          element,
          this.plan,
          this.sheet,
          attributes["moveWithCells"] === "1",
          attributes["sizeWithCells"] === "1",
        );
        break;
    }
  }

  private moveList(element: XmlElement): void {
    const moved = this.movedAreas(element.text).map(formatPlace).join(" ");
    if (parseAreas(element.text).map(formatPlace).join(" ") !== moved) this.patch.setText(element, moved);
  }

  /** The areas that a formula of a rule or a validation is meant for. A sparkline's is meant for itself. */
  private areasAround(element: XmlElement): Area[] {
    for (let at = this.parents.get(element); at; at = this.parents.get(at)) {
      if (at.name === "x14:sparkline") return [];
      if (at.attributes["sqref"] !== undefined) return parseAreas(at.attributes["sqref"]);
      const list = childOf(at, "xm:sqref");
      if (list) return parseAreas(list.text);
    }
    return [];
  }

  private moveCell(element: XmlElement, attribute: string): void {
    const cell = parseCell(element.attributes[attribute] ?? "");
    if (!cell) return;
    let row = cell.row;
    let now = this.plan.row(this.sheet, row);
    while (now === undefined && row > 0) now = this.plan.row(this.sheet, --row);
    if (now !== cell.row) this.patch.setAttribute(element, attribute, formatCell(now ?? 0, cell.column));
  }

  private movePane(pane: XmlElement): void {
    this.moveCell(pane, "topLeftCell");
    const { state, ySplit, xSplit } = pane.attributes;
    if (!state?.startsWith("frozen") || ySplit === undefined || Number(ySplit) === this.frozenRows) return;
    if (this.frozenRows > 0) {
      this.patch.setAttribute(pane, "ySplit", String(this.frozenRows));
      return;
    }
    for (const sibling of this.parents.get(pane)?.children ?? []) {
      if (sibling.name === "selection" && sibling.attributes["pane"] !== undefined && xSplit === undefined)
        this.remove(sibling);
    }
    if (xSplit === undefined) this.remove(pane);
    else this.patch.setAttribute(pane, "ySplit", undefined);
  }

  /** `id` is the row above the break, counted from 1: the row below it, counted from 0. */
  private moveBreak(element: XmlElement): void {
    const id = Number(element.attributes["id"]);
    const now = this.plan.row(this.sheet, id);
    if (now === undefined || now === 0) this.remove(element);
    else if (now !== id) this.patch.setAttribute(element, "id", String(now));
  }

  private moveFormulaAttribute(element: XmlElement, name: string): void {
    const before = element.attributes[name];
    if (before !== undefined) this.patch.setAttribute(element, name, this.plan.formula(before, this.sheet));
  }

  private remove(element: XmlElement): void {
    this.removed.add(element);
  }

  /** Takes out what is gone, and with it a container that would be empty; counts what is left. */
  private tidyContainers(element: XmlElement): void {
    if (this.removed.has(element)) {
      this.patch.remove(element);
      return;
    }
    const counts = CONTAINERS.get(element.name);
    const left = element.children.filter((child) => !this.removed.has(child)).length;
    const gone = element.children.length - left;
    if (counts !== undefined && gone > 0 && left === 0) {
      this.patch.remove(element);
      return;
    }
    if (counts && gone > 0 && element.attributes["count"] !== undefined)
      this.patch.setAttribute(element, "count", String(left));
    if (element.name === "rowBreaks" && gone > 0)
      this.patch.setAttribute(element, "manualBreakCount", undefined);
    for (const child of element.children) this.tidyContainers(child);
  }
}

/** An area as a file writes it; whole rows and columns stay whole. */
const formatPlace = (area: Area): string => {
  if (area.left === 0 && area.right === MAX_COLUMNS - 1) return `${area.top + 1}:${area.bottom + 1}`;
  if (area.top === 0 && area.bottom === MAX_ROWS - 1) {
    const [from = "", to = from] = formatArea({ ...area, bottom: 0 }).split(":");
    return `${from.slice(0, -1)}:${to.slice(0, -1)}`;
  }
  return formatArea(area);
};

/**
 * Moves the two corners of an object that lies on a sheet with the rows under it.
 *
 * @param anchor - holds `from` and `to` with their rows, with any prefix
 * @param moves - whether it follows its cells
 * @param grows - whether its lower edge follows its own row, so that it grows with rows put in under it
 */
export const moveAnchor = (
  patch: XmlPatch,
  anchor: XmlElement,
  plan: EditPlan,
  sheet: string,
  moves: boolean,
  grows: boolean,
): void => {
  const corner = (name: string): XmlElement | undefined =>
    childOf(
      anchor.children.find((child) => child.name === name || child.name === `xdr:${name}`),
      "xdr:row",
    );
  const from = corner("from");
  const to = corner("to");
  if (!moves || !from) return;
  const fromRow = Number(from.text);
  const newFrom = rowAfterEdits(plan, sheet, fromRow);
  patch.setText(from, String(newFrom));
  if (!to) return;
  const toRow = Number(to.text);
  patch.setText(
    to,
    String(grows ? Math.max(newFrom, rowAfterEdits(plan, sheet, toRow)) : toRow + newFrom - fromRow),
  );
};

/** Where a row stands now; for a deleted one the first that is left below it. */
export const rowAfterEdits = (plan: EditPlan, sheet: string, row: number): number => {
  for (let at = row; at < Math.min(row + 10_000, MAX_ROWS); at++) {
    const now = plan.row(sheet, at);
    if (now !== undefined) return now;
  }
  return row;
};

/** The used area that a sheet notes for itself, with these cells added. */
export const growDimension = (
  patch: XmlPatch,
  plan: EditPlan,
  sheet: string,
  cells: Area | undefined,
): void => {
  const element = childOf(patch.root, "dimension");
  const before = parseArea(element?.attributes["ref"] ?? "");
  if (!element || !before) return;
  const moved = plan.movesRows(sheet)
    ? (plan.area(sheet, before) ?? { top: 0, left: 0, bottom: 0, right: 0 })
    : before;
  const now = cells
    ? {
        top: Math.min(moved.top, cells.top),
        left: Math.min(moved.left, cells.left),
        bottom: Math.max(moved.bottom, cells.bottom),
        right: Math.max(moved.right, cells.right),
      }
    : moved;
  if (formatArea(before) !== formatArea(now)) patch.setAttribute(element, "ref", formatArea(now));
};
