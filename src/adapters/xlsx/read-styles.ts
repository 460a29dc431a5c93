import type { CellStyle } from "../../spreadsheet/workbook";
import { ColourTable } from "./colours";
import { numberFormatOf } from "./number-formats";
import type { WorkbookPackage } from "./workbook-package";
import { childOf, childrenOf, isTrue, type XmlElement } from "./xml-source";

/**
 * How cells look, one entry for each style number of the file, so that a style of the model and the `s` of a cell
 * are the same number.
 *
 * @param parts - the opened file
 * @param workbook - name of its main part
 * @returns at least the default style
 */
export const readStyles = (parts: WorkbookPackage, workbook: string): CellStyle[] => {
  const part = parts.related(workbook, "styles");
  if (part === undefined) return [{ numberFormat: "General" }];
  const root = parts.document(part).root;
  const theme = parts.related(workbook, "theme");
  const colours = new ColourTable(theme === undefined ? undefined : parts.document(theme).root, root);
  const formats = new Map(
    childrenOf(childOf(root, "numFmts"), "numFmt").map(({ attributes }) => [
      Number(attributes["numFmtId"]),
      attributes["formatCode"] ?? "General",
    ]),
  );
  const fonts = childrenOf(childOf(root, "fonts"), "font").map((font) => readFont(font, colours));
  const fills = childrenOf(childOf(root, "fills"), "fill").map((fill) => readFill(fill, colours));
  const borders = childrenOf(childOf(root, "borders"), "border").map((border) =>
    readBorders(border, colours),
  );
  const styles = childrenOf(childOf(root, "cellXfs"), "xf").map((xf): CellStyle => {
    const index = (name: string): number => Number(xf.attributes[name] ?? 0);
    const font = fonts[index("fontId")];
    const fill = fills[index("fillId")];
    const border = borders[index("borderId")];
    return {
      numberFormat: numberFormatOf(index("numFmtId"), formats),
      ...(font && { font }),
      ...(fill !== undefined && { fill }),
      ...(border && Object.keys(border).length > 0 && { borders: border }),
      ...readAlignment(childOf(xf, "alignment")),
    };
  });
  return styles.length > 0 ? styles : [{ numberFormat: "General" }];
};

const readFont = (font: XmlElement, colours: ColourTable): NonNullable<CellStyle["font"]> => {
  const switchedOn = (name: string): boolean => {
    const element = childOf(font, name);
    return element !== undefined && isTrue(element.attributes["val"], true);
  };
  const name = (childOf(font, "name") ?? childOf(font, "rFont"))?.attributes["val"];
  const size = Number(childOf(font, "sz")?.attributes["val"]);
  const underline = childOf(font, "u");
  const color = colours.resolve(childOf(font, "color"));
  return {
    ...(name !== undefined && { name }),
    ...(size > 0 && { size }),
    ...(switchedOn("b") && { bold: true }),
    ...(switchedOn("i") && { italic: true }),
    ...(underline && underline.attributes["val"] !== "none" && { underline: true }),
    ...(switchedOn("strike") && { strike: true }),
    ...(color !== undefined && { color }),
  };
};

/** A pattern other than solid is shown by its pattern's colour over nothing: as its background. */
const readFill = (fill: XmlElement, colours: ColourTable): string | undefined => {
  const pattern = childOf(fill, "patternFill");
  const type = pattern?.attributes["patternType"] ?? "none";
  if (!pattern || type === "none") {
    const stop = childOf(childOf(fill, "gradientFill"), "stop");
    return colours.resolve(childOf(stop, "color"));
  }
  const background = colours.resolve(childOf(pattern, "bgColor"));
  return type === "solid" ? colours.resolve(childOf(pattern, "fgColor")) : background;
};

const readBorders = (border: XmlElement, colours: ColourTable): NonNullable<CellStyle["borders"]> => {
  const borders: Record<string, { style: string; color?: string }> = {};
  for (const [side, names] of [
    ["top", ["top"]],
    ["right", ["right", "end"]],
    ["bottom", ["bottom"]],
    ["left", ["left", "start"]],
  ] as const) {
    const line = border.children.find((child) => (names as readonly string[]).includes(child.name));
    const style = line?.attributes["style"];
    if (style === undefined || style === "none") continue;
    const color = colours.resolve(childOf(line, "color"));
    borders[side] = { style, ...(color !== undefined && { color }) };
  }
  return borders;
};

const HORIZONTAL: Record<string, CellStyle["horizontal"]> = {
  left: "left",
  center: "center",
  centerContinuous: "center",
  right: "right",
  fill: "fill",
  justify: "justify",
  distributed: "justify",
};
const VERTICAL: Record<string, CellStyle["vertical"]> = {
  top: "top",
  center: "center",
  bottom: "bottom",
  justify: "center",
  distributed: "center",
};

const readAlignment = (alignment: XmlElement | undefined): Partial<CellStyle> => {
  if (!alignment) return {};
  const horizontal = HORIZONTAL[alignment.attributes["horizontal"] ?? ""];
  const vertical = VERTICAL[alignment.attributes["vertical"] ?? ""];
  const indent = Number(alignment.attributes["indent"] ?? 0);
  return {
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(isTrue(alignment.attributes["wrapText"]) && { wrap: true }),
    ...(indent > 0 && { indent }),
  };
};
