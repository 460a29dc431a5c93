import { readEntry, type HandoutEntry } from "../../src/domain/drill/handout-draft";
import { make } from "./markup";

export const HANDOUT_LIST_STYLES = `
.items { list-style: none; padding: 0; margin: 0.5rem 0; }
.items li { padding-block: 0.4rem; border-block-end: 1px solid var(--line, GrayText); }
.items .row { display: flex; flex-wrap: wrap; gap: 0.35rem; align-items: center; }
.items .row > input, .items .row > textarea { flex: 1 1 11rem; min-inline-size: 0; min-block-size: 2.1rem; padding: 0.2rem 0.4rem; }
.items .number { min-inline-size: 1.6rem; font-variant-numeric: tabular-nums; }
.items .beneath { display: flex; flex-wrap: wrap; gap: 0.2rem 0.35rem; align-items: center; padding-inline-start: 1.95rem; margin-block-start: 0.3rem; }
.items .beneath > div { flex: 1 1 7rem; min-inline-size: 0; }
.items .ways { display: flex; gap: 0.35rem; margin-inline-start: auto; }
.items .beneath button { padding-inline: 0.5rem; }
.items p { margin: 0; }
.items p.braille { font-size: 1.3em; letter-spacing: 0.05em; }
`;

/** What is shown beneath an item: its braille, and what to know about it. */
export interface ItemNotes {
  readonly cells: string;
  readonly notes: readonly string[];
}

interface Row {
  entry: HandoutEntry;
  readonly element: HTMLLIElement;
  readonly field: HTMLInputElement | HTMLTextAreaElement;
  readonly number: HTMLElement;
  readonly cells: HTMLElement;
  readonly notes: HTMLElement;
  readonly buttons: readonly (readonly [HTMLButtonElement, string])[];
}

const KEYS =
  "In an item: Enter adds one beneath, Alt with the up or down arrow moves it, Backspace in an empty one removes it.";

/** The items of a handout, to be changed, added, moved and taken out by key or by touch. */
export class HandoutList {
  readonly element = make("div");
  readonly #list = make("ol", { class: "items", "aria-label": "Items" });
  readonly #add = make("button", { type: "button" }, "Add an item");
  #rows: Row[] = [];

  /**
   * @param changed - called after every change of hers
   * @param say - for the live region
   */
  constructor(
    private readonly changed: () => void,
    private readonly say: (text: string) => void,
  ) {
    this.#add.addEventListener("click", () => {
      this.#insert(this.#rows.length);
    });
    this.element.append(
      make("p", { class: "quiet" }, KEYS),
      this.#list,
      make("div", { class: "buttons" }, this.#add),
    );
  }

  get entries(): readonly HandoutEntry[] {
    return this.#rows.map(({ entry }) => entry);
  }
  set entries(entries: readonly HandoutEntry[]) {
    this.#rows = entries.map((entry) => this.#makeRow(entry));
    this.#draw();
  }

  /** Shows what each item becomes. */
  annotate(notesOf: (entry: HandoutEntry) => ItemNotes): void {
    for (const { entry, cells, notes } of this.#rows) {
      const shown = notesOf(entry);
      cells.textContent = shown.cells;
      cells.hidden = shown.cells === "";
      notes.textContent = shown.notes.join(" ");
      notes.hidden = shown.notes.length === 0;
    }
  }

  #makeRow(entry: HandoutEntry): Row {
    const isLong = entry.kind === "passage" || entry.text.length > 60;
    const field = isLong
      ? make("textarea", { rows: entry.kind === "passage" ? "5" : "2" })
      : make("input", { type: "text", autocomplete: "off" });
    field.value = entry.text;
    const number = make("span", { class: "number", "aria-hidden": "true" });
    const cells = make("p", { class: "braille", lang: "en-Brai" });
    const notes = make("p");
    const buttons = (["Up", "Down", "Remove"] as const).map(
      (name) => [make("button", { type: "button" }, name), name] as const,
    );
    const element = make(
      "li",
      {},
      make("div", { class: "row" }, number, field),
      make(
        "div",
        { class: "beneath" },
        make("div", {}, cells, notes),
        make("span", { class: "ways" }, ...buttons.map(([button]) => button)),
      ),
    );
    const row: Row = { entry, element, field, number, cells, notes, buttons };
    field.addEventListener("input", () => {
      row.entry =
        row.entry.kind === "passage" ? { kind: "passage", text: field.value } : readEntry(field.value);
      this.changed();
    });
    // A textarea sends no key up through `input`: both kinds of field are listened to alike.
    (field as HTMLElement).addEventListener("keydown", (event) => {
      this.#takeKey(row, event);
    });
    const [up, down, remove] = buttons.map(([button]) => button);
    up?.addEventListener("click", () => {
      this.#move(row, -1, up);
    });
    down?.addEventListener("click", () => {
      this.#move(row, 1, down);
    });
    remove?.addEventListener("click", () => {
      this.#remove(row);
    });
    return row;
  }

  #takeKey(row: Row, event: KeyboardEvent): void {
    const { key, altKey, shiftKey } = event;
    if (altKey && (key === "ArrowUp" || key === "ArrowDown")) {
      this.#move(row, key === "ArrowUp" ? -1 : 1, row.field);
    } else if (key === "Enter" && !shiftKey && row.entry.kind !== "passage") {
      this.#insert(this.#rows.indexOf(row) + 1);
    } else if (key === "Backspace" && row.field.value === "") {
      this.#remove(row);
    } else return;
    event.preventDefault();
  }

  #insert(place: number): void {
    const row = this.#makeRow({ kind: "word", text: "" });
    this.#rows.splice(place, 0, row);
    this.#draw();
    row.field.focus();
    this.changed();
  }

  #move(row: Row, by: number, focus: HTMLElement): void {
    const from = this.#rows.indexOf(row);
    const to = from + by;
    if (to < 0 || to >= this.#rows.length) {
      this.say(by < 0 ? "This is the first item." : "This is the last item.");
      return;
    }
    this.#rows.splice(from, 1);
    this.#rows.splice(to, 0, row);
    this.#draw();
    focus.focus();
    this.say(`Item ${to + 1} of ${this.#rows.length}.`);
    this.changed();
  }

  #remove(row: Row): void {
    const place = this.#rows.indexOf(row);
    this.#rows.splice(place, 1);
    this.#draw();
    (this.#rows[Math.min(place, this.#rows.length - 1)]?.field ?? this.#add).focus();
    this.say(`Removed${row.entry.text === "" ? "" : ` ${row.entry.print ?? row.entry.text.slice(0, 40)}`}.`);
    this.changed();
  }

  #draw(): void {
    this.#list.replaceChildren(...this.#rows.map(({ element }) => element));
    this.#list.hidden = this.#rows.length === 0;
    for (const [place, { entry, field, number, buttons }] of this.#rows.entries()) {
      number.textContent = `${place + 1}.`;
      const kind =
        entry.kind === "signs" ? `, line of signs${entry.print === undefined ? "" : ` ${entry.print}`}` : "";
      field.setAttribute("aria-label", `Item ${place + 1}${kind}`);
      field.classList.toggle("braille", entry.kind === "signs");
      for (const [button, name] of buttons) button.setAttribute("aria-label", `${name}, item ${place + 1}`);
    }
  }
}
