import { countCellsWith } from "./cell-counting";
import { make } from "./markup";
import type { PaneContext, PaneHost, PaneReading, PaneView, ViewName, ViewRequest } from "./pane-context";
import { NO_RECORDS } from "../../src/records/read-records";
import type { PaneFeed } from "./pane-feed";
import { explainFailure, followWorkbook } from "./pane-feed";
import { paneStyles } from "./pane-styles";
import { pageServices } from "./page-services";
import { findPupil, listPupils } from "./pupil-list";
import { StatusLine } from "./status-line";
import { VIEWS } from "./view-list";
import type { ListedView } from "./view-list";

const NAME = "cellwright-pane";

const OWN_STYLES = `
nav ul { display: flex; flex-wrap: wrap; gap: 0 0.15rem; list-style: none; margin: 0 0 0.5rem; padding: 0; border-block-end: 1px solid var(--line, GrayText); }
nav button { border: 0; border-block-end: 3px solid transparent; border-radius: 0; background: none; padding: 0.15rem 0.45rem; min-block-size: 1.9rem; min-inline-size: 1.5rem; }
nav button[aria-current] { border-block-end-color: currentColor; font-weight: 650; }
.heading { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0.25rem 1rem; }
.heading h2 { margin: 0; flex: 1 1 auto; }
.heading label { display: flex; gap: 0.4rem; align-items: baseline; min-inline-size: 0; }
.heading select { min-block-size: 2rem; min-inline-size: 0; }
.status { margin-block: 0.4rem; border-inline-start: 0.25rem solid var(--accent, currentColor); padding-inline-start: 0.6rem; }
.status:empty { display: none; }
@media (forced-colors: active) { nav button[aria-current] { border-block-end-color: Highlight; } }
`;

/** Milliseconds from a view being shown to the focus on its heading. */
const SETTLING = 350;

const BROKEN_VIEW =
  "This part of the pane could not be loaded. Check that all files of the build are on the server, then open the pane again.";
const BROKEN_WRITE = "That could not be written. Nothing was changed. Try once more.";

/**
 * `<cellwright-pane>`: the list of views, the pupil they are about, and the view in sight. Views that were left stay
 * as they are, a probe in progress included. Call `follow` with a host; again for another workbook.
 */
