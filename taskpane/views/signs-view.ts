import { normaliseName } from "../../src/domain/progress/series";
import { SIGN_STATES, type SignStanding } from "../../src/domain/progress/sign-states";
import { WAYS } from "../../src/domain/progress/way";
import { fillTaught } from "../../src/records/fill-taught";
import { HostError } from "../../src/ports/sheet";
import { ConfusionBlock } from "./confusion-block";
import { beginSentence, countInWords } from "./count-words";
import { writeEntries } from "./entries-writing";
import { make } from "./markup";
import type { PaneContext, PaneView, ViewName } from "./pane-context";
import { paneStyles } from "./pane-styles";
import { fillSelect, setText } from "./select-filling";
import { SIGN_GRID_STYLES, SignGrid } from "./sign-grid";
import { SIGN_MAP_STYLES, SignMapPanel } from "./sign-map-panel";
import { SettlingPanel } from "./settling-panel";
import { signsOf } from "./sign-standings";
import { checkDayOf, countStates, groupByKind, nameKind, passesFilter } from "./sign-words";
import { TakeBack } from "./take-back";
import { TaughtDay } from "./taught-day";

const NAME = "cellwright-signs";
const KEYS =
  "In the list: arrows go from sign to sign, Space chooses. D makes a drill of the chosen signs, P probes them, T marks them as taught.";
const NONE_CHOSEN = "Choose signs first: Space in the list, or the box before a sign.";
const NO_PUPIL =
  "The workbook has no pupil yet. Set up the tables in the caseload, or open a workbook with probes or taught signs; the signs then appear here.";
const NOTHING_NOTED =
  "Nothing is noted of this pupil's signs yet. Choose the signs that were taught (Space in the list), give the day if you know it, and mark them as taught; or probe some: what is known of each then stands beside it.";
const NO_MATCH = "No sign is like that. Change the kind, the state or what is looked for.";

