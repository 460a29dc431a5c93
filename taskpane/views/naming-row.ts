import type { Sign } from "../../src/domain/contraction/sign";
import { SIGN_MARKS, type SignMark } from "../../src/domain/probe/marked-signs";
import { cellsAlone, otherNames } from "../../src/domain/probe/sign-row";
import { formatDots } from "../../src/domain/braille/cell";
import { make } from "./markup";

/** The key of each mark. */
export const SIGN_KEYS: Readonly<Record<SignMark, string>> = {
  correct: "c",
  incorrect: "n",
  prompted: "p",
  "no response": "r",
};
/** Each mark as she reads and hears it. */
export const MARK_WORDS: Readonly<Record<SignMark, string>> = {
  correct: "correct",
  incorrect: "not correct",
  prompted: "prompted",
  "no response": "no response",
};
/** What stands at a marked sign, and what is heard beside it. */
const SHOWN: Readonly<Record<SignMark, string>> = {
  correct: "✓",
  incorrect: "✗ not",
  prompted: "prompted",
  "no response": "no response",
};
const SPOKEN_REST: Readonly<Record<SignMark, string>> = {
  correct: " correct",
  incorrect: " correct",
  prompted: "",
  "no response": "",
};

const MARK_OF_KEY = new Map(SIGN_MARKS.map((mark) => [SIGN_KEYS[mark], mark]));

/** What a listener does in the row, by key or by touch. */
export interface RowActions {
  mark(place: number, mark: SignMark): void;
  /** takes the last mark off */
  drop(): void;
  /** Enter: start, or stop */
  enter(): void;
}

export const NAMING_ROW_STYLES = `
.row-of-signs { display: flex; flex-wrap: wrap; gap: 0.35rem; padding: 0.4rem; border: 1px solid var(--line, GrayText); border-radius: 0.3rem; max-block-size: min(60vh, 19rem); overflow-y: auto; scroll-padding-block: 2.5rem; touch-action: manipulation; }
.item { display: grid; justify-items: center; align-content: start; min-inline-size: 4.2rem; max-inline-size: 8rem; padding: 0.25rem 0.35rem; border: 1px solid transparent; border-radius: 0.25rem; cursor: pointer; text-align: center; overflow-wrap: normal; }
.item .cells { font-size: 2em; line-height: 1.25; letter-spacing: 0.05em; }
.item .name { font-weight: 600; }
.item small { color: var(--quiet, inherit); }
.item .mark { min-block-size: 1.5em; }
.item[data-mark] { border-color: var(--line, GrayText); }
.item[data-mark="incorrect"], .item[data-mark="no response"] { border: 2px solid currentColor; }
.item[data-mark="prompted"] { border: 2px dashed currentColor; }
.item[aria-current="true"] { box-shadow: inset 0 -0.25rem 0 var(--accent, currentColor); }
@media (forced-colors: active) { .item:not([data-mark]) { border-color: Canvas; } }
.item:focus-visible { outline: 3px solid var(--focus, Highlight); outline-offset: 0; }
.marks { display: grid; grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr)); gap: 0.4rem; margin-block: 0.5rem; }
.marks button { min-block-size: 2.75rem; }
`;

/**
 * A row of signs to be marked one by one: one tab stop, arrow keys from sign to sign, one key a mark. A sign can be marked
 * when all before it are.
 */
export class NamingRow {
  readonly element = make("div");
  readonly #row = make("div", { class: "row-of-signs", role: "listbox", "aria-label": "Signs of the row" });
  readonly #buttons = make("div", { class: "marks", role: "group", "aria-label": "Mark the sign in turn" });
  #marks: readonly SignMark[] = [];
  #items: HTMLElement[] = [];
  #here = 0;

