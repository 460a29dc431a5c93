import type { Table } from "../../spreadsheet/workbook";
import type { Place } from "./selection";
import { holds } from "./selection";

export interface BandColors {
  readonly fill?: string;
  readonly ink?: string;
  readonly bold?: boolean;
  /** Colour of the line above the row, for the totals row. */
  readonly line?: string;
}

/** Black and the six accents of the common workbook theme, ECMA-376 part 1, 20.1.6.2, as new files carry it. */
const HUES = ["#404040", "#4472c4", "#ed7d31", "#a5a5a5", "#ffc000", "#5b9bd5", "#70ad47"];

/**
 * How a table's own style colours one of its cells. The file names only a style, so this is our drawing of it: a
 * strong header for medium and dark styles, a light one otherwise, and every other row tinted.
 *
 * @param paper - colour of the page that the tint goes towards, `#rrggbb`
 */
export function bandOf(table: Table, place: Place, paper: string): BandColors {
  if (table.style === undefined || !holds(table.area, place)) return {};
  const match = /^TableStyle(Light|Medium|Dark)(\d+)$/.exec(table.style);
  const hue = HUES[(Number(match?.[2] ?? 2) - 1) % HUES.length] ?? "#404040";
  const strong = match?.[1] !== "Light";
  if (table.headerRow && place.row === table.area.top) {
    return strong ? { fill: hue, ink: "#ffffff", bold: true } : { bold: true, line: hue };
  }
  if (table.totalsRow && place.row === table.area.bottom) return { bold: true, line: hue };
  const row = place.row - table.area.top - (table.headerRow ? 1 : 0);
  return row % 2 === 0 ? { fill: mix(hue, paper, 0.86) } : {};
}

/** One colour mixed with another, both `#rrggbb`. @param share - of the other, 0–1 */
export function mix(color: string, other: string, share: number): string {
  const channel = (at: number): string => {
    const [from, to] = [color, other].map((each) => Number.parseInt(each.slice(at, at + 2), 16));
    return Math.round((from ?? 0) * (1 - share) + (to ?? 0) * share)
      .toString(16)
      .padStart(2, "0");
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}
