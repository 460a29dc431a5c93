import { element } from "../element";

/** The standing parts of the grid's page: everything else is drawn into them. */
export interface GridFrame {
  /** What scrolls. */
  readonly scroller: HTMLElement;
  /** As large as the whole sheet. */
  readonly surface: HTMLElement;
  readonly grid: HTMLElement;
  /** Frozen rows: stay below the column headers. */
  readonly head: HTMLElement;
  /**
   * Column headers: drawn at the top, but last in the page, because a browser numbers rows and columns on from the
   * first: so a screen reader's row 5 is the sheet's row 5. Row headers likewise come last in their row.
   */
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
  const headingGroup = element("div", "grid-heading-group", "rowgroup");
  const headings = element("div", "grid-row grid-headings", "row");
  const corner = element("div", "grid-heading grid-corner", "columnheader");
  const body = element("div", "grid-body", "rowgroup");
  const layer = element("div", "grid-layer");
  grid.setAttribute("aria-multiselectable", "true");
  const words = element("span", "heard");
  words.textContent = "Row";
  corner.append(words);
  headings.append(corner);
  headingGroup.append(headings);
  grid.append(head, body, headingGroup);
  surface.append(grid, layer);
  scroller.append(surface);
  host.append(scroller);
  return { scroller, surface, grid, head, headings, corner, body, layer };
}
