import type { Probe } from "../../src/domain/probe/probe";
import { normaliseName } from "../../src/domain/progress/series";
import type { Day } from "../../src/domain/units";
import type { Unplaced } from "../../src/records/new-entries";
import { formatIsoDay } from "../../src/records/day-style";
import { make } from "./markup";
import type { PaneContext } from "./pane-context";
import { readScore, SCORE_FIELDS } from "./score-entry";
import type { ScoreField, TypedScore } from "./score-entry";

const TASKS = ["read aloud", "heard and brailled", "copied", "signs named", "tracking", "hand use"];
const CODES = ["contracted", "uncontracted"];
const MEDIA = ["braille", "display", "print", "braillewriter", "slate"];
const UNITS = ["signs", "words", "cells", "answers"];
const SUPPORTS = ["none", "prompted", "finger guided", "told words"];

/** What a field is called, what may be chosen beside other words, and what is said beneath it. */
const FIELDS: Readonly<
  Record<ScoreField, { readonly label: string; readonly offers?: readonly string[]; readonly wide?: true }>
> = {
  pupil: { label: "Pupil (code or initials)" },
  date: { label: "Date" },
  task: { label: "Task", offers: TASKS },
  code: { label: "Code", offers: CODES },
  medium: { label: "Medium", offers: MEDIA },
  material: { label: "Material", wide: true },
  words: { label: "Words attempted" },
  errors: { label: "Errors" },
  seconds: { label: "Time: seconds or m:ss" },
  correct: { label: "Number correct" },
  opportunities: { label: "Out of" },
  unit: { label: "Counted in", offers: UNITS },
  support: { label: "Support given", offers: SUPPORTS },
  note: { label: "Note", wide: true },
};
const GROUPS: readonly (readonly [string, readonly ScoreField[]])[] = [
  ["What was done", ["pupil", "date", "task", "code", "medium", "material"]],
  ["Words read or brailled", ["words", "errors"]],
  ["Or answers counted", ["correct", "opportunities", "unit"]],
  ["Beside it", ["seconds", "support", "note"]],
];

/** What is asked for from the form. */
export interface ScoreActions {
  write(probe: Unplaced<Probe>): Promise<boolean>;
  leave(): void;
}

/** A short form that writes one probe into her own table. */
export class ScoreForm {
  readonly element = make("form", { novalidate: true, "aria-labelledby": "score-title" });
  readonly #title = make("h3", { id: "score-title" }, "Type in a score");
  readonly #inputs = new Map<ScoreField, HTMLInputElement>();
  readonly #lists = new Map<ScoreField, HTMLDataListElement>();
  readonly #problem = make("p", { role: "alert", class: "notice", id: "score-problem" });
  #today = 0 as Day;
  #isWriting = false;

  constructor(actions: ScoreActions) {
    this.#problem.hidden = true;
    const save = make("button", { type: "submit", class: "main" }, "Write into the workbook");
    const leave = make("button", { type: "button" }, "Back without writing");
    leave.addEventListener("click", () => {
      actions.leave();
    });
    this.element.append(
      this.#title,
      ...GROUPS.map(([legend, fields]) =>
        make(
          "fieldset",
          {},
          make("legend", {}, legend),
          make("div", { class: "fields" }, ...fields.map((field) => this.#makeField(field))),
        ),
      ),
      this.#problem,
      make("div", { class: "buttons" }, save, leave),
    );
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      void this.#submit(save, actions);
    });
    this.element.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || event.defaultPrevented) return;
      event.preventDefault();
      actions.leave();
    });
  }

  /** Begins a score: the pupil's last probe says task, code and medium; the numbers are hers. */
  begin(pupil: string | undefined, { records, pupils, today }: PaneContext): void {
    this.#today = today;
    this.#setProblem(undefined);
    const hers = records.probes.filter((probe) => normaliseName(probe.pupil) === normaliseName(pupil));
    const last = hers.reduce<Probe | undefined>(
      (best, probe) => (best === undefined || probe.day >= best.day ? probe : best),
      undefined,
    );
    const start: Partial<Record<ScoreField, string>> = {
      pupil: pupil ?? "",
      date: formatIsoDay(today),
      task: last?.task ?? "",
      code: last?.code ?? "",
      medium: last?.medium ?? "",
      unit: last?.words === undefined ? (last?.unit ?? "") : "",
    };
    for (const [field, input] of this.#inputs) input.value = start[field] ?? "";
    this.#offer("pupil", pupils);
    this.#offer("material", distinct(hers.map(({ material }) => material)));
    this.#offer("task", distinct([...TASKS, ...records.probes.map(({ task }) => task)]));
    this.focus(pupil === undefined ? "pupil" : "words");
  }

  focus(field: ScoreField): void {
    this.#inputs.get(field)?.focus();
  }

  #makeField(field: ScoreField): HTMLElement {
    const { label, offers, wide } = FIELDS[field];
    const isNumber = ["words", "errors", "correct", "opportunities"].includes(field);
    const input = make("input", {
      type: field === "date" ? "date" : "text",
      name: field,
      autocomplete: "off",
      ...(isNumber ? { inputmode: "decimal" } : {}),
    });
    this.#inputs.set(field, input);
    const shown = make("label", { class: wide ? "field wide" : "field" }, label, input);
    if (offers !== undefined || field === "pupil" || field === "material") {
      const list = make("datalist", { id: `score-${field}` });
      input.setAttribute("list", list.id);
      this.#lists.set(field, list);
      this.#offer(field, offers ?? []);
      shown.append(list);
    }
    return shown;
  }

  #offer(field: ScoreField, words: readonly string[]): void {
    this.#lists.get(field)?.replaceChildren(...words.map((word) => make("option", { value: word })));
  }

  #typed(): TypedScore {
    return Object.fromEntries(
      SCORE_FIELDS.map((field) => [field, this.#inputs.get(field)?.value ?? ""]),
    ) as Record<ScoreField, string>;
  }

  #setProblem(problem: { readonly message: string; readonly field: ScoreField } | undefined): void {
    for (const input of this.#inputs.values()) {
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
    }
    this.#problem.hidden = problem === undefined;
    this.#problem.textContent = problem?.message ?? "";
    const input = problem && this.#inputs.get(problem.field);
    input?.setAttribute("aria-invalid", "true");
    input?.setAttribute("aria-describedby", this.#problem.id);
    input?.focus();
  }

  async #submit(save: HTMLButtonElement, actions: ScoreActions): Promise<void> {
    if (this.#isWriting) return;
    const read = readScore(this.#typed(), this.#today);
    this.#setProblem(read.ok ? undefined : read.fault);
    if (!read.ok) return;
    this.#isWriting = true;
    save.ariaDisabled = "true";
    await actions.write(read.value);
    this.#isWriting = false;
    save.ariaDisabled = null;
  }
}

const distinct = (words: readonly (string | undefined)[]): readonly string[] => {
  const names = new Map<string, string>();
  for (const word of words) {
    const key = normaliseName(word);
    if (word !== undefined && key !== "" && !names.has(key)) names.set(key, word.trim());
  }
  return [...names.values()];
};
