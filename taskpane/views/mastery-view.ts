import type { ChartPicture } from "../../src/charts/chart-picture";
import { drawMastery } from "../../src/charts/mastery";
import type { Mastery } from "../../src/charts/mastery-course";
import { plainKnown, plainMastered } from "../../src/charts/plain-chart";
import type { TaughtSign } from "../../src/domain/contraction/taught-sign";
import type { Probe } from "../../src/domain/probe/probe";
import { normaliseName } from "../../src/domain/progress/series";
import { buildSignCourses, type SignCourse } from "../../src/domain/progress/sign-course";
import { collectEvidence, type TranscribeIn } from "../../src/domain/progress/sign-evidence";
import { readTaughtDays } from "../../src/domain/progress/sign-states";
import type { NotedMiscue } from "../../src/domain/probe/noted-miscue";
import { make } from "./markup";
import { paneStyles } from "./pane-styles";
import { PictureTools, type PictureServices } from "./picture-tools";
import { fillSelect, setText } from "./select-filling";
import { nameKind } from "./sign-words";
import type { ChoiceOption } from "./trajectory-choice";
import { TRAJECTORY_STYLES } from "./trajectory-styles";

const NAME = "cellwright-mastery";
const ALL = "all";
const EMPTY =
  "Nothing is known of single signs yet. Log probes with a sign, how many were right and how many were asked; note what was heard in a reading probe; or list taught signs with the day each was introduced. The graph then appears here.";
const NOTHING_SEEN =
  "No probe tells of these signs yet: only the days on which they were introduced are known. Choose some in the view Signs and probe them; what is known of them then appears here.";
/** Pictures are drawn no narrower and no wider than this many pixels. */
const NARROWEST = 240;
const WIDEST = 860;

/**
 * Mastery of signs over time, of one pupil: for one sign, a kind or all; as a picture, in sentences, as a table, and
 * whatever the tools make of it. Setting a property draws it anew and keeps choice and focus.
 */
