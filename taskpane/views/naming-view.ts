import { cellsAlone, splitSignRow } from "../../src/domain/probe/sign-row";
import type { SignMark } from "../../src/domain/probe/marked-signs";
import { normaliseName } from "../../src/domain/progress/series";
import { BLANK_CELL } from "../../src/domain/braille/cell";
import { USUAL_LINE } from "../../src/domain/braille/page";
import { writeEntries } from "./entries-writing";
import { make } from "./markup";
import { NamingChoice } from "./naming-choice";
import { dropMark, formatNaming, newNaming, parseNaming, setMark, signsOfRow } from "./naming-draft";
import type { NamingDraft, NamingTask } from "./naming-draft";
import { entriesOfNaming } from "./naming-entries";
import { NamingPanel } from "./naming-panel";
import { describeNaming, listEarlierRows, listMissed } from "./naming-result";
import { MARK_WORDS, NAMING_ROW_STYLES, NamingRow } from "./naming-row";
import type { PaneContext, PaneView, ViewRequest } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { PROBE_CLOCK_STYLES, ProbeClock } from "./probe-clock";
import { secondsOf, stageOf, startClock, stopClock, takeUpAgain } from "./probe-time";
import { setText } from "./select-filling";
import { signsOf } from "./sign-standings";

const NAME = "cellwright-naming";
const DRAFT = "naming";
const NO_PUPIL =
  "The workbook has no pupil yet. Set up the tables in the caseload, or open a workbook with probes or taught signs.";
const KEPT = "A row begun before is still open: write it or leave it, then begin the next.";

/**
 * Signs named or copied: a row of signs, drawn from what is taught, open or confused; one key marks each; the clock; the
 * result beside the last ones; one row in the workbook. Every mark is kept at once, so that a reload loses nothing.
 */
