import { docxWriter } from "../src/adapters/docx/docx-writer";
import { createFsrsScheduler } from "../src/adapters/fsrs/fsrs-scheduler";
import { pageTranslatorLibrary } from "../src/adapters/liblouis/page-engine";
import { showCell } from "../src/adapters/office/cell-showing";
import type { OfficeHost } from "../src/adapters/office/office-host";
import { OfficeSheet } from "../src/adapters/office/office-sheet";
import { reenterFormulas } from "../src/adapters/office/unknown-names";
import { pageWordBank } from "../src/adapters/word-bank/page-word-bank";
import { HostError } from "../src/ports/sheet";
import { connect } from "./excel-connection";
import { countInWords } from "./views/count-words";
import { localDay } from "./views/local-day";
import { PaneElement, definePane } from "./views/pane-view";

const NAMESPACE = "BRAILLE";

// Before functions.js, which stands last on the page: one braille engine for the pane and the sheet functions.
const translators = pageTranslatorLibrary({ base: new URL("liblouis/", document.baseURI) });
const wordBank = pageWordBank(document.baseURI);
globalThis.cellwrightFunctionHost = { translators, wordBank };

const requireElement = <T extends Element>(selector: string, kind: new () => T): T => {
  const found = document.querySelector(selector);
  if (!(found instanceof kind)) throw new TypeError(`The page has no ${selector}.`);
  return found;
};

const show = (id: "outside" | "pane"): void => {
  for (const each of ["waiting", "outside", "pane"]) {
    requireElement(`#${each}`, HTMLElement).hidden = each !== id;
  }
};

const explain = (error: unknown): string =>
  error instanceof HostError
    ? error.message
    : "That did not work. Close the pane, open it again, and try once more.";

const describeEntered = ({ entered, passedOver }: Awaited<ReturnType<typeof reenterFormulas>>): string => {
  const done =
    entered > 0
      ? `${countInWords(entered, "formula was", "formulas were")} entered again.`
      : "No BRAILLE formula shows #NAME?.";
  const sentence = done.charAt(0).toUpperCase() + done.slice(1);
  return passedOver.length === 0
    ? sentence
    : `${sentence} Protected and left alone: ${passedOver.join(", ")}. Take the protection off, then try again.`;
};

/** Runs what a button does, once at a time, and says in the line beneath how it went. */
const wireButton = (selector: string, act: () => Promise<string>): void => {
  const button = requireElement(selector, HTMLButtonElement);
  const done = requireElement("#done", HTMLElement);
  button.addEventListener("click", () => {
    if (button.ariaDisabled === "true") return;
    // Not `disabled`: the focus would be lost.
    button.ariaDisabled = "true";
    done.textContent = "";
    void act()
      .catch(explain)
      .then((text) => {
        button.ariaDisabled = null;
        done.textContent = text;
      });
  });
};

function startPane(host: OfficeHost): void {
  definePane();
  const pane = requireElement("cellwright-pane", PaneElement);
  const status = requireElement("#done", HTMLElement);
  const say = (error: unknown): void => {
    status.textContent = explain(error);
  };
  pane.follow({
    sheet: new OfficeSheet(host, say),
    translators,
    wordBank,
    documents: docxWriter,
    scheduler: createFsrsScheduler(),
    today: localDay,
    jumpTo: (place) => {
      showCell(host, place).catch(say);
    },
  });
  wireButton("#reenter", async () => {
    const outcome = await reenterFormulas(host, NAMESPACE);
    // Own writes are not told as changes.
    await pane.refresh();
    return describeEntered(outcome);
  });
  wireButton("#read-again", async () => {
    await pane.refresh();
    return "The workbook was read again.";
  });
}

void connect().then((connection) => {
  if (connection.kind === "excel") {
    show("pane");
    startPane(connection.host);
    return;
  }
  requireElement("#outside-title", HTMLElement).textContent = connection.title;
  requireElement("#outside-text", HTMLElement).textContent = connection.text;
  show("outside");
});