  constructor(private readonly actions: RowActions) {
    this.element.append(this.#row, this.#buttons);
    for (const mark of SIGN_MARKS) {
      const button = make(
        "button",
        { type: "button", "aria-keyshortcuts": SIGN_KEYS[mark] },
        `${MARK_WORDS[mark]} (${SIGN_KEYS[mark]})`,
      );
      button.addEventListener("click", () => {
        this.actions.mark(this.#here, mark);
      });
      this.#buttons.append(button);
    }
    this.#row.addEventListener("keydown", (event) => {
      this.#hearKey(event);
    });
    this.#row.addEventListener("click", (event) => {
      const item = event.target instanceof Element ? event.target.closest<HTMLElement>(".item") : null;
      if (item !== null) this.focus(this.#items.indexOf(item));
    });
    this.#row.addEventListener("focusin", (event) => {
      const place = this.#items.findIndex((item) => item === event.target);
      if (place >= 0) this.#setHere(place);
    });
  }

  /** Shows a row without marks. */
  show(signs: readonly Sign[]): void {
    this.#marks = [];
    this.#here = 0;
    this.#items = signs.map((sign, place) => {
      const item = make(
        "div",
        { class: "item", role: "option", tabindex: place === 0 ? "0" : "-1" },
        make("span", { class: "cells", "aria-hidden": "true" }, cellsAlone(sign)),
        make("span", { class: "name" }, [sign.name, ...otherNames(sign)].join(" or ")),
        // Spaces part the words for screen readers; a grid does not show them.
        " ",
        make("small", {}, `dots ${formatDots(cellsAlone(sign))}`),
        " ",
        make("span", { class: "mark" }),
      );
      return item;
    });
    this.#row.replaceChildren(...this.#items);
  }

  /** Shows marks; only items whose mark changed are touched. The sign in turn follows a mark that was added. */
  showMarks(marks: readonly SignMark[]): void {
    const before = this.#marks;
    this.#marks = marks;
    for (let place = 0; place < Math.max(before.length, marks.length); place += 1)
      if (before[place] !== marks[place]) this.#draw(place);
  }

  /** Whether marks can be set: the buttons are there or away. */
  set canMark(can: boolean) {
    this.#buttons.hidden = !can;
  }

  /** Moves to a sign; the focus goes along only where it is in the row. */
  turnTo(place: number): void {
    const wanted = Math.max(0, Math.min(place, this.#items.length - 1));
    const isInRow = this.hasFocus;
    this.#setHere(wanted);
    if (isInRow) this.#items[wanted]?.focus();
    else this.#items[wanted]?.scrollIntoView({ block: "nearest" });
  }

  /** Whether the keys go to the row; where not, the sign in turn has to be said. */
  get hasFocus(): boolean {
    return this.#items.some((item) => item.matches(":focus"));
  }

  focus(place = this.#here): void {
    this.#setHere(Math.max(0, Math.min(place, this.#items.length - 1)));
    this.#items[this.#here]?.focus();
  }

  #draw(place: number): void {
    const item = this.#items[place];
    if (item === undefined) return;
    const mark = this.#marks[place];
    const shown = item.querySelector(".mark");
    shown?.replaceChildren(
      ...(mark === undefined ? [] : [SHOWN[mark], make("span", { class: "spoken" }, SPOKEN_REST[mark])]),
    );
    if (mark === undefined) item.removeAttribute("data-mark");
    else item.dataset["mark"] = mark;
  }

  #setHere(place: number): void {
    const before = this.#items[this.#here];
    if (before) {
      before.tabIndex = -1;
      before.removeAttribute("aria-current");
    }
    this.#here = place;
    const item = this.#items[place];
    if (item) {
      item.tabIndex = 0;
      item.setAttribute("aria-current", "true");
    }
  }

  #hearKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || this.#items.length === 0) return;
    const mark = MARK_OF_KEY.get(event.key.toLowerCase());
    if (mark !== undefined) this.actions.mark(this.#here, mark);
    else if (event.key === "Backspace") this.actions.drop();
    else if (event.key === "Enter") this.actions.enter();
    else {
      const place = this.#placeFor(event.key);
      if (place === undefined) return;
      this.focus(place);
    }
    event.preventDefault();
  }

  #placeFor(key: string): number | undefined {
    switch (key) {
      case "ArrowRight":
      case "ArrowDown":
        return this.#here + 1;
      case "ArrowLeft":
      case "ArrowUp":
        return this.#here - 1;
      case "Home":
        return 0;
      case "End":
        return this.#items.length - 1;
      default:
        return undefined;
    }
  }
}
