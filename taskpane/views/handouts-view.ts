import { makeHandout, type Handout, type HandoutOptions } from "../../src/domain/drill/handout";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import { findLastErrors } from "../../src/domain/drill/missed-signs";
import { formatDay } from "../../src/domain/calendar";
import { normaliseName } from "../../src/domain/progress/series";
import type { Result } from "../../src/domain/result";
import { beginSentence, countInWords } from "./count-words";
import { DrillPanel } from "./drill-panel";
import { HANDOUT_CODES, listUntaught, prepareBraille, type HandoutBraille } from "./handout-braille";
import { makeDrillEntries, type DrillRequest } from "./handout-drill";
import { HandoutForm } from "./handout-form";
import { formatHandoutDraft, parseHandoutDraft } from "./handout-keeping";
import { HANDOUT_LIST_STYLES, HandoutList, type ItemNotes } from "./handout-list";
import { HandoutOutput } from "./handout-output";
import { fileOptions } from "./handout-settings";
import { make } from "./markup";
import type { PaneContext, PaneView, ViewRequest } from "./pane-context";
import { paneStyles } from "./pane-styles";

const NAME = "cellwright-handouts";
const DRAFT = "handout";
const NO_ENGINE =
  "The braille engine or its words could not be loaded. Check that all files of the build are on the server, then try once more.";
const NO_ERRORS =
  "No record tells which signs were missed. Note miscues in a reading probe, or log probes of single signs; or name the signs here.";
/** Signs taken from errors at most: more are no drill. Our choice, no source. */
const MOST_SIGNS = 6;

/**
 * Drills and handouts: from signs, from the last errors or from a passage come items; she edits them with their braille
 * beneath; then they go to the sheet, the clipboard, the printer or a file.
 */
