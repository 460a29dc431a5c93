import type { CellSource } from "../../domain/progress/measure";
import type { Sheet } from "../../ports/sheet";
import { ColumnsView, defineColumnsView } from "../../../taskpane/views/columns-view";
import type { PaneFeed } from "../../../taskpane/views/mount-views";
import { feedViews } from "../../../taskpane/views/mount-views";
import type { PointChosen } from "../../../taskpane/views/trajectory-view";
import { TrajectoryView, defineTrajectoryView } from "../../../taskpane/views/trajectory-view";
import { element } from "../element";
import type { GridElement } from "../grid/grid-element";

/** Milliseconds of quiet before the sheets are read again: longer where reading takes its time. */
const QUIET = 250;
const QUIET_WHEN_LARGE = 1500;
const LARGE = 50_000;

/** The pane beside the sheet: the trajectory and the columns found, both fed from the workbook. */
export class Pane {
  private readonly trajectory: TrajectoryView;
  private readonly columns: ColumnsView;
  private readonly status = element("p", "pane-status", "status");
  private feed: PaneFeed | undefined;

  /** @param box - the element that holds the pane */
  constructor(
    box: HTMLElement,
    private readonly grid: GridElement,
  ) {
    defineTrajectoryView();
    defineColumnsView();
    this.trajectory = new TrajectoryView();
    this.columns = new ColumnsView();
    box.append(this.status, this.trajectory, this.columns);
    this.trajectory.addEventListener("point-chosen", (event) => {
      const { sheet, row } = (event as CustomEvent<PointChosen>).detail;
      this.show({ sheet, row: row - 1, column: 0 });
    });
  }

  /** Follows another workbook. @param size - how many cells it holds */
  follow(sheet: Sheet, size: number): void {
    this.feed?.stop();
    this.feed = feedViews(
      sheet,
      { trajectory: this.trajectory, columns: this.columns, status: this.status },
      {
        quiet: size > LARGE ? QUIET_WHEN_LARGE : QUIET,
        jumpTo: (place) => {
          this.show(place);
        },
      },
    );
  }

  /** Counts cells once the braille engine is there. */
  countCells(cells: CellSource): void {
    this.trajectory.cells = cells;
  }

  private show({
    sheet,
    row,
    column,
  }: {
    readonly sheet: string;
    readonly row: number;
    readonly column: number;
  }): void {
    this.grid.goTo(sheet, { top: row, bottom: row, left: column, right: column });
  }
}
