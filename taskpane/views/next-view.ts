import { normaliseName } from "../../src/domain/progress/series";
import { writeEntries } from "./entries-writing";
import { make } from "./markup";
import { listChecks, type NextItem } from "./next-list";
import { findNext, recallFound, type Found, type WordSource } from "./next-search";
import type { PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { setText } from "./select-filling";
import { signsOf } from "./sign-standings";
import { TakeBack } from "./take-back";

const NAME = "cellwright-next";
const STYLES = `
.kept p:empty { margin: 0; }
.next { padding: 0; list-style: none; border-block-start: 1px solid var(--line, GrayText); }
.next li { padding-block: 0.5rem; border-block-end: 1px solid var(--line, GrayText); }
.next h3 { margin: 0; }
.next .buttons { margin-block: 0.3rem 0; }
`;
const NO_PUPIL =
  "The workbook has no pupil yet. Set up the tables in the caseload, or open a workbook with probes; what comes next then stands here.";
const NOTHING =
  "Nothing stands out: no sign is due for a check, and no word of your passages lacks a sign. Add a passage to the table Passages, or look for signs in common English text.";
const NO_ENGINE =
  "The braille engine or its words could not be loaded. Check that all files of the build are on the server, then choose again where the words come from.";

/** What comes next for one pupil, in one short list with the reasons: checks, signs to teach, passages to read. */
export class NextView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #ending: AbortController | undefined;
  #found: Found | undefined;
  #foundFor: string | undefined;
  #drawn = "";
  readonly #source = make(
    "select",
    {},
    make("option", { value: "own" }, "My passages and words"),
    make("option", { value: "common" }, "Common English text"),
  );
  readonly #message = make("p", { role: "status", class: "notice" });
  readonly #progressText = make("span", { role: "status" });
  readonly #cancel = make("button", { type: "button" }, "Cancel");
  readonly #progress = make("div", { class: "buttons" }, this.#progressText, this.#cancel);
  readonly #notes = make("p", { class: "notice" });
  readonly #done = new TakeBack(
    () => this.#context,
    () => {
      this.#source.focus();
    },
  );
  readonly #list = make("ol", { class: "next", "aria-label": "What next" });
  readonly #body = make("div");

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(STYLES);
    this.#source.addEventListener("change", () => {
      this.#search();
    });
    this.#cancel.addEventListener("click", () => {
      this.#ending?.abort();
      this.#showProgress("");
      this.#source.focus();
      this.context.say("Cancelled.");
    });
    this.#progress.hidden = true;
    this.#notes.hidden = true;
    this.#body.append(
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "New signs are to open", this.#source),
      ),
      this.#progress,
      this.#done.element,
      this.#notes,
      this.#list,
    );
    root.append(this.#body, this.#message);
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of what comes next has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    if (before !== undefined && normaliseName(before.pupil) !== normaliseName(context.pupil))
      this.#done.tell("");
    if (before?.records !== context.records || before.pupil !== context.pupil) this.#search();
    else this.#draw();
  }

  /** Draws what is known at once, and the rest when it is found. */
  #search(): void {
    const { context } = this;
    this.#ending?.abort();
    this.#showProgress("");
    const source: WordSource = this.#source.value === "common" ? "common" : "own";
    const isSamePupil = this.#foundFor === context.pupil;
    const recalled = context.pupil === undefined ? undefined : recallFound(context, source);
    // Of the same pupil the list stays until the new one is there, and with it the focus.
    if (recalled !== undefined || !isSamePupil) this.#found = recalled;
    this.#foundFor = context.pupil;
    this.#draw();
    if (recalled !== undefined || context.pupil === undefined || context.state === "loading") return;
    const ending = new AbortController();
    this.#ending = ending;
    this.#showProgress(
      source === "common" ? "Loading the common words…" : "Going through your passages and words…",
    );
    findNext(context, source, ending.signal).then(
      (found) => {
        if (ending.signal.aborted || found === undefined) return;
        this.#found = found;
        this.#showProgress("");
        this.#draw();
      },
      () => {
        if (ending.signal.aborted) return;
        this.#showProgress("");
        this.#message.hidden = false;
        setText(this.#message, NO_ENGINE);
      },
    );
  }

  #showProgress(words: string): void {
    const hadFocus = this.shadowRoot?.activeElement === this.#cancel;
    setText(this.#progressText, words);
    this.#progress.hidden = words === "";
    if (hadFocus && words === "") this.#source.focus();
  }

  #draw(): void {
    const { state, pupil, today, records } = this.context;
    this.#body.hidden = pupil === undefined;
    if (pupil === undefined) {
      this.#message.hidden = false;
      const problem = typeof state === "object" ? state.problem : NO_PUPIL;
      setText(this.#message, state === "loading" ? "Reading the workbook…" : problem);
      return;
    }
    const checks = listChecks(
      signsOf(this.context, pupil).standings,
      records.taught.filter((row) => normaliseName(row.pupil) === normaliseName(pupil)),
      today,
    );
    const { teach = [], read = [], notes = [] } = this.#found ?? {};
    const items = [...checks, ...teach, ...read];
    const isNothing = items.length === 0 && this.#found !== undefined;
    this.#message.hidden = !isNothing;
    setText(this.#message, isNothing ? NOTHING : "");
    setText(this.#notes, notes.join(" "));
    this.#notes.hidden = notes.length === 0;
    this.#showItems(items);
  }

  #showItems(items: readonly NextItem[]): void {
    const drawn = JSON.stringify(items);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    const focused = this.shadowRoot?.activeElement;
    const before = [...this.#list.querySelectorAll("button")];
    const at = before.findIndex((button) => button === focused);
    const label = before[at]?.textContent;
    this.#list.replaceChildren(...items.map((item) => this.#drawItem(item)));
    this.#list.hidden = items.length === 0;
    if (label === undefined) return;
    const buttons = [...this.#list.querySelectorAll("button")];
    (
      buttons.find(({ textContent }) => textContent === label) ??
      buttons[Math.min(at, buttons.length - 1)] ??
      this.#source
    ).focus();
  }

  #drawItem(item: NextItem): HTMLElement {
    const act = (text: string, run: () => void): HTMLButtonElement => {
      const button = make("button", { type: "button" }, text);
      button.addEventListener("click", run);
      return button;
    };
    const { openView } = this.context;
    const buttons =
      item.kind === "read"
        ? [
            act(`${item.title} aloud`, () => {
              openView("reading", { passage: item.passage });
            }),
          ]
        : [
            ...(item.kind === "check"
              ? [
                  act(`Probe ${item.sign}`, () => {
                    openView("naming", { signs: [item.sign] });
                  }),
                ]
              : [act(`Mark ${item.sign} as taught`, () => void this.#markTaught(item.sign))]),
            act(`Make a drill of ${item.sign}`, () => {
              openView("handouts", { signs: [item.sign] });
            }),
          ];
    return make(
      "li",
      {},
      make("h3", {}, item.title),
      make("p", {}, item.reason),
      make("div", { class: "buttons" }, ...buttons),
    );
  }

  async #markTaught(sign: string): Promise<void> {
    const { context } = this;
    const { pupil, today } = context;
    if (pupil === undefined) return;
    const written = await writeEntries(context, { taught: [{ pupil, sign, introduced: today }] });
    if (written !== undefined) this.#done.tell(`${sign} is marked as taught. ${written.words}`, written.undo);
  }
}

/** Makes the view, and defines its element first where it is not. */
export const makeNextView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, NextView);
  return new NextView();
};
