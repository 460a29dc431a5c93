import { areaHolds, formatArea } from "../../spreadsheet/address";
import { cellKey, type Table, type Validation, type Worksheet } from "../../spreadsheet/workbook";
import { formatFileText } from "./cell-text";
import type { FormulaSpelling } from "./formula-spelling";
import type { PackageChanges } from "./package-changes";
import type { ShellStep } from "./patch-sheet";
import { childOf } from "./xml-source";
import { escapeAttribute, escapeText } from "./xml-splice";
import type { XmlPatch } from "./xml-patch";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const TABLE_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";

/** The children of a worksheet from `cols` on, in the order that the standard asks for; ECMA-376 part 1, 18.3.1.99. */
const ORDER = [
  ...["cols", "sheetData", "sheetCalcPr", "sheetProtection", "protectedRanges", "scenarios", "autoFilter"],
  ...[
    "sortState",
    "dataConsolidate",
    "customSheetViews",
    "mergeCells",
    "phoneticPr",
    "conditionalFormatting",
  ],
  ...[
    "dataValidations",
    "hyperlinks",
    "printOptions",
    "pageMargins",
    "pageSetup",
    "headerFooter",
    "rowBreaks",
  ],
  ...[
    "colBreaks",
    "customProperties",
    "cellWatches",
    "ignoredErrors",
    "smartTags",
    "drawing",
    "legacyDrawing",
  ],
  ...["legacyDrawingHF", "drawingHF", "picture", "oleObjects", "controls", "webPublishItems", "tableParts"],
  "extLst",
];

/** Puts a child into a worksheet where the standard has it. */
function insertInOrder(patch: XmlPatch, name: string, xml: string): void {
  const later = new Set(ORDER.slice(ORDER.indexOf(name) + 1));
  const next = patch.root.children.find(
    (child) => later.has(child.name) || (child.name === "mc:AlternateContent" && name !== "tableParts"),
  );
  if (next) patch.insertBefore(next, xml);
  else patch.append(patch.root, xml);
}

const formatTable = (
  id: number,
  table: Table,
  headings: readonly string[],
  spelling: FormulaSpelling,
): string => {
  const reference = formatArea(table.area);
  const columns = table.columns.map(({ formula }, place) => {
    // A line break in a heading is written `_x000a_` in an attribute.
    const name = escapeAttribute(formatFileText(headings[place] ?? "").replaceAll("\n", "_x000a_"));
    const open = `<tableColumn id="${place + 1}" name="${name}"`;
    if (formula === undefined) return `${open}/>`;
    const spelled = escapeText(formatFileText(spelling.toFile(formula, table.name)));
    return `${open}><calculatedColumnFormula>${spelled}</calculatedColumnFormula></tableColumn>`;
  });
  const name = escapeAttribute(table.name);
  const style = escapeAttribute(table.style ?? "TableStyleLight1");
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<table xmlns="${MAIN}" id="${id}" name="${name}" displayName="${name}" ref="${reference}" totalsRowShown="0">` +
    `<autoFilter ref="${reference}"/><tableColumns count="${columns.length}">${columns.join("")}</tableColumns>` +
    `<tableStyleInfo name="${style}" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`
  );
};

const formatValidation = (q: string, validation: Validation, spelling: FormulaSpelling): string => {
  const { areas, type, operator, formula1, formula2, allowBlank, refuses, errorMessage } = validation;
  const formula = (name: string, text: string | undefined): string =>
    text === undefined ? "" : `<${q}${name}>${escapeText(spelling.toFile(text, undefined))}</${q}${name}>`;
  const attributes = [
    `type="${type}"`,
    ...(operator === undefined ? [] : [`operator="${operator}"`]),
    ...(allowBlank ? [`allowBlank="1"`] : []),
    ...(refuses === true ? [`showErrorMessage="1"`] : []),
    ...(errorMessage === undefined ? [] : [`error="${escapeAttribute(errorMessage)}"`]),
    `sqref="${areas.map(formatArea).join(" ")}"`,
  ];
  return `<${q}dataValidation ${attributes.join(" ")}>${formula("formula1", formula1)}${formula("formula2", formula2)}</${q}dataValidation>`;
};

function addValidations(
  patch: XmlPatch,
  q: string,
  validations: readonly Validation[],
  spelling: FormulaSpelling,
): void {
  if (validations.length === 0) return;
  const xml = validations.map((one) => formatValidation(q, one, spelling)).join("");
  const list = childOf(patch.root, "dataValidations");
  if (!list) {
    const whole = `<${q}dataValidations count="${validations.length}">${xml}</${q}dataValidations>`;
    insertInOrder(patch, "dataValidations", whole);
    return;
  }
  patch.append(list, xml);
  if (list.attributes["count"] !== undefined)
    patch.setAttribute(list, "count", String(list.children.length + validations.length));
}

function addWidths(patch: XmlPatch, q: string, { columnWidths }: Worksheet): void {
  if (columnWidths.size === 0 || childOf(patch.root, "cols")) return;
  const columns = [...columnWidths]
    .sort(([a], [b]) => a - b)
    .map(
      ([column, width]) =>
        `<${q}col min="${column + 1}" max="${column + 1}" width="${width}" customWidth="1"/>`,
    );
  insertInOrder(patch, "cols", `<${q}cols>${columns.join("")}</${q}cols>`);
}

/** An id that no table of the file or of this save has. */
const freeTableId = (changes: PackageChanges, added: number): number => {
  const ids = changes.parts.entries
    .filter(({ name }) => changes.parts.contentType(name) === TABLE_TYPE)
    .map(({ name }) => Number(changes.parts.document(name).root.attributes["id"]) || 0);
  return Math.max(0, ...ids) + 1 + added;
};

/**
 * Adds a table that was made since the file was opened, as it is now.
 *
 * @param sheetPart - part of its sheet, in the file or new
 * @param added - how many tables this save added before
 * @returns what the sheet's own part needs: the list of its tables, validations, widths of columns
 */
export const addTablePart = (
  changes: PackageChanges,
  sheetPart: string,
  sheet: Worksheet,
  table: Table,
  spelling: FormulaSpelling,
  added: number,
): ShellStep => {
  const headings = table.columns.map(({ name }, place) => {
    const value = sheet.cells.get(cellKey(table.area.top, table.area.left + place))?.value;
    return typeof value === "string" ? value : name;
  });
  const part = changes.freeName((number) => `xl/tables/table${number}.xml`);
  changes.addPart(part, formatTable(freeTableId(changes, added), table, headings, spelling), TABLE_TYPE);
  const id = changes.addRelationship(sheetPart, "table", part);
  const validations = sheet.validations.filter(({ areas }) =>
    areas.every((area) => areaHolds(table.area, area.top, area.left)),
  );
  return (patch, qualifier) => {
    addWidths(patch, qualifier, sheet);
    addValidations(patch, qualifier, validations, spelling);
    const reference = `<${qualifier}tablePart xmlns:r="${OFFICE}" r:id="${id}"/>`;
    insertInOrder(
      patch,
      "tableParts",
      `<${qualifier}tableParts count="1">${reference}</${qualifier}tableParts>`,
    );
  };
};
