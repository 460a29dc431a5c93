import type { ChartPicture } from "../../src/charts/chart-picture";
import type { PlainChart } from "../../src/charts/plain-chart";
import { HostError, type Sheet } from "../../src/ports/sheet";
import { makePngFile, makeSvgFile } from "./chart-files";
import { putChartsInSheet, type PutIntoSheet } from "./chart-in-sheet";
import { makeSoundingChart, type SoundingChart } from "./chart-sound";
import { leaveOutSheets } from "./left-out-sheets";
import { make } from "./markup";
import type { PaneContext } from "./pane-context";
import { ANY_PAPER, makePicturePages } from "./picture-pages";
import { TactilePanel } from "./tactile-panel";
import { TakeBack } from "./take-back";

/** What the tools need of the pane; without it a picture can only be heard. */
export type PictureServices = Pick<
  PaneContext,
  "saveFile" | "write" | "say" | "translators" | "printPages" | "records" | "choices" | "keepChoices"
>;

/** A picture with the charts it shows, plain enough for ear and hand. */
export interface PictureSubject {
  readonly picture: ChartPicture;
  /** none where it is no chart of numbers: then it can be neither heard nor felt */
  readonly charts: readonly PlainChart[];
  /** without extension, and without a pupil's name */
  readonly fileName: string;
  /** SVG texts, one a sheet of paper; the picture itself unless given */
  readonly pages?: () => readonly string[];
  /** how it gets into the workbook; its charts unless given */
  readonly put?: (sheet: Sheet) => Promise<PutIntoSheet>;
}

const NO_SOUND =
  "The sound could not be loaded. Check that all files of the build are on the server, then unfold this again.";
const BROKEN = "That did not work. Try once more, or save the picture in another form.";

/** What can be done with a picture: save it, print it, put it in the sheet, hear it, feel it. */
export class PictureTools {
  readonly element = make("div", { class: "tools" });
  readonly #buttons = make("div", { class: "buttons" });
  readonly #hear = make("details", {}, make("summary", {}, "Hear it: the chart as sound"));
  readonly #sounds = make("div");
  readonly #tactile = new TactilePanel();
  readonly #put = new TakeBack(
    () => this.#services,
    () => {
      this.#buttons.querySelector<HTMLButtonElement>("button:last-of-type")?.focus();
    },
  );
  #subject: PictureSubject | undefined;
  #services: PictureServices | undefined;
  #playing: readonly SoundingChart[] = [];
  #played: PictureSubject | undefined;

  constructor() {
    this.#addButton("Save as SVG", (subject, services) =>
      services.saveFile(`${subject.fileName}.svg`, makeSvgFile(subject.picture.svg)),
    );
    this.#addButton("Save as PNG", async (subject, services) =>
      services.saveFile(`${subject.fileName}.png`, await makePngFile(subject.picture.svg)),
    );
    this.#addButton("Print", (subject, services) =>
      services.printPages(makePicturePages(subject.pages?.() ?? [subject.picture.svg]), ANY_PAPER),
    );
    this.#addButton("Put in the sheet", ({ charts, picture, put }) =>
      this.putInSheet(
        put ??
          ((sheet) =>
            putChartsInSheet(
              sheet,
              charts.map((chart) => ({ chart, picture })),
            )),
      ),
    );
    this.#hear.append(this.#sounds);
    this.#hear.addEventListener("toggle", () => void this.#playOrStop());
    this.element.append(this.#buttons, this.#put.element, this.#hear, this.#tactile.element);
    this.#show();
  }

  /** The picture on the screen; undefined where there is none. */
  set subject(subject: PictureSubject | undefined) {
    this.#subject = subject;
    this.#show();
    void this.#playOrStop();
  }

  set services(services: PictureServices | undefined) {
    this.#services = services;
    this.#show();
  }

  #show(): void {
    this.element.hidden = this.#subject === undefined;
    this.#buttons.hidden = this.#services === undefined;
    const hasCharts = (this.#subject?.charts.length ?? 0) > 0;
    this.#hear.hidden = !hasCharts;
    this.#tactile.element.hidden = !hasCharts || this.#services === undefined;
    this.#tactile.services = this.#services;
    this.#tactile.subject = this.#subject;
  }

  /** Writes into the workbook as one step, says where it stands, and offers the way back. */
  async putInSheet(put: (sheet: Sheet) => Promise<PutIntoSheet>): Promise<void> {
    const done = await this.#services?.write(put);
    if (done === undefined) return;
    // The services are new ones since: the workbook was read with the new sheets in it.
    if (this.#services !== undefined) await leaveOutSheets(this.#services, done.sheets);
    this.#put.tell(done.words, done.undo);
  }

  #addButton(name: string, act: (subject: PictureSubject, services: PictureServices) => Promise<void>): void {
    const button = make("button", { type: "button" }, name);
    button.addEventListener("click", () => {
      const [subject, services] = [this.#subject, this.#services];
      if (subject === undefined || services === undefined) return;
      act(subject, services).catch((error: unknown) => {
        services.say(error instanceof HostError ? error.message : BROKEN);
      });
    });
    this.#buttons.append(button);
  }

  /** The player is made when it is unfolded, and anew for another picture: never under somebody's fingers. */
  async #playOrStop(): Promise<void> {
    const subject = this.#hear.open ? this.#subject : undefined;
    if (subject === this.#played) return;
    if (subject !== undefined && isSameChart(subject, this.#played)) return;
    this.#played = subject;
    for (const playing of this.#playing) playing.stop();
    this.#playing = [];
    this.#sounds.replaceChildren();
    if (subject === undefined) return;
    try {
      const filled = subject.charts.filter(({ paths }) =>
        paths.some(({ stretches }) => stretches.flat().length > 0),
      );
      const playing = await Promise.all(filled.map((chart) => makeSoundingChart(chart)));
      if (this.#played !== subject) {
        for (const each of playing) each.stop();
        return;
      }
      this.#playing = playing;
      this.#sounds.replaceChildren(...playing.map(({ element }) => element));
      if (playing.length === 0)
        this.#sounds.append(make("p", {}, "There is nothing to hear yet: add probes first."));
    } catch {
      this.#played = undefined;
      this.#sounds.replaceChildren(make("p", {}, NO_SOUND));
    }
  }
}

/** Whether two pictures sound alike, so that a redrawn page does not take the player away. */
const isSameChart = (one: PictureSubject, other: PictureSubject | undefined): boolean =>
  other !== undefined && JSON.stringify(one.charts) === JSON.stringify(other.charts);
