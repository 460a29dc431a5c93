import type { Handout, HandoutOptions } from "../../src/domain/drill/handout";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import { nameHandoutFile } from "../../src/domain/drill/handout-file";
import { formatHandoutHtml, formatHandoutText } from "../../src/domain/drill/handout-table";
import type { Result } from "../../src/domain/result";
import { HostError } from "../../src/ports/sheet";
import { writeEntries, type WrittenEntries } from "./entries-writing";
import { drawPages, makeBrf, makeDocx, makePef } from "./handout-files";
import { cssPaper, paperOptions, type HandoutSettings } from "./handout-settings";
import { putHandoutOnSheet } from "./handout-sheet";
import { make } from "./markup";
import type { PaneContext } from "./pane-context";

const BROKEN =
  "That did not work. The handout is shown as text beneath: select it and copy it, or try once more.";
const TEXT_BENEATH = " The handout is shown as text beneath.";

/** What the buttons need of the view. */
export interface OutputSources {
  context(): PaneContext;
  settings(): HandoutSettings;
  /** makes the handout of the items; with the options of files unless others are given */
  make(options?: HandoutOptions): Promise<Result<Handout>>;
  entries(): readonly HandoutEntry[];
  title(): string;
}

/** A picture from its SVG text, for the page. */
const parsePicture = (svg: string): Element =>
  document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);

/** Every way that a handout leaves the pane, and the way back out of the sheet. */
export class HandoutOutput {
  readonly element = make("div");
  readonly #buttons = make("div", { class: "buttons" });
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #undo = make("button", { type: "button" }, "Take it out of the workbook again");
  readonly #text = make("textarea", {
    rows: "8",
    readonly: true,
    "aria-label": "The handout as text",
    class: "braille",
  });
  readonly #asText = make(
    "details",
    {},
    make("summary", {}, "The handout as text, to select and copy"),
    this.#text,
  );
  #written: WrittenEntries | undefined;

  constructor(private readonly sources: OutputSources) {
    this.#problem.hidden = true;
    this.#undo.hidden = true;
    this.#text.style.inlineSize = "100%";
    this.#asText.addEventListener("toggle", () => void this.#fillText());
    this.#undo.addEventListener("click", () => void this.#takeBack());
    this.#addWays();
    this.element.append(
      this.#problem,
      this.#buttons,
      make("div", { class: "buttons" }, this.#undo),
      this.#asText,
      make(
        "p",
        { class: "quiet" },
        "Every handout ends: Machine translated, not proofread. Have formal materials transcribed by a certified transcriber.",
      ),
    );
  }

  #addWays(): void {
    this.#add("Print in true size", async (context, settings) => {
      const handout = await this.#make(paperOptions(settings));
      const pages = orRefuse(drawPages(handout, settings)).map(parsePicture);
      await context.printPages(pages, cssPaper(settings.paper));
      return `${pages.length === 1 ? "One page" : `${pages.length} pages`} given to the printer. Print at 100 %, not fitted to the page.`;
    }).classList.add("main");
    this.#add("Save for an embosser (.brf)", async (context) => {
      await context.saveFile(nameHandoutFile("brf"), orRefuse(makeBrf(await this.#make())));
      return "The braille file is saved.";
    });
    this.#add("Save for an embosser (.pef)", async (context) => {
      const file = makePef(await this.#make(), `urn:uuid:${crypto.randomUUID()}`);
      await context.saveFile(nameHandoutFile("pef"), file);
      return "The embosser file is saved.";
    });
    this.#add("Save as a document (.docx)", async (context, settings) => {
      const handout = await this.#make();
      context.say("Making the document…");
      await context.saveFile(nameHandoutFile("docx"), await makeDocx(handout, settings, context.documents));
      return "The document is saved.";
    });
    this.#add("Copy as a table", async (context, { largePrint }) => {
      const handout = await this.#make();
      await context.copy({ plain: formatHandoutText(handout), html: formatHandoutHtml(handout, largePrint) });
      return "Copied. Paste it into a document or a sheet.";
    });
    this.#add("Put on a new sheet", async (context) => {
      const handout = await this.#make();
      return this.#note(await context.write((sheet) => putHandoutOnSheet(sheet, handout)));
    });
    this.#add("Add the words to my table of words", async (context) => {
      const words = this.sources.entries().filter(({ kind, text }) => kind === "word" && text.trim() !== "");
      if (words.length === 0)
        throw new HostError(
          "There are no words among the items: sentences, passages and lines of signs stay on the handout.",
        );
      const { pupil } = context;
      const rows = words.map(({ text }) => ({
        word: text.trim(),
        list: this.sources.title(),
        ...(pupil === undefined ? {} : { pupil }),
      }));
      return this.#note(await writeEntries(context, { words: rows }));
    });
  }

  #add(
    name: string,
    act: (context: PaneContext, settings: HandoutSettings) => Promise<string | undefined>,
  ): HTMLButtonElement {
    const button = make("button", { type: "button" }, name);
    button.addEventListener("click", () => void this.#run(button, act));
    this.#buttons.append(button);
    return button;
  }

  async #run(
    button: HTMLButtonElement,
    act: (context: PaneContext, settings: HandoutSettings) => Promise<string | undefined>,
  ): Promise<void> {
    if (button.hasAttribute("aria-disabled")) return;
    button.setAttribute("aria-disabled", "true");
    const context = this.sources.context();
    this.#problem.hidden = true;
    try {
      const done = await act(context, this.sources.settings());
      if (done !== undefined) context.say(done);
    } catch (error) {
      await this.#refuse(error);
    } finally {
      button.removeAttribute("aria-disabled");
    }
  }

  /** Says at the buttons what to do; where the handout itself can be made, it is there to be copied by hand. */
  async #refuse(error: unknown): Promise<void> {
    const made = await this.sources.make();
    const message = error instanceof HostError ? error.message : BROKEN;
    this.#problem.textContent = made.ok && error instanceof HostError ? message + TEXT_BENEATH : message;
    this.#problem.hidden = false;
    if (made.ok) this.#asText.open = true;
  }

  async #make(options?: HandoutOptions): Promise<Handout> {
    return orRefuse(await this.sources.make(options));
  }

  #note(written: WrittenEntries | undefined): string | undefined {
    if (written === undefined) return undefined;
    this.#written = written;
    this.#undo.hidden = false;
    return written.words;
  }

  async #takeBack(): Promise<void> {
    const written = this.#written;
    if (written === undefined) return;
    const context = this.sources.context();
    const done = await context.write(async () => {
      await written.undo();
      return true;
    });
    if (done === undefined) return;
    this.#written = undefined;
    this.#buttons.querySelector("button")?.focus();
    this.#undo.hidden = true;
    context.say("Taken out of the workbook again.");
  }

  async #fillText(): Promise<void> {
    if (!this.#asText.open) return;
    const made = await this.sources.make();
    this.#text.value = made.ok ? formatHandoutText(made.value) : made.fault.message;
  }
}

const orRefuse = <T>(result: Result<T>): T => {
  if (!result.ok) throw new HostError(result.fault.message);
  return result.value;
};
