import { drawSpark } from "../../src/charts/spark-line";
import type { CaseloadLine } from "../../src/domain/caseload/caseload";
import { normaliseName } from "../../src/domain/progress/series";
import { describeLine } from "./caseload-lines";
import { make } from "./markup";

/** What is asked for from the list. */
export interface CaseloadActions {
  open(pupil: string): void;
  log(pupil: string): void;
}

const HEADINGS = [
  "Pupil",
  "Needed",
  "Last days",
  "Last value",
  "Verdict",
  "Last probe",
  "Signs due for a check",
  "Probes due this week",
  "Minutes this week",
  "Minutes in twelve weeks",
  "Log",
];

interface DrawnRow {
  readonly signature: string;
  readonly element: HTMLElement;
}

/**
 * The lines of a caseload as a grid: one stop of the Tab key, arrow up and down from pupil to pupil, left and right
 * through the cells of one; Enter opens the pupil, P logs a probe.
 */
export class CaseloadList {
  readonly element = make("div", {
    role: "grid",
    class: "lines",
    "aria-label": "Caseload",
    "aria-describedby": "caseload-keys",
  });
  readonly #head = make(
    "div",
    { role: "row", class: "spoken" },
    ...HEADINGS.map((heading) => make("span", { role: "columnheader" }, heading)),
  );
  readonly #rows = new Map<string, DrawnRow>();
  #current = "";

  constructor(private readonly actions: CaseloadActions) {
    this.element.append(this.#head);
    this.element.addEventListener("keydown", (event) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (this.#press(event.key, event.target as HTMLElement)) event.preventDefault();
    });
    this.element.addEventListener("focusin", ({ target }) => {
      const row = (target as HTMLElement).closest<HTMLElement>(".line");
      if (row !== null) this.#setCurrent(row.dataset["pupil"] ?? "");
    });
  }

  /**
   * Draws the lines; a row that says the same stays, and so does the focus.
   *
   * @param isOpen - true while it is not known yet which signs are due
   */
  show(lines: readonly CaseloadLine[], isOpen: boolean): void {
    const focused = (this.element.getRootNode() as ShadowRoot).activeElement;
    const focusedRow = this.element.contains(focused) ? focused?.closest<HTMLElement>(".line") : undefined;
    const names = new Set<string>();
    const rows = lines.map((line) => {
      const name = normaliseName(line.pupil);
      names.add(name);
      const signature = JSON.stringify([line.pupil, describeLine(line, isOpen), line.spark, goalEnds(line)]);
      const before = this.#rows.get(name);
      if (before?.signature === signature) return before.element;
      const element = this.#drawRow(line, name, isOpen);
      this.#rows.set(name, { signature, element });
      return element;
    });
    for (const name of this.#rows.keys()) if (!names.has(name)) this.#rows.delete(name);
    const drawn = this.#lines();
    if (drawn.length !== rows.length || rows.some((row, place) => row !== drawn[place]))
      this.element.replaceChildren(this.#head, ...rows);
    this.#setCurrent(names.has(this.#current) ? this.#current : (rows[0]?.dataset["pupil"] ?? ""));
    if (focusedRow && !this.element.contains((this.element.getRootNode() as ShadowRoot).activeElement))
      this.focus();
  }

  /** Puts the focus on a pupil's line, or on the line last looked at. */
  focus(pupil?: string): void {
    const name = normaliseName(pupil);
    if (this.#rows.has(name)) this.#setCurrent(name);
    this.#rows.get(this.#current)?.element.focus();
  }

  #lines(): readonly HTMLElement[] {
    return [...this.element.querySelectorAll<HTMLElement>(".line")];
  }

  #setCurrent(name: string): void {
    this.#current = name;
    for (const row of this.#lines()) row.tabIndex = row.dataset["pupil"] === name ? 0 : -1;
  }

  #press(key: string, target: HTMLElement): boolean {
    const lines = this.#lines();
    const row = target.closest<HTMLElement>(".line");
    const at = row === null ? -1 : lines.indexOf(row);
    const pupil = row?.dataset["name"];
    if (row === null || pupil === undefined) return false;
    const isButton = target.localName === "button";
    switch (key) {
      case "Enter":
        if (isButton) return false;
        this.actions.open(pupil);
        return true;
      case "p":
      case "P":
        this.actions.log(pupil);
        return true;
      case "ArrowDown":
      case "ArrowUp":
        (lines[at + (key === "ArrowDown" ? 1 : -1)] ?? row).focus();
        return true;
      case "Home":
      case "End":
        lines.at(key === "Home" ? 0 : -1)?.focus();
        return true;
      case "ArrowRight":
      case "ArrowLeft":
        moveInRow(row, target, key === "ArrowRight" ? 1 : -1);
        return true;
      default:
        return false;
    }
  }

  #drawRow(line: CaseloadLine, name: string, isOpen: boolean): HTMLElement {
    const words = describeLine(line, isOpen);
    const key = line.summary?.trajectory.series.key;
    const spark = make("div", { role: "gridcell", class: "fact spark", tabindex: "-1" });
    if (key && line.spark.length > 0) {
      // Numbers and words of ours alone: no text of hers is in it.
      spark.innerHTML = drawSpark(line.spark, key.measure, goalEnds(line));
    } else spark.append(make("span", { class: "quiet" }, "no chart yet"));
    const who = make("button", { type: "button", tabindex: "-1", class: "who" }, line.pupil);
    who.addEventListener("click", () => {
      this.actions.open(line.pupil);
    });
    const log = make("button", { type: "button", tabindex: "-1" }, "Log a probe");
    log.addEventListener("click", () => {
      this.actions.log(line.pupil);
    });
    const row = make(
      "div",
      {
        role: "row",
        class: "line",
        tabindex: "-1",
        "data-pupil": name,
        "data-name": line.pupil,
        "aria-keyshortcuts": "Enter P",
        // Heard on the way from pupil to pupil; all the rest is in the cells.
        "aria-label": [line.pupil, words.need, ...words.furtherNeeds].join(". ").replaceAll("..", "."),
      },
      make("div", { role: "gridcell" }, who),
      make(
        "div",
        { role: "gridcell", class: "need", tabindex: "-1" },
        make("p", {}, words.need),
        ...words.furtherNeeds.map((need) => make("p", { class: "quiet" }, need)),
      ),
      make(
        "div",
        { role: "presentation", class: "seen" },
        spark,
        fact("Last value", words.now === "" ? "no value yet" : words.now),
      ),
      make(
        "div",
        { role: "presentation", class: "facts" },
        fact("Verdict", words.verdict),
        fact("Last probe", words.lastProbe),
        fact("Due for a check", words.signsDue),
        fact("Due this week", words.probesDue),
        fact("Minutes this week", words.week),
        fact("Minutes in twelve weeks", words.period),
        make("div", { role: "gridcell", class: "act" }, log),
      ),
    );
    return row;
  }
}

const goalEnds = (line: CaseloadLine) => line.summary?.trajectory.goal;

const fact = (name: string, value: string): HTMLElement =>
  make("div", { role: "gridcell", class: "fact", tabindex: "-1" }, make("b", {}, `${name} `), value);

/** The cells of a row one after another; before the first is the row itself, and a button stands for its cell. */
function moveInRow(row: HTMLElement, from: HTMLElement, step: 1 | -1): void {
  const stops = [
    row,
    ...[...row.querySelectorAll<HTMLElement>("[role='gridcell']")].map(
      (cell) => cell.querySelector("button") ?? cell,
    ),
  ];
  (stops[stops.indexOf(from) + step] ?? from).focus();
}
