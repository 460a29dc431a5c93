import { sumMinutes } from "../../src/domain/caseload/minutes";
import { dateOf, dayOf } from "../../src/domain/calendar";
import { HANDOUT_MEDIA } from "../../src/domain/drill/handout-file";
import { PAPER_KEYS, PAPERS } from "../../src/domain/paper";
import {
  buildReport,
  findOtherPupils,
  formatReport,
  usualStart,
  type Report,
} from "../../src/domain/progress/report";
import { joinNames } from "../../src/domain/progress/report-words";
import { normaliseName } from "../../src/domain/progress/series";
import { judgeSigns } from "../../src/domain/progress/pupil-signs";
import type { SignStanding } from "../../src/domain/progress/sign-states";
import type { Day } from "../../src/domain/units";
import { transcribeWith } from "../../src/ports/loaded-transcription";
import { HostError } from "../../src/ports/sheet";
import { HANDOUT_CODES, prepareBraille } from "./handout-braille";
import { cssPaper } from "./handout-settings";
import { make } from "./markup";
import type { PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { formatReportBrf } from "./report-braille";
import { formatReportHtml, layOutReport, makeReportPicture, makeReportSheet } from "./report-page";
import { fillSelect } from "./select-filling";
import { signsOf } from "./sign-standings";

const NAME = "cellwright-report";
const STYLES = `
.report { border: 1px solid var(--line, GrayText); border-radius: 0.3rem; padding: 0.75rem; margin-block: 0.75rem; }
.report h3 { margin-block-start: 0; }
.report svg { display: block; inline-size: 100%; block-size: auto; margin-block: 0.6rem; }
`;
const EMPTY = "There is no pupil to report on yet. Log a probe or note a goal; the report then appears here.";
const LOADING = "Reading the workbook. The report appears here in a moment.";
const BROKEN = "That did not work. Select the report above and copy it with Control+C, or try once more.";
const NO_ENGINE =
  "The braille engine could not be loaded. Check that all files of the build are on the server, then try once more.";
const TOO_LONG =
  "Given to the printer. The report is longer than a page: shorten your own sentences, or choose a shorter period.";
/** Cells a line where the list of pupils says none. */
const USUAL_CELLS = 40;

/** One page for a family and the team: chosen days, plain words, her own sentences; printed, as text, and in braille. */
export class ReportView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  #report: Report | undefined;
  #standings:
    { readonly to: Day; readonly of: PaneContext; readonly list: readonly SignStanding[] } | undefined;
  readonly #from = make("input", { type: "date" });
  readonly #to = make("input", { type: "date" });
  readonly #own = make("textarea", { rows: "3" });
  readonly #paper = make("select");
  readonly #code = make("select");
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #state = make("p", { role: "status" });
  readonly #page = make("section", { class: "report", "aria-label": "The report" });
  readonly #body = make("div");
  readonly #buttons = make("div", { class: "buttons" });

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(STYLES);
    this.#problem.hidden = true;
    fillSelect(
      this.#paper,
      PAPER_KEYS.filter((key) => key !== "braille").map((key) => ({ value: key, label: PAPERS[key].name })),
      "a4",
    );
    fillSelect(
      this.#code,
      HANDOUT_CODES.map((code) => ({ value: code, label: code })),
      "contracted",
    );
    const field = (name: string, control: HTMLElement, wide = false): HTMLLabelElement =>
      make("label", { class: wide ? "field wide" : "field" }, name, control);
    for (const control of [this.#from, this.#to, this.#own])
      control.addEventListener("input", () => {
        this.#draw();
      });
    this.#addButtons();
    this.#body.append(
      make(
        "div",
        { class: "fields" },
        field("From", this.#from),
        field("To", this.#to),
        field("Your own sentences, if any", this.#own, true),
      ),
      this.#problem,
      this.#page,
      make("h3", {}, "Hand it over"),
      make(
        "div",
        { class: "fields" },
        field("Paper", this.#paper),
        field("Code of the braille file", this.#code),
      ),
      this.#buttons,
    );
    root.append(this.#state, this.#body);
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of reports has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    const isOther = normaliseName(before?.pupil) !== normaliseName(context.pupil);
    if (isOther) this.#own.value = "";
    if (isOther || this.#from.value === "") this.#setPeriod(context);
    this.#draw();
    if (before === undefined) void this.#loadEngine(context);
  }

  #setPeriod({ records, pupil, today }: PaneContext): void {
    const own = records.goals.filter((goal) => normaliseName(goal.pupil) === normaliseName(pupil));
    this.#from.value = formatIso(usualStart(own, today));
    this.#to.value = formatIso(today);
  }

  /** Words of probes tell of signs only with the engine. */
  async #loadEngine({ translators }: PaneContext): Promise<void> {
    const loaded = await Promise.allSettled(HANDOUT_CODES.map((code) => translators.translator(code)));
    if (loaded.every(({ status }) => status === "rejected")) return;
    this.#standings = undefined;
    this.#draw();
  }

  #draw(): void {
    const { pupil, state, pupils } = this.context;
    const problem = typeof state === "object" ? state.problem : state === "loading" ? LOADING : EMPTY;
    const text = pupil === undefined || typeof state === "object" ? problem : "";
    if (this.#state.textContent !== text) this.#state.textContent = text;
    this.#state.hidden = text === "";
    this.#body.hidden = pupil === undefined;
    if (pupil === undefined) return;
    const [from, to] = [parseIso(this.#from.value), parseIso(this.#to.value)];
    if (from === undefined || to === undefined || from > to) {
      this.#refuse("Choose two days, the first not after the last.");
      return;
    }
    const others = findOtherPupils(this.#own.value, pupils, pupil);
    if (others.length > 0)
      this.#refuse(
        `Your sentences name ${joinNames(others)}. A report tells of one pupil only: take the name out.`,
      );
    else this.#problem.hidden = true;
    this.#report = this.#build(pupil, from, to, others.length > 0 ? "" : this.#own.value);
    this.#page.replaceChildren(...layOutReport(this.#report, "pane"));
  }

  #build(pupil: string, from: Day, to: Day, own: string): Report {
    const { records, cells } = this.context;
    const isOwn = (record: { readonly pupil: string }): boolean =>
      normaliseName(record.pupil) === normaliseName(pupil);
    const about = records.pupils.find(isOwn);
    return buildReport({
      ...{ pupil, from, to, own, probes: records.probes.filter(isOwn), goals: records.goals.filter(isOwn) },
      standings: this.#standingsOn(to, pupil),
      minutes: sumMinutes(records.lessons.filter(isOwn), about?.minutesPlanned, from, to),
      ...(cells && { cells }),
    });
  }

  /** Kept while she types: the states of all signs take longer than a key should. */
  #standingsOn(to: Day, pupil: string): readonly SignStanding[] {
    const context = this.context;
    if (this.#standings?.to === to && this.#standings.of === context) return this.#standings.list;
    const list =
      to === context.today
        ? signsOf(context, pupil).standings
        : judgeSigns(context.records, pupil, to, transcribeWith(context.translators), (occasions) =>
            context.scheduler.nextCheck(occasions),
          ).standings;
    this.#standings = { to, of: context, list };
    return list;
  }

  #refuse(problem: string): void {
    if (this.#problem.textContent !== problem) this.#problem.textContent = problem;
    this.#problem.hidden = false;
  }

  #addButtons(): void {
    this.#add("Print", async (report, context) => {
      const paper = PAPER_KEYS.find((key) => key === this.#paper.value) ?? "a4";
      const { sheet, fits } = makeReportSheet(report, PAPERS[paper], document.body);
      await context.printPages([sheet], cssPaper(paper));
      return fits ? "Given to the printer." : TOO_LONG;
    }).classList.add("main");
    this.#add("Save as text", async (report, context) => {
      await context.saveFile("report.txt", new Blob([formatReport(report)], { type: "text/plain" }));
      return "The text is saved.";
    });
    this.#add("Copy", async (report, context) => {
      await context.copy({ plain: formatReport(report), html: formatReportHtml(report) });
      return "Copied. Paste it into a letter or a message.";
    });
    this.#add("Save as a document (.docx)", async (report, context) => {
      const paper = PAPER_KEYS.find((key) => key === this.#paper.value) ?? "a4";
      const picture = await makeReportPicture(report).catch(() => undefined);
      const bytes = await context.documents.writeReport(report, paper, picture);
      await context.saveFile("report.docx", new Blob([new Uint8Array(bytes)], { type: HANDOUT_MEDIA.docx }));
      return picture === undefined && report.chart !== undefined
        ? "The document is saved, without the chart: this window makes no picture of it."
        : "The document is saved.";
    });
    this.#add("Save in braille (.brf)", async (report, context) => {
      const code = HANDOUT_CODES.find((each) => each === this.#code.value) ?? "contracted";
      const braille = await prepareBraille(context.translators, context.records, context.pupil, code).catch(
        () => undefined,
      );
      if (braille === undefined) throw new HostError(NO_ENGINE);
      const about = context.records.pupils.find(
        ({ pupil }) => normaliseName(pupil) === normaliseName(context.pupil),
      );
      const text = formatReportBrf(report, braille, about?.cellsPerLine ?? USUAL_CELLS);
      if (!text.ok) throw new HostError(text.fault.message);
      await context.saveFile("report.brf", new Blob([text.value], { type: HANDOUT_MEDIA.brf }));
      return "The braille file is saved. It is machine translated, not proofread.";
    });
  }

  #add(name: string, act: (report: Report, context: PaneContext) => Promise<string>): HTMLButtonElement {
    const button = make("button", { type: "button" }, name);
    button.addEventListener("click", () => {
      const report = this.#report;
      if (report === undefined || button.hasAttribute("aria-disabled")) return;
      button.setAttribute("aria-disabled", "true");
      act(report, this.context)
        .then((done) => {
          this.context.say(done);
        })
        .catch((error: unknown) => {
          this.#refuse(error instanceof HostError ? error.message : BROKEN);
          this.context.say(error instanceof HostError ? error.message : BROKEN);
        })
        .finally(() => {
          button.removeAttribute("aria-disabled");
        });
    });
    this.#buttons.append(button);
    return button;
  }
}

/** A day as a field for dates holds it. */
const formatIso = (day: Day): string => {
  const { year, month, date } = dateOf(day);
  return [String(year).padStart(4, "0"), ...[month, date].map((part) => String(part).padStart(2, "0"))].join(
    "-",
  );
};

const parseIso = (text: string): Day | undefined => {
  const [year = NaN, month = NaN, date = NaN] = text.split("-").map(Number);
  return dayOf({ year, month, date });
};

/** Makes the view, and defines its element first where it is not. */
export const makeReportView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, ReportView);
  return new ReportView();
};