/** All signs of one pupil: how far each is in reading and in writing; chosen ones go to a drill or a probe. */
export class SignsView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  readonly #kind = make("select");
  readonly #state = make("select");
  readonly #search = make("input", { type: "search", autocomplete: "off" });
  readonly #message = make("p", { role: "status", class: "notice" });
  readonly #summary = make("p");
  readonly #chosenLine = make("p");
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #day = new TaughtDay();
  readonly #done = new TakeBack(
    () => this.#context,
    () => {
      this.#search.focus();
    },
  );
  readonly #grid = new SignGrid({
    chosenChanged: () => {
      this.#showChosen();
    },
    drill: () => {
      this.#handOver("handouts");
    },
    probe: () => {
      this.#handOver("naming");
    },
    markTaught: () => void this.#markTaught(),
  });
  readonly #confusions = new ConfusionBlock((signs) => {
    this.context.openView("handouts", { signs, contrast: true });
  });
  readonly #settling = new SettlingPanel({
    context: () => this.context,
    chosen: () => this.#grid.chosen,
    take: (passage) => {
      this.context.openView("reading", { passage });
    },
  });
  readonly #map = new SignMapPanel();
  readonly #body = make("div");

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(SIGN_GRID_STYLES + SIGN_MAP_STYLES);
    for (const list of [this.#kind, this.#state])
      list.addEventListener("change", () => {
        this.#draw();
      });
    this.#search.addEventListener("input", () => {
      this.#draw();
    });
    this.#problem.hidden = true;
    const act = (text: string, run: () => void): HTMLButtonElement => {
      const button = make("button", { type: "button" }, text);
      button.addEventListener("click", run);
      return button;
    };
    const clear = act("Choose none", () => {
      this.#grid.choose([]);
    });
    this.#body.append(
      this.#summary,
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "Kind", this.#kind),
        make("label", { class: "field" }, "State", this.#state),
        make("label", { class: "field" }, "Print or dots, such as ch or 1-6", this.#search),
      ),
      make("h3", {}, "Chosen signs"),
      this.#chosenLine,
      this.#problem,
      make(
        "div",
        { class: "buttons" },
        act("Make a drill", () => {
          this.#handOver("handouts");
        }),
        act("Probe these", () => {
          this.#handOver("naming");
        }),
        clear,
      ),
      make(
        "div",
        { class: "fields" },
        this.#day.element,
        act("Mark as taught", () => void this.#markTaught()),
        act("Write all states into the table", () => void this.#fillStates()),
      ),
      this.#done.element,
      this.#settling.element,
      this.#confusions.element,
      this.#map.element,
      make("h3", {}, "Signs"),
      make("p", { id: "sign-keys", class: "quiet" }, KEYS),
      this.#grid.element,
    );
    root.append(this.#message, this.#body);
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The view of signs has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const before = this.#context;
    this.#context = context;
    if (before !== undefined && normaliseName(before.pupil) !== normaliseName(context.pupil)) {
      this.#grid.choose([]);
      this.#done.tell("");
    }
    this.#day.today = context.today;
    this.#draw();
    this.#showChosen();
  }

  #draw(): void {
    const { state, pupil } = this.context;
    const isEmpty = pupil === undefined;
    const problem =
      typeof state === "object" ? state.problem : state === "loading" ? "Reading the workbook…" : NO_PUPIL;
    this.#body.hidden = isEmpty;
    this.#message.hidden = !isEmpty;
    setText(this.#message, isEmpty ? problem : "");
    if (pupil === undefined) return;
    const { all: standings, confusions } = signsOf(this.context, pupil);
    this.#confusions.show(confusions);
    fillSelect(
      this.#kind,
      [
        { value: "", label: "All kinds" },
        ...groupByKind(standings).map(({ kind }) => ({ value: kind, label: nameKind(kind) })),
      ],
      this.#kind.value,
    );
    fillSelect(
      this.#state,
      [
        { value: "", label: "All states" },
        ...SIGN_STATES.map((each) => ({ value: each, label: beginSentence(each) })),
      ],
      this.#state.value,
    );
    const [read, written] = WAYS.map((way) => countStates(standings, way, SIGN_STATES));
    setText(
      this.#summary,
      standings.some(isNoted) ? `Reading: ${read ?? ""}. Writing: ${written ?? ""}.` : NOTHING_NOTED,
    );
    const filter = { kind: this.#kind.value, state: this.#state.value, search: this.#search.value };
    const found = standings.filter((standing) => passesFilter(standing, filter));
    this.#grid.show(found);
    const scope = this.#kind.value === "" ? "signs" : nameKind(this.#kind.value).toLowerCase();
    const map = { pupil, scope, asOf: this.context.today, standings: found };
    this.#map.show(found.length > 0 ? map : undefined, this.context);
    this.#message.hidden = found.length > 0;
    setText(this.#message, found.length > 0 ? "" : NO_MATCH);
  }

  #showChosen(): void {
    const { chosen } = this.#grid;
    setText(
      this.#chosenLine,
      chosen.length === 0
        ? "No sign is chosen."
        : `${beginSentence(countInWords(chosen.length, "sign"))}: ${chosen.join(", ")}.`,
    );
    if (chosen.length > 0) this.#problem.hidden = true;
  }

  #refuse(problem: string): undefined {
    setText(this.#problem, problem);
    this.#problem.hidden = false;
    return undefined;
  }

  #handOver(view: ViewName): void {
    const { chosen } = this.#grid;
    if (chosen.length === 0) this.#refuse(NONE_CHOSEN);
    else this.context.openView(view, { signs: chosen });
  }

  async #markTaught(): Promise<void> {
    const { context } = this;
    const { pupil } = context;
    const { chosen } = this.#grid;
    if (pupil === undefined || chosen.length === 0) return this.#refuse(NONE_CHOSEN);
    const introduced = this.#day.read();
    if (!introduced.ok) {
      this.#refuse(introduced.fault.message);
      this.#day.focus();
      return;
    }
    this.#problem.hidden = true;
    const { all: standings } = signsOf(context, pupil);
    const inTable = new Set(
      standings.flatMap(({ sign, taught, isAssumed }) =>
        taught === undefined || isAssumed === true ? [] : sign.name,
      ),
    );
    const fresh = chosen.filter((name) => !inTable.has(name));
    if (fresh.length === 0)
      return this.#refuse("These signs stand in the table of taught signs already. Choose others.");
    const taught = fresh.map((sign) => ({ pupil, sign, introduced: introduced.value }));
    const written = await writeEntries(context, { taught });
    if (written === undefined) return;
    this.#grid.choose([]);
    const limits = sayFirstOfKind(standings, fresh);
    const passedOver = chosen.length - fresh.length;
    const rest =
      passedOver > 0 ? ` ${beginSentence(countInWords(passedOver, "sign"))} stood there already.` : "";
    this.#done.tell(`${written.words}${rest}${limits}`, written.undo);
  }

  /** Fills the columns Reading, Writing and Check again of the pupil's rows. */
  async #fillStates(): Promise<void> {
    const { context } = this;
    const { pupil } = context;
    if (pupil === undefined) return;
    const byName = new Map(signsOf(context, pupil).all.map((each) => [each.sign.name, each]));
    const filled = await context.write(async (sheet) => {
      const done = await fillTaught(sheet, context.records.blocks, (row) => {
        const standing = byName.get(row.sign.trim().toLowerCase());
        if (standing === undefined || normaliseName(row.pupil) !== normaliseName(pupil)) return undefined;
        const checkAgain = checkDayOf(standing);
        return {
          reading: standing.reading.state,
          writing: standing.writing.state,
          ...(checkAgain !== undefined && { checkAgain }),
        };
      });
      if (!done.ok) throw new HostError(done.fault.message);
      return done.value;
    });
    if (filled === undefined) return;
    this.#done.tell(
      `Written: the states of ${countInWords(filled.rows, "sign")} in ${filled.sheets.join(", ")}.`,
      filled.undo,
    );
  }
}

/** Whether the records tell anything of a sign. */
const isNoted = ({ taught, isAssumed, reading, writing }: SignStanding): boolean =>
  (taught !== undefined && isAssumed !== true) ||
  [reading, writing].some(({ knowledge }) => knowledge.lastSeen !== undefined);

/** What changes for the rest of a kind whose signs all counted as taught before: `""` where nothing does. */
const sayFirstOfKind = (standings: readonly SignStanding[], fresh: readonly string[]): string => {
  const kinds = standings.flatMap(({ sign, isAssumed }) =>
    isAssumed === true && fresh.includes(sign.name) ? [nameKind(sign.kind).toLowerCase()] : [],
  );
  return [...new Set(kinds)]
    .map(
      (kind) => ` Until now all ${kind} counted as taught; from now on of these only those in the table do.`,
    )
    .join("");
};

/** Makes the view, and defines its element first where it is not. */
export const makeSignsView = (): PaneView => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, SignsView);
  return new SignsView();
};
