import { describeWorkbook } from "../../../../src/adapters/memory/memory-workbook";
import type { OfficeHost } from "../../../../src/adapters/office/office-host";
import type { CellValue } from "../../../../src/domain/cell-value";
import type { StartingWorkbook } from "../../../contracts/starting-workbook";
import { ExcelModel } from "./excel-model";
import type { ModelChange } from "./excel-model";
import { OfficeError } from "./office-error";
import { readPublishedTypings } from "./published-typings";
import { rememberMisuse, StrictObject } from "./strict-object";
import type { Misused, Queue } from "./strict-object";

const TYPINGS = readPublishedTypings();

/** Excel on the web refuses requests and answers over this. */
const MOST_BYTES = 5_000_000;

type Handler = (event: unknown) => Promise<unknown>;

const bytesOf = (value: unknown): number =>
  value === undefined ? 0 : Buffer.byteLength(JSON.stringify(value) ?? "");

const columnName = (column: number): string =>
  (column >= 26 ? columnName(Math.floor(column / 26) - 1) : "") + String.fromCharCode(65 + (column % 26));

/** One context of Excel.run: operations wait here for a sync. */
class StrictContext implements Queue {
  readonly typings = TYPINGS;
  readonly proxy: object;
  #pending: (() => void)[] = [];
  #sent = 0;
  #received = 0;

  constructor(
    readonly excel: StrictExcel,
    readonly misused: Misused,
  ) {
    const roots: Record<string, object> = {
      workbook: new StrictObject("Workbook", this, misused).resolve(excel.model).proxy,
      runtime: new StrictObject("Runtime", this, misused).resolve(excel.model).proxy,
    };
    this.proxy = new Proxy(
      {},
      {
        get: (_, name) => {
          if (name === "sync") return () => this.#sync();
          if (typeof name === "symbol" || name === "then") return undefined;
          return roots[name] ?? misused(`RequestContext.${name} is not known to the stand-in.`);
        },
      },
    );
  }

  get model(): ExcelModel {
    return this.excel.model;
  }

  get version(): number {
    return this.excel.version;
  }

  get pending(): number {
    return this.#pending.length;
  }

  enqueue(action: () => void, sent?: unknown): void {
    this.#pending.push(action);
    this.#sent += bytesOf(sent);
  }

  receive(value: unknown): void {
    this.#received += bytesOf(value);
  }

  addHandler(handler: Handler): object {
    this.enqueue(() => void this.excel.handlers.add(handler));
    return {
      context: this.proxy,
      remove: () => this.enqueue(() => void this.excel.handlers.delete(handler)),
    };
  }

  async #sync(): Promise<void> {
    this.excel.syncs++;
    const actions = this.#pending;
    const sent = this.#sent;
    this.#pending = [];
    this.#sent = 0;
    this.#received = 0;
    await Promise.resolve();
    const refusal = this.excel.refusals.shift();
    if (refusal) throw new OfficeError(refusal);
    if (sent > MOST_BYTES) throw new OfficeError("RequestPayloadSizeLimitExceeded");
    // As in Excel: what stands before a refused operation is done, what stands after is not.
    for (const action of actions) {
      if (this.excel.breakAfter-- === 0) throw new OfficeError("GeneralException");
      action();
    }
    if (this.#received > MOST_BYTES) throw new OfficeError("ResponsePayloadSizeLimitExceeded");
  }
}

/**
 * Excel as strict as it can be on a bad day: reading what was not loaded and synced, calling what is not published
 * or newer than the supported version, and leaving operations unsynced at the end of a run all throw.
 */
export class StrictExcel {
  readonly model: ExcelModel;
  readonly handlers = new Set<Handler>();
  /** Every misuse, also those that the code under test swallowed. */
  readonly misuses: string[] = [];
  /** Error codes for the next syncs; an empty string lets one through. */
  readonly refusals: string[] = [];
  /** Excel breaks off once, after so many more operations; below 0 never. */
  breakAfter = -1;
  syncs = 0;
  runs = 0;
  #told: Promise<unknown>[] = [];
  readonly #contexts = new Map<object, StrictContext>();

  /** @param version - ExcelApi version, 109 for 1.9 */
  constructor(
    start: StartingWorkbook,
    readonly version = 109,
  ) {
    this.model = new ExcelModel(describeWorkbook(start), (change) => this.#tell(change));
  }

  readonly host: OfficeHost = {
    run: (batch) => this.#run(new StrictContext(this, rememberMisuse(this.misuses)), batch),
    runOn: (context, batch) => {
      const known = this.#contexts.get(context);
      return known ? this.#run(known, batch) : Promise.reject(new OfficeError("InvalidRequestContext"));
    },
    supports: (set, version) => {
      const [major = 0, minor = 0] = version.split(".").map(Number);
      return set !== "ExcelApi" || major * 100 + minor <= this.version;
    },
  };

  /** Types into a cell as the teacher would, and waits until every handler is through. */
  async typeInto(name: string, row: number, column: number, value: CellValue): Promise<void> {
    // Registering handlers takes Excel a moment.
    await new Promise((resolve) => setTimeout(resolve));
    const sheet = this.model.sheet(name);
    if (!sheet) throw new OfficeError("ItemNotFound");
    this.model.enter(sheet, row, column, typeof value === "object" ? (value?.error ?? "") : value);
    this.model.tell(sheet, { top: row, left: column, bottom: row, right: column });
    await this.settled();
  }

  /** Waits until every handler that was told is through. */
  async settled(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve));
    await Promise.all(this.#told);
    this.#told = [];
  }

  #tell({ sheet, area }: ModelChange): void {
    const from = `${columnName(area.left)}${area.top + 1}`;
    const to = `${columnName(area.right)}${area.bottom + 1}`;
    const event = {
      type: "WorksheetChanged",
      changeType: "RangeEdited",
      source: "Local",
      worksheetId: this.model.idOf(sheet),
      address: from === to ? from : `${from}:${to}`,
    };
    for (const handler of this.handlers) this.#told.push(Promise.resolve().then(() => handler(event)));
  }

  async #run<T>(context: StrictContext, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    this.runs++;
    this.#contexts.set(context.proxy, context);
    const result = await batch(context.proxy as Excel.RequestContext);
    if (context.pending > 0)
      context.misused(`${context.pending} operations were left at the end of Excel.run without a sync.`);
    return result;
  }
}
