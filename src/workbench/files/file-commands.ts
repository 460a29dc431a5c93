import type { Result } from "../../domain/result";
import { OpenWorkbook } from "../../spreadsheet/open-workbook";
import { ask } from "../page/question";
import type { ChosenFile, Saved } from "./file-access";
import { chooseFile, readDropped, saveAs, writeFile } from "./file-access";
import type { WorkbookFormat } from "./open-document";
import { OpenDocument } from "./open-document";
import { recordEdits, replayEdits } from "./recovered-edits";
import type { RecoveryStore, UnsavedWork } from "./recovery-store";

/** What the file commands need of the page. */
export interface FileScene {
  readonly format: WorkbookFormat;
  readonly recovery: RecoveryStore;
  /** Shows an opened workbook. */
  show(document: OpenDocument): Promise<void>;
  /** The state of saving changed. */
  stateChanged(): void;
  say(text: string): void;
  refuse(message: string): void;
  /** Shows that something long is going on; the words are taken away by undefined. */
  busy(words: string | undefined): void;
}

const EXAMPLE = "examples/example.xlsx";
const KEEP_AFTER = 400;
const STILL_HERE = "What you typed is still here.";

/** Open, new, example, save, and recovery. Nothing typed is lost: each failure is told, and unsaved work asked for. */
export class FileCommands {
  private document: OpenDocument | undefined;
  private keeping: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly scene: FileScene) {}

  get current(): OpenDocument | undefined {
    return this.document;
  }

  /** Opens a workbook that she chooses. */
  async open(): Promise<void> {
    if (!(await this.mayLeave())) return;
    await this.attempt("The file could not be read", async () => this.take(await chooseFile()));
  }

  /** Opens a workbook that was dropped on the page. */
  async drop(transfer: DataTransfer): Promise<void> {
    // Files of a drop can be read only before the event ends, so they are asked for first.
    const dropped = readDropped(transfer);
    await this.attempt("The dropped file could not be read", async () => {
      const file = await dropped;
      if (await this.mayLeave()) await this.take(file);
    });
  }

  /** Starts a new, empty workbook. */
  async create(): Promise<void> {
    if (!(await this.mayLeave())) return;
    await this.take({ name: "New workbook.xlsx", bytes: this.scene.format.create() });
  }

  /** Opens the example workbook. @param address - of another example on this site */
  async example(address = EXAMPLE): Promise<void> {
    if (!(await this.mayLeave())) return;
    await this.attempt("The example could not be loaded", async () => {
      const answer = await fetch(address);
      if (!answer.ok) throw new TypeError(`the server answered ${String(answer.status)}`);
      const bytes = new Uint8Array(await answer.arrayBuffer());
      await this.take({ name: address.slice(address.lastIndexOf("/") + 1), bytes });
    });
  }

  /** Saves into the file it came from, or asks where. @returns whether all is saved */
  async save(): Promise<boolean> {
    return this.saveBy(async (document, bytes) =>
      document.handle === undefined ? saveAs(document.name, bytes) : writeFile(document.handle, bytes),
    );
  }

  /** Asks where to save. */
  async saveAs(): Promise<boolean> {
    return this.saveBy(async (document, bytes) => saveAs(document.name, bytes));
  }

  /** Opens work that a crash left behind; its edits count as not saved. */
  async recover(work: UnsavedWork): Promise<void> {
    if (!(await this.mayLeave())) return;
    const document = await this.read({ name: work.name, bytes: work.original });
    if (document === undefined) return;
    const refused = replayEdits(document.workbook, work.edits);
    document.markUnsaved();
    await this.adopt(document);
    await this.keepEdits();
    await this.scene.recovery.forget(work.id);
    this.scene.stateChanged();
    if (refused.length > 0)
      this.scene.refuse(`Not everything could be recovered: ${refused.slice(0, 3).join(" ")}`);
  }

  /** Whether the workbook may be left: saved, or she agrees. */
  async mayLeave(): Promise<boolean> {
    const { document } = this;
    if (document?.isUnsaved !== true) return true;
    const answer = await ask(
      "Unsaved edits",
      `${document.name} has edits that are not saved. What shall be done with them?`,
      [
        { label: "Save them first", value: "save" as const },
        { label: "Drop them", value: "drop" as const },
        { label: "Stay here", value: "stay" as const },
      ],
    );
    if (answer === "save") return this.save();
    if (answer === "drop") await this.scene.recovery.forgetEdits().catch(() => undefined);
    return answer === "drop";
  }

  private async take(file: ChosenFile | undefined): Promise<void> {
    if (file === undefined) return;
    const document = await this.read(file);
    if (document !== undefined) await this.adopt(document);
  }

  private async read(file: ChosenFile): Promise<OpenDocument | undefined> {
    this.scene.busy(`Opening ${file.name}…`);
    await this.scene.format.ready;
    await new Promise((resolve) => setTimeout(resolve));
    try {
      const read = this.scene.format.read(file.bytes);
      if (!read.ok) {
        this.scene.refuse(`${file.name} was not opened: ${read.fault.message}`);
        return undefined;
      }
      if (read.value.cautions.length > 0) this.scene.refuse(read.value.cautions.join(" "));
      return new OpenDocument(file.name, file.bytes, new OpenWorkbook(read.value.contents), file.handle);
    } finally {
      this.scene.busy(undefined);
    }
  }

  private async adopt(document: OpenDocument): Promise<void> {
    this.document = document;
    await this.scene.show(document);
    document.workbook.onChange((_, source) => {
      if (this.document !== document || source !== "edit") return;
      this.scene.stateChanged();
      this.keepSoon();
    });
    this.scene.stateChanged();
    await this.scene.recovery.keepOriginal(document.original).catch(() => {
      this.scene.say("This browser keeps no copy of unsaved work: save often.");
    });
  }

  private keepSoon(): void {
    if (this.keeping !== undefined) return;
    this.keeping = setTimeout(() => {
      this.keeping = undefined;
      void this.keepEdits();
    }, KEEP_AFTER);
  }

  /** Keeps the edits so far where a crash cannot reach them. */
  async keepEdits(): Promise<void> {
    const { document } = this;
    if (document?.isUnsaved !== true) return;
    await this.scene.recovery.keepEdits(document.name, recordEdits(document.workbook)).catch(() => undefined);
  }

  private async saveBy(
    write: (document: OpenDocument, bytes: Uint8Array) => Promise<Saved>,
  ): Promise<boolean> {
    const { document } = this;
    if (document === undefined) return true;
    const revision = document.workbook.revision;
    this.scene.busy(`Saving ${document.name}…`);
    try {
      await new Promise((resolve) => setTimeout(resolve));
      const bytes = this.makeBytes(document);
      if (!bytes.ok) {
        this.scene.refuse(`${document.name} was not saved: ${bytes.fault.message} ${STILL_HERE}`);
        return false;
      }
      const saved = await write(document, bytes.value);
      if (saved.kind === "given-up") return false;
      document.name = saved.name;
      if (saved.kind === "file") document.handle = saved.handle;
      document.markSaved(revision);
      await this.scene.recovery.forgetEdits().catch(() => undefined);
      await this.keepEdits();
      this.scene.say(
        saved.kind === "file" ? `Saved as ${saved.name}.` : `Saved as ${saved.name} among your downloads.`,
      );
      return true;
    } catch (error) {
      this.scene.refuse(
        `${document.name} was not saved: ${describe(error)}. ${STILL_HERE} Try Save as, and choose another place.`,
      );
      return false;
    } finally {
      this.scene.busy(undefined);
      this.scene.stateChanged();
    }
  }

  private makeBytes(document: OpenDocument): Result<Uint8Array> {
    const difference = document.workbook.difference();
    return this.scene.format.save(document.original, document.workbook, difference);
  }

  private async attempt(failure: string, action: () => Promise<void>): Promise<void> {
    try {
      await action();
    } catch (error) {
      this.scene.refuse(`${failure}: ${describe(error)}. Try again, or choose another file.`);
    } finally {
      this.scene.busy(undefined);
    }
  }
}

/** What a browser's own error means for her. */
function describe(error: unknown): string {
  if (!(error instanceof Error)) return "the browser gave no reason";
  if (error.name === "NotAllowedError") return "the browser did not get leave to use the file";
  if (error.name === "NotFoundError") return "the file is not there any more";
  if (error.name === "NotReadableError" || error.name === "NoModificationAllowedError")
    return "another program holds the file";
  if (error.name === "QuotaExceededError") return "there is no room left on the disk";
  return error.message.replace(/\.$/, "");
}