export class NamingView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #draft: NamingDraft | undefined;
  #saidNoDrafts = false;
  #isWriting = false;
  readonly #message = make("p", { role: "status", class: "notice" });
  readonly #choice = new NamingChoice((task) => {
    this.#prepare(task);
  });
  readonly #row = new NamingRow({
    mark: (place, mark) => {
      this.#mark(place, mark);
    },
    drop: () => {
      this.#drop();
    },
    enter: () => {
      if (this.#draft === undefined) return;
      if (stageOf(this.#draft) === "ready") this.#start();
      else if (stageOf(this.#draft) === "running") this.#stop();
    },
  });
  readonly #clock = new ProbeClock(
    () => (this.#draft === undefined ? 0 : secondsOf(this.#draft, Date.now())),
    () => {
      this.#tick();
    },
    (words) => this.#context?.say(words),
  );
  readonly #panel = new NamingPanel(this.#clock.element, this.#row.element, {
    start: () => {
      this.#start();
    },
    stop: () => {
      this.#stop();
    },
    leave: () => {
      this.#leave();
    },
    write: () => void this.#write(),
    drill: () => {
      if (this.#draft === undefined) return;
      this.context.openView("handouts", { signs: listMissed(this.#draft).map(({ sign }) => sign) });
    },
    handOut: () => {
      this.#handOut();
    },
    setSeconds: (seconds) => {
      if (this.#draft?.seconds === undefined) return;
      this.#change({ ...this.#draft, seconds });
      this.#show();
    },
  });

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(`${NAMING_ROW_STYLES}${PROBE_CLOCK_STYLES}`);
    root.append(this.#message, this.#choice.element, this.#panel.element);
    this.#show();
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of signs named has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    const isOther = normaliseName(before?.pupil) !== normaliseName(context.pupil);
    const { pupil } = context;
    this.#choice.offer(pupil === undefined ? undefined : signsOf(context, pupil), isOther);
    if (before === undefined) this.#takeUp(context);
    this.#show();
  }

  begin({ signs, task }: ViewRequest): void {
    if (this.#draft !== undefined) {
      if (signs !== undefined) this.context.say(KEPT);
      return;
    }
    if (task !== undefined) this.#choice.setTask(task);
    if (signs !== undefined && signs.length > 0) this.#choice.name(signs);
  }

  disconnectedCallback(): void {
    this.#clock.stop();
  }

  /** A row that a reload or a crash broke off is offered as it was. */
  #takeUp(context: PaneContext): void {
    const kept = parseNaming(context.drafts.read(DRAFT));
    if (kept === undefined) return;
    const draft = takeUpAgain(kept);
    this.#row.show(signsOfRow(draft.task));
    this.#change(draft);
    context.say(
      `A row of ${draft.task.pupil} that was not written is here again${kept.seconds === draft.seconds ? "" : "; its clock stopped when the pane was last open"}.`,
    );
  }

  #prepare(task: Omit<NamingTask, "pupil">): void {
    const { pupil } = this.context;
    if (pupil === undefined) return;
    const draft = newNaming({ ...task, pupil });
    this.#row.show(signsOfRow(draft.task));
    this.#change(draft);
    this.#show();
    this.#row.focus(0);
  }

  #start(): void {
    if (this.#draft === undefined || stageOf(this.#draft) !== "ready") return;
    this.#change(startClock(this.#draft, Date.now()));
    this.#clock.start();
    this.#show();
    this.#row.focus();
    this.context.say("The clock runs.");
  }

  #tick(): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    const { limit } = draft.task;
    if (limit > 0 && secondsOf(draft, Date.now()) >= limit) {
      this.#stop();
      return;
    }
    this.#change({ ...draft, seen: Date.now() });
  }

  #stop(): void {
    const draft = this.#draft;
    if (draft === undefined || stageOf(draft) !== "running") return;
    const stopped = stopClock(draft, Date.now());
    const { limit } = draft.task;
    // The clock is looked at once a second: what is over the time set was not counted by her.
    const seconds = limit > 0 ? Math.min(limit, stopped.seconds ?? limit) : stopped.seconds;
    this.#change(seconds === undefined ? stopped : { ...stopped, seconds });
    this.#clock.stop();
    this.#show();
    this.#panel.focusTitle();
    this.context.say(
      `Stopped. ${describeNaming(this.#draft ?? stopped, seconds ?? 0)
        .slice(0, 2)
        .join(" ")}`,
    );
  }

  #mark(place: number, mark: SignMark): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    if (stageOf(draft) === "ready") {
      this.context.say("Start the clock first: Enter.");
      return;
    }
    const marked = setMark(draft, place, mark);
    if (marked === draft) {
      this.context.say("Mark the signs one after the other.");
      this.#row.turnTo(draft.marks.length);
      return;
    }
    this.#change(marked);
    this.#row.showMarks(marked.marks);
    const isLast = marked.marks.length === draft.task.signs.length && place === draft.task.signs.length - 1;
    if (!isLast) this.#row.turnTo(place + 1);
    else if (stageOf(marked) === "running") this.#stop();
    else this.context.say(`${draft.task.signs[place] ?? ""}: ${MARK_WORDS[mark]}`);
    if (stageOf(marked) === "stopped") this.#showResult(marked);
  }

  #drop(): void {
    const draft = this.#draft;
    if (draft === undefined || draft.marks.length === 0) return;
    const dropped = dropMark(draft);
    this.#change(dropped);
    this.#row.showMarks(dropped.marks);
    this.#row.turnTo(dropped.marks.length);
    if (stageOf(dropped) === "stopped") this.#showResult(dropped);
  }

  /** Every change is kept before anything else happens. */
  #change(draft: NamingDraft): void {
    this.#draft = draft;
    if (this.context.drafts.keep(DRAFT, formatNaming(draft)) || this.#saidNoDrafts) return;
    this.#saidNoDrafts = true;
    this.context.say("This browser keeps nothing: if the pane is closed now, this row is lost.");
  }

  #show(): void {
    const draft = this.#draft;
    const pupil = this.#context?.pupil;
    const isEmpty = draft === undefined && pupil === undefined;
    const state = this.#context?.state ?? "loading";
    this.#message.hidden = !isEmpty;
    setText(
      this.#message,
      !isEmpty
        ? ""
        : state === "loading"
          ? "Reading the workbook…"
          : typeof state === "object"
            ? state.problem
            : NO_PUPIL,
    );
    this.#choice.element.hidden = draft !== undefined || isEmpty;
    this.#panel.show(draft);
    if (draft === undefined) return;
    this.#row.canMark = stageOf(draft) !== "ready";
    this.#row.showMarks(draft.marks);
    this.#clock.show();
    if (draft.seconds !== undefined) this.#showResult(draft);
  }

  #showResult(draft: NamingDraft): void {
    this.#panel.showResult(
      describeNaming(draft, draft.seconds ?? 0),
      listEarlierRows(this.context.records.probes, draft.task),
      listMissed(draft).length > 0,
    );
  }

  /** The row as lines of braille for the handouts, each with the names of its signs as print. */
  #handOut(): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    const { records } = this.context;
    const about = records.pupils.find(
      ({ pupil }) => normaliseName(pupil) === normaliseName(draft.task.pupil),
    );
    const items = splitSignRow(signsOfRow(draft.task), about?.cellsPerLine ?? USUAL_LINE).map((line) => ({
      kind: "signs" as const,
      text: line.map(cellsAlone).join(BLANK_CELL.repeat(2)),
      print: line.map(({ name }) => name).join(", "),
    }));
    this.context.openView("handouts", { items });
  }

  async #write(): Promise<void> {
    const draft = this.#draft;
    if (draft?.seconds === undefined || this.#isWriting) return;
    if (draft.marks.length === 0) {
      this.#panel.refuseEmpty();
      return;
    }
    this.#isWriting = true;
    const written = await writeEntries(
      this.context,
      entriesOfNaming(draft, draft.seconds, this.#panel.remarks, this.context.today),
    );
    this.#isWriting = false;
    if (written === undefined) return;
    const missed = listMissed(draft).map(({ sign }) => sign);
    this.#forget();
    // The next row: the signs just missed, in another order.
    this.#choice.turn();
    if (missed.length > 0) this.#choice.name(missed);
    this.context.say(
      written.words + (missed.length > 0 ? " The signs missed stand ready for another row." : ""),
    );
  }

  #leave(): void {
    if (this.#draft?.started !== undefined && !this.#panel.isAsking) {
      this.#panel.ask();
      this.context.say("Press again to leave this row. Its marks and time will be lost.");
      return;
    }
    this.#forget();
  }

  #forget(): void {
    this.#clock.stop();
    this.context.drafts.forget(DRAFT);
    this.#draft = undefined;
    this.#panel.clear();
    this.#show();
    this.#choice.focus();
  }
}

/** Makes the view, and defines its element first where it is not. */
export const makeNamingView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, NamingView);
  return new NamingView();
};
