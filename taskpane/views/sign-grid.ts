import type { SignStanding } from "../../src/domain/progress/sign-states";
import { make } from "./markup";
import { describeSign, groupByKind, nameKind, speakSign, type SignWords, type WayWords } from "./sign-words";

/** What the keys of the grid ask for. */
export interface SignGridActions {
  chosenChanged(): void;
  drill(): void;
  probe(): void;
  markTaught(): void;
}

/** The look of the grid. */
export const SIGN_GRID_STYLES = `
:host { container-type: inline-size; }
.kept p:empty { margin: 0; }
.signs { border-block-start: 1px solid var(--line, GrayText); }
.sign { display: grid; grid-template-columns: auto minmax(5.5rem, 1fr) minmax(0, 2fr) minmax(0, 2fr); gap: 0.15rem 0.9rem; align-items: start; padding: 0.4rem; border-block-end: 1px solid var(--line, GrayText); content-visibility: auto; contain-intrinsic-block-size: auto 4rem; }
.sign:focus-visible { outline-offset: -3px; }
.sign[aria-selected="true"] { box-shadow: inset 0.25rem 0 0 var(--accent, currentColor); }
.sign > [role="gridcell"], .sign > [role="rowheader"] { min-inline-size: 0; }
.sign input { margin-block-start: 0.25rem; }
.sign .print { font-weight: 650; }
.sign .cell { font-size: 1.35em; line-height: 1.1; margin-inline-start: 0.4rem; }
.sign small { display: block; font-size: 0.85em; color: var(--quiet, inherit); }
.sign .state { display: block; font-variant-numeric: tabular-nums; }
.sign .way { font-size: 0.85em; color: var(--quiet, inherit); }
.span { display: block; position: relative; block-size: 0.7rem; max-inline-size: 10rem; margin-block: 0.15rem; border-block-end: 1px solid var(--line, GrayText); }
.span i { position: absolute; inset-block-end: -2px; block-size: 3px; background: currentColor; min-inline-size: 2px; forced-color-adjust: none; }
.span b { position: absolute; inset-block-end: -1px; block-size: 0.55rem; inline-size: 2px; background: currentColor; forced-color-adjust: none; }
@container (max-width: 24rem) { .sign { grid-template-columns: auto minmax(0, 1fr); } .sign .seen { grid-column: 2; } }
`;

interface DrawnSign {
  readonly row: HTMLElement;
  readonly box: HTMLInputElement;
  words: string;
}

/**
 * Signs by kind, a grid each: one stop of the Tab key a kind; arrows go from sign to sign across kinds, Space chooses.
 */
export class SignGrid {
  readonly element = make("div");
  readonly #drawn = new Map<string, DrawnSign>();
  readonly #chosen = new Set<string>();
  #shape = "";

