import type { Area } from "../../domain/area";
import type { PlacedObject } from "../../spreadsheet/workbook";
import type { WorkbookPackage } from "./workbook-package";
import { childOf, descendants, parseXml, type XmlElement } from "./xml-source";

/** English metric units in a column and a row of usual size: 64 and 20 pixels of 9,525 each. */
const COLUMN_EMU = 64 * 9525;
const ROW_EMU = 20 * 9525;

/** The charts, pictures and shapes that lie on a sheet, with the cells they cover. */
export const readDrawings = (parts: WorkbookPackage, sheetPart: string): PlacedObject[] =>
  parts
    .relationships(sheetPart)
    .filter((one) => one.type === "drawing" && parts.has(one.target))
    .flatMap((one) => readDrawing(parts, one.target));

const readDrawing = (parts: WorkbookPackage, part: string): PlacedObject[] => {
  const charts = new Map(parts.relationships(part).map((one) => [one.id, one.target]));
  return anchorsOf(parts.document(part).root).flatMap((anchor): PlacedObject[] => {
    const area = anchorArea(anchor);
    const content = contentOf(anchor);
    if (!area || !content) return [];
    if (content.name === "xdr:graphicFrame") {
      const chart = [...descendants(content)].find(
        (one) => one.name === "c:chart" || one.name === "cx:chart",
      );
      const target = charts.get(chart?.attributes["r:id"] ?? "");
      const title =
        (target !== undefined && parts.has(target) ? chartTitle(parts.text(target)) : undefined) ??
        nameOf(content);
      return [{ kind: chart ? "chart" : "shape", ...(title !== undefined && { title }), area }];
    }
    const title = nameOf(content);
    return [
      { kind: content.name === "xdr:pic" ? "picture" : "shape", ...(title !== undefined && { title }), area },
    ];
  });
};

/** Anchors of a drawing; of alternatives the first choice. */
const anchorsOf = (root: XmlElement): XmlElement[] =>
  root.children.flatMap((child) => {
    if (child.name !== "mc:AlternateContent") return child.name.endsWith("Anchor") ? [child] : [];
    return childOf(child, "mc:Choice")?.children.filter((one) => one.name.endsWith("Anchor")) ?? [];
  });

const contentOf = (anchor: XmlElement): XmlElement | undefined => {
  const choice = childOf(childOf(anchor, "mc:AlternateContent"), "mc:Choice");
  return [...anchor.children, ...(choice?.children ?? [])].find((child) =>
    /^xdr:(graphicFrame|pic|sp|cxnSp|grpSp|contentPart)$/.test(child.name),
  );
};

/** What someone wrote for those who do not see it comes first, then the name. */
const nameOf = (content: XmlElement): string | undefined => {
  const properties = [...descendants(content)].find((one) => one.name === "xdr:cNvPr")?.attributes;
  return properties?.["descr"] || properties?.["title"] || properties?.["name"];
};

const anchorArea = (anchor: XmlElement): Area | undefined => {
  const from = corner(childOf(anchor, "xdr:from"));
  const to = corner(childOf(anchor, "xdr:to"));
  if (from && to)
    return {
      top: from.row,
      left: from.column,
      bottom: Math.max(from.row, to.row),
      right: Math.max(from.column, to.column),
    };
  const position = childOf(anchor, "xdr:pos")?.attributes;
  const start =
    from ?? (position && { row: steps(position["y"], ROW_EMU), column: steps(position["x"], COLUMN_EMU) });
  const extent = childOf(anchor, "xdr:ext")?.attributes;
  return (
    start && {
      top: start.row,
      left: start.column,
      bottom: start.row + steps(extent?.["cy"], ROW_EMU),
      right: start.column + steps(extent?.["cx"], COLUMN_EMU),
    }
  );
};

const steps = (emu: string | undefined, size: number): number =>
  Math.max(0, Math.floor(Number(emu ?? 0) / size)) || 0;

const corner = (element: XmlElement | undefined): { row: number; column: number } | undefined => {
  if (!element) return undefined;
  const row = Number(childOf(element, "xdr:row")?.text);
  const column = Number(childOf(element, "xdr:col")?.text);
  return row >= 0 && column >= 0 ? { row, column } : undefined;
};

/** The title of a chart part: its own words, or those that it takes from a cell. */
const chartTitle = (text: string): string | undefined => {
  const { root } = parseXml(text);
  const chart = childOf(root, "c:chart") ?? childOf(root, "cx:chart");
  const title = childOf(chart, "c:title") ?? childOf(chart, "cx:title");
  if (!title) return undefined;
  const wanted = new Set(["a:t", "c:v", "cx:v"]);
  const paragraphs = [...descendants(title)].filter((one) => one.name === "a:p");
  const words = (paragraphs.length > 0 ? paragraphs : [title]).map((paragraph) =>
    [...descendants(paragraph)]
      .filter((one) => wanted.has(one.name))
      .map((one) => one.text)
      .join(""),
  );
  return words.join(" ").trim() || undefined;
};
