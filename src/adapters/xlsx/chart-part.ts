import type { CellValue } from "../../domain/cell-value";
import { parseArea } from "../../spreadsheet/address";
import { cellKey, type NewChart, type Worksheet } from "../../spreadsheet/workbook";
import { escapeAttribute, escapeText } from "./xml-splice";

const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const MAIN = "http://schemas.openxmlformats.org/drawingml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const SHEET_DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";

/** Marks that can be told apart without colour. */
const SYMBOLS = ["circle", "square", "diamond", "triangle", "x", "plus"];
const DARK = ["1F3864", "7F3F00", "3B3B3B", "4B0082", "005A5A", "5C0029"];

/**
 * A chart part of the spreadsheet's own kind: points joined by straight lines over a column of dates or numbers.
 *
 * Source: ECMA-376 part 1, 21.2.2 (DrawingML charts), element order of CT_ScatterChart and CT_ValAx.
 *
 * @param chart - references at their present place
 * @param sheets - to keep the values beside the references
 */
export const formatChart = (chart: NewChart, sheets: readonly Worksheet[]): string => {
  const series = chart.series.map((one, index) => {
    const colour = DARK[index % DARK.length] ?? "000000";
    const line = `<a:ln w="19050"><a:solidFill><a:srgbClr val="${colour}"/></a:solidFill></a:ln>`;
    return (
      `<c:ser><c:idx val="${index}"/><c:order val="${index}"/><c:tx><c:v>${escapeText(one.name)}</c:v></c:tx>` +
      `<c:spPr>${line}</c:spPr><c:marker><c:symbol val="${SYMBOLS[index % SYMBOLS.length] ?? "circle"}"/><c:size val="7"/>` +
      `<c:spPr><a:solidFill><a:srgbClr val="${colour}"/></a:solidFill></c:spPr></c:marker>` +
      `<c:xVal>${reference(chart.x, sheets)}</c:xVal><c:yVal>${reference(one.y, sheets)}</c:yVal><c:smooth val="0"/></c:ser>`
    );
  });
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<c:chartSpace xmlns:c="${CHART}" xmlns:a="${MAIN}" xmlns:r="${OFFICE}">` +
    `<c:roundedCorners val="0"/><c:chart>${title(chart.title)}<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>` +
    `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${series.join("")}<c:axId val="500000001"/><c:axId val="500000002"/></c:scatterChart>` +
    `${axis("500000001", "500000002", "b", chart.xTitle, false)}${axis("500000002", "500000001", "l", chart.yTitle, true)}` +
    `</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>`
  );
};

const title = (text: string): string =>
  text === ""
    ? ""
    : `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:r><a:t>${escapeText(text)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;

const axis = (id: string, crosses: string, position: string, text: string, fromZero: boolean): string =>
  `<c:valAx><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/>${fromZero ? '<c:min val="0"/>' : ""}</c:scaling><c:delete val="0"/><c:axPos val="${position}"/>` +
  `${title(text)}<c:numFmt formatCode="General" sourceLinked="1"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/>` +
  `<c:crossAx val="${crosses}"/><c:crosses val="autoZero"/><c:crossBetween val="midCat"/></c:valAx>`;

const reference = (formula: string, sheets: readonly Worksheet[]): string => {
  const values = valuesOf(formula, sheets);
  const points = values
    .map((value, index) =>
      typeof value === "number" ? `<c:pt idx="${index}"><c:v>${value}</c:v></c:pt>` : "",
    )
    .join("");
  return `<c:numRef><c:f>${escapeText(formula)}</c:f><c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="${values.length}"/>${points}</c:numCache></c:numRef>`;
};

/**
 * The values of a reference to a part of one sheet, in reading order.
 *
 * @param formula - such as `'My sheet'!$A$2:$A$20`
 * @returns none where it names no area of a sheet, or one of more than 100,000 cells
 */
export const valuesOf = (formula: string, sheets: readonly Worksheet[]): CellValue[] => {
  const split = formula.lastIndexOf("!");
  const name = formula
    .slice(0, split)
    .replace(/^'(.*)'$/, "$1")
    .replaceAll("''", "'")
    .toLowerCase();
  const sheet = sheets.find((candidate) => candidate.name.toLowerCase() === name);
  const area = parseArea(formula.slice(split + 1));
  const values: CellValue[] = [];
  if (!sheet || !area || (area.bottom - area.top + 1) * (area.right - area.left + 1) > 100_000) return values;
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++)
      values.push(sheet.cells.get(cellKey(row, column))?.value ?? null);
  }
  return values;
};

/** A drawing part without objects. */
export const EMPTY_DRAWING = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<xdr:wsDr xmlns:xdr="${SHEET_DRAWING}" xmlns:a="${MAIN}"></xdr:wsDr>`;

/**
 * The anchor of a chart in a drawing; it declares its own namespaces, whatever the drawing around it does.
 *
 * @param id - of the object, not yet used in its drawing
 * @param relationship - of the drawing to the chart part
 */
export const formatChartAnchor = (chart: NewChart, id: number, relationship: string): string => {
  const corner = (name: string, row: number, column: number): string =>
    `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  const { top, left, bottom, right } = chart.area;
  const text = escapeAttribute(chart.title || "Chart");
  return (
    `<xdr:twoCellAnchor xmlns:xdr="${SHEET_DRAWING}" xmlns:a="${MAIN}">${corner("from", top, left)}${corner("to", bottom + 1, right + 1)}` +
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${id}" name="Chart ${id}" descr="${text}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>` +
    `<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${CHART}">` +
    `<c:chart xmlns:c="${CHART}" xmlns:r="${OFFICE}" r:id="${relationship}"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`
  );
};
