import { parseSignItems } from "../../src/domain/contraction/taught";
import { splitReadingWords } from "../../src/domain/probe/reading-words";
import { normaliseName } from "../../src/domain/progress/series";
import { lexiconOfTable, type Lexicon } from "../../src/domain/reading-back/lexicon";
import { readPrint } from "../../src/domain/reading-back/print";
import type { Translator } from "../../src/ports/translator";
import type { WordBank } from "../../src/ports/word-bank";
import { BrailledChoice } from "./brailled-choice";
import {
  compareWriting,
  describeWriting,
  listEarlierWritings,
  listMissedSigns,
  type ComparedWriting,
} from "./brailled-comparison";
import { formatBrailled, newBrailled, parseBrailled, readableOf } from "./brailled-draft";
import type { BrailledDraft, BrailledTask } from "./brailled-draft";
import { entriesOfBrailled } from "./brailled-entries";
import { BRAILLED_PAD_STYLES, BrailledPad } from "./brailled-pad";
import { BrailledPanel } from "./brailled-panel";
import { BRAILLED_REVIEW_STYLES, BrailledReview } from "./brailled-review";
import { Dictation } from "./dictation";
import { writeEntries } from "./entries-writing";
import { KeptDraft } from "./kept-draft";
import { setGone } from "./leaving";
import { make } from "./markup";
import type { PaneContext, PaneView, ViewRequest } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { PROBE_CLOCK_STYLES, ProbeClock } from "./probe-clock";
import { secondsOf, stageOf, startClock, stopClock, takeUpAgain } from "./probe-time";
import { setText } from "./select-filling";

const NAME = "cellwright-brailled";
const NO_PUPIL =
  "The workbook has no pupil yet. Set up the tables in the caseload, or open a workbook with probes.";
const KEPT = "Writing begun before is still open: write it down or leave it, then begin the next.";
const NO_ENGINE =
  "The braille engine could not be loaded. Check that all files of the build are on the server, then compare once more.";
const NOTHING_WRITTEN = "Nothing is written yet. Type the pupil's braille, paste it, or take it from a file.";

/**
 * Heard and brailled: a text or signs, dictated word by word; what the pupil writes, by six keys, pasted or from a file;
 * cells expected and written one over the other with each error named; one row in the workbook and a row an error. Every
 * cell is kept at once, so that a reload loses nothing.
 */
