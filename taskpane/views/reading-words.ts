import { MARK_KINDS, NO_NOTES, additionAfter, markAt } from "../../src/domain/probe/reading-marks";
import type { MarkKind, ReadingNotes } from "../../src/domain/probe/reading-marks";
import type { PlacedWord } from "../../src/domain/probe/reading-words";
import { make } from "./markup";

/** The key of each mark: its first letter, or one inside the word where that is taken. */
export const MARK_KEYS: Readonly<Record<MarkKind, string>> = {
  misread: "m",
  "left out": "o",
  swapped: "s",
  told: "t",
  "self-corrected": "c",
  added: "a",
};

const KIND_OF_KEY = new Map(MARK_KINDS.map((kind) => [MARK_KEYS[kind], kind]));

/** What a listener does in the text, by key or by touch. */
export interface WordActions {
  mark(word: number, kind: MarkKind): void;
  clear(word: number): void;
  /** a word was touched; which mark that sets is the view's affair */
  touch(word: number): void;
  /** this was the last word read */
  end(word: number): void;
  /** Enter: start, or stop at this word */
  enter(word: number): void;
}

/** Letters of a word that one contraction stands for, counted in `shown`; half-open. */
export interface ContractedLetters {
  readonly from: number;
  readonly to: number;
}

/** The look of the text, for the view that shows it. */
export const READING_WORDS_STYLES = `
.words { line-height: 2.1; font-size: 1.25em; padding: 0.5rem; border: 1px solid var(--line, GrayText); border-radius: 0.3rem; max-block-size: 60vh; overflow-y: auto; white-space: pre-wrap; touch-action: manipulation; }
.word { padding: 0.25rem 0.1rem; border-radius: 0.2rem; cursor: pointer; }
.word u { text-decoration-thickness: 2px; text-underline-offset: 0.2em; }
.word[data-mark]::after, .word[data-added]::before { font-size: 0.6em; vertical-align: super; border: 1px solid currentColor; border-radius: 0.2em; padding: 0 0.25em; margin-inline-start: 0.1em; }
.word[data-mark]::after { content: attr(data-mark); }
.word[data-added]::before { content: "a"; margin-inline-end: 0.15em; }
.word[data-kind="left out"] { text-decoration: line-through; }
.word[data-kind="misread"] { text-decoration: wavy underline; }
.word[data-kind="swapped"], .word[data-kind="told"], .word[data-kind="self-corrected"] { outline: 1px dashed currentColor; }
.word[data-last] { border-inline-end: 0.25rem solid currentColor; padding-inline-end: 0.3rem; }
.word.beyond { color: var(--quiet, inherit); font-size: 0.85em; }
.word:focus-visible { outline: 3px solid var(--focus, Highlight); outline-offset: 0; }
`;

/**
 * The text of a reading probe, word by word: one tab stop, arrow keys from word to word and line to line, one key a
 * mark. It shows what its view tells it and keeps nothing but the place of the focus.
 */
export class ReadingWords {
  readonly element = make("div", {
    class: "words",
    role: "listbox",
    "aria-label": "Words of the text",
    "aria-multiselectable": "true",
  });
  #words: readonly PlacedWord[] = [];
  #notes: ReadingNotes = NO_NOTES;
  #options: HTMLElement[] = [];
  #here = 0;

  constructor(private readonly actions: WordActions) {
    this.element.addEventListener("keydown", (event) => {
      this.#hearKey(event);
    });
    this.element.addEventListener("click", (event) => {
      const word = this.#wordOf(event.target);
      if (word === undefined) return;
      this.#goTo(word);
      this.actions.touch(word);
    });
    this.element.addEventListener("focusin", (event) => {
      const word = this.#wordOf(event.target);
      if (word !== undefined) this.#setHere(word);
    });
  }

  /** The word that has the focus or had it last, from 0. */
  get here(): number {
    return this.#here;
  }

