import { COLUMN_KINDS, isColumnKind, KIND_NAMES } from "../../src/records/column-kind";
import type { AnyKind, ColumnKind } from "../../src/records/column-kind";
import type { FoundBlock, FoundColumn } from "../../src/records/found-block";
import { beginSentence, countInWords } from "./count-words";
import { make } from "./markup";

/** What the teacher can do in a block. */
export interface BlockActions {
  jump(place: { readonly sheet: string; readonly row: number; readonly column: number }): void;
  chooseColumn(block: FoundBlock, column: FoundColumn, kind: ColumnKind | "none"): void;
  forgetColumns(block: FoundBlock): void;
  leaveOut(block: FoundBlock, leftOut: boolean): void;
}

/** Faults shown at once; the others are behind a summary, so that a long list hides nothing else. */
const SHOWN_FAULTS = 12;

const OTHER_NAMES: Partial<Record<AnyKind, string>> = {
  text: "goal in words",
  measure: "measure",
  criterion: "criterion",
  startDate: "start date",
  startScore: "start score",
  goalDate: "goal date",
  goalScore: "goal score",
  introduced: "day introduced",
  reading: "state in reading",
  writing: "state in writing",
  checkAgain: "day to check again",
  teacher: "teacher",
  cellsPerLine: "cells per line",
  minutesPlanned: "minutes planned a week",
  held: "whether the lesson was held",
  workedOn: "worked on",
  word: "word",
  list: "word list",
  origin: "source of the word",
  title: "title",
  passageText: "text",
  braille: "braille",
  position: "place of the word",
  "error kind": "kind of error",
  comprehension: "comprehension",
};

/** One record of each kind of table, in words. */
const RECORD_NAMES: Readonly<Record<FoundBlock["kind"], string>> = {
  probes: "probe",
  goals: "goal",
  taught: "taught sign",
  pupils: "pupil",
  lessons: "lesson",
  miscues: "miscue",
  words: "word",
  passages: "passage",
  exceptions: "exception",
};

const nameOf = (kind: AnyKind): string =>
  isColumnKind(kind) ? KIND_NAMES[kind] : (OTHER_NAMES[kind] ?? "not used");

/** What a block is, in words: "Reading, A3 to H120". */
export const titleOf = (block: FoundBlock): string => `${block.sheet}, ${block.range.replace(":", " to ")}`;

function countOf(block: FoundBlock): string {
  const records = countInWords(block.records.length, RECORD_NAMES[block.kind]);
  const faults = countInWords(block.faults.length, "cell needs a look", "cells need a look");
  const waiting =
    block.kind === "probes" && block.waiting > 0
      ? ` ${beginSentence(countInWords(block.waiting, "row waits", "rows wait"))} for the answer above.`
      : "";
  return `${beginSentence(records)}, ${faults}.${waiting}`;
}

function makeColumn(block: FoundBlock, column: FoundColumn, id: string, actions: BlockActions): HTMLElement {
  const header = column.header === "" ? "no heading" : column.header;
  const canChoose = block.kind === "probes" && block.layout === "rows";
  if (!canChoose) {
    const letters = column.letters.replace(":", " to ");
    return make(
      "div",
      { class: "column" },
      make("span", {}, `${letters}${column.header === "" ? "" : `, ${header}`}`),
      make("span", {}, column.kinds.map(nameOf).join(" or ") || "not used"),
    );
  }
  const select = make("select", {
    id,
    "data-focus": `column:${block.key}:${column.key}`,
  });
  const own = column.kinds.find((kind) => isColumnKind(kind));
  for (const kind of COLUMN_KINDS) select.append(new Option(KIND_NAMES[kind], kind, false, kind === own));
  select.prepend(new Option("not used", "none", false, own === undefined));
  select.addEventListener("change", () => {
    const { value } = select;
    actions.chooseColumn(block, column, isColumnKind(value) ? value : "none");
  });
  const note =
    column.kinds.length > 1
      ? [make("small", {}, "Words where the unit is words, otherwise opportunities.")]
      : column.chosen
        ? [make("small", {}, "Your choice.")]
        : [];
  return make(
    "div",
    { class: "column" },
    make("label", { for: select.id }, `${column.letters}, ${header}`),
    select,
    ...note,
  );
}

