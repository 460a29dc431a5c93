import type { ChartPicture } from "../../src/charts/chart-picture";
import { drawTrajectory } from "../../src/charts/trajectory";
import type { Probe } from "../../src/domain/probe/probe";
import type { Goal } from "../../src/domain/progress/goal";
import type { CellSource } from "../../src/domain/progress/measure";
import {
  buildSeries,
  describeSeries,
  normaliseName,
  type Measure,
  type Series,
  type SeriesPoint,
} from "../../src/domain/progress/series";
import { buildTrajectory, type Trajectory } from "../../src/domain/progress/trajectory";
import type { ScaleKind } from "../../src/charts/axis-scale";
import { plainTrajectory } from "../../src/charts/plain-chart";
import { putChartsInSheet } from "./chart-in-sheet";
import { PictureTools, type PictureServices } from "./picture-tools";
import { fillSelect, setText } from "./select-filling";
import { paneStyles } from "./pane-styles";
import { resolveChoice, type ChoiceOption, type TrajectoryChoice } from "./trajectory-choice";
import { buildMultiples, chartsForSheet, sayPutAll } from "./trajectory-multiples";
import { TRAJECTORY_STYLES } from "./trajectory-styles";
import { buildTable, makeText } from "./trajectory-table";

/** What the view has to show beside a graph. */
export type TrajectoryState = "ready" | "loading" | { readonly problem: string };

/** Where a chosen probe stands: the detail of the event `point-chosen`. */
export type PointChosen = Probe["source"];

const EMPTY =
  "No probes yet. Open the sheet that holds your probes, or type a date, a pupil and a score in one: the graph then appears here.";
const LOADING = "Reading the probes of this workbook. The graph appears here in a moment.";
const SCALES: readonly (ChoiceOption & { readonly value: ScaleKind })[] = [
  { value: "equal-interval", label: "Equal steps" },
  { value: "ratio", label: "Equal factors (ratio)" },
];
/** Pictures are drawn no narrower and no wider than this many pixels. */
const NARROWEST = 240;
const WIDEST = 860;

/**
 * One pupil's progress: lists to choose pupil, series and measure; the verdict in words; the graph; the same in
 * sentences and as a table. Setting `probes`, `goals` or `cells` draws it anew and keeps choice and focus.
 *
 * Events (bubbling, out of the shadow root): `point-chosen` with a {@link PointChosen}, `choice-changed` with a
 * {@link TrajectoryChoice}.
 */
