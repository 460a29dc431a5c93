import { readWorkbook } from "../adapters/xlsx/read-workbook";
import { refusal } from "../domain/result";
import type { DayOrder } from "../spreadsheet/calendar";
import { requireElement } from "./element";
import { FileCommands } from "./files/file-commands";
import type { OpenDocument } from "./files/open-document";
import { RecoveryStore } from "./files/recovery-store";
import { GridElement } from "./grid/grid-element";
import { WorkbookModel } from "./model/workbook-model";
import { KEY_HELP } from "./page/key-help";
import { MessageLine } from "./page/message-line";
import { listRecovery } from "./page/recovery-list";
import { listenToRegionKeys } from "./page/region-keys";
import { Speech } from "./page/speech";
import { makeToolbar } from "./page/toolbar";
import { WorkArea } from "./page/work-area";

customElements.define("cellwright-grid", GridElement);

const dayOrder = requireElement("day-order", HTMLSelectElement);
const speech = new Speech(requireElement("speech", HTMLElement));
const message = new MessageLine(requireElement("message", HTMLElement));
const work = new WorkArea(speech, message);
const recovery = new RecoveryStore();

dayOrder.value = localDayOrder();

const files = new FileCommands({
  format: {
    read: (bytes) => readWorkbook(bytes, { functions: [] }),
    save: () => refusal("later", "later"),
    create: () => new Uint8Array(),
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

async function show(document: OpenDocument): Promise<void> {
  message.clear();
  const model = new WorkbookModel(document.workbook, () => ({
    dayOrder: dayOrder.value as DayOrder,
    year: new Date().getFullYear(),
    date1904: document.workbook.date1904,
  }));
  requireElement("start", HTMLElement).hidden = true;
  requireElement("work", HTMLElement).hidden = false;
  work.open(model);
  work.grid.focusCell();
}

function showState(): void {
  const current = files.current;
  requireElement("file-line", HTMLElement).hidden = current === undefined;
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

const commands: Readonly<Record<string, () => Promise<unknown>>> = {
  "command-open": () => files.open(),
  "command-new": () => files.create(),
  "command-example": () => files.example(),
  "command-save": () => files.save(),
  "command-save-as": () => files.saveAs(),
  "start-open": () => files.open(),
  "start-new": () => files.create(),
  "start-example": () => files.example(),
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

document.addEventListener("keydown", (event) => {
  const control = event.ctrlKey || event.metaKey;
  const command =
    control && !event.altKey
      ? { s: "save", o: "open" }[event.key.toLowerCase()]
      : event.key === "F1"
        ? "keys"
        : undefined;
  if (command === undefined) return;
  event.preventDefault();
  if (command === "save") void (event.shiftKey ? files.saveAs() : files.save());
  else if (command === "open") void files.open();
  else if (!keys.open) keys.showModal();
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

void offerRecovery();
if (new URLSearchParams(location.search).get("example") === "1") void files.example();
