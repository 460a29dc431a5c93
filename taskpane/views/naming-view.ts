import type { SignMark } from "../../src/domain/probe/marked-signs";
import { normaliseName } from "../../src/domain/progress/series";
import { USUAL_LINE } from "../../src/domain/braille/page";
import { writeEntries } from "./entries-writing";
import { KeptDraft } from "./kept-draft";
import { setGone } from "./leaving";
import { make } from "./markup";
import { NamingChoice } from "./naming-choice";
import {
  askAgain,
  dropMark,
  formatNaming,
  isOver,
  newNaming,
  parseNaming,
  setMark,
  signsOfRow,
  stopNaming,
} from "./naming-draft";
import type { NamingDraft, NamingTask } from "./naming-draft";
import { entriesOfNaming } from "./naming-entries";
import { listRowItems } from "./naming-handout";
import { NamingPanel } from "./naming-panel";
import { describeNaming, listEarlierRows, listMissed } from "./naming-result";
import { MARK_WORDS, NAMING_ROW_STYLES, NamingRow } from "./naming-row";
import type { PaneContext, PaneView, ViewRequest } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { PROBE_CLOCK_STYLES, ProbeClock } from "./probe-clock";
import { secondsOf, stageOf, startClock, takeUpAgain } from "./probe-time";
import { setText } from "./select-filling";
import { signsOf } from "./sign-standings";

const NAME = "cellwright-naming";
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
  readonly #kept = new KeptDraft("naming", "row");
  #isWriting = false;
  readonly #message = make("p", { role: "status", class: "notice" });
  readonly #choice = new NamingChoice((task) => {
    const { pupil } = this.context;
    if (pupil !== undefined) this.#prepare({ ...task, pupil });
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
    again: () => void this.#writeAndAskAgain(),
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
    const kept = parseNaming(this.#kept.read(context));
    if (kept === undefined) return;
    const draft = takeUpAgain(kept);
    this.#row.show(signsOfRow(draft.task));
    this.#change(draft);
    this.#kept.sayTakenUp(context, draft.task.pupil, kept.seconds !== draft.seconds);
  }

  #prepare(task: NamingTask): void {
    const draft = newNaming(task);
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
    if (isOver(draft, Date.now())) this.#stop();
    else this.#change({ ...draft, seen: Date.now() });
  }

  #stop(): void {
    const draft = this.#draft;
    if (draft === undefined || stageOf(draft) !== "running") return;
    const stopped = stopNaming(draft, Date.now());
    this.#change(stopped);
    this.#clock.stop();
    this.#show();
    this.#panel.focusTitle();
    const [counts = "", rate = ""] = describeNaming(stopped, stopped.seconds ?? 0);
    this.context.say(`Stopped. ${counts} ${rate}`);
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
    if (!isLast) this.#turnTo(place + 1, `${draft.task.signs[place] ?? ""}: ${MARK_WORDS[mark]}. `);
    else if (stageOf(marked) === "running") this.#stop();
    else this.context.say(`${draft.task.signs[place] ?? ""}: ${MARK_WORDS[mark]}`);
    if (stageOf(marked) === "stopped") this.#showResult(marked);
  }

  /** The sign in turn is heard where the focus goes to it; from a button it is said. */
  #turnTo(place: number, before: string): void {
    this.#row.turnTo(place);
    if (!this.#row.hasFocus) this.context.say(`${before}Next: ${this.#draft?.task.signs[place] ?? ""}`);
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
    this.#kept.keep(this.context, formatNaming(draft));
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
    setGone(this.#choice.element, draft !== undefined || isEmpty);
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
    const items = listRowItems(signsOfRow(draft.task), about?.cellsPerLine ?? USUAL_LINE);
    this.context.openView("handouts", { items });
  }

  /** @returns what was written, in words; undefined where nothing was */
  async #write(): Promise<string | undefined> {
    const draft = this.#draft;
    if (draft?.seconds === undefined || this.#isWriting) return undefined;
    if (draft.marks.length === 0) {
      this.#panel.refuseEmpty();
      return undefined;
    }
    this.#isWriting = true;
    const written = await writeEntries(
      this.context,
      entriesOfNaming(draft, draft.seconds, this.#panel.remarks, this.context.today, this.context.records),
    );
    this.#isWriting = false;
    if (written === undefined) return undefined;
    this.#forget();
    this.#choice.turn();
    this.context.say(written.words);
    return written.words;
  }

  async #writeAndAskAgain(): Promise<void> {
    const draft = this.#draft;
    const words = await this.#write();
    if (draft === undefined || words === undefined) return;
    this.#prepare(
      askAgain(
        draft.task,
        listMissed(draft).map(({ sign }) => sign),
      ),
    );
    this.context.say(`${words} The signs missed stand ready as a row.`);
  }

  #leave(): void {
    if (this.#draft?.started !== undefined && !this.#panel.isAsking) {
      this.#panel.ask();
      this.#kept.sayAsked(this.context);
      return;
    }
    this.#forget();
  }

  #forget(): void {
    this.#clock.stop();
    this.#kept.forget(this.context);
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
