import { pageFunctionLibrary } from "../adapters/custom-functions/page-bundle";
import { docxWriter } from "../adapters/docx/docx-writer";
import { EmbeddedSheet } from "../adapters/embedded/embedded-sheet";
import { createFsrsScheduler } from "../adapters/fsrs/fsrs-scheduler";
import { pageTranslatorLibrary } from "../adapters/liblouis/page-engine";
import { pageWordBank } from "../adapters/word-bank/page-word-bank";
import { newWorkbook } from "../adapters/xlsx/new-workbook";
import { readWorkbook } from "../adapters/xlsx/read-workbook";
import { saveWorkbook } from "../adapters/xlsx/save-workbook";
import { Calculation, NO_FUNCTIONS } from "../spreadsheet/calculation";
import type { DayOrder } from "../spreadsheet/calendar";
import { localDay } from "../../taskpane/views/local-day";
import { requireElement } from "./element";
import { FileCommands } from "./files/file-commands";
import type { OpenDocument } from "./files/open-document";
import { RecoveryStore } from "./files/recovery-store";
import { GridElement } from "./grid/grid-element";
import type { GridCommand } from "./grid/key-command";
import { WorkbookModel } from "./model/workbook-model";
import { KEY_HELP } from "./page/key-help";
import { MessageLine } from "./page/message-line";
import { Pane } from "./page/pane";
import { listRecovery } from "./page/recovery-list";
import { listenToRegionKeys } from "./page/region-keys";
import { Speech } from "./page/speech";
import { makeToolbar, setAvailable } from "./page/toolbar";
import { WorkArea } from "./page/work-area";

customElements.define("cellwright-grid", GridElement);

const dayOrder = requireElement("day-order", HTMLSelectElement);
const speech = new Speech(requireElement("speech", HTMLElement));
const message = new MessageLine(requireElement("message", HTMLElement));
const work = new WorkArea(speech, message);
const translators = pageTranslatorLibrary({ base: new URL("liblouis/", document.baseURI) });
const pane = new Pane(requireElement("pane", HTMLElement), work.grid, {
  translators,
  wordBank: pageWordBank(document.baseURI),
  documents: docxWriter,
  scheduler: createFsrsScheduler(),
  today: localDay,
});
let library = NO_FUNCTIONS;
const libraryLoaded = loadFunctions();
const recovery = new RecoveryStore();

dayOrder.value = localDayOrder();

const files = new FileCommands({
  format: {
    ready: libraryLoaded,
    read: (bytes) => readWorkbook(bytes, { functions: library.names }),
    save: (original, workbook, difference) =>
      saveWorkbook(original, workbook, difference, { functions: library.names }),
    create: newWorkbook,
  },
  recovery,
  show,
  stateChanged: showState,
  say: (text) => {
    speech.say(text);
  },
  refuse: (text) => {
    message.show(text);
  },
  busy: (words) => {
    const line = requireElement("busy", HTMLElement);
    line.hidden = words === undefined;
    line.textContent = words ?? "";
  },
});

let calculation: Calculation | undefined;

const typedDayOrder = (): DayOrder => (dayOrder.value === "mdy" ? "mdy" : "dmy");

/** This moment as a serial number of the 1900 system, in local time. */
function serialNow(): number {
  const now = new Date();
  const local = Date.UTC(
    now.getFullYear(),
    now.getMonth(),
    now.getDate(),
    now.getHours(),
    now.getMinutes(),
    now.getSeconds(),
  );
  return (local - Date.UTC(1899, 11, 30)) / 86_400_000;
}

async function show(document: OpenDocument): Promise<void> {
  message.clear();
  calculation?.close();
  calculation = new Calculation(document.workbook, { library, now: serialNow, dayOrder: typedDayOrder() });
  const model = new WorkbookModel(document.workbook, () => ({
    dayOrder: typedDayOrder(),
    year: new Date().getFullYear(),
    date1904: document.workbook.date1904,
  }));
  requireElement("start", HTMLElement).hidden = true;
  requireElement("work", HTMLElement).hidden = false;
  work.open(model);
  work.grid.focusCell();
  pane.follow(new EmbeddedSheet(document.workbook, calculation), countCells(document));
}

const countCells = (document: OpenDocument): number =>
  document.workbook.sheets.reduce((count, { cells }) => count + cells.size, 0);

/** The sheet functions come from the bundle that is built for Excel; the pane counts cells with the same engine. */
async function loadFunctions(): Promise<void> {
  try {
    library = await pageFunctionLibrary({ base: document.baseURI, translators });
  } catch (error) {
    message.show(
      `The braille functions are not there: ${error instanceof Error ? error.message : "no reason given"}`,
    );
    return;
  }
}

function showState(): void {
  const current = files.current;
  requireElement("file-line", HTMLElement).hidden = current === undefined;
  for (const id of ["command-save", "command-save-as"]) {
    setAvailable(requireElement(id, HTMLButtonElement), current !== undefined);
  }
  if (current === undefined) return;
  requireElement("file-name", HTMLElement).textContent = current.name;
  requireElement("file-state", HTMLElement).textContent = current.describeState();
  document.title = `${current.isUnsaved ? "Not saved: " : ""}${current.name} – Cellwright`;
}

