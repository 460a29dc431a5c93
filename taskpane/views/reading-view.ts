import { scoreReading } from "../../src/domain/probe/reading";
import type { ReadingScore } from "../../src/domain/probe/reading";
import { clearMarks, endAt, formatHeard, noteHeard, toggleMark } from "../../src/domain/probe/reading-marks";
import type { MarkKind, ReadingNotes } from "../../src/domain/probe/reading-marks";
import { splitReadingWords } from "../../src/domain/probe/reading-words";
import type { PlacedWord } from "../../src/domain/probe/reading-words";
import { normaliseName } from "../../src/domain/progress/series";
import { findContractedLetters } from "./contracted-letters";
import { KeptDraft } from "./kept-draft";
import { setGone } from "./leaving";
import type { PaneContext, PaneView, ViewRequest } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { PROBE_CLOCK_STYLES, ProbeClock } from "./probe-clock";
import { secondsOf, stageOf, startClock, stopClock, takeUpAgain } from "./probe-time";
import { ReadingChoice } from "./reading-choice";
import { formatDraft, newDraft, parseDraft } from "./reading-draft";
import type { ReadingDraft, ReadingTask } from "./reading-draft";
import { writeEntries } from "./entries-writing";
import { entriesOfReading } from "./reading-entries";
import { READING_PANEL_STYLES, ReadingPanel } from "./reading-panel";
import { ReadingReview } from "./reading-review";
import { SettlingPanel } from "./settling-panel";
import { READING_WORDS_STYLES, ReadingWords } from "./reading-words";

const NAME = "cellwright-reading";

/**
 * A timed reading probe: choose a text, start the clock at the first word read, mark what happens by one key or touch,
 * stop at the last word, look at the result, write it into the workbook. Every mark is kept at once, so that a reload
 * or a closed pane loses nothing.
 */
