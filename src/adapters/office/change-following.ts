import type { Area } from "../../domain/area";
import type { SheetChange } from "../../ports/sheet";
import type { OfficeHost } from "./office-host";
import { askExcel, explainRefusal } from "./refusal";

type Listener = (change: SheetChange) => void;
type Registration = OfficeExtension.EventHandlerResult<Excel.WorksheetChangedEventArgs>;

const columnNumber = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** The area of an address such as `B2` or `A1:C9`, or undefined for whole rows, whole columns and several areas. */
export const parseChangedArea = (address: string): Area | undefined => {
  const match = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/.exec(
    address.slice(address.lastIndexOf("!") + 1),
  );
  if (!match) return undefined;
  const [, left = "", top = "", right = left, bottom = top] = match;
  return {
    top: Number(top) - 1,
    left: columnNumber(left),
    bottom: Number(bottom) - 1,
    right: columnNumber(right),
  };
};

/** Follows what others change in the workbook: one handler in Excel, however many listen. */
export class ChangeFollowing {
  readonly #host: OfficeHost;
  readonly #reportFault: (error: unknown) => void;
  readonly #listeners = new Set<Listener>();
  /** The last step of registering or removing; each waits for the one before. */
  #registration: Promise<Registration | undefined> = Promise.resolve(undefined);

  /** @param reportFault - told when Excel refuses to tell of changes */
  constructor(host: OfficeHost, reportFault: (error: unknown) => void) {
    this.#host = host;
    this.#reportFault = reportFault;
  }

  /** Adds a listener; returns the way to stop. */
  follow(listener: Listener): () => void {
    const own: Listener = (change) => listener(change);
    this.#listeners.add(own);
    this.#settle();
    return () => {
      if (this.#listeners.delete(own)) this.#settle();
    };
  }

  #settle(): void {
    this.#registration = this.#registration
      .then(async (registration) => {
        if (this.#listeners.size > 0) return registration ?? (await this.#register());
        if (registration) await this.#remove(registration);
        return undefined;
      })
      .catch((error: unknown) => {
        this.#reportFault(explainRefusal(error, "workbook"));
        return undefined;
      });
  }

  #register(): Promise<Registration> {
    return askExcel(this.#host, "workbook", async (context) => {
      const registration = context.workbook.worksheets.onChanged.add((event) => this.#tell(event));
      await context.sync();
      return registration;
    });
  }

  #remove(registration: Registration): Promise<void> {
    return this.#host.runOn(registration.context, async (context) => {
      registration.remove();
      await context.sync();
    });
  }

  async #tell(event: Excel.WorksheetChangedEventArgs): Promise<void> {
    // Own writes have events off; Excel on the web may still report one that was under way (ExcelApi 1.14 says whose).
    if (this.#host.supports("ExcelApi", "1.14") && event.triggerSource === "ThisLocalAddin") return;
    try {
      const name = await askExcel(this.#host, "sheet", async (context) => {
        const sheet = context.workbook.worksheets.getItemOrNullObject(event.worksheetId);
        sheet.load("name");
        await context.sync();
        return sheet.isNullObject ? undefined : sheet.name;
      });
      if (name === undefined) return;
      // After rows or cells came or went, the address no longer says which cells differ.
      const area = event.changeType === "RangeEdited" ? parseChangedArea(event.address) : undefined;
      for (const listener of [...this.#listeners]) listener(area ? { sheet: name, area } : { sheet: name });
    } catch (error) {
      this.#reportFault(error);
    }
  }
}