export class BrailledView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #draft: BrailledDraft | undefined;
  #compared: ComparedWriting | undefined;
  #isWriting = false;
  readonly #lexicons = new Map<string, Lexicon>();
  readonly #kept = new KeptDraft("brailled", "writing");
  readonly #message = make("p", { role: "status", class: "notice" });
  readonly #choice = new BrailledChoice((task) => {
    const { pupil } = this.context;
    if (pupil !== undefined) this.#prepare({ ...task, pupil });
  });
  readonly #dictation = new Dictation((word) => {
    this.context.say(word);
  });
  readonly #pad = new BrailledPad({
    changed: (written, isPunched) => {
      this.#take(written, isPunched);
    },
    nextWord: () => {
      this.#dictation.next();
    },
    sameWord: () => {
      this.#dictation.again();
    },
    say: (text) => {
      this.context.say(text);
    },
  });
  readonly #clock = new ProbeClock(
    () => (this.#draft === undefined ? 0 : secondsOf(this.#draft, Date.now())),
    () => {
      if (this.#draft !== undefined) this.#change({ ...this.#draft, seen: Date.now() });
    },
    (words) => this.#context?.say(words),
  );
  readonly #review = new BrailledReview();
  readonly #panel = new BrailledPanel(
    {
      clock: this.#clock.element,
      dictation: this.#dictation.element,
      pad: this.#pad.element,
      review: this.#review.element,
    },
    {
      compare: () => void this.#compare(true),
      leave: () => {
        this.#leave();
      },
      write: () => void this.#write(),
      drill: () => {
        if (this.#compared !== undefined)
          this.context.openView("handouts", { signs: listMissedSigns(this.#compared) });
      },
      setSeconds: (seconds) => {
        if (this.#draft === undefined) return;
        this.#change({ ...this.#draft, seconds });
        this.#showResult();
      },
    },
  );

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(
      `${BRAILLED_PAD_STYLES}${BRAILLED_REVIEW_STYLES}${PROBE_CLOCK_STYLES}`,
    );
    root.append(this.#message, this.#choice.element, this.#panel.element);
    this.#show();
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of braille heard has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    if (before?.records.passages !== context.records.passages) this.#choice.offer(context.records.passages);
    if (before?.pupil !== context.pupil) this.#setUsual(context);
    if (before === undefined) this.#takeUp(context);
    this.#show();
  }

  begin({ signs, passage }: ViewRequest): void {
    if (this.#draft !== undefined) {
      if (signs !== undefined || passage !== undefined) this.context.say(KEPT);
      return;
    }
    if (passage !== undefined) this.#choice.type(passage);
    if (signs !== undefined && signs.length > 0)
      this.#choice.type({ title: "", text: signs.join(", ") }, "signs");
  }

  disconnectedCallback(): void {
    this.#clock.stop();
    this.#dictation.stop();
  }

  #setUsual({ records, pupil }: PaneContext): void {
    const last = records.probes.findLast(
      (probe) =>
        normaliseName(probe.pupil) === normaliseName(pupil) && /brail|dictat/i.test(probe.task ?? ""),
    );
    this.#choice.setUsual(last?.code, last?.medium);
  }

  /** Writing that a reload or a crash broke off is offered as it was. */
  #takeUp(context: PaneContext): void {
    const kept = parseBrailled(this.#kept.read(context));
    if (kept === undefined) return;
    const draft = takeUpAgain(kept);
    this.#change(draft);
    this.#dictation.show(wordsOf(draft.task));
    this.#kept.sayTakenUp(context, draft.task.pupil, kept.seconds !== draft.seconds);
    if (draft.isCompared) void this.#compare(false);
  }

  #prepare(task: BrailledTask): void {
    this.#compared = undefined;
    this.#change(newBrailled(task));
    this.#dictation.show(wordsOf(task));
    this.#show();
    this.#pad.focus();
  }

  #take(written: string, isPunched: boolean): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    const isFirst = draft.task.isTimed && stageOf(draft) === "ready" && written !== "";
    const changed = { ...draft, written, isPunched, isCompared: false };
    this.#compared = undefined;
    this.#change(isFirst ? startClock(changed, Date.now()) : changed);
    if (isFirst) this.#clock.start();
    this.#panel.show(this.#draft, wordsOf(draft.task).length);
  }

  /** @param isAsked - she asked for it: the clock stops, unless nothing can be compared; the focus goes to the result */
  async #compare(isAsked: boolean): Promise<void> {
    const { context } = this;
    const draft = this.#draft;
    if (draft === undefined || this.#panel.isBusy) return;
    if (draft.written.trim() === "") {
      this.#pad.refuse(NOTHING_WRITTEN);
      return;
    }
    const stopped = stageOf(draft) === "running" ? stopClock(draft, Date.now()) : draft;
    this.#panel.isBusy = true;
    if (isAsked) context.say("Comparing…");
    // The page says so before the cells are gone through.
    await new Promise((resolve) => setTimeout(resolve));
    const translator = await this.#loadTranslator(draft.task);
    this.#panel.isBusy = false;
    // She may have written on, or left.
    if (this.#draft?.written !== draft.written || this.#draft.task !== draft.task) return;
    if (translator === "missing") {
      this.#pad.refuse(NO_ENGINE);
      return;
    }
    const compared = compareWriting(draft.task, readableOf(draft), translator);
    if (!compared.ok) {
      this.#pad.refuse(compared.fault.message);
      return;
    }
    this.#clock.stop();
    this.#compared = compared.value;
    this.#change({ ...stopped, isCompared: true });
    this.#showResult();
    this.#clock.show();
    if (isAsked) {
      this.#panel.focusResult();
      context.say(describeWriting(compared.value, stopped.seconds).slice(0, 2).join(" "));
    }
    await this.#readBack(draft);
  }

  /** @returns undefined for signs, which need none */
  async #loadTranslator({ code }: BrailledTask): Promise<Translator | undefined | "missing"> {
    if (code === "signs") return undefined;
    try {
      return await this.context.translators.translator(code);
    } catch {
      return "missing";
    }
  }

  /** Braille as print, with every reading where there are two; the words come when they are first needed. */
  async #readBack({ task }: BrailledDraft): Promise<void> {
    const compared = this.#compared;
    this.#review.showReading(undefined);
    const { code } = task;
    if (compared === undefined || code === "signs") return;
    const { translators, wordBank } = this.context;
    const [translator, lexicon] = await Promise.all([
      translators.translator(code),
      // Without its list of words it is read contraction by contraction.
      wordBank.load().then(
        (bank) => this.#lexiconOf(bank, code),
        () => undefined,
      ),
    ]);
    if (this.#compared !== compared) return;
    this.#review.showReading(
      readPrint(compared.written, {
        code,
        ...(lexicon && { lexicon }),
        write: (print) => translator.translate(print),
      }),
    );
  }

  #lexiconOf(bank: WordBank, code: "contracted" | "uncontracted"): Lexicon {
    const lexicon = this.#lexicons.get(code) ?? lexiconOfTable(bank.table(code));
    this.#lexicons.set(code, lexicon);
    return lexicon;
  }

  /** Every change is kept before anything else happens. */
  #change(draft: BrailledDraft): void {
    this.#draft = draft;
    this.#kept.keep(this.context, formatBrailled(draft));
  }

  #show(): void {
    const draft = this.#draft;
    const state = this.#context?.state ?? "loading";
    const isEmpty = draft === undefined && this.#context?.pupil === undefined;
    this.#message.hidden = !isEmpty;
    const problem = typeof state === "object" ? state.problem : NO_PUPIL;
    setText(this.#message, isEmpty ? (state === "loading" ? "Reading the workbook…" : problem) : "");
    setGone(this.#choice.element, draft !== undefined || isEmpty);
    this.#panel.show(draft, draft === undefined ? 0 : wordsOf(draft.task).length);
    if (draft === undefined) return;
    this.#pad.show(draft.written, draft.isPunched);
    this.#clock.show();
    this.#showResult();
  }

  #showResult(): void {
    const [draft, compared] = [this.#draft, this.#compared];
    if (draft === undefined) return;
    this.#panel.show(draft, wordsOf(draft.task).length);
    if (compared === undefined) return;
    this.#review.show(
      compared,
      describeWriting(compared, draft.seconds),
      listEarlierWritings(this.context.records.probes, draft.task),
    );
    this.#panel.canDrill = listMissedSigns(compared).length > 0;
  }

  async #write(): Promise<void> {
    const [draft, compared] = [this.#draft, this.#compared];
    if (draft === undefined || compared === undefined || this.#isWriting) return;
    this.#isWriting = true;
    const entries = entriesOfBrailled(
      draft.task,
      compared,
      draft.seconds,
      this.#panel.remarks,
      this.context.today,
    );
    const written = await writeEntries(this.context, entries);
    this.#isWriting = false;
    if (written === undefined) return;
    this.#forget();
    this.context.say(written.words);
  }

  #leave(): void {
    if (this.#draft?.written.trim() !== "" && !this.#panel.isAsking) {
      this.#panel.ask();
      this.#kept.sayAsked(this.context);
      return;
    }
    this.#forget();
  }

  #forget(): void {
    this.#clock.stop();
    this.#dictation.stop();
    this.#kept.forget(this.context);
    this.#draft = undefined;
    this.#compared = undefined;
    this.#panel.clear();
    this.#pad.refuse("");
    this.#show();
    this.#choice.focus();
  }
}

/** The words, or the names of the signs, as they are dictated. */
const wordsOf = ({ text, code }: BrailledTask): readonly string[] => {
  if (code !== "signs") return splitReadingWords(text).map(({ shown }) => shown);
  const signs = parseSignItems([text]);
  return signs.ok ? signs.value.map(({ name }) => name) : [];
};

/** Makes the view, and defines its element first where it is not. */
export const makeBrailledView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, BrailledView);
  return new BrailledView();
};
