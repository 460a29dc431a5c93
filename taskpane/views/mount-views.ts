import type { Probe } from "../../src/domain/probe/probe";
import type { Goal } from "../../src/domain/progress/goal";
import type { Sheet } from "../../src/ports/sheet";
import { HostError } from "../../src/ports/sheet";
import { CHOICES_SETTING, formatChoices, parseChoices } from "../../src/records/column-choices";
import type { ColumnChoices } from "../../src/records/column-choices";
import type { FoundBlock } from "../../src/records/found-block";
import { readRecords } from "../../src/records/read-records";
import type { TrajectoryState } from "./trajectory-view";

/** A cell to show: what the views ask for by the event `jump-to-cell`. Row and column count from zero. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** The elements of a pane, by what this module sets on them and hears from them. */
export interface PaneElements {
  /** `cellwright-trajectory` */
  readonly trajectory: EventTarget & {
    probes: readonly Probe[];
    goals: readonly Goal[];
    state: TrajectoryState;
  };
  /** `cellwright-columns`; tells of a correction by `choices-changed`, whose detail is {@link ColumnChoices} */
  readonly columns: EventTarget & { blocks: readonly FoundBlock[]; choices: ColumnChoices };
  /** a polite live region for what went wrong and what was found */
  readonly status: { textContent: string | null };
}

/** What the page does for the views. */
export interface PaneHost {
  /** Shows a cell in the spreadsheet. */
  jumpTo(place: CellPlace): void;
  /** Milliseconds of quiet after a change before the sheets are read again. */
  readonly quiet?: number;
}

/** A pane that follows its workbook. */
export interface PaneFeed {
  /** Reads the workbook again now. Call it after own writes that the host does not tell of. */
  refresh(): Promise<void>;
  /** Lets go of the workbook; the elements keep what they show. */
  stop(): void;
}

const QUIET = 250;

/** A hidden page draws nothing: reading does not wait for it any longer than this, in milliseconds. */
const LONGEST_WAIT = 500;

/** Lets the page draw what it has before a long reading holds it up. */
const letPageDraw = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestAnimationFrame !== "function") {
      setTimeout(resolve);
      return;
    }
    setTimeout(resolve, LONGEST_WAIT);
    // The frame is drawn after its callbacks: the second one comes when the first frame is on the screen.
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve)));
  });

const explain = (error: unknown): string =>
  error instanceof HostError
    ? error.message
    : "The workbook could not be read. Close the pane, open it again, and try once more.";

/**
 * Feeds the views of a pane from a workbook: now, after every change of cells (once it is quiet), and after every
 * correction, which is kept in the workbook. A failed reading leaves the last good one in place and says so.
 */
export function feedViews(sheet: Sheet, elements: PaneElements, host: PaneHost): PaneFeed {
  const ending = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let choices: ColumnChoices | undefined;
  let reading: Promise<void> | undefined;
  let isStale = false;

  const say = (text: string): void => {
    // The same words again would be spoken again.
    if (elements.status.textContent !== text) elements.status.textContent = text;
  };

  const readOnce = async (): Promise<void> => {
    try {
      await letPageDraw();
      choices ??= parseChoices(await sheet.readSetting(CHOICES_SETTING));
      const { blocks, probes, goals } = await readRecords(sheet, choices);
      if (ending.signal.aborted) return;
      elements.columns.choices = choices;
      elements.columns.blocks = blocks;
      elements.trajectory.goals = goals;
      elements.trajectory.probes = probes;
      elements.trajectory.state = "ready";
      say("");
    } catch (error) {
      if (ending.signal.aborted) return;
      // Before the first reading the view has the room to say it; later its graph stays, and the line says it.
      if (elements.trajectory.state === "ready") say(explain(error));
      else elements.trajectory.state = { problem: explain(error) };
    }
  };

  /** One reading at a time; changes during one lead to one more. */
  const refresh = (): Promise<void> => {
    clearTimeout(timer);
    if (reading) isStale = true;
    reading ??= (async () => {
      do {
        isStale = false;
        await readOnce();
      } while (isStale && !ending.signal.aborted);
      reading = undefined;
    })();
    return reading;
  };

  const refreshWhenQuiet = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(), host.quiet ?? QUIET);
  };

  const keepChoices = async (changed: ColumnChoices): Promise<void> => {
    choices = changed;
    await refresh();
    try {
      await sheet.keepSetting(CHOICES_SETTING, formatChoices(changed));
    } catch (error) {
      say(
        `Your correction holds until you close the workbook, but it could not be kept in it. ${explain(error)}`,
      );
    }
  };

  const { signal } = ending;
  const hear = (target: EventTarget, type: string, answer: (detail: unknown) => void): void => {
    target.addEventListener(type, (event) => event instanceof CustomEvent && answer(event.detail), {
      signal,
    });
  };
  hear(elements.columns, "choices-changed", (detail) => void keepChoices(detail as ColumnChoices));
  for (const view of [elements.columns, elements.trajectory]) {
    hear(view, "jump-to-cell", (detail) => host.jumpTo(detail as CellPlace));
  }
  elements.trajectory.state = "loading";
  const stopFollowing = sheet.onChange(refreshWhenQuiet);
  void refresh();
  return {
    refresh,
    stop: () => {
      clearTimeout(timer);
      stopFollowing();
      ending.abort();
    },
  };
}
