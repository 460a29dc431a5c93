import { fromAscii } from "../../src/domain/braille/cell";
import { CONTRACTIONS } from "../../src/domain/contraction/inventory";
import { LETTERS } from "../../src/domain/contraction/sign";
import { sayCells } from "./brailled-comparison";
import { turnPunched } from "./brailled-draft";
import { make } from "./markup";
import { setText } from "./select-filling";
import { SixKeys } from "./six-keys";

const KEYS =
  "With six keys: F D S are dots 1 2 3, J K L are dots 4 5 6, pressed together for a cell; the space bar is a blank cell. Backspace, arrows and Enter are as always, Tab goes on. Control with Enter says the next word, with Shift as well the same one again.";
const NO_BRAILLE_FILE =
  "This file is no braille file: its text has characters that ASCII braille has not. Choose a .brf file, or paste the braille.";
const BROKEN_FILE = "The file could not be read. Choose it once more, or paste the braille.";
/** Bytes: a book is less. */
const LARGEST_FILE = 2_000_000;

export const BRAILLED_PAD_STYLES = `
.pad textarea { inline-size: 100%; font-size: 1.6em; line-height: 1.5; letter-spacing: 0.08em; padding: 0.3rem 0.5rem; }
.pad input[type="file"] { min-block-size: 2.25rem; max-inline-size: 100%; }
.word-in-turn { font-size: 1.25em; font-weight: 600; }
`;

const nameOfCell = new Map([...CONTRACTIONS, ...LETTERS].map(({ cells, name }) => [cells, name] as const));

/** What the pad tells its view. */
export interface PadActions {
  /** after every change; what stands in the field, and whether it stands there as punched */
  changed(written: string, isPunched: boolean): void;
  nextWord(): void;
  sameWord(): void;
  say(text: string): void;
}

/** The field that a pupil's braille comes into: by six keys, pasted, from a display, or from a file. */
export class BrailledPad {
  readonly element = make("div", { class: "pad" });
  readonly #field = make("textarea", {
    rows: "4",
    spellcheck: "false",
    autocapitalize: "off",
    autocomplete: "off",
  });
  readonly #usesKeys = make("input", { type: "checkbox", checked: true });
  readonly #isPunched = make("input", { type: "checkbox" });
  readonly #echo = make(
    "select",
    {},
    ...[
      ["", "nothing"],
      ["dots", "its dots"],
      ["print", "its print"],
    ].map(([value = "", label = ""]) => make("option", { value }, label)),
  );
  readonly #file = make("input", { type: "file", accept: ".brf,.brl,.txt" });
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #turned = make("p", { class: "braille" });
  readonly #keys = new SixKeys();

  constructor(private readonly actions: PadActions) {
    this.#problem.hidden = true;
    this.element.append(
      make("label", { class: "field wide" }, "What the pupil writes, in braille", this.#field),
      this.#turned,
      this.#problem,
      make("p", { class: "quiet" }, KEYS),
      make(
        "div",
        { class: "fields" },
        make("label", { class: "choice" }, this.#usesKeys, "Type with six keys"),
        make("label", { class: "choice" }, this.#isPunched, "Cells as a slate punches them, columns swapped"),
        make("label", { class: "choice" }, "Of each cell say", this.#echo),
        make("label", { class: "field" }, "Or from a braille file (.brf)", this.#file),
      ),
    );
    this.#field.addEventListener("keydown", (event) => {
      this.#down(event);
    });
    this.#field.addEventListener("keyup", (event) => {
      const cell = this.#usesKeys.checked ? this.#keys.release(event.code) : undefined;
      if (cell !== undefined) this.#enter(cell);
    });
    this.#field.addEventListener("blur", () => {
      this.#keys.drop();
    });
    this.#field.addEventListener("input", () => {
      this.#tell();
    });
    this.#isPunched.addEventListener("change", () => {
      this.#tell();
    });
    this.#file.addEventListener("change", () => void this.#takeFile());
  }

  show(written: string, isPunched: boolean): void {
    if (this.#field.value !== written) this.#field.value = written;
    this.#isPunched.checked = isPunched;
    this.#showTurned();
  }

  focus(): void {
    this.#field.focus();
  }

  /** Says at the field what is wrong with it. "" takes it away. */
  refuse(problem: string): void {
    setText(this.#problem, problem);
    this.#problem.hidden = problem === "";
    if (problem !== "") this.#field.focus();
  }

  #down(event: KeyboardEvent): void {
    if (event.isComposing) return;
    if (event.key === "Enter" && event.ctrlKey) {
      event.preventDefault();
      if (event.shiftKey) this.actions.sameWord();
      else this.actions.nextWord();
      return;
    }
    if (!this.#usesKeys.checked || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!SixKeys.has(event.code)) {
      // Other letters are slips of the hand; keys that move, delete or go on keep their meaning.
      if (event.key.length === 1) event.preventDefault();
      return;
    }
    event.preventDefault();
    if (event.repeat) return;
    const cell = this.#keys.press(event.code);
    if (cell !== undefined) this.#enter(cell);
  }

  #enter(cell: string): void {
    this.#field.setRangeText(cell, this.#field.selectionStart, this.#field.selectionEnd, "end");
    this.#tell();
    if (this.#echo.value === "") return;
    const read = this.#isPunched.checked ? turnPunched(cell) : cell;
    const name = this.#echo.value === "print" ? nameOfCell.get(read) : undefined;
    this.actions.say(name ?? sayCells(read));
  }

  #tell(): void {
    this.refuse("");
    this.#showTurned();
    this.actions.changed(this.#field.value, this.#isPunched.checked);
  }

  #showTurned(): void {
    const isShown = this.#isPunched.checked && this.#field.value !== "";
    this.#turned.hidden = !isShown;
    setText(this.#turned, isShown ? `As it is read: ${turnPunched(this.#field.value)}` : "");
  }

  async #takeFile(): Promise<void> {
    const file = this.#file.files?.[0];
    this.#file.value = "";
    if (file === undefined) return;
    let cells: string;
    try {
      if (file.size > LARGEST_FILE) throw new RangeError("too large");
      const read = fromAscii(tidyFile(await file.text()));
      if (!read.ok) {
        this.refuse(NO_BRAILLE_FILE);
        return;
      }
      cells = read.value;
    } catch {
      this.refuse(BROKEN_FILE);
      return;
    }
    const before = this.#field.value.trim() === "" ? "" : `${this.#field.value}\n`;
    this.#field.value = before + cells;
    this.#tell();
    this.#field.focus();
    this.actions.say("The file's braille is in the field.");
  }
}

/** Pages and lines of a file as lines; empty ones and the fill at their ends left out. */
const tidyFile = (text: string): string =>
  text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|[\r\n\f\u001a]/)
    .map((line) => line.trimEnd())
    .filter((line) => line !== "")
    .join("\n");
