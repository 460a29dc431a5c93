import { HostError } from "../../src/ports/sheet";
import { make } from "./markup";
import type { PictureServices, PictureSubject } from "./picture-tools";
import {
  DEFAULT_TACTILE_CHOICE,
  drawSheets,
  makeBrfFile,
  makeTactileSheets,
  paperSize,
  TACTILE_WORDS,
  type TactileChoice,
  type TactileSheets,
} from "./tactile-pages";

type Option = { readonly value: string; readonly label: string };

const BROKEN = "That did not work. Try once more, or save the sheets in another form.";

/** A picture from its SVG text, for the page. */
const parsePicture = (svg: string): Element =>
  document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);

/** Unfolds to the settings of a tactile graphic, what is drawn of it, a proof on the screen, and its files. */
export class TactilePanel {
  readonly element = make("details", {}, make("summary", {}, "Feel it: a tactile graphic in braille"));
  readonly #fields = make("div", { class: "fields" });
  readonly #notes = make("div", { role: "status" });
  readonly #proof = make("div", { class: "proof" });
  readonly #buttons = make("div", { class: "buttons" });
  #choice: TactileChoice = DEFAULT_TACTILE_CHOICE;
  #sheets: TactileSheets | undefined;
  #subject: PictureSubject | undefined;
  #services: PictureServices | undefined;
  #chart = 0;
  #run = 0;

  constructor() {
    this.element.append(this.#fields, this.#notes, this.#proof, this.#buttons);
    this.element.addEventListener("toggle", () => void this.#make());
    this.#addButton("Print the sheets", async ({ graphic }, services) => {
      if (!graphic.ok) throw new HostError(graphic.fault.message);
      await services.printPages(drawSheets(graphic.value, false).map(parsePicture), paperSize(this.#choice));
    });
    this.#addButton("Save the sheets as SVG", async ({ graphic }, services) => {
      if (!graphic.ok) throw new HostError(graphic.fault.message);
      for (const [i, svg] of drawSheets(graphic.value, false).entries())
        await services.saveFile(`tactile-sheet-${i + 1}.svg`, new Blob([svg], { type: "image/svg+xml" }));
    });
    this.#addButton("Save for an embosser (.brf)", async ({ cells }, services) => {
      if (!cells.ok) throw new HostError(cells.fault.message);
      await services.saveFile("tactile-chart.brf", makeBrfFile(cells.value));
    });
  }

  set subject(subject: PictureSubject | undefined) {
    this.#subject = subject;
    void this.#make();
  }

  set services(services: PictureServices | undefined) {
    this.#services = services;
  }

  #addButton(name: string, act: (sheets: TactileSheets, services: PictureServices) => Promise<void>): void {
    const button = make("button", { type: "button" }, name);
    button.addEventListener("click", () => {
      const [sheets, services] = [this.#sheets, this.#services];
      if (sheets === undefined || services === undefined) return;
      act(sheets, services).catch((error: unknown) => {
        services.say(error instanceof HostError ? error.message : BROKEN);
      });
    });
    this.#buttons.append(button);
  }

  #addSelect(label: string, options: readonly Option[], value: string, take: (value: string) => void): void {
    const select = make("select");
    select.append(...options.map((option) => new Option(option.label, option.value)));
    select.value = value;
    select.addEventListener("change", () => {
      take(select.value);
      void this.#make();
    });
    this.#fields.append(make("label", { class: "field" }, label, select));
  }

  #addNumber(label: string, value: number, take: (value: number) => void): void {
    const input = make("input", { type: "number", min: "10", max: "100", value: String(value) });
    input.addEventListener("change", () => {
      if (!Number.isInteger(input.valueAsNumber)) input.value = String(value);
      take(input.valueAsNumber);
      void this.#make();
    });
    this.#fields.append(make("label", { class: "field" }, label, input));
  }

  #change(part: Partial<TactileChoice>): void {
    this.#choice = { ...this.#choice, ...part };
  }

  #buildFields(charts: PictureSubject["charts"]): void {
    if (this.#fields.childElementCount > 0) return;
    const { paper, landscape, process, sheets, code, cells, lines } = this.#choice;
    if (charts.length > 1)
      this.#addSelect(
        "Chart",
        charts.map(({ yTitle }, i) => ({ value: String(i), label: yTitle })),
        String(this.#chart),
        (value) => (this.#chart = Number(value)),
      );
    this.#addSelect("Paper", TACTILE_WORDS.papers, paper, (value) => {
      this.#change({ paper: value as TactileChoice["paper"] });
    });
    this.#addSelect(
      "Turned",
      [
        { value: "landscape", label: "landscape" },
        { value: "portrait", label: "portrait" },
      ],
      landscape ? "landscape" : "portrait",
      (value) => {
        this.#change({ landscape: value === "landscape" });
      },
    );
    this.#addSelect("Raised by", TACTILE_WORDS.processes, process, (value) => {
      this.#change({ process: value as TactileChoice["process"] });
    });
    this.#addSelect(
      "A long series",
      [
        { value: "one", label: "on one sheet, fewer points" },
        { value: "several", label: "on several sheets" },
      ],
      sheets,
      (value) => {
        this.#change({ sheets: value as TactileChoice["sheets"] });
      },
    );
    this.#addSelect(
      "Braille",
      ["contracted", "uncontracted"].map((value) => ({ value, label: value })),
      code,
      (value) => {
        this.#change({ code: value });
      },
    );
    this.#addNumber("Embosser: cells a line", cells, (value) => {
      this.#change({ cells: value });
    });
    this.#addNumber("Embosser: lines a page", lines, (value) => {
      this.#change({ lines: value });
    });
  }

  async #make(): Promise<void> {
    const [subject, services] = [this.#subject, this.#services];
    const run = ++this.#run;
    if (!this.element.open || subject === undefined || services === undefined) return;
    this.#buildFields(subject.charts);
    const chart = subject.charts[this.#chart] ?? subject.charts[0];
    if (chart === undefined) return;
    const made = await makeTactileSheets(chart, this.#choice, services.translators);
    // She may have chosen something else while the engine was loading.
    if (run !== this.#run) return;
    this.#sheets = typeof made === "string" ? undefined : made;
    this.#buttons.hidden = typeof made === "string";
    this.#showNotes(made, chart.leftOut);
    this.#showProof(made);
  }

  /** A live region speaks whenever it is written to: only when the sentences are others. */
  #showNotes(made: TactileSheets | string, leftOut = ""): void {
    const sentences =
      typeof made === "string"
        ? [made]
        : [
            made.graphic.ok
              ? `${made.graphic.value.pages.length} sheets with the key. ${made.graphic.value.notes.join(" ")}`
              : made.graphic.fault.message,
            made.cells.ok ? `For an embosser: ${made.cells.value.notes[0] ?? ""}` : made.cells.fault.message,
            ...(leftOut === "" ? [] : [leftOut]),
          ];
    const paragraphs = sentences.map((sentence) => make("p", {}, sentence));
    if (this.#notes.textContent !== sentences.join("")) this.#notes.replaceChildren(...paragraphs);
  }

  #showProof(made: TactileSheets | string): void {
    const svgs = typeof made === "string" || !made.graphic.ok ? [] : drawSheets(made.graphic.value, true);
    this.#proof.replaceChildren(...svgs.map(parsePicture));
  }
}