export class TrajectoryView extends HTMLElement {
  #probes: readonly Probe[] = [];
  #goals: readonly Goal[] = [];
  #cells: CellSource | undefined;
  #state: TrajectoryState = "ready";
  #choice: TrajectoryChoice = {};
  #series: readonly Series[] | undefined;
  #trajectory: Trajectory | undefined;
  #ofPupil: readonly Series[] = [];
  #width = 0;
  #scheduled = false;
  readonly #pupil = document.createElement("select");
  readonly #pupilField = this.#labelled("Pupil", this.#pupil);
  readonly #seriesList = document.createElement("select");
  readonly #measure = document.createElement("select");
  readonly #scaleList = document.createElement("select");
  readonly #choices = document.createElement("div");
  #scale: ScaleKind = "equal-interval";
  readonly #message = makeText("p", "");
  readonly #verdict = makeText("p", "");
  readonly #picture = document.createElement("div");
  readonly #summary = document.createElement("ul");
  readonly #cautions = document.createElement("div");
  readonly #details = document.createElement("details");
  readonly #detailsTitle = document.createElement("summary");
  #table: ChartPicture["table"] | undefined;
  readonly #scroll = document.createElement("div");
  readonly #tools = new PictureTools();
  readonly #all = document.createElement("details");
  readonly #allTitle = document.createElement("summary");
  readonly #multiples = document.createElement("div");
  readonly #allInSheet = makeText("button", "");
  readonly #resize = new ResizeObserver(() => {
    this.#fitPicture();
  });

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(TRAJECTORY_STYLES);
    this.#buildFrame(root);
  }

  /** All probes of the workbook; any order. */
  get probes(): readonly Probe[] {
    return this.#probes;
  }
  set probes(probes: readonly Probe[]) {
    this.#probes = probes;
    this.#series = undefined;
    this.#schedule();
  }

  get goals(): readonly Goal[] {
    return this.#goals;
  }
  set goals(goals: readonly Goal[]) {
    this.#goals = goals;
    this.#schedule();
  }

  /** How cells are counted; without it cells a minute are not offered. */
  get cells(): CellSource | undefined {
    return this.#cells;
  }
  set cells(cells: CellSource | undefined) {
    this.#cells = cells;
    this.#series = undefined;
    this.#schedule();
  }

  /** `loading`, or a problem as a sentence that says what to do; the last graph stays beside a problem. */
  get state(): TrajectoryState {
    return this.#state;
  }
  set state(state: TrajectoryState) {
    this.#state = state;
    this.#schedule();
  }

  get choice(): TrajectoryChoice {
    return this.#choice;
  }
  set choice(choice: TrajectoryChoice) {
    this.#choice = choice;
    this.#schedule();
  }

  /** What the pane does for it: files, the sheet, the engine. Without it a picture can only be seen and heard. */
  set services(services: PictureServices | undefined) {
    this.#tools.services = services;
    this.#allInSheet.hidden = services === undefined;
  }

  connectedCallback(): void {
    this.#resize.observe(this.#picture);
    this.#schedule();
  }

  disconnectedCallback(): void {
    this.#resize.disconnect();
  }

  #buildFrame(root: ShadowRoot): void {
    this.#choices.className = "choices";
    this.#choices.append(
      this.#pupilField,
      this.#labelled("Series", this.#seriesList),
      this.#labelled("Measure", this.#measure),
      this.#labelled("Scale", this.#scaleList),
    );
    this.#message.className = "state";
    this.#message.setAttribute("role", "status");
    this.#verdict.className = "verdict";
    this.#verdict.setAttribute("role", "status");
    this.#picture.className = "picture";
    this.#picture.addEventListener("click", (event) => {
      this.#chooseByClick(event);
    });
    this.#cautions.className = "cautions";
    this.#scroll.className = "scroll";
    this.#scroll.tabIndex = 0;
    this.#scroll.setAttribute("role", "region");
    this.#scroll.setAttribute("aria-label", "Table of probes");
    this.#details.append(this.#detailsTitle, this.#scroll);
    this.#details.addEventListener("toggle", () => {
      this.#fillTable();
    });
    this.#allInSheet.type = "button";
    this.#allInSheet.addEventListener("click", () => {
      this.#putAllInSheet();
    });
    this.#all.append(this.#allTitle, this.#allInSheet, this.#multiples);
    this.#all.addEventListener("toggle", () => {
      this.#fillMultiples();
    });
    root.append(
      this.#choices,
      this.#message,
      this.#verdict,
      this.#picture,
      this.#summary,
      this.#cautions,
      this.#tools.element,
      this.#all,
      this.#details,
    );
  }

  #labelled(text: string, select: HTMLSelectElement): HTMLLabelElement {
    const label = document.createElement("label");
    label.append(text, select);
    select.addEventListener("change", () => {
      this.#takeChoice();
    });
    return label;
  }

  /** What the new pupil or series does not offer is a wish that stays open: see resolveChoice. */
  #takeChoice(): void {
    const measure = this.#measure.value as Measure;
    this.#choice = { pupil: this.#pupil.value, series: this.#seriesList.value, measure };
    this.#scale = this.#scaleList.value === "ratio" ? "ratio" : "equal-interval";
    this.#draw();
    this.#tell("choice-changed", this.#choice);
  }

  #tell(name: string, detail: TrajectoryChoice | PointChosen): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  /** Several properties set in a row are drawn once. */
  #schedule(): void {
    if (this.#scheduled) return;
    this.#scheduled = true;
    queueMicrotask(() => {
      this.#scheduled = false;
      if (this.isConnected) this.#draw();
    });
  }

  #draw(): void {
    this.#series ??= buildSeries(this.#probes, this.#cells);
    const lists = resolveChoice(this.#series, this.#goals, this.#choice);
    setText(this.#message, this.#sayState(lists !== undefined));
    const parts = [this.#choices, this.#picture, this.#summary, this.#cautions, this.#details, this.#all];
    for (const part of parts) part.hidden = lists === undefined;
    if (lists === undefined) {
      this.#trajectory = undefined;
      this.#tools.subject = undefined;
      setText(this.#verdict, "");
      return;
    }
    fillSelect(this.#pupil, lists.pupils, lists.pupil);
    // Whoever hands over one pupil's probes has a list of pupils of its own.
    this.#pupilField.hidden = lists.pupils.length < 2;
    fillSelect(this.#seriesList, lists.series, lists.seriesName);
    fillSelect(this.#measure, lists.measures, lists.measure);
    // Shares go to 100 %: factors would say little.
    if (lists.measure === "accuracy") this.#scale = "equal-interval";
    const scales = lists.measure === "accuracy" ? SCALES.slice(0, 1) : SCALES;
    fillSelect(this.#scaleList, scales, this.#scale);
    this.#trajectory = buildTrajectory(lists.chosen, this.#goals);
    this.#drawText(this.#trajectory);
    this.#width = 0;
    this.#fitPicture();
    this.#ofPupil = this.#series.filter(
      ({ key }) => normaliseName(key.pupil) === normaliseName(lists.chosen.key.pupil),
    );
    setText(
      this.#allTitle,
      `All series of ${lists.chosen.key.pupil} beside each other (${this.#ofPupil.length})`,
    );
    setText(this.#allInSheet, sayPutAll(this.#ofPupil.length));
    this.#fillMultiples();
  }

  #sayState(hasSeries: boolean): string {
    if (this.#state === "loading") return hasSeries ? "" : LOADING;
    if (this.#state !== "ready") return this.#state.problem;
    if (hasSeries) return "";
    return this.#probes.length === 0
      ? EMPTY
      : "The probes found have no rate, accuracy or score yet: fill in words, errors and seconds, or correct and total.";
  }

  #drawText(trajectory: Trajectory): void {
    const { key } = trajectory.series;
    const word = trajectory.verdict ?? "no verdict";
    setText(this.#verdict, `${key.pupil}, ${key.measure}: ${word}`);
    const drawn = drawTrajectory(trajectory, { width: WIDEST, scale: this.#scale });
    const { summary, table } = drawn;
    this.#tools.subject = { picture: drawn, charts: [plainTrajectory(trajectory)], fileName: "progress" };
    this.#summary.replaceChildren(...summary.map((sentence) => makeText("li", sentence)));
    this.#cautions.hidden = trajectory.cautions.length === 0;
    const list = document.createElement("ul");
    list.append(...trajectory.cautions.map((caution) => makeText("li", caution)));
    this.#cautions.replaceChildren(makeText("p", "Keep in mind"), list);
    setText(this.#detailsTitle, `All probes as a table (${table.rows.length})`);
    this.#table = table;
    this.#fillTable();
  }

  /** Builds the table where it is unfolded: thousands of rows that nobody looks at would hold up the page. */
  #fillTable(): void {
    if (!this.#details.open || this.#table === undefined) {
      this.#scroll.replaceChildren();
      return;
    }
    const focused = this.shadowRoot?.activeElement;
    const jump = focused instanceof HTMLElement ? focused.dataset["jump"] : undefined;
    const choose = (point: SeriesPoint): void => {
      this.#tell("point-chosen", point.probe.source);
    };
    this.#scroll.replaceChildren(buildTable(this.#table, this.#trajectory?.series.points ?? [], choose));
    if (jump !== undefined) this.#refocus(jump);
  }

  /** Of many series those probed most: each gets a sheet of its own. */
  #putAllInSheet(): void {
    const charts = chartsForSheet(this.#ofPupil, this.#goals);
    void this.#tools.putInSheet((sheet) => putChartsInSheet(sheet, charts));
  }

  /** The small pictures are drawn where they are unfolded. */
  #fillMultiples(): void {
    if (!this.#all.open) {
      this.#multiples.replaceChildren();
      return;
    }
    const trajectories = this.#ofPupil.map((series) => buildTrajectory(series, this.#goals));
    this.#multiples.replaceChildren(
      buildMultiples(trajectories, ({ series: { key } }) => {
        this.#choice = { pupil: key.pupil, series: describeSeries(key), measure: key.measure };
        this.#draw();
        this.#seriesList.focus();
        this.#tell("choice-changed", this.#choice);
      }),
    );
  }

  /** The table was built anew: the focus goes back to the button of the same row. */
  #refocus(jump: string): void {
    for (const button of this.#scroll.querySelectorAll("button")) {
      if (button.dataset["jump"] === jump) button.focus();
    }
  }

  #fitPicture(): void {
    const room = Math.floor(this.#picture.clientWidth);
    const width = Math.max(NARROWEST, Math.min(WIDEST, room));
    if (this.#trajectory === undefined || room === 0 || width === this.#width) return;
    this.#width = width;
    const { svg } = drawTrajectory(this.#trajectory, { width, scale: this.#scale });
    const parsed = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    this.#picture.replaceChildren(document.importNode(parsed, true));
  }

  #chooseByClick(event: MouseEvent): void {
    const day = event.target instanceof Element ? event.target.getAttribute("data-day") : null;
    const point = this.#trajectory?.series.points.find(
      ({ probe, supported }) => !supported && day !== null && Math.floor(probe.day) === Number(day),
    );
    if (point !== undefined) this.#tell("point-chosen", point.probe.source);
  }
}

/** Makes `<cellwright-trajectory>` known to the page, once. */
export const defineTrajectoryView = (): void => {
  if (customElements.get("cellwright-trajectory") === undefined) {
    customElements.define("cellwright-trajectory", TrajectoryView);
  }
};
