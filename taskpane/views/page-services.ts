import { HostError } from "../../src/ports/sheet";
import type { DraftStore, PageServices } from "./pane-context";

/** Keys of drafts in the browser's own storage, apart from whatever else this origin keeps. */
const DRAFT_PREFIX = "cellwright draft ";
/** Milliseconds after which a download has surely begun. */
const DOWNLOAD_TIME = 60_000;

/** Drafts in localStorage; where the browser refuses it (private windows, policies), nothing is kept. */
const drafts: DraftStore = {
  read: (key) => {
    try {
      return localStorage.getItem(DRAFT_PREFIX + key) ?? undefined;
    } catch {
      return undefined;
    }
  },
  keep: (key, text) => {
    try {
      localStorage.setItem(DRAFT_PREFIX + key, text);
      return true;
    } catch {
      return false;
    }
  },
  forget: (key) => {
    try {
      localStorage.removeItem(DRAFT_PREFIX + key);
    } catch {
      // What could not be kept need not be forgotten.
    }
  },
};

const saveFile = async (name: string, contents: Blob): Promise<void> => {
  const address = URL.createObjectURL(contents);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, DOWNLOAD_TIME);
  return Promise.resolve();
};

/** The older way, which asks no permission: a copy event answered with our content. */
const copyByEvent = (content: { readonly plain: string; readonly html?: string }): boolean => {
  const answer = (event: ClipboardEvent): void => {
    event.preventDefault();
    event.clipboardData?.setData("text/plain", content.plain);
    if (content.html !== undefined) event.clipboardData?.setData("text/html", content.html);
  };
  document.addEventListener("copy", answer, { once: true });
  try {
    // The only way left in a webview that denies navigator.clipboard.
    return document.execCommand("copy");
  } finally {
    document.removeEventListener("copy", answer);
  }
};

const copy: PageServices["copy"] = async (content) => {
  try {
    await navigator.clipboard.write([
      new ClipboardItem({
        "text/plain": new Blob([content.plain], { type: "text/plain" }),
        ...(content.html === undefined
          ? {}
          : { "text/html": new Blob([content.html], { type: "text/html" }) }),
      }),
    ]);
  } catch {
    if (!copyByEvent(content)) {
      throw new HostError(
        "The clipboard is closed to this page. Select the text shown here, copy it with Control+C, or save a file instead.",
      );
    }
  }
};

/** While this class stands on the body, only `.print-area` is printed: see {@link printPages}. */
const PRINTING = "is-printing";

const printRules = (paper: string): CSSStyleSheet => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`
    @page { size: ${paper}; margin: 0; }
    .print-area { display: none; }
    @media print {
      html, body.${PRINTING} { margin: 0; padding: 0; background: #fff; overflow: visible; block-size: auto; }
      body.${PRINTING} > :not(.print-area) { display: none !important; }
      body.${PRINTING} > .print-area { display: block; }
      .print-area > * { break-after: page; break-inside: avoid; }
      .print-area > :last-child { break-after: auto; }
    }`);
  return sheet;
};

const printPages: PageServices["printPages"] = async (pages, paper) => {
  const area = document.createElement("div");
  area.className = "print-area";
  area.append(...pages);
  const rules = printRules(paper);
  document.body.append(area);
  document.body.classList.add(PRINTING);
  document.adoptedStyleSheets.push(rules);
  await document.fonts.ready;
  try {
    // Blocks until her dialog is closed; webviews without a printer return at once or throw.
    window.print();
  } catch {
    throw new HostError("This window cannot print. Save the file instead, and print it from there.");
  } finally {
    area.remove();
    document.body.classList.remove(PRINTING);
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules);
  }
};

/** What a page of a browser or a webview lends the views. */
export const pageServices: PageServices = { saveFile, copy, printPages, drafts };
