import type { Area } from "../../domain/area";
import { isCellError, type CellValue } from "../../domain/cell-value";
import { formatArea, formatCell } from "../../spreadsheet/address";
import { columnOf, rowOf, type Cell } from "../../spreadsheet/workbook";
import { formatFileText } from "./cell-text";
import { formatFileError } from "./file-values";
import type { FormulaSpelling } from "./formula-spelling";
import { escapeAttribute, escapeText, setAttribute } from "./xml-splice";

/** The formula that the file has for a cell, at its present place. */
export interface FileFormula {
  /** In the file's spelling. */
  readonly formula: string;
  /** The `f` element as it may stay. */
  readonly source: string;
  readonly isArray: boolean;
}

/** What writing cells of one sheet needs. */
export interface CellWriting {
  /** The prefix with colon that the part uses for its elements, mostly `""`. */
  readonly qualifier: string;
  readonly spelling: FormulaSpelling;
  /** The number that marks a dynamic array, made where the file has none yet. */
  dynamicMark(): string;
  /** The style number of the file for one of the model. */
  styleNumber(style: number): number;
  /** Whether spreadsheet programs can read a formula; one that they cannot is kept as text. */
  isReadable(formula: string): boolean;
  /** The table that holds a cell. */
  tableAt(row: number, column: number): string | undefined;
}

/**
 * A cell as the file holds it.
 *
 * @param key - its place
 * @param model - what the model has there; undefined leaves a file's cell empty but for its style
 * @param openTag - the tag that the file has for it, whose other attributes stay
 * @param before - the formula that the file has for it; kept as written where the model has the same one
 * @param rest - further elements of the file's cell, kept
 * @returns the element, or `""` where nothing needs to stand
 */
export const writeCell = (
  writing: CellWriting,
  key: number,
  model: Cell | undefined,
  openTag: string | undefined,
  before: FileFormula | undefined,
  rest: string,
): string => {
  const { qualifier } = writing;
  const row = rowOf(key);
  const column = columnOf(key);
  const cell = model && keepReadable(writing, row, column, model, before);
  let tag = (openTag ?? `<${qualifier}c>`).replace(/\s*\/>$/, ">");
  tag = setAttribute(tag, "r", formatCell(row, column));
  if (cell) {
    const style = writing.styleNumber(cell.style);
    const had = Number(/\ss\s*=\s*["'](\d+)["']/.exec(tag)?.[1] ?? 0);
    if (style !== had) tag = setAttribute(tag, "s", style === 0 ? undefined : String(style));
  }
  const formula =
    cell?.formula === undefined ? undefined : formulaElement(writing, row, column, cell, before);
  const content = cell
    ? valueElement(cell.value, formula !== undefined || cell.spilledFrom !== undefined, qualifier)
    : { type: undefined, xml: "" };
  tag = setAttribute(setAttribute(tag, "vm", undefined), "t", content.type);
  if (!formula?.keepsMark) tag = setAttribute(tag, "cm", formula?.mark);
  const inside = `${formula?.xml ?? ""}${content.xml}${rest}`;
  if (inside === "") {
    const hasStyle = /\ss\s*=/.test(tag);
    return hasStyle ? tag.replace(/\s*>$/, "/>") : "";
  }
  return `${tag}${inside}</${qualifier}c>`;
};

/** A formula that would make programs call the file damaged is kept as the text that was typed. */
const keepReadable = (
  writing: CellWriting,
  row: number,
  column: number,
  cell: Cell,
  before: FileFormula | undefined,
): Cell => {
  if (
    cell.formula === undefined ||
    isKept(writing, row, column, cell.formula, before) ||
    writing.isReadable(cell.formula)
  )
    return cell;
  return { value: `=${cell.formula}`, style: cell.style };
};

const isKept = (
  writing: CellWriting,
  row: number,
  column: number,
  formula: string,
  before: FileFormula | undefined,
): boolean =>
  before !== undefined && writing.spelling.toTyped(before.formula, writing.tableAt(row, column)) === formula;

interface FormulaElement {
  readonly xml: string;
  /** Value of `cm`; undefined takes it away. */
  readonly mark?: string;
  readonly keepsMark?: boolean;
}

const formulaElement = (
  writing: CellWriting,
  row: number,
  column: number,
  cell: Cell,
  before: FileFormula | undefined,
): FormulaElement => {
  const { spelling, qualifier } = writing;
  const formula = cell.formula ?? "";
  const own: Area = { top: row, left: column, bottom: row, right: column };
  const spill = cell.spill ?? own;
  const spills = spill.bottom > spill.top || spill.right > spill.left;
  const table = writing.tableAt(row, column);
  if (before && isKept(writing, row, column, formula, before) && (before.isArray || !spills)) {
    return { xml: before.isArray ? withReference(before.source, spill) : before.source, keepsMark: true };
  }
  const text = escapeText(formatFileText(spelling.toFile(formula, table)));
  if (cell.array === "fixed") {
    return { xml: `<${qualifier}f t="array" ref="${formatArea(spill)}">${text}</${qualifier}f>` };
  }
  if (spills || (cell.array === "dynamic" && spelling.isDynamic(formula))) {
    return {
      xml: `<${qualifier}f t="array" ref="${formatArea(spill)}">${text}</${qualifier}f>`,
      mark: writing.dynamicMark(),
    };
  }
  return { xml: `<${qualifier}f>${text}</${qualifier}f>` };
};

/** The `f` element of an array with the area that it fills now. */
export const withReference = (source: string, area: Area): string => {
  const end = source.indexOf(">") + 1;
  return setAttribute(source.slice(0, end), "ref", formatArea(area)) + source.slice(end);
};

/** Results of formulas are `str`; a constant text stands in the cell itself, and can never be taken for a formula. */
const valueElement = (
  value: CellValue,
  isResult: boolean,
  q: string,
): { type: string | undefined; xml: string } => {
  if (value === null) return { type: undefined, xml: "" };
  if (typeof value === "boolean") return { type: "b", xml: `<${q}v>${value ? 1 : 0}</${q}v>` };
  if (isCellError(value))
    return { type: "e", xml: `<${q}v>${escapeAttribute(formatFileError(value.error))}</${q}v>` };
  if (typeof value === "number") {
    return Number.isFinite(value)
      ? { type: undefined, xml: `<${q}v>${value}</${q}v>` }
      : { type: "e", xml: `<${q}v>#NUM!</${q}v>` };
  }
  const text = escapeText(formatFileText(value));
  if (isResult) return { type: "str", xml: `<${q}v>${text}</${q}v>` };
  const space = /^\s|\s$|[\n\t]| {2}/.test(value) ? ' xml:space="preserve"' : "";
  return { type: "inlineStr", xml: `<${q}is><${q}t${space}>${text}</${q}t></${q}is>` };
};
