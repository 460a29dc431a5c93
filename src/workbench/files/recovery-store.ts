import type { RecoveredEdits } from "./recovered-edits";

/** Unsaved work of one window: the file as opened and what was changed since. */
export interface UnsavedWork {
  readonly id: string;
  readonly name: string;
  /** when last written, milliseconds since 1970 */
  readonly at: number;
  readonly original: Uint8Array;
  readonly edits: RecoveredEdits;
}

interface KeptEdits {
  readonly name: string;
  readonly at: number;
  readonly edits: RecoveredEdits;
}

const DATABASE = "cellwright-recovery";
const ORIGINALS = "originals";
const EDITS = "edits";

/**
 * Keeps unsaved work in this browser's own store on this computer, so that a crash loses nothing. A lock tells
 * work of another window that is still open from work that was left behind.
 */
export class RecoveryStore {
  private readonly id: string = crypto.randomUUID();
  private database: Promise<IDBDatabase> | undefined;

  constructor() {
    // The lock is held as long as this window lives.
    void navigator.locks?.request(lockName(this.id), () => new Promise<never>(() => undefined));
  }

  /** Keeps the bytes of the file just opened, in place of those before. */
  async keepOriginal(original: Uint8Array): Promise<void> {
    await this.forget(this.id);
    await this.write(ORIGINALS, this.id, original);
  }

  /** Keeps what was changed since. */
  async keepEdits(name: string, edits: RecoveredEdits): Promise<void> {
    const kept: KeptEdits = { name, at: Date.now(), edits };
    await this.write(EDITS, this.id, kept);
  }

  /** There is nothing unsaved any more in this window. */
  async forgetEdits(): Promise<void> {
    await this.remove(EDITS, this.id);
  }

  /** Work left behind by windows that are gone, newest first. */
  async leftBehind(): Promise<readonly UnsavedWork[]> {
    const held = await navigator.locks?.query();
    const alive = new Set((held?.held ?? []).map(({ name }) => name));
    const found: UnsavedWork[] = [];
    for (const id of await this.keys(ORIGINALS)) {
      if (alive.has(lockName(id)) || id === this.id) continue;
      const original = await this.read(ORIGINALS, id);
      const kept = await this.read(EDITS, id);
      if (original instanceof Uint8Array && isKept(kept)) found.push({ id, original, ...kept });
      else await this.forget(id);
    }
    return found.sort((a, b) => b.at - a.at);
  }

  /** Removes work for good. */
  async forget(id: string): Promise<void> {
    await this.remove(EDITS, id);
    await this.remove(ORIGINALS, id);
  }

  private open(): Promise<IDBDatabase> {
    this.database ??= new Promise((resolve, reject) => {
      const request = indexedDB.open(DATABASE, 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore(ORIGINALS);
        request.result.createObjectStore(EDITS);
      };
      request.onsuccess = () => {
        resolve(request.result);
      };
      request.onerror = () => {
        reject(request.error ?? new TypeError("the browser's store did not open"));
      };
    });
    return this.database;
  }

  private async keys(store: string): Promise<readonly string[]> {
    const keys = await this.ask(store, "readonly", (objects) => objects.getAllKeys());
    return keys.filter((key) => typeof key === "string");
  }

  private read(store: string, id: string): Promise<unknown> {
    return this.ask<unknown>(store, "readonly", (objects) => objects.get(id));
  }

  private async write(store: string, id: string, value: unknown): Promise<void> {
    await this.ask(store, "readwrite", (objects) => objects.put(value, id));
  }

  private async remove(store: string, id: string): Promise<void> {
    await this.ask(store, "readwrite", (objects) => objects.delete(id));
  }

  private async ask<T>(
    store: string,
    mode: IDBTransactionMode,
    query: (objects: IDBObjectStore) => IDBRequest<T>,
  ): Promise<T> {
    const database = await this.open();
    return new Promise((resolve, reject) => {
      const transaction = database.transaction(store, mode);
      const request = query(transaction.objectStore(store));
      transaction.oncomplete = () => {
        resolve(request.result);
      };
      transaction.onabort = () => {
        reject(transaction.error ?? new TypeError("the browser's store refused"));
      };
    });
  }
}

const lockName = (id: string): string => `cellwright-window-${id}`;

const isKept = (value: unknown): value is KeptEdits =>
  typeof value === "object" && value !== null && "edits" in value && "name" in value && "at" in value;