/** The order of day and month that this browser's language writes. */
function localDayOrder(): DayOrder {
  const parts = new Intl.DateTimeFormat(navigator.language).formatToParts(new Date(2026, 10, 20));
  const order = parts.map(({ type }) => type);
  return order.indexOf("month") < order.indexOf("day") && order.indexOf("year") > 0 ? "mdy" : "dmy";
}

/** A new workbook, with the offer of tables beside it: whoever wants headings of her own types on. */
async function createNew(): Promise<void> {
  const before = files.current;
  await files.create();
  if (files.current === before) return;
  await pane.offerTables();
  speech.say("An empty workbook. The pane offers to set up tables for your pupils: F6 leads there.");
}

const commands: Readonly<Record<string, () => Promise<unknown>>> = {
  "command-open": () => files.open(),
  "command-new": createNew,
  "command-example": () => files.example(),
  "command-save": () => files.save(),
  "command-save-as": () => files.saveAs(),
  "start-open": () => files.open(),
  "start-new": createNew,
  "start-example": () => files.example(),
  "start-case": () => files.example("examples/published-case.xlsx"),
};
for (const [id, run] of Object.entries(commands)) {
  requireElement(id, HTMLButtonElement).addEventListener("click", () => void run());
}
makeToolbar(requireElement("file-bar", HTMLElement));
const keys = requireElement("keys-dialog", HTMLDialogElement);
requireElement("keys-rows", HTMLElement).append(
  ...KEY_HELP.map((row) => {
    const line = document.createElement("tr");
    for (const text of row) line.insertCell().textContent = text;
    return line;
  }),
);
requireElement("command-keys", HTMLButtonElement).addEventListener("click", () => {
  keys.showModal();
});
message.onClose = () => {
  if (files.current !== undefined) work.grid.focusCell();
};

/** Find and go to work from anywhere in the page. */
const SEARCH_KEYS: Readonly<Record<string, GridCommand>> = { f: { kind: "find" }, g: { kind: "go-to" } };
const isAsking = (): boolean => document.querySelector("dialog[open]") !== null;

document.addEventListener("keydown", (event) => {
  const control = event.ctrlKey || event.metaKey;
  const command =
    control && !event.altKey
      ? { s: "save", o: "open" }[event.key.toLowerCase()]
      : event.key === "F1"
        ? "keys"
        : undefined;
  const search =
    control && !event.altKey && !event.shiftKey ? SEARCH_KEYS[event.key.toLowerCase()] : undefined;
  if (search !== undefined && !event.defaultPrevented && files.current !== undefined && !isAsking()) {
    event.preventDefault();
    work.grid.run(search);
  }
  if (command === undefined || isAsking()) return;
  event.preventDefault();
  if (command === "save") void (event.shiftKey ? files.saveAs() : files.save());
  else if (command === "open") void files.open();
  else keys.showModal();
});
listenToRegionKeys([
  {
    region: requireElement("page-head", HTMLElement),
    focus: () => focusFirst("#file-bar [tabindex='0']"),
  },
  { region: requireElement("edit-bar", HTMLElement), focus: () => focusFirst("#edit-bar [tabindex='0']") },
  { region: requireElement("formula-line", HTMLElement), focus: () => focusFirst("#cell-contents") },
  {
    region: requireElement("grid", HTMLElement),
    focus: () => {
      work.grid.focusCell();
      return files.current !== undefined;
    },
  },
  {
    region: requireElement("sheet-tabs", HTMLElement),
    focus: () => focusFirst("#sheet-tabs [aria-selected='true']"),
  },
  { region: requireElement("pane", HTMLElement), focus: () => focusFirst("#pane") },
]);

function focusFirst(selector: string): boolean {
  const target = document.querySelector<HTMLElement>(selector);
  target?.focus();
  return target !== null && document.activeElement === target;
}

document.addEventListener("dragover", (event) => {
  if (event.dataTransfer?.types.includes("Files") !== true) return;
  event.preventDefault();
  document.body.classList.add("is-dropping");
});
document.addEventListener("dragleave", (event) => {
  if (event.relatedTarget === null) document.body.classList.remove("is-dropping");
});
document.addEventListener("drop", (event) => {
  document.body.classList.remove("is-dropping");
  if (event.dataTransfer?.types.includes("Files") !== true) return;
  event.preventDefault();
  void files.drop(event.dataTransfer);
});
addEventListener("beforeunload", (event) => {
  if (files.current?.isUnsaved === true) event.preventDefault();
});
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") void files.keepEdits();
});

async function offerRecovery(): Promise<void> {
  const works = await recovery.leftBehind().catch(() => []);
  listRecovery(requireElement("recovery", HTMLElement), requireElement("recovery-list", HTMLElement), works, {
    recover: (left) => void files.recover(left),
    drop: (left) => void recovery.forget(left.id),
  });
}

showState();
void offerRecovery();
const wanted = new URLSearchParams(location.search).get("example");
if (wanted === "1") void files.example();
else if (wanted !== null && /^[a-z-]+$/.test(wanted)) void files.example(`examples/${wanted}.xlsx`);
