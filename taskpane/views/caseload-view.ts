import type { Probe } from "../../src/domain/probe/probe";
import type { Unplaced } from "../../src/records/new-entries";
import { CaseloadChecks } from "./caseload-checks";
import { CaseloadList } from "./caseload-list";
import { caseloadOf, linesOfTeacher, listTeachers } from "./caseload-lines";
import { CaseloadSaving } from "./caseload-saving";
import { CASELOAD_STYLES } from "./caseload-styles";
import { countInWords, beginSentence } from "./count-words";
import { writeEntries } from "./entries-writing";
import { setGone } from "./leaving";
import { LogChoice } from "./log-choice";
import { make } from "./markup";
import type { PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";
import type { ScoreForm } from "./score-form";
import { fillSelect, setText } from "./select-filling";
import { TablesPanel } from "./tables-panel";
import type { TablesWritten } from "./tables-panel";
import { TakeBack } from "./take-back";
import { WaitingDates } from "./waiting-dates";

const NAME = "cellwright-caseload";
const NO_FORM =
  "The form could not be loaded. Check that all files of the build are on the server, then try once more; or type the score into your table.";

/**
 * The caseload: a line a pupil, the one who needs most first; from each line to the pupil's progress and to a probe. In a
 * workbook without probes it says what was looked for, and sets up the tables.
 */
export class CaseloadView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #shown: "list" | "choice" | "form" = "list";
  #pupil: string | undefined;
  readonly #loading = make("p", {}, "The workbook is being read.");
  readonly #problem = make("p", { class: "notice" });
  readonly #summary = make("p");
  readonly #keys = make(
    "p",
    { id: "caseload-keys", class: "quiet" },
    "Who needs most comes first. Arrow keys go from pupil to pupil, Enter opens one, P logs a probe.",
  );
  readonly #teacher = make("select");
  readonly #teacherField = make("label", { class: "field" }, "Teacher", this.#teacher);
  readonly #list = new CaseloadList({
    open: (pupil) => {
      this.context.choosePupil(pupil);
      this.context.openView("progress");
    },
    log: (pupil) => {
      this.#ask(pupil);
    },
  });
  readonly #typeIn = make("button", { type: "button" }, "Type in a score");
  readonly #notice = new TakeBack(
    () => this.#context,
    () => {
      if (this.#overview.hidden) this.#tables.focus();
      else if (this.#list.element.hidden) this.#typeIn.focus();
      else this.#list.focus();
    },
  );
  readonly #saving = new CaseloadSaving((words) => {
    this.#notice.tell(words);
  });
  readonly #waiting = new WaitingDates(() => {
    this.context.openView("workbook");
  });
  readonly #tables = new TablesPanel((written) => {
    this.#takeTables(written);
  });
  readonly #checks = new CaseloadChecks(() => {
    this.#drawList();
  });
  readonly #overview = make("div");
  readonly #choice = new LogChoice({
    run: ({ view, task }) => {
      const pupil = this.#pupil;
      this.#show("list");
      if (pupil !== undefined) this.context.choosePupil(pupil);
      this.context.openView(view, { task });
    },
    typeIn: () => {
      void this.#typeScore(this.#pupil);
    },
    leave: () => {
      this.#leave();
    },
  });
  #form: ScoreForm | undefined;

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(CASELOAD_STYLES);
    this.#overview.append(
      this.#summary,
      make("div", { class: "fields" }, this.#teacherField),
      this.#keys,
      this.#list.element,
      make("div", { class: "buttons" }, this.#typeIn),
      this.#saving.element,
    );
    root.append(
      this.#loading,
      this.#problem,
      this.#notice.element,
      this.#waiting.element,
      this.#overview,
      this.#tables.element,
      this.#choice.element,
    );
    this.#teacher.addEventListener("change", () => {
      this.#drawList();
    });
    this.#typeIn.addEventListener("click", () => {
      void this.#typeScore(undefined);
    });
    this.#show("list");
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The caseload has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    if (this.#context?.sheet !== context.sheet) {
      this.#notice.tell("");
      this.#shown = "list";
    }
    this.#context = context;
    this.#draw();
  }

  #show(shown: "list" | "choice" | "form"): void {
    this.#shown = shown;
    this.#draw();
  }

  #draw(): void {
    const context = this.#context;
    const state = context?.state ?? "loading";
    const isReady = state === "ready";
    const atList = isReady && this.#shown === "list";
    const probes =
      context?.records.blocks.some(({ kind, leftOut }) => kind === "probes" && !leftOut) === true;
    this.#loading.hidden = state !== "loading";
    this.#problem.hidden = typeof state === "string";
    setText(this.#problem, typeof state === "string" ? "" : state.problem);
    setGone(this.#choice.element, !isReady || this.#shown !== "choice");
    if (this.#form !== undefined) this.#form.element.hidden = !isReady || this.#shown !== "form";
    this.#overview.hidden = !atList || !probes;
    this.#tables.element.hidden = !atList;
    if (context === undefined || !isReady) return;
    this.#waiting.show(atList ? context.records.blocks : []);
    this.#drawList();
    void this.#tables.show(context, !probes);
  }

  #drawList(): void {
    const context = this.#context;
    if (context === undefined) return;
    const all = caseloadOf(context.records, context.today, context.cells, this.#checks.of(context));
    const teachers = listTeachers(all);
    this.#teacherField.hidden = teachers.length < 2;
    const chosen = teachers.includes(this.#teacher.value) ? this.#teacher.value : "";
    fillSelect(
      this.#teacher,
      [
        { value: "", label: "All teachers" },
        ...teachers.map((teacher) => ({ value: teacher, label: teacher })),
      ],
      chosen,
    );
    const lines = linesOfTeacher(all, chosen);
    const needy = lines.filter(({ needs }) => needs.length > 0).length;
    setText(
      this.#summary,
      lines.length === 0
        ? "No pupil is named in this workbook yet. Type in a score, or name the pupils in the table Pupils."
        : `${beginSentence(countInWords(lines.length, "pupil"))}; ${countInWords(needy, "needs", "need")} something of you.`,
    );
    const isEmpty = lines.length === 0;
    this.#keys.hidden = isEmpty;
    this.#list.element.hidden = isEmpty;
    this.#saving.element.hidden = isEmpty;
    if (!isEmpty) this.#list.show(lines, this.#checks.isRunning);
    this.#saving.show(context, chosen);
  }

  #ask(pupil: string): void {
    this.#pupil = pupil;
    // While she chooses; a failure is said when she asks for the form.
    this.#loadForm().catch(() => undefined);
    this.#show("choice");
    this.#choice.ask(pupil);
  }

  async #typeScore(pupil: string | undefined): Promise<void> {
    this.#pupil = pupil;
    let form: ScoreForm;
    try {
      form = await this.#loadForm();
    } catch {
      this.context.say(NO_FORM);
      return;
    }
    this.#show("form");
    form.begin(pupil, this.context);
  }

  /** The form comes when a score is first typed in: the first view is small without it. */
  async #loadForm(): Promise<ScoreForm> {
    const module = await import(/* webpackChunkName: "score" */ "./score-form");
    if (this.#form !== undefined) return this.#form;
    this.#form = new module.ScoreForm({
      write: (probe) => this.#write(probe),
      leave: () => {
        this.#leave();
      },
    });
    this.shadowRoot?.append(this.#form.element);
    return this.#form;
  }

  #leave(): void {
    this.#show("list");
    if (this.#pupil === undefined) this.#typeIn.focus();
    else this.#list.focus(this.#pupil);
  }

  async #write(probe: Unplaced<Probe>): Promise<boolean> {
    const written = await writeEntries(this.context, { probes: [probe] });
    if (written === undefined) return false;
    this.#pupil = probe.pupil;
    this.#notice.tell(written.words, () => written.undo());
    this.#show("list");
    this.#list.focus(probe.pupil);
    return true;
  }

  #takeTables(written: TablesWritten | string): void {
    if (typeof written === "string") this.#notice.tell(written);
    else this.#notice.tell(written.words, () => written.undo());
    if (typeof written === "string") this.#tables.focus();
    else this.#notice.focus();
  }
}

/** Makes the view, and defines its element first where it is not. */
export const makeCaseloadView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, CaseloadView);
  return new CaseloadView();
};
