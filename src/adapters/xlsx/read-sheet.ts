import type { Area } from "../../domain/area";
import { parseArea } from "../../spreadsheet/address";
import type { Cell, Table, Validation } from "../../spreadsheet/workbook";
import { parseFileText } from "./cell-text";
import { CellReader, type CellContext } from "./read-cells";
import { parseAreas } from "./cell-places";
import { isTrue, scanXml, type XmlAttributes } from "./xml-source";

/** What the part of a worksheet itself says. */
export interface SheetPart {
  readonly cells: ReadonlyMap<number, Cell>;
  readonly merges: readonly Area[];
  readonly validations: readonly Validation[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly columnWidths: ReadonlyMap<number, number>;
  readonly columnStyles: ReadonlyMap<number, number>;
  readonly defaultColumnWidth: number;
  readonly rowHeights: ReadonlyMap<number, number>;
  readonly defaultRowHeight: number;
  readonly showGridLines: boolean;
  readonly isProtected: boolean;
}

/** Eight digits and the five pixels of padding of the usual 11-point font, in characters of it (18.3.1.81). */
const USUAL_WIDTH = 8.43;
const USUAL_HEIGHT = 15;

type ValidationDraft = { attributes: XmlAttributes; areas: Area[]; formula1?: string; formula2?: string };

/**
 * Reads a worksheet part in one pass.
 *
 * @param text - the part
 * @param context - strings, styles and spelling of its workbook
 * @param tables - that lie on the sheet
 */
export const readSheetPart = (text: string, context: CellContext, tables: readonly Table[]): SheetPart => {
  const cells = new CellReader(context, tables);
  const merges: Area[] = [];
  const drafts: ValidationDraft[] = [];
  const columnWidths = new Map<number, number>();
  const columnStyles = new Map<number, number>();
  const rowHeights = new Map<number, number>();
  let frozen = { rows: 0, columns: 0 };
  let defaults = { width: USUAL_WIDTH, height: USUAL_HEIGHT };
  let showGridLines = true;
  let isProtected = false;
  let views = 0;
  let collecting = false;
  let content = "";
  let phonetic = 0;
  let inCell = false;
  /** `formula1` or `formula2` of a validation that keeps its formula in an element of its own. */
  let validationFormula: "formula1" | "formula2" = "formula1";

  const openOther = (name: string, attributes: XmlAttributes): void => {
    switch (name) {
      case "sheetView":
        views += 1;
        if (views === 1) showGridLines = isTrue(attributes["showGridLines"], true);
        break;
      case "pane":
        if (views === 1 && attributes["state"]?.startsWith("frozen")) {
          frozen = {
            rows: Math.trunc(Number(attributes["ySplit"] ?? 0)),
            columns: Math.trunc(Number(attributes["xSplit"] ?? 0)),
          };
        }
        break;
      case "sheetFormatPr":
        defaults = readDefaults(attributes);
        break;
      case "col":
        readColumns(attributes, columnWidths, columnStyles);
        break;
      case "sheetProtection":
        isProtected = isTrue(attributes["sheet"]);
        break;
      case "mergeCell": {
        const area = parseArea(attributes["ref"] ?? "");
        if (area) merges.push(area);
        break;
      }
      case "dataValidation":
      case "x14:dataValidation":
        drafts.push({ attributes, areas: parseAreas(attributes["sqref"] ?? "") });
        break;
      case "formula1":
      case "formula2":
      case "x14:formula1":
      case "x14:formula2":
        validationFormula = name.endsWith("1") ? "formula1" : "formula2";
        collecting = !name.startsWith("x14:");
        content = "";
        break;
      case "xm:f":
      case "xm:sqref":
        collecting = true;
        content = "";
        break;
    }
  };

  const closeOther = (name: string): void => {
    if (!collecting) return;
    const draft = drafts.at(-1);
    if (name === "formula1" || name === "formula2" || (name === "xm:f" && insideValidation)) {
      if (draft) draft[validationFormula] = context.spelling.toTyped(content);
    } else if (name === "xm:sqref" && insideValidation && draft) draft.areas = parseAreas(content);
    collecting = false;
  };
  let insideValidation = false;

  scanXml(text, {
    open(name, attributes) {
      switch (name) {
        case "c":
          inCell = true;
          cells.openCell(attributes);
          break;
        case "v":
          collecting = inCell;
          content = "";
          break;
        case "f":
          if (inCell) cells.openFormula(attributes);
          collecting = inCell;
          content = "";
          break;
        case "t":
          collecting = inCell && phonetic === 0;
          content = "";
          break;
        case "rPh":
          phonetic += 1;
          break;
        case "row": {
          const row = cells.openRow(attributes);
          if (isTrue(attributes["hidden"])) rowHeights.set(row, 0);
          else if (attributes["ht"] !== undefined) rowHeights.set(row, Number(attributes["ht"]));
          break;
        }
        default:
          if (name === "x14:dataValidation") insideValidation = true;
          openOther(name, attributes);
      }
    },
    text(piece) {
      if (collecting) content += piece;
    },
    close(name) {
      switch (name) {
        case "c":
          cells.closeCell();
          inCell = false;
          break;
        case "v":
          if (collecting) cells.addValue(content);
          collecting = false;
          break;
        case "f":
          if (collecting) cells.closeFormula(content);
          collecting = false;
          break;
        case "t":
          if (collecting) cells.addValue(parseFileText(content));
          collecting = false;
          break;
        case "rPh":
          phonetic -= 1;
          break;
        case "row":
          break;
        default:
          closeOther(name);
          if (name === "x14:dataValidation") insideValidation = false;
      }
    },
  });
  return {
    cells: cells.finish(),
    merges,
    validations: drafts.map(finishValidation),
    frozen,
    columnWidths,
    columnStyles,
    defaultColumnWidth: defaults.width,
    rowHeights,
    defaultRowHeight: defaults.height,
    showGridLines,
    isProtected,
  };
};

const readDefaults = (attributes: XmlAttributes): { width: number; height: number } => {
  const { defaultColWidth, baseColWidth, defaultRowHeight, zeroHeight } = attributes;
  const width =
    defaultColWidth !== undefined
      ? Number(defaultColWidth)
      : baseColWidth !== undefined
        ? Number(baseColWidth) + 0.43
        : USUAL_WIDTH;
  const height = isTrue(zeroHeight) ? 0 : Number(defaultRowHeight ?? USUAL_HEIGHT);
  return { width: width > 0 ? width : USUAL_WIDTH, height: height >= 0 ? height : USUAL_HEIGHT };
};

const readColumns = (
  attributes: XmlAttributes,
  widths: Map<number, number>,
  styles: Map<number, number>,
): void => {
  const first = Number(attributes["min"]) - 1;
  const last = Math.min(Number(attributes["max"]) - 1, 16_383);
  const width = isTrue(attributes["hidden"])
    ? 0
    : attributes["width"] === undefined
      ? undefined
      : Number(attributes["width"]);
  const style = Number(attributes["style"] ?? 0);
  for (let column = first; column >= 0 && column <= last; column++) {
    if (width !== undefined) widths.set(column, width);
    if (style > 0) styles.set(column, style);
  }
};

const finishValidation = ({ attributes, areas, formula1, formula2 }: ValidationDraft): Validation => ({
  areas,
  type: attributes["type"] ?? "none",
  allowBlank: isTrue(attributes["allowBlank"]),
  ...(isTrue(attributes["showErrorMessage"]) && (attributes["errorStyle"] ?? "stop") === "stop"
    ? { refuses: true }
    : {}),
  ...(attributes["operator"] !== undefined && { operator: attributes["operator"] }),
  ...(formula1 !== undefined && { formula1 }),
  ...(formula2 !== undefined && { formula2 }),
  ...(attributes["error"] !== undefined && { errorMessage: parseFileText(attributes["error"]) }),
  ...(attributes["prompt"] !== undefined && { promptMessage: parseFileText(attributes["prompt"]) }),
});
