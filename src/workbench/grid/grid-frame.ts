import { element } from "../element";

/** The standing parts of the grid's page: everything else is drawn into them. */
export interface GridFrame {
  /** What scrolls. */
  readonly scroller: HTMLElement;
  /** As large as the whole sheet. */
  readonly surface: HTMLElement;
  readonly grid: HTMLElement;
  /** Column headers and frozen rows: stays at the top. */
  readonly head: HTMLElement;
  readonly headings: HTMLElement;
  readonly corner: HTMLElement;
  readonly body: HTMLElement;
  /** Editor, notes and marks of charts, over the cells. */
  readonly layer: HTMLElement;
}

export const HEADING_HEIGHT = 24;
export const HEADING_WIDTH = 56;

/** Builds the frame inside `host`. */
export function buildFrame(host: HTMLElement): GridFrame {
  const scroller = element("div", "grid-scroller");
  const surface = element("div", "grid-surface");
  const grid = element("div", "grid-cells", "grid");
  const head = element("div", "grid-head", "rowgroup");
  const headings = element("div", "grid-row grid-headings", "row");
  const corner = element("div", "grid-heading grid-corner", "columnheader");
  const body = element("div", "grid-body", "rowgroup");
  const layer = element("div", "grid-layer");
  grid.setAttribute("aria-multiselectable", "true");
  const words = element("span", "heard");
  words.textContent = "Row";
  corner.append(words);
  headings.append(corner);
  head.append(headings);
  grid.append(head, body);
  surface.append(grid, layer);
  scroller.append(surface);
  host.append(scroller);
  return { scroller, surface, grid, head, headings, corner, body, layer };
}