  constructor(private readonly actions: SignGridActions) {
    this.element.addEventListener("keydown", (event) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      const row = (event.target as HTMLElement).closest<HTMLElement>(".sign");
      if (row !== null && this.#press(event.key, row)) event.preventDefault();
    });
    this.element.addEventListener("focusin", ({ target }) => {
      const row = (target as HTMLElement).closest<HTMLElement>(".sign");
      if (row === null) return;
      for (const each of this.#rows(row.parentElement ?? this.element)) each.tabIndex = each === row ? 0 : -1;
    });
  }

  /** The chosen signs, in the order in which they were chosen. */
  get chosen(): readonly string[] {
    return [...this.#chosen];
  }

  /** Chooses these signs and no others. */
  choose(names: readonly string[]): void {
    this.#chosen.clear();
    for (const name of names) this.#chosen.add(name);
    for (const name of this.#drawn.keys()) this.#markChosen(name);
    this.actions.chosenChanged();
  }

  /** Draws the signs; rows that say the same stay, and so does the focus. */
  show(standings: readonly SignStanding[]): void {
    const root = this.element.getRootNode() as ShadowRoot;
    const focused = root.activeElement?.closest<HTMLElement>(".sign")?.dataset["sign"];
    for (const standing of standings) this.#drawSign(describeSign(standing));
    const shape = standings.map(({ sign }) => sign.name).join("\n");
    if (shape === this.#shape) return;
    this.#shape = shape;
    this.element.replaceChildren(...groupByKind(standings).flatMap((group) => this.#drawKind(group)));
    if (focused !== undefined && root.activeElement === null) this.focus(focused);
  }

  /** Puts the focus on a sign, or on the first. */
  focus(name?: string): void {
    const row = name === undefined ? undefined : this.#drawn.get(name)?.row;
    (row?.isConnected === true ? row : this.#rows()[0])?.focus();
  }

  #drawKind({ kind, standings }: { kind: string; standings: readonly SignStanding[] }): readonly Node[] {
    const rows = standings.flatMap(({ sign }) => this.#drawn.get(sign.name)?.row ?? []);
    rows.forEach((row, place) => (row.tabIndex = place === 0 ? 0 : -1));
    return [
      make("h4", {}, `${nameKind(kind)} (${rows.length})`),
      make(
        "div",
        {
          role: "grid",
          class: "signs",
          "aria-label": nameKind(kind),
          "aria-multiselectable": "true",
          "aria-describedby": "sign-keys",
        },
        ...rows,
      ),
    ];
  }

  #drawSign(words: SignWords): void {
    const { name } = words;
    const said = speakSign(words);
    const known = this.#drawn.get(name);
    if (known?.words === said) return;
    const box = known?.box ?? this.#makeBox(name);
    const row =
      known?.row ??
      make("div", {
        role: "row",
        class: "sign",
        tabindex: "-1",
        "data-sign": name,
        "aria-keyshortcuts": "Space D P T",
      });
    row.setAttribute("aria-label", said);
    row.replaceChildren(
      make("div", { role: "gridcell" }, box),
      make(
        "div",
        { role: "rowheader" },
        make("span", { class: "print" }, name),
        make("span", { class: "cell braille", "aria-hidden": "true" }, words.cells),
        make("small", {}, `dots ${words.dots}`),
        make("small", {}, words.taught),
      ),
      drawWay("Reading", words.reading),
      drawWay("Writing", words.writing),
    );
    this.#drawn.set(name, { row, box, words: said });
    this.#markChosen(name);
  }

  #makeBox(name: string): HTMLInputElement {
    const box = make("input", { type: "checkbox", tabindex: "-1", "aria-label": `Choose ${name}` });
    box.addEventListener("change", () => {
      this.#toggle(name);
    });
    return box;
  }

  #toggle(name: string): void {
    if (!this.#chosen.delete(name)) this.#chosen.add(name);
    this.#markChosen(name);
    this.actions.chosenChanged();
  }

  #markChosen(name: string): void {
    const drawn = this.#drawn.get(name);
    if (drawn === undefined) return;
    const isChosen = this.#chosen.has(name);
    drawn.box.checked = isChosen;
    drawn.row.setAttribute("aria-selected", String(isChosen));
  }

  #rows(within: Element = this.element): readonly HTMLElement[] {
    return [...within.querySelectorAll<HTMLElement>(".sign")];
  }

  #press(key: string, row: HTMLElement): boolean {
    const rows = this.#rows();
    const at = rows.indexOf(row);
    switch (key) {
      case "ArrowDown":
      case "ArrowUp":
        (rows[at + (key === "ArrowDown" ? 1 : -1)] ?? row).focus();
        return true;
      case "Home":
      case "End":
        this.#rows(row.parentElement ?? this.element)
          .at(key === "Home" ? 0 : -1)
          ?.focus();
        return true;
      case " ":
        this.#toggle(row.dataset["sign"] ?? "");
        return true;
      case "d":
      case "D":
        this.actions.drill();
        return true;
      case "p":
      case "P":
        this.actions.probe();
        return true;
      case "t":
      case "T":
        this.actions.markTaught();
        return true;
      default:
        return false;
    }
  }
}

const drawWay = (way: string, { state, interval, evidence, days, span }: WayWords): HTMLElement =>
  make(
    "div",
    { role: "gridcell", class: "seen" },
    make("span", { class: "way" }, `${way}: `),
    make("span", { class: "state" }, interval === "" ? state : `${state}, ${interval}`),
    ...(span === undefined ? [] : [drawSpan(span)]),
    make("small", {}, evidence),
    ...(days === "" ? [] : [make("small", {}, days)]),
  );

/** From 0 to 100 %: the interval as a bar, the expected share as a stroke. The words beside it say the same. */
const drawSpan = ({ low, high, expected }: NonNullable<WayWords["span"]>): HTMLElement => {
  const [bar, stroke] = [make("i"), make("b")];
  bar.style.insetInlineStart = `${100 * low}%`;
  bar.style.inlineSize = `${100 * (high - low)}%`;
  stroke.style.insetInlineStart = `${100 * expected}%`;
  return make("span", { class: "span", "aria-hidden": "true" }, bar, stroke);
};
