import type { CellStyle } from "../../spreadsheet/workbook";
import { readableInk } from "./contrast";
import type { BandColors } from "./table-banding";

/** Colours of the page that cells without their own are drawn in. */
export interface Paper {
  readonly paper: string;
  readonly ink: string;
  readonly gridLine: string;
}

/** Braille from the font that the page brings, everything else as the workbook wants or what resembles it. */
const BRAILLE_FONT = "Cellwright Braille";
const PIXELS_PER_POINT = 4 / 3;

/** Widths and patterns of the border styles of ECMA-376 part 1, 18.18.3, as CSS. */
const BORDER_STYLES: Readonly<Record<string, string>> = {
  thin: "1px solid",
  hair: "1px dotted",
  dotted: "1px dotted",
  dashed: "1px dashed",
  dashDot: "1px dashed",
  dashDotDot: "1px dashed",
  medium: "2px solid",
  mediumDashed: "2px dashed",
  mediumDashDot: "2px dashed",
  mediumDashDotDot: "2px dashed",
  slantDashDot: "2px dashed",
  thick: "3px solid",
  double: "3px double",
};

/**
 * How a cell is drawn, as CSS declarations: the workbook's own style over its table's banding. Ink that could not
 * be read on its paper (WCAG 2.2, 1.4.3) is replaced by black or white.
 *
 * @param gridLines - whether the sheet shows them
 */
export function formatLook(
  style: CellStyle,
  band: BandColors,
  page: Paper,
  gridLines: boolean,
): Readonly<Record<string, string>> {
  const fill = style.fill ?? band.fill;
  const paper = fill ?? page.paper;
  const wanted = style.font?.color ?? band.ink ?? (style.fill === undefined ? page.ink : "#000000");
  const edge = fill ?? (gridLines ? page.gridLine : "transparent");
  const look: Record<string, string> = {
    "font-family": fontFamily(style.font?.name),
    "font-size": `${((style.font?.size ?? 11) * PIXELS_PER_POINT).toFixed(2)}px`,
    color: readableInk(wanted, paper),
    "border-right-color": edge,
    "border-bottom-color": edge,
  };
  if (fill !== undefined) Object.assign(look, { "background-color": fill, "--fill": fill });
  if (style.font?.bold === true || band.bold === true) look["font-weight"] = "700";
  if (style.font?.italic === true) look["font-style"] = "italic";
  const lines = [
    ...(style.font?.underline === true ? ["underline"] : []),
    ...(style.font?.strike === true ? ["line-through"] : []),
  ];
  if (lines.length > 0) look["text-decoration"] = lines.join(" ");
  if (style.indent !== undefined && style.indent > 0)
    look["padding-inline"] = `${3 + style.indent * 9}px 3px`;
  look["align-items"] = { top: "flex-start", center: "center", bottom: "flex-end" }[
    style.vertical ?? "bottom"
  ];
  if (style.wrap === true) Object.assign(look, { "white-space": "pre-wrap", "overflow-wrap": "anywhere" });
  if (band.line !== undefined) look["border-top"] = `1px solid ${band.line}`;
  for (const side of ["top", "right", "bottom", "left"] as const) {
    const border = style.borders?.[side];
    const line = BORDER_STYLES[border?.style ?? ""];
    if (line !== undefined) look[`border-${side}`] = `${line} ${readableLine(border?.color, page)}`;
  }
  return look;
}

/** The CSS font shorthand of a style, for measuring text. */
export const formatFont = (style: CellStyle): string =>
  `${style.font?.bold === true ? "700 " : ""}${((style.font?.size ?? 11) * PIXELS_PER_POINT).toFixed(2)}px ${fontFamily(style.font?.name)}`;

/** A black border would vanish on dark paper. */
const readableLine = (color: string | undefined, page: Paper): string =>
  color === undefined || color === "#000000" ? page.ink : color;

function fontFamily(name: string | undefined): string {
  const own = name === undefined ? "" : `"${name.replaceAll(/["\\;{}]/g, "")}", `;
  const generic = /mono|courier|consol/i.test(name ?? "")
    ? "monospace"
    : /times|georgia|cambria|garamond/i.test(name ?? "")
      ? "serif"
      : "sans-serif";
  return `"${BRAILLE_FONT}", ${own}Carlito, ${generic}`;
}