export class PaneElement extends HTMLElement {
  #host: PaneHost | undefined;
  #feed: PaneFeed | undefined;
  #reading: PaneReading = { state: "loading", records: NO_RECORDS, choices: {} };
  #pupils: readonly string[] = [];
  #pupil: string | undefined;
  #cells: PaneContext["cells"];
  #current: ListedView | undefined;
  readonly #views = new Map<ViewName, PaneView>();
  readonly #buttons = new Map<ViewName, HTMLButtonElement>();
  readonly #status = new StatusLine();
  readonly #title = make("h2", { tabindex: "-1" });
  readonly #pupilList = make("select");
  readonly #pupilField = make("label", {}, "Pupil", this.#pupilList);
  readonly #place = make("div");

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(OWN_STYLES);
    const list = make("ul");
    for (const view of VIEWS) {
      const button = make("button", { type: "button" }, view.title);
      button.addEventListener("click", () => void this.open(view.name));
      this.#buttons.set(view.name, button);
      list.append(make("li", {}, button));
    }
    this.#pupilList.addEventListener("change", () => {
      this.#choosePupil(this.#pupilList.value);
    });
    root.append(
      make("nav", { "aria-label": "Views" }, list),
      make("div", { class: "heading" }, this.#title, this.#pupilField),
      this.#status.element,
      this.#place,
    );
  }

  /** Follows a workbook from now on; the views in sight are fed from it. */
  follow(host: PaneHost): void {
    this.#feed?.stop();
    this.#host = host;
    this.#feed = followWorkbook(
      host.sheet,
      {
        publish: (reading) => {
          this.#take(reading);
        },
        say: (text) => {
          this.#status.say(text);
        },
        sayProblem: (text) => {
          this.#status.sayProblem(text);
        },
        readWell: () => {
          this.#status.readWell();
        },
      },
      host.quiet,
    );
    void this.#loadEngine(host);
    if (this.#current === undefined) void this.show(VIEWS[0]?.name ?? "workbook");
  }

  /** Reads the workbook again now: after writes that the host does not tell of. */
  async refresh(): Promise<void> {
    await this.#feed?.refresh();
  }

  /** Shows a view with the focus on its heading. */
  async open(name: ViewName, request?: ViewRequest): Promise<void> {
    // With the view that goes the focus in it would be lost, and a screen reader would begin the page anew.
    if (this.#place.contains(this.shadowRoot?.activeElement ?? null)) this.#buttons.get(name)?.focus();
    const view = await this.show(name);
    if (view === undefined) return;
    if (request !== undefined) view.begin?.(request);
    // A view that takes a request up may have put the focus where the work begins.
    if (request !== undefined && this.shadowRoot?.activeElement === view) return;
    const before = this.shadowRoot?.activeElement;
    // Lists that have just been filled are spoken by some screen readers: the heading comes after them.
    await new Promise((resolve) => setTimeout(resolve, SETTLING));
    if (this.#current?.name === name && this.shadowRoot?.activeElement === before) this.#title.focus();
  }

  /** Shows a view and leaves the focus where it is. @returns undefined where it could not be loaded, or she went on */
  async show(name: ViewName): Promise<PaneView | undefined> {
    const listed = VIEWS.find((view) => view.name === name);
    if (listed === undefined) return undefined;
    this.#current = listed;
    this.#status.goOn();
    this.#title.textContent = listed.title;
    this.#pupilField.hidden = !listed.ofOnePupil || this.#pupils.length === 0;
    for (const [each, button] of this.#buttons) {
      if (each === name) button.setAttribute("aria-current", "page");
      else button.removeAttribute("aria-current");
    }
    for (const [each, view] of this.#views) view.hidden = each !== name;
    const view = this.#views.get(name) ?? (await this.#load(listed));
    // She may have gone on to another view while this one was loading.
    if (view === undefined || this.#current !== listed) return undefined;
    view.hidden = false;
    this.#feedView();
    return view;
  }

  async #load(listed: ListedView): Promise<PaneView | undefined> {
    try {
      const made = await listed.load();
      const view = this.#views.get(listed.name) ?? made;
      if (view === made) {
        view.hidden = this.#current !== listed;
        this.#views.set(listed.name, view);
        this.#place.append(view);
      }
      return view;
    } catch {
      this.#status.say(BROKEN_VIEW);
      return undefined;
    }
  }

  #take(reading: PaneReading): void {
    if (reading.records !== this.#reading.records) {
      this.#pupils = listPupils(reading.records);
      this.#pupil = findPupil(this.#pupils, this.#pupil) ?? this.#pupils[0];
      this.#fillPupils();
    }
    this.#reading = reading;
    this.#feedView();
  }

  #fillPupils(): void {
    const listed = [...this.#pupilList.options].map(({ value }) => value);
    if (listed.join("\n") !== this.#pupils.join("\n")) {
      this.#pupilList.replaceChildren(
        ...this.#pupils.map((pupil) => make("option", { value: pupil }, pupil)),
      );
    }
    this.#pupilList.value = this.#pupil ?? "";
    this.#pupilField.hidden = this.#current?.ofOnePupil !== true || this.#pupils.length === 0;
  }

  #choosePupil(name: string): void {
    const pupil = findPupil(this.#pupils, name);
    if (pupil === undefined || pupil === this.#pupil) return;
    this.#pupil = pupil;
    this.#pupilList.value = pupil;
    this.#feedView();
  }

  #feedView(): void {
    const view = this.#current && this.#views.get(this.#current.name);
    const host = this.#host;
    if (view === undefined || host === undefined) return;
    view.context = {
      ...pageServices,
      ...this.#reading,
      sheet: host.sheet,
      translators: host.translators,
      wordBank: host.wordBank,
      documents: host.documents,
      scheduler: host.scheduler,
      today: host.today(),
      pupils: this.#pupils,
      pupil: this.#pupil,
      cells: this.#cells,
      jumpTo: (place) => {
        host.jumpTo(place);
      },
      choosePupil: (pupil) => {
        this.#choosePupil(pupil);
      },
      openView: (name, request) => void this.open(name, request),
      say: (text) => {
        this.#status.say(text);
      },
      write: (work) => this.#write(host, work),
      keepChoices: async (choices) => this.#feed?.keepChoices(choices),
    };
  }

  async #write<T>(host: PaneHost, work: (sheet: PaneHost["sheet"]) => Promise<T>): Promise<T | undefined> {
    try {
      const answer = await work(host.sheet);
      await this.#feed?.refresh();
      return answer;
    } catch (error) {
      this.#status.say(explainFailure(error, BROKEN_WRITE));
      return undefined;
    }
  }

  /** Cells a minute can be offered once the engine is there; nothing waits for it. */
  async #loadEngine({ translators }: PaneHost): Promise<void> {
    const loads = ["contracted", "uncontracted"].map((code) => translators.translator(code));
    const loaded = await Promise.allSettled(loads);
    if (loaded.every(({ status }) => status === "rejected")) return;
    this.#cells = countCellsWith(translators);
    this.#feedView();
  }
}

/** Makes the pane known to the page. */
export const definePane = (): void => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, PaneElement);
};
