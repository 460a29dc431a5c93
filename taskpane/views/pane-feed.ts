import type { Sheet } from "../../src/ports/sheet";
import { HostError } from "../../src/ports/sheet";
import { CHOICES_SETTING, formatChoices, parseChoices } from "../../src/records/column-choices";
import type { ColumnChoices } from "../../src/records/column-choices";
import { NO_RECORDS, readRecords } from "../../src/records/read-records";
import type { PaneReading } from "./pane-context";

/** A pane that follows its workbook. */
export interface PaneFeed {
  /** Reads the workbook again now. Call it after own writes that the host does not tell of. */
  refresh(): Promise<void>;
  /** Reads with her correction, and keeps it in the workbook. */
  keepChoices(choices: ColumnChoices): Promise<void>;
  /** Lets go of the workbook; what was published last stays. */
  stop(): void;
}

/** What the feed tells of. */
export interface FeedListener {
  /** A reading, good or failed; a failed one carries the records of the last good one. */
  publish(reading: PaneReading): void;
  /** A sentence for the live region: what was not done. */
  say(text: string): void;
  /** The same: why the workbook could not be read, beside a reading that still holds. */
  sayProblem(text: string): void;
  /** The workbook was read: an earlier problem with it is over. */
  readWell(): void;
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

/** What a host's refusal says, or what to do where something broke. */
export const explainFailure = (
  error: unknown,
  otherwise = "The workbook could not be read. Close the pane, open it again, and try once more.",
): string => (error instanceof HostError ? error.message : otherwise);

/**
 * Follows a workbook: reads it now, after every change of cells (once it is quiet), and after every correction, which
 * is kept in the workbook. A failed reading leaves the last good one in place and says so.
 *
 * @param quiet - milliseconds without a change before the sheets are read again
 */
export function followWorkbook(sheet: Sheet, listener: FeedListener, quiet = QUIET): PaneFeed {
  const ending = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let choices: ColumnChoices | undefined;
  let last: PaneReading = { state: "loading", records: NO_RECORDS, choices: {} };
  let reading: Promise<void> | undefined;
  let isStale = false;

  const publish = (next: PaneReading): void => {
    last = next;
    listener.publish(next);
  };

  const readOnce = async (): Promise<void> => {
    try {
      await letPageDraw();
      choices ??= parseChoices(await sheet.readSetting(CHOICES_SETTING));
      const records = await readRecords(sheet, choices);
      if (ending.signal.aborted) return;
      publish({ state: "ready", records, choices });
      listener.readWell();
    } catch (error) {
      if (ending.signal.aborted) return;
      // Before the first reading the views have the room to say it; later they stay, and the line says it.
      if (last.state === "ready") listener.sayProblem(explainFailure(error));
      else publish({ ...last, state: { problem: explainFailure(error) } });
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

  const keepChoices = async (changed: ColumnChoices): Promise<void> => {
    choices = changed;
    await refresh();
    try {
      await sheet.keepSetting(CHOICES_SETTING, formatChoices(changed));
    } catch (error) {
      listener.say(
        `Your correction holds until you close the workbook, but it could not be kept in it. ${explainFailure(error)}`,
      );
    }
  };

  publish(last);
  const stopFollowing = sheet.onChange(() => {
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(), quiet);
  });
  void refresh();
  return {
    refresh,
    keepChoices,
    stop: () => {
      clearTimeout(timer);
      stopFollowing();
      ending.abort();
    },
  };
}