  /**
   * Shows a text.
   *
   * @param contracted - of each word, the letters that a contraction stands for
   */
  show(
    text: string,
    words: readonly PlacedWord[],
    contracted: readonly (readonly ContractedLetters[])[],
  ): void {
    const composed = text.normalize("NFC");
    this.#words = words;
    this.#here = 0;
    const parts: Node[] = [];
    let end = 0;
    this.#options = words.map((word, place) => {
      parts.push(document.createTextNode(composed.slice(end, word.start)));
      end = word.start + word.shown.length;
      const option = make("span", {
        class: "word",
        role: "option",
        tabindex: place === 0 ? "0" : "-1",
      });
      option.dataset["place"] = String(place);
      option.append(...underline(word.shown, contracted[place] ?? []));
      parts.push(option);
      return option;
    });
    parts.push(document.createTextNode(composed.slice(end)));
    this.element.replaceChildren(...parts);
    this.showNotes(NO_NOTES);
  }

  /** Shows marks; only words whose marks changed are touched. */
  showNotes(notes: ReadingNotes): void {
    const before = this.#notes;
    this.#notes = notes;
    const changed = new Set<number>();
    for (const mark of [...before.marks, ...notes.marks]) {
      if (before.marks.includes(mark) && notes.marks.includes(mark)) continue;
      changed.add(mark.word).add(mark.word + 1);
    }
    if (before.last !== notes.last) {
      for (const place of [before.last, notes.last]) if (place !== undefined) changed.add(place);
      for (const [place, option] of this.#options.entries()) {
        option.classList.toggle("beyond", notes.last !== undefined && place > notes.last);
      }
    }
    for (const place of changed) this.#showMark(place);
  }

  focus(place = this.#here): void {
    this.#goTo(Math.min(place, this.#options.length - 1));
  }

  #showMark(place: number): void {
    const option = this.#options[place];
    const word = this.#words[place];
    if (option === undefined || word === undefined) return;
    const kind = markAt(this.#notes, place)?.kind;
    const isAdded = additionAfter(this.#notes, place) !== undefined;
    const isLast = this.#notes.last === place;
    const said = [
      ...(kind === undefined ? [] : [kind]),
      ...(isAdded ? ["a word added after it"] : []),
      ...(isLast ? ["last word read"] : []),
    ];
    if (said.length === 0) option.removeAttribute("aria-label");
    else option.setAttribute("aria-label", `${word.shown}, ${said.join(", ")}`);
    setData(option, "mark", kind && MARK_KEYS[kind]);
    setData(option, "kind", kind);
    setData(option, "added", isAdded ? "true" : undefined);
    setData(option, "last", isLast ? "true" : undefined);
  }

  #wordOf(target: EventTarget | null): number | undefined {
    const option = target instanceof Element ? target.closest<HTMLElement>(".word") : null;
    return option?.dataset["place"] === undefined ? undefined : Number(option.dataset["place"]);
  }

  #setHere(place: number): void {
    const before = this.#options[this.#here];
    if (before) before.tabIndex = -1;
    this.#here = place;
    const option = this.#options[place];
    if (option) option.tabIndex = 0;
  }

  #goTo(place: number): void {
    if (place < 0 || place >= this.#options.length) return;
    this.#setHere(place);
    this.#options[place]?.focus();
  }

  #hearKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || this.#options.length === 0) return;
    const kind = KIND_OF_KEY.get(event.key.toLowerCase());
    if (kind !== undefined) this.actions.mark(this.#here, kind);
    else if (event.key === "Backspace" || event.key === "Delete") this.actions.clear(this.#here);
    else if (event.key.toLowerCase() === "l") this.actions.end(this.#here);
    else if (event.key === "Enter") this.actions.enter(this.#here);
    else {
      const place = this.#placeFor(event.key);
      if (place === undefined) return;
      this.#goTo(Math.max(0, Math.min(place, this.#options.length - 1)));
    }
    event.preventDefault();
  }

  #placeFor(key: string): number | undefined {
    switch (key) {
      case "ArrowRight":
      case " ":
        return this.#here + 1;
      case "ArrowLeft":
        return this.#here - 1;
      case "ArrowDown":
        return this.#onLine(1);
      case "ArrowUp":
        return this.#onLine(-1);
      case "Home":
        return 0;
      case "End":
        return this.#options.length - 1;
      default:
        return undefined;
    }
  }

  /** The word nearest to this one on the next line as drawn, or on the one before. */
  #onLine(direction: 1 | -1): number {
    const box = this.#options[this.#here]?.getBoundingClientRect();
    if (box === undefined) return this.#here;
    let line: number | undefined;
    let best = this.#here;
    let distance = Infinity;
    for (let place = this.#here + direction; place >= 0 && place < this.#options.length; place += direction) {
      const other = this.#options[place]?.getBoundingClientRect();
      if (other === undefined || Math.abs(other.top - box.top) < box.height / 2) continue;
      line ??= other.top;
      if (Math.abs(other.top - line) >= other.height / 2) break;
      const apart = Math.abs(other.left - box.left);
      if (apart < distance) [best, distance] = [place, apart];
    }
    return best;
  }
}

const setData = (element: HTMLElement, name: string, value: string | undefined): void => {
  if (value === undefined) Reflect.deleteProperty(element.dataset, name);
  else element.dataset[name] = value;
};

/** A word with the letters of its contractions underlined. */
const underline = (shown: string, contracted: readonly ContractedLetters[]): readonly Node[] => {
  const parts: Node[] = [];
  let end = 0;
  for (const { from, to } of contracted) {
    parts.push(document.createTextNode(shown.slice(end, from)), make("u", {}, shown.slice(from, to)));
    end = to;
  }
  parts.push(document.createTextNode(shown.slice(end)));
  return parts;
};