function makeFault(
  block: FoundBlock,
  fault: FoundBlock["faults"][number],
  actions: BlockActions,
): HTMLLIElement {
  const button = make(
    "button",
    { type: "button", "data-focus": `fault:${block.sheet}:${fault.cell}:${fault.code}` },
    make("span", { class: "spoken" }, "Go to "),
    fault.cell,
  );
  button.addEventListener("click", () => actions.jump(fault));
  return make("li", {}, button, make("span", {}, fault.message));
}

function makeFaults(
  block: FoundBlock,
  isOpen: (key: string) => boolean,
  actions: BlockActions,
): HTMLElement[] {
  if (block.faults.length === 0) return [];
  const items = block.faults.map((fault) => makeFault(block, fault, actions));
  const list = make(
    "ul",
    { "aria-label": `Cells that need a look in ${titleOf(block)}` },
    ...items.slice(0, SHOWN_FAULTS),
  );
  if (items.length <= SHOWN_FAULTS) return [list];
  const key = `faults:${block.key}`;
  const rest = items.slice(SHOWN_FAULTS);
  return [
    list,
    make(
      "details",
      { "data-open": key, open: isOpen(key) },
      make(
        "summary",
        { "data-focus": `more:${block.key}` },
        beginSentence(countInWords(rest.length, "more cell", "more cells")),
      ),
      make("ul", { "aria-label": `More cells that need a look in ${titleOf(block)}` }, ...rest),
    ),
  ];
}

/** One found block: what it is, its columns to correct, its faults to go to. */
export function makeBlock(
  block: FoundBlock,
  place: number,
  isOpen: (key: string) => boolean,
  actions: BlockActions,
): HTMLElement {
  const headingId = `block-${place}`;
  const go = make(
    "button",
    { type: "button", "data-focus": `go:${block.key}:${block.range}` },
    `Go to ${titleOf(block)}`,
  );
  go.addEventListener("click", () =>
    actions.jump({ sheet: block.sheet, row: block.headerRow, column: block.area.left }),
  );
  const out = make("input", { type: "checkbox", "data-focus": `out:${block.key}:${block.range}` });
  out.checked = block.leftOut;
  out.addEventListener("change", () => actions.leaveOut(block, out.checked));
  const key = `columns:${block.key}:${block.range}`;
  const columns = block.columns.map((column, at) =>
    makeColumn(block, column, `block-${place}-column-${at}`, actions),
  );
  const details = make(
    "details",
    { "data-open": key, open: isOpen(key) },
    make(
      "summary",
      { "data-focus": key },
      `${beginSentence(countInWords(block.columns.filter(({ kinds }) => kinds.length > 0).length, "column"))} understood: what each means`,
    ),
    ...columns,
  );
  if (block.columns.some(({ chosen }) => chosen)) {
    const back = make(
      "button",
      { type: "button", "data-focus": `back:${block.key}` },
      "Take back my choices of columns",
    );
    back.addEventListener("click", () => actions.forgetColumns(block));
    details.append(back);
  }
  const hidden = block.hidden ? " (hidden sheet)" : "";
  return make(
    "section",
    { class: "block", "aria-labelledby": headingId },
    make("h3", { id: headingId }, titleOf(block) + hidden),
    make("p", {}, block.leftOut ? "Left out: nothing of this table is used." : countOf(block)),
    go,
    make("label", { class: "option" }, out, "Leave this table out"),
    ...(block.leftOut ? [] : [details, ...makeFaults(block, isOpen, actions)]),
  );
}