export class MasteryView extends HTMLElement {
  #probes: readonly Probe[] = [];
  #taught: readonly TaughtSign[] = [];
  #miscues: readonly NotedMiscue[] = [];
  #transcribeIn: TranscribeIn = () => undefined;
  #pupil = "";
  #courses: readonly SignCourse[] | undefined;
  #mastery: Mastery | undefined;
  #scope = ALL;
  #width = 0;
  #scheduled = false;
  readonly #scopeList = make("select");
  readonly #choices = make("div", { class: "choices" }, make("label", {}, "Signs", this.#scopeList));
  readonly #message = make("p", { class: "state", role: "status" });
  readonly #picture = make("div", { class: "picture" });
  readonly #summary = make("ul");
  readonly #tools = new PictureTools();
  readonly #detailsTitle = make("summary");
  readonly #scroll = make("div", {
    class: "scroll",
    tabindex: "0",
    role: "region",
    "aria-label": "Table of mastery",
  });
  readonly #details = make("details", {}, this.#detailsTitle, this.#scroll);
  #table: ChartPicture["table"] | undefined;
  readonly #resize = new ResizeObserver(() => {
    this.#fitPicture();
  });

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles(TRAJECTORY_STYLES);
    this.#scopeList.addEventListener("change", () => {
      this.#scope = this.#scopeList.value;
      this.#draw();
    });
    this.#details.addEventListener("toggle", () => {
      this.#fillTable();
    });
    root.append(
      this.#choices,
      this.#message,
      this.#picture,
      this.#summary,
      this.#tools.element,
      this.#details,
    );
  }

  /** All probes of the workbook; any order. */
  set probes(probes: readonly Probe[]) {
    this.#probes = probes;
    this.#renew();
  }

  /** Signs taught, of all pupils. */
  set taught(taught: readonly TaughtSign[]) {
    this.#taught = taught;
    this.#renew();
  }

  /** Words noted as missed, of all pupils. */
  set miscues(miscues: readonly NotedMiscue[]) {
    this.#miscues = miscues;
    this.#renew();
  }

  /** How texts become signs; until the engine is there, trials of single signs alone count. */
  set transcribeIn(transcribeIn: TranscribeIn) {
    this.#transcribeIn = transcribeIn;
    this.#renew();
  }

  set pupil(pupil: string | undefined) {
    if (normaliseName(pupil) === normaliseName(this.#pupil)) return;
    this.#pupil = pupil ?? "";
    this.#renew();
  }

  /** What the pane does for it: files, the sheet, the engine. Without it a picture can only be seen and heard. */
  set services(services: PictureServices | undefined) {
    this.#tools.services = services;
  }

  connectedCallback(): void {
    this.#resize.observe(this.#picture);
    this.#renew();
  }

  disconnectedCallback(): void {
    this.#resize.disconnect();
  }

  /** Several properties set in a row are drawn once. */
  #renew(): void {
    this.#courses = undefined;
    if (this.#scheduled) return;
    this.#scheduled = true;
    queueMicrotask(() => {
      this.#scheduled = false;
      if (this.isConnected) this.#draw();
    });
  }

  #gather(): readonly SignCourse[] {
    const isOfPupil = ({ pupil }: { readonly pupil: string }): boolean =>
      normaliseName(pupil) === normaliseName(this.#pupil);
    const [probes, miscues] = [this.#probes.filter(isOfPupil), this.#miscues.filter(isOfPupil)];
    return buildSignCourses({
      evidence: collectEvidence(probes, miscues, this.#transcribeIn),
      taught: readTaughtDays(this.#taught.filter(isOfPupil)),
    });
  }

  #draw(): void {
    const courses = (this.#courses ??= this.#gather());
    const isEmpty = courses.length === 0;
    if (isEmpty) setText(this.#message, EMPTY);
    for (const part of [this.#choices, this.#picture, this.#summary, this.#details]) part.hidden = isEmpty;
    if (isEmpty) {
      this.#mastery = undefined;
      this.#tools.subject = undefined;
      return;
    }
    const scopes = listScopes(courses);
    if (!scopes.some(({ value }) => value === this.#scope)) this.#scope = ALL;
    fillSelect(this.#scopeList, scopes, this.#scope);
    const mastery = chooseScope(this.#pupil, courses, this.#scope);
    this.#mastery = mastery;
    setText(this.#message, mastery.courses.some(({ known }) => known.length > 0) ? "" : NOTHING_SEEN);
    const drawn = drawMastery(mastery, { width: WIDEST });
    this.#summary.replaceChildren(...drawn.summary.map((sentence) => make("li", {}, sentence)));
    this.#tools.subject = {
      picture: drawn,
      charts: this.#scope.startsWith("sign ")
        ? [plainKnown(mastery)]
        : [plainKnown(mastery), plainMastered(mastery)],
      fileName: "mastery",
    };
    this.#table = drawn.table;
    setText(this.#detailsTitle, `All of this as a table (${drawn.table.rows.length})`);
    this.#fillTable();
    this.#width = 0;
    this.#fitPicture();
  }

  #fillTable(): void {
    this.#scroll.replaceChildren(
      ...(this.#details.open && this.#table !== undefined ? [buildPlainTable(this.#table)] : []),
    );
  }

  #fitPicture(): void {
    const room = Math.floor(this.#picture.clientWidth);
    const width = Math.max(NARROWEST, Math.min(WIDEST, room));
    if (this.#mastery === undefined || room === 0 || width === this.#width) return;
    this.#width = width;
    const { svg } = drawMastery(this.#mastery, { width });
    const parsed = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    this.#picture.replaceChildren(document.importNode(parsed, true));
  }
}

/** All signs, each kind with how many signs of it there are, each sign. */
const listScopes = (courses: readonly SignCourse[]): readonly ChoiceOption[] => {
  const kinds = new Map<string, Set<string>>();
  for (const { kind, sign } of courses) kinds.set(kind, (kinds.get(kind) ?? new Set()).add(sign));
  const signs = [...new Set(courses.map(({ sign }) => sign))];
  return [
    { value: ALL, label: `All signs (${signs.length})` },
    ...[...kinds].map(([kind, own]) => ({
      value: `kind ${kind}`,
      label: `${nameKind(kind)} (${own.size})`,
    })),
    ...signs.map((sign) => ({ value: `sign ${sign}`, label: `Sign: ${sign}` })),
  ];
};

const chooseScope = (pupil: string, courses: readonly SignCourse[], scope: string): Mastery => {
  const chosen = courses.filter(
    ({ sign, kind }) => scope === ALL || scope === `kind ${kind}` || scope === `sign ${sign}`,
  );
  const words = scope === ALL ? "all signs" : scope.startsWith("kind ") ? `kind ${scope.slice(5)}` : scope;
  return { pupil, scope: words, courses: chosen };
};

const buildPlainTable = ({ caption, headings, rows }: ChartPicture["table"]): HTMLTableElement => {
  const table = make("table", {}, make("caption", {}, caption));
  table
    .createTHead()
    .insertRow()
    .append(...headings.map((heading) => make("th", { scope: "col" }, heading)));
  const body = table.createTBody();
  for (const cells of rows)
    body
      .insertRow()
      .append(
        ...cells.map((text, i) => (i === 0 ? make("th", { scope: "row" }, text) : make("td", {}, text))),
      );
  return table;
};

/** Makes `<cellwright-mastery>` known to the page, once. */
export const defineMasteryView = (): void => {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, MasteryView);
};