export class ReadingView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #draft: ReadingDraft | undefined;
  #words: readonly PlacedWord[] = [];
  /** pupil, code and medium that the choice was last set to */
  #usual = "";
  readonly #kept = new KeptDraft("reading", "probe");
  #isWriting = false;
  readonly #settling = new SettlingPanel({
    context: () => this.context,
    chosen: () => [],
    take: (passage) => {
      this.begin({ passage });
    },
  });
  readonly #choice = new ReadingChoice(
    (task) => {
      this.#prepare(task);
    },
    [this.#settling.element],
  );
  readonly #text = new ReadingWords({
    mark: (word, kind) => {
      this.#mark(word, kind);
    },
    clear: (word) => {
      this.#note((notes) => clearMarks(notes, word));
      this.#context?.say(`${this.#words[word]?.shown ?? ""}: no mark`);
    },
    touch: (word) => {
      if (this.#draft === undefined) return;
      const { touch } = this.#panel;
      if (touch === "last") this.#end(word);
      else if (stageOf(this.#draft) !== "ready") this.#mark(word, touch);
    },
    end: (word) => {
      this.#end(word);
    },
    enter: (word) => {
      if (this.#draft === undefined) return;
      if (stageOf(this.#draft) === "ready") this.#start();
      else if (stageOf(this.#draft) === "running") this.#stop(word);
    },
  });
  readonly #clock = new ProbeClock(
    () => (this.#draft === undefined ? 0 : secondsOf(this.#draft, Date.now())),
    () => {
      if (this.#draft !== undefined) this.#change({ ...this.#draft, seen: Date.now() });
    },
    (words) => this.#context?.say(words),
  );
  readonly #review = new ReadingReview((mark, heard) => {
    this.#note((notes) => noteHeard(notes, mark, heard));
  });
  readonly #panel = new ReadingPanel([this.#clock.element], this.#text.element, this.#review.element);

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(
      `${READING_WORDS_STYLES}${PROBE_CLOCK_STYLES}${READING_PANEL_STYLES}`,
    );
    root.append(this.#choice.element, this.#panel.element);
    this.#panel.onStart = () => {
      this.#start();
    };
    this.#panel.onStop = () => {
      this.#stop(undefined);
    };
    this.#panel.onLeave = () => {
      this.#leaveProbe();
    };
    this.#panel.onSeconds = (seconds) => {
      if (this.#draft?.seconds === undefined) return;
      this.#change({ ...this.#draft, seconds });
      this.#show();
    };
    this.#panel.onWrite = () => void this.#writeDown();
    this.#show();
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The reading view has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const isFirst = this.#context === undefined;
    const isOther = this.#context?.pupil !== context.pupil || this.#context?.records !== context.records;
    this.#context = context;
    this.#choice.offer(context.records.passages);
    if (isOther && this.#draft === undefined) this.#setUsual(context);
    if (isFirst) this.#takeUp(context);
    else if (this.#draft?.seconds !== undefined) this.#showResult(this.#draft);
  }

  begin({ passage }: ViewRequest): void {
    if (passage === undefined || this.#draft !== undefined) return;
    this.#choice.paste(passage);
  }

  disconnectedCallback(): void {
    this.#clock.stop();
  }

  #setUsual({ records, pupil }: PaneContext): void {
    const hers = records.probes.filter((probe) => normaliseName(probe.pupil) === normaliseName(pupil));
    const last = hers.filter(({ code, seconds }) => code !== undefined && seconds !== undefined).at(-1);
    // The workbook is read again and again: what she has chosen since stays.
    const usual = [normaliseName(pupil), last?.code, last?.medium].join("\n");
    if (usual === this.#usual) return;
    this.#usual = usual;
    this.#choice.setUsual(last?.code, last?.medium);
  }

  /** A probe that a reload or a crash broke off is offered as it was. */
  #takeUp(context: PaneContext): void {
    const kept = parseDraft(this.#kept.read(context));
    if (kept === undefined) return;
    const draft = takeUpAgain(kept);
    this.#showText(draft);
    this.#change(draft);
    this.#show();
    this.#kept.sayTakenUp(context, draft.task.pupil, kept.seconds !== draft.seconds);
  }

  #prepare(task: Omit<ReadingTask, "pupil">): void {
    const { pupil } = this.context;
    if (pupil === undefined) {
      this.context.say("Choose a pupil first. A workbook without pupils takes one in its table of probes.");
      return;
    }
    const draft = newDraft({ ...task, pupil });
    this.#showText(draft);
    this.#change(draft);
    this.#show();
    this.#text.focus(0);
  }

  #showText({ task }: ReadingDraft): void {
    this.#words = splitReadingWords(task.text);
    const translator = this.context.translators.loaded(task.code);
    const contracted =
      translator === undefined || task.code !== "contracted"
        ? []
        : findContractedLetters(translator, task.text, this.#words);
    this.#text.show(task.text, this.#words, contracted);
  }

  #start(): void {
    if (this.#draft === undefined || stageOf(this.#draft) !== "ready") return;
    this.#change(startClock(this.#draft, Date.now()));
    this.#clock.start();
    this.#show();
    this.#text.focus();
    this.context.say("The clock runs.");
  }

  /** @param word - the last word read; undefined where the button was used, and she may set it in the text */
  #stop(word: number | undefined): void {
    if (this.#draft === undefined || stageOf(this.#draft) !== "running") return;
    let draft = stopClock(this.#draft, Date.now());
    if (word !== undefined) draft = { ...draft, notes: endAt(draft.notes, this.#lastOf(word)) };
    this.#change(draft);
    this.#clock.stop();
    this.#show();
    this.#text.showNotes(draft.notes);
    this.#panel.focusTitle();
    const [first = "", second = ""] = this.#review.element.innerText.split("\n");
    this.context.say(`Stopped. ${first} ${second}`);
  }

  /** A text read to its end has no last word of its own. */
  #lastOf(word: number): number | undefined {
    return word >= this.#words.length - 1 ? undefined : word;
  }

  #end(word: number): void {
    if (this.#draft === undefined) return;
    this.#note((notes) => endAt(notes, this.#lastOf(word)));
    this.context.say(`Last word: ${this.#words[word]?.shown ?? ""}`);
  }

  #mark(word: number, kind: MarkKind): void {
    if (this.#draft === undefined) return;
    const before = this.#draft.notes.marks.length;
    this.#note((notes) => toggleMark(notes, word, kind, this.#words.length));
    const shown = this.#words[word]?.shown ?? "";
    this.context.say(this.#draft.notes.marks.length < before ? `${shown}: no mark` : `${shown}: ${kind}`);
  }

  #note(change: (notes: ReadingNotes) => ReadingNotes): void {
    if (this.#draft === undefined) return;
    const draft = { ...this.#draft, notes: change(this.#draft.notes) };
    this.#change(draft);
    this.#text.showNotes(draft.notes);
    if (draft.seconds !== undefined) this.#showResult(draft);
  }

  /** Every change is kept before anything else happens. */
  #change(draft: ReadingDraft): void {
    this.#draft = draft;
    this.#kept.keep(this.context, formatDraft(draft));
  }

  #scoreOf(draft: ReadingDraft): ReadingScore {
    return scoreReading(draft.task.text, formatHeard(this.#words, draft.notes));
  }

  #show(): void {
    const draft = this.#draft;
    setGone(this.#choice.element, draft !== undefined);
    this.#panel.show(draft);
    if (draft === undefined) return;
    this.#clock.show();
    this.#text.showNotes(draft.notes);
    if (draft.seconds !== undefined) this.#showResult(draft);
  }

  #showResult(draft: ReadingDraft): void {
    const { records, cells, translators } = this.context;
    this.#review.show({
      task: draft.task,
      words: this.#words,
      notes: draft.notes,
      score: this.#scoreOf(draft),
      seconds: draft.seconds ?? 0,
      probes: records.probes,
      cells,
      translator: draft.task.code === "contracted" ? translators.loaded(draft.task.code) : undefined,
    });
  }

  async #writeDown(): Promise<void> {
    const draft = this.#draft;
    if (draft?.seconds === undefined || this.#isWriting) return;
    this.#isWriting = true;
    const finished = {
      task: draft.task,
      score: this.#scoreOf(draft),
      heard: formatHeard(this.#words, draft.notes),
      seconds: draft.seconds,
      ...this.#panel.remarks,
    };
    const written = await writeEntries(this.context, entriesOfReading(finished, this.context.today));
    this.#isWriting = false;
    if (written === undefined) return;
    this.#forget();
    this.context.say(written.words);
  }

  #leaveProbe(): void {
    const isEmpty = this.#draft?.started === undefined;
    if (!isEmpty && !this.#panel.isAsking) {
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
export const makeReadingView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, ReadingView);
  return new ReadingView();
};