export class HandoutsView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #braille: HandoutBraille | undefined;
  #replaced: readonly HandoutEntry[] | undefined;
  #run = 0;
  /** said before how many items were made */
  #reason = "";
  readonly #form = new DrillPanel({
    make: (request) => void this.#makeItems(request),
    takeErrors: () => void this.#takeErrors(),
    changeCode: () => void this.#prepare(),
    addPassage: (place) => {
      const passage = this.context.records.passages[place];
      if (passage !== undefined) this.#addPassage(passage);
    },
  });
  readonly #cancel = make("button", { type: "button" }, "Cancel");
  readonly #progress = make("div", { class: "buttons" }, "Choosing the items…", this.#cancel);
  readonly #itemsTitle = make("h3", { tabindex: "-1" }, "Items");
  readonly #empty = make(
    "p",
    {},
    "No items yet. Name signs above and make some, add a passage, or add items one by one.",
  );
  readonly #notes = make("p", { class: "notice" });
  readonly #restore = make("button", { type: "button" }, "Bring back the items from before");
  readonly #list = new HandoutList(
    () => {
      this.#showItems();
    },
    (text) => this.#context?.say(text),
  );
  readonly #page = new HandoutForm(() => {
    this.#keep();
  });
  readonly #output = new HandoutOutput({
    context: () => this.context,
    settings: () => this.#page.settings(this.#form.code),
    make: (options) => this.#makeHandout(options),
    entries: () => this.#list.entries,
    title: () => this.#page.title.trim() || "Handout",
  });

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(HANDOUT_LIST_STYLES);
    this.#progress.hidden = true;
    this.#restore.hidden = true;
    this.#notes.hidden = true;
    this.#cancel.addEventListener("click", () => {
      this.#stopMaking();
      this.#itemsTitle.focus();
      this.context.say("Cancelled. The items are as they were.");
    });
    this.#restore.addEventListener("click", () => {
      if (this.#replaced !== undefined) this.#replace(this.#replaced);
      this.#itemsTitle.focus();
      this.context.say("The items from before are here again.");
    });
    root.append(
      make("h3", {}, "What to practise"),
      this.#form.element,
      this.#progress,
      this.#itemsTitle,
      this.#notes,
      this.#empty,
      this.#list.element,
      make("div", { class: "buttons" }, this.#restore),
      make("h3", {}, "The page"),
      this.#page.element,
      make("h3", {}, "Hand it over"),
      this.#output.element,
    );
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of handouts has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    if (before === undefined) this.#takeUp(context);
    if (before?.pupil !== context.pupil || before?.records !== context.records) {
      const { words, passages } = context.records;
      const own = words.filter(({ pupil }) => pupil === undefined || isSame(pupil, context.pupil));
      this.#form.offer(
        [...new Set(own.map(({ word }) => word))],
        passages.map(({ title }) => title),
      );
      if (before?.pupil !== context.pupil || before?.records.pupils !== context.records.pupils)
        this.#setUsual(context);
      void this.#prepare();
    }
  }

  begin({ signs, passage, contrast, items }: ViewRequest): void {
    if (passage !== undefined) this.#addPassage(passage);
    if (items !== undefined) {
      this.#replace(items);
      this.#itemsTitle.focus();
      this.context.say(`${beginSentence(countInWords(items.length, "item"))} on the handout.`);
    }
    if (signs === undefined || signs.length === 0) return;
    this.#form.signs = signs;
    if (contrast === true) this.#form.drillForm = "pairs";
    this.#itemsTitle.focus();
    this.#form.submit();
  }

  /** Line length and code are those of the pupil. */
  #setUsual({ records, pupil }: PaneContext): void {
    const about = records.pupils.find((each) => isSame(each.pupil, pupil));
    if (about?.cellsPerLine !== undefined) this.#page.cells = about.cellsPerLine;
    const probes = records.probes.filter((probe) => isSame(probe.pupil, pupil));
    const code = normaliseName(about?.code ?? probes.findLast((probe) => probe.code !== undefined)?.code);
    this.#form.code = HANDOUT_CODES.find((each) => each === code) ?? "contracted";
  }

  /** What a reload or a closed pane broke off is here again. */
  #takeUp({ drafts }: PaneContext): void {
    const kept = parseHandoutDraft(drafts.read(DRAFT));
    if (kept !== undefined) {
      this.#page.title = kept.title;
      this.#page.date = kept.date;
      this.#list.entries = kept.entries;
    }
    this.#showItems();
  }

  #keep(): void {
    const entries = this.#list.entries;
    const { title, date } = this.#page;
    if (entries.length === 0 && title === "" && date === "") this.context.drafts.forget(DRAFT);
    else this.context.drafts.keep(DRAFT, formatHandoutDraft({ title, date, entries }));
  }

  /** Loads the braille of pupil and code; the items are shown without it until it is there. */
  async #prepare(): Promise<HandoutBraille | undefined> {
    const { translators, records, pupil } = this.context;
    try {
      const braille = await prepareBraille(translators, records, pupil, this.#form.code);
      // Pupil or code may have changed while the engine was loading.
      if (braille.code !== this.#form.code || pupil !== this.context.pupil) return braille;
      this.#braille = braille;
      this.#notes.textContent = braille.notes.join(" ");
      this.#notes.hidden = braille.notes.length === 0;
      this.#showItems();
      return braille;
    } catch {
      this.#notes.textContent = NO_ENGINE;
      this.#notes.hidden = false;
      return undefined;
    }
  }

  #showItems(): void {
    this.#empty.hidden = this.#list.entries.length > 0;
    this.#list.annotate((entry) => this.#describe(entry));
    this.#keep();
  }

  #describe(entry: HandoutEntry): ItemNotes {
    const braille = this.#braille;
    if (braille === undefined || entry.text.trim() === "") return { cells: "", notes: [] };
    const untaught = listUntaught(entry, braille);
    const notes = untaught.length > 0 ? [`Not taught yet: ${untaught.join(", ")}.`] : [];
    if (entry.kind === "signs") return { cells: "", notes: entry.print === undefined ? [] : [entry.print] };
    const written = braille.transcribe(entry.text.replace(/\s+/g, " ").trim());
    return written.ok
      ? { cells: written.value.cells, notes }
      : { cells: "", notes: [...notes, written.fault.message] };
  }

  async #makeItems(request: DrillRequest): Promise<void> {
    if (this.#form.isBusy) return;
    const run = ++this.#run;
    const reason = this.#reason;
    this.#reason = "";
    this.#form.isBusy = true;
    this.#progress.hidden = false;
    try {
      const braille = this.#braille ?? (await this.#prepare());
      if (braille === undefined) throw new Error(NO_ENGINE);
      const { wordBank, records } = this.context;
      // The page draws its progress before the words are gone through.
      await new Promise((resolve) => setTimeout(resolve));
      const made = await makeDrillEntries(request, braille, records.passages, () => wordBank.load());
      if (run !== this.#run) return;
      this.#stopMaking();
      if (!made.ok) {
        this.#form.refuse(made.fault.message);
        return;
      }
      this.#replace(made.value);
      this.#itemsTitle.focus();
      this.context.say(`${reason}${beginSentence(countInWords(made.value.length, "item"))} made.`);
    } catch {
      if (run !== this.#run) return;
      this.#stopMaking();
      this.#form.refuse(NO_ENGINE);
    }
  }

  #stopMaking(): void {
    this.#run += 1;
    this.#form.isBusy = false;
    this.#progress.hidden = true;
  }

  #replace(entries: readonly HandoutEntry[]): void {
    const before = this.#list.entries.filter(({ text }) => text !== "");
    this.#replaced = before.length > 0 ? before : undefined;
    this.#restore.hidden = this.#replaced === undefined;
    this.#list.entries = entries;
    this.#showItems();
  }

  #addPassage({ title, text }: { readonly title: string; readonly text: string }): void {
    this.#list.entries = [...this.#list.entries, { kind: "passage", text }];
    if (this.#page.title.trim() === "") this.#page.title = title;
    this.#showItems();
    this.#itemsTitle.focus();
    this.context.say(`${title} is on the handout.`);
  }

  async #takeErrors(): Promise<void> {
    const { records, pupil, translators } = this.context;
    // Words as they were read: in the code of each probe, as far as it is loaded.
    await Promise.allSettled(HANDOUT_CODES.map((code) => translators.translator(code)));
    const errors = findLastErrors(
      records.probes.filter((probe) => isSame(probe.pupil, pupil)),
      records.miscues.filter((miscue) => isSame(miscue.pupil, pupil)),
      (code) => {
        const translator = translators.loaded(normaliseName(code) || this.#form.code);
        return translator === undefined ? undefined : (text) => translator.transcribe(text);
      },
    );
    if (errors === undefined) {
      this.#form.refuse(NO_ERRORS);
      return;
    }
    const signs = errors.signs.slice(0, MOST_SIGNS).map(({ sign }) => sign);
    this.#form.signs = signs;
    this.#reason = `Signs missed on ${formatDay(errors.day)}: ${signs.join(", ")}. `;
    this.#form.submit();
  }

  async #makeHandout(options?: HandoutOptions): Promise<Result<Handout>> {
    const braille = this.#braille ?? (await this.#prepare());
    if (braille === undefined) return { ok: false, fault: { code: "no-engine", message: NO_ENGINE } };
    const { title, date } = this.#page;
    return makeHandout(
      { title, date, entries: this.#list.entries },
      options ?? fileOptions(this.#page.settings(braille.code)),
      braille.transcribe,
    );
  }
}

const isSame = (one: string, other: string | undefined): boolean =>
  normaliseName(one) === normaliseName(other);

/** Makes the view, and defines its element first where it is not. */
export const makeHandoutsView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, HandoutsView);
  return new HandoutsView();
};
