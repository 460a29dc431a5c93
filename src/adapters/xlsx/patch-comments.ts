import { formatCell, parseCell } from "../../spreadsheet/address";
import type { EditPlan } from "./edit-plan";
import { rowAfterEdits } from "./patch-sheet-shell";
import { descendants, parseXml } from "./xml-source";
import { XmlPatch } from "./xml-patch";

/** A part of notes or of threads of comments after the edits: they follow their cells, and go with deleted rows. */
export const patchComments = (text: string, sheet: string, plan: EditPlan): string => {
  const patch = new XmlPatch(parseXml(text));
  for (const element of descendants(patch.root)) {
    if (element.name !== "comment" && element.name !== "threadedComment") continue;
    const cell = parseCell(element.attributes["ref"] ?? "");
    if (!cell) continue;
    const row = plan.row(sheet, cell.row);
    if (row === undefined) patch.remove(element);
    else if (row !== cell.row) patch.setAttribute(element, "ref", formatCell(row, cell.column));
  }
  return patch.apply();
};

/**
 * The legacy drawing of notes and form controls after the edits. It is not always well-formed XML, so it is changed
 * by its known lines alone.
 *
 * Source: ECMA-376 part 4, 14.4 (VML, spreadsheet data: Anchor, Row, FmlaLink).
 */
export const patchLegacyDrawing = (text: string, sheet: string, plan: EditPlan): string => {
  const pieces: string[] = [];
  let at = 0;
  for (const { index: start } of text.matchAll(/<v:shape[\s>]/g)) {
    const end = text.indexOf(SHAPE_END, start) + SHAPE_END.length;
    if (start < at || end < SHAPE_END.length) continue;
    const before = text.slice(at, start);
    const shape = patchShape(text.slice(start, end), sheet, plan);
    pieces.push(shape === "" ? before.trimEnd() : before, shape);
    at = end;
  }
  return pieces.join("") + text.slice(at);
};

const SHAPE_END = "</v:shape>";

/** A shape after the edits; `""` for the box of a note whose row is deleted. */
const patchShape = (shape: string, sheet: string, plan: EditPlan): string => {
  const row = /<x:Row>\s*(\d+)\s*<\/x:Row>/.exec(shape);
  const note = /<x:ClientData[^>]*ObjectType\s*=\s*["']Note["']/.test(shape);
  if (note && row && plan.row(sheet, Number(row[1])) === undefined) return "";
  return moveShape(shape, sheet, plan, note && row ? Number(row[1]) : undefined);
};

const moveShape = (shape: string, sheet: string, plan: EditPlan, cellRow: number | undefined): string =>
  shape
    .replace(
      /(<x:Row>\s*)(\d+)(?=\s*<\/x:Row>)/,
      (_, tag: string, row: string) => `${tag}${plan.row(sheet, Number(row)) ?? row}`,
    )
    .replace(/(<x:Anchor>\s*)([\d,\s-]+)(?=<\/x:Anchor>)/, (whole: string, tag: string, places: string) => {
      const numbers = places.split(",").map((number) => Number(number.trim()));
      const [, , top = 0, , , , bottom = 0] = numbers;
      const moves = !/<x:MoveWithCells>\s*(f|False)/i.test(shape);
      // A note's box hangs on its cell whatever its own rows are.
      const by =
        cellRow !== undefined
          ? rowAfterEdits(plan, sheet, cellRow) - cellRow
          : moves
            ? rowAfterEdits(plan, sheet, top) - top
            : 0;
      if (by === 0) return whole;
      numbers[2] = Math.max(0, top + by);
      numbers[6] = Math.max(0, bottom + by);
      return `${tag}${numbers.join(", ")}${/\s*$/.exec(places)?.[0] ?? ""}`;
    })
    .replace(
      /(<x:(Fmla(?:Link|Range|Txbx|Group|Pict))>)([^<]*)(?=<\/x:\2>)/g,
      (_, tag: string, __: string, formula: string) => tag + plan.formula(formula, sheet),
    );
