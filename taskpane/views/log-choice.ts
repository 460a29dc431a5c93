import { make } from "./markup";
import type { ViewName } from "./pane-context";

/** A probe that another view runs. */
export interface ProbeRun {
  readonly view: ViewName;
  readonly task: string;
}

const RUNS: readonly (ProbeRun & { readonly label: string })[] = [
  { view: "reading", task: "read aloud", label: "Read aloud" },
  { view: "naming", task: "signs named", label: "Signs named" },
  { view: "naming", task: "copied", label: "Copied" },
  { view: "brailled", task: "heard and brailled", label: "Heard and brailled" },
];

/** What is asked for from the choice. */
export interface LogActions {
  run(run: ProbeRun): void;
  typeIn(): void;
  leave(): void;
}

/** Which kind of probe to log for a pupil: run one now, or type in a score. */
export class LogChoice {
  readonly element = make("section", { "aria-labelledby": "log-title" });
  readonly #title = make("h3", { id: "log-title", tabindex: "-1" });
  readonly #first: HTMLButtonElement;

  constructor(actions: LogActions) {
    const buttons = RUNS.map(({ label, ...run }) =>
      button(label, () => {
        actions.run(run);
      }),
    );
    const typeIn = button("Type in a score", () => {
      actions.typeIn();
    });
    this.#first = buttons[0] ?? typeIn;
    this.element.append(
      this.#title,
      make("p", {}, "Run a probe now, or write down one that is done."),
      make("div", { class: "buttons" }, ...buttons, typeIn),
      make(
        "div",
        { class: "buttons" },
        button("Back to the caseload", () => {
          actions.leave();
        }),
      ),
    );
    this.element.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      actions.leave();
    });
  }

  /** Shows the choice for a pupil, with the focus on its first button. */
  ask(pupil: string): void {
    this.#title.textContent = `Log a probe for ${pupil}`;
    this.#first.focus();
  }
}

const button = (label: string, act: () => void): HTMLButtonElement => {
  const made = make("button", { type: "button" }, label);
  made.addEventListener("click", act);
  return made;
};
