import type { GridFrame } from "./grid-frame";
import { HEADING_HEIGHT, HEADING_WIDTH } from "./grid-frame";
import type { GridScene } from "./grid-scene";
import type { Place } from "./selection";
import type { DrawnWindow } from "./rows-view";
import { scrollToShow, windowOf } from "./virtual-window";

const ROW_MARGIN = 8;
const COLUMN_MARGIN = 2;

/** Height and width left for cells that scroll, CSS pixels. */
export function roomOf(
  { scroller }: GridFrame,
  scene: GridScene,
): { readonly height: number; readonly width: number } {
  return {
    height: scroller.clientHeight - HEADING_HEIGHT - scene.rows.startOf(scene.frozen.rows),
    width: scroller.clientWidth - HEADING_WIDTH - scene.columns.startOf(scene.frozen.columns),
  };
}

/** The rows and columns that the page needs where it is scrolled to now. */
export function visibleWindow(frame: GridFrame, scene: GridScene, active: Place): DrawnWindow {
  const room = roomOf(frame, scene);
  return {
    rows: windowOf(scene.rows, frame.scroller.scrollTop, room.height, scene.frozen.rows, ROW_MARGIN),
    columns: windowOf(
      scene.columns,
      frame.scroller.scrollLeft,
      room.width,
      scene.frozen.columns,
      COLUMN_MARGIN,
    ),
    active,
  };
}

/** Scrolls just as far as needed to bring a cell into view. */
export function bringIntoView(frame: GridFrame, scene: GridScene, { row, column }: Place): void {
  const { scroller } = frame;
  const room = roomOf(frame, scene);
  const top = scrollToShow(scene.rows, row, scroller.scrollTop, room.height, scene.frozen.rows);
  const left = scrollToShow(scene.columns, column, scroller.scrollLeft, room.width, scene.frozen.columns);
  if (top !== scroller.scrollTop) scroller.scrollTop = top;
  if (left !== scroller.scrollLeft) scroller.scrollLeft = left;
}

/** Sizes the surface for the whole sheet. */
export function sizeSurface(frame: GridFrame, scene: GridScene): void {
  const width = `${String(HEADING_WIDTH + scene.columns.total + 1)}px`;
  const head = HEADING_HEIGHT + scene.rows.startOf(scene.frozen.rows);
  frame.surface.style.setProperty("--head-height", `${String(head)}px`);
  frame.surface.style.width = width;
  frame.surface.style.height = `${String(HEADING_HEIGHT + scene.rows.total + 1)}px`;
  frame.body.style.height = `${String(scene.rows.total - scene.rows.startOf(scene.frozen.rows))}px`;
  // Headings have no index and are not counted, so that a screen reader's row 5 is the sheet's row 5.
  frame.grid.setAttribute("aria-rowcount", String(scene.rows.count));
  frame.grid.setAttribute("aria-colcount", String(scene.columns.count));
  frame.grid.setAttribute("aria-label", `Sheet ${scene.sheet.name}`);
}
