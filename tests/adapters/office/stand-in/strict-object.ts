import { BEHAVIOURS } from "./excel-behaviour";
import type { Behaviour } from "./excel-behaviour";
import type { ExcelModel } from "./excel-model";
import { MisuseError, OfficeError } from "./office-error";
import type { ClassTypings, Member } from "./published-typings";

/** What a context must be to the objects made on it. */
export interface Queue {
  readonly model: ExcelModel;
  readonly typings: ReadonlyMap<string, ClassTypings>;
  /** ExcelApi version of this Excel: 109 for 1.9. */
  readonly version: number;
  /** The proxy of the context, for `object.context`. */
  readonly proxy: object;
  enqueue(action: () => void, sent?: unknown): void;
  /** Counts what a load brings back. */
  receive(value: unknown): void;
  addHandler(handler: (event: unknown) => Promise<unknown>): object;
}

/** Reports misuse of Office.js; never returns. */
export type Misused = (message: string) => never;

const TARGETS = new WeakMap<object, StrictObject>();

/** An object of Excel as an add-in holds it: nothing is there before it was loaded and synced. */
export class StrictObject {
  readonly proxy: object;
  readonly #className: string;
  readonly #queue: Queue;
  readonly #misused: Misused;
  readonly #loaded = new Map<string, unknown>();
  readonly #children = new Map<string, StrictObject>();
  #items: readonly StrictObject[] | undefined;
  #isResolved = false;
  #target: unknown;

  constructor(className: string, queue: Queue, misused: Misused) {
    this.#className = className;
    this.#queue = queue;
    this.#misused = misused;
    this.proxy = new Proxy(this, {
      get: (_, name) => (typeof name === "symbol" || name === "then" ? undefined : this.#read(name)),
      set: (_, name, value) => this.#write(String(name), value),
    });
    TARGETS.set(this.proxy, this);
  }

  /** What stands behind the object, once its batch has run; `null` for a null object. */
  resolve(target: unknown): this {
    this.#target = target;
    this.#isResolved = true;
    return this;
  }

  get target(): never {
    if (!this.#isResolved) throw new OfficeError("InvalidObjectPath");
    // Excel answers calls on a null object with ItemNotFound or another null object, by host: never rely on it.
    if (this.#target === null)
      return this.#misused(`${this.#className} is a null object and was used without asking isNullObject.`);
    return this.#target as never;
  }

  #read(name: string): unknown {
    if (name === "load") return (wanted: unknown) => this.#load(wanted);
    if (name === "context") return this.#queue.proxy;
    const member = this.#member(name);
    if (name === "isNullObject") {
      return this.#isResolved
        ? this.#target === null
        : this.#misused(`${this.#className}.isNullObject was read before a sync.`);
    }
    if (name === "items") {
      return (
        this.#items?.map((item) => item.proxy) ??
        this.#misused(`${this.#className}.items was read before load and sync.`)
      );
    }
    if (member.isEvent)
      return { add: (handler: (event: unknown) => Promise<unknown>) => this.#queue.addHandler(handler) };
    if (member.kind === "method") return (...args: readonly unknown[]) => this.#call(name, member, args);
    if (member.leadsTo) return this.#child(name, member.leadsTo).proxy;
    if (!this.#loaded.has(name))
      return this.#misused(`${this.#className}.${name} was read before load and sync.`);
    return structuredClone(this.#loaded.get(name));
  }

  #write(name: string, value: unknown): true {
    const member = this.#member(name);
    if (member.kind === "method" || member.readOnly)
      this.#misused(`${this.#className}.${name} cannot be written.`);
    const write = this.#behaviour("set", name);
    const sent = structuredClone(value);
    this.#queue.enqueue(() => write(this.target, sent as never, this.#queue.model as never), sent);
    return true;
  }

  #call(name: string, member: Member, args: readonly unknown[]): unknown {
    const call = this.#behaviour("call", name);
    const run = (): unknown => call(this.target, args.map(insideOf) as never, this.#queue.model as never);
    if (member.givesResult) {
      const result: { value?: unknown } = {};
      this.#queue.enqueue(() => {
        result.value = run();
        this.#queue.receive(result.value);
      });
      return new Proxy(result, {
        get: (it, key) =>
          key in it
            ? it.value
            : this.#misused(`The result of ${this.#className}.${name} was read before a sync.`),
      });
    }
    const sent = args.filter((arg) => !isStrict(arg));
    if (!member.leadsTo) return this.#queue.enqueue(() => void run(), sent);
    const made = new StrictObject(member.leadsTo, this.#queue, this.#misused);
    this.#queue.enqueue(() => void made.resolve(run()), sent);
    return made.proxy;
  }

  #child(name: string, className: string): StrictObject {
    const known = this.#children.get(name);
    if (known) return known;
    const get = this.#behaviour("get", name);
    const child = new StrictObject(className, this.#queue, this.#misused);
    this.#children.set(name, child);
    this.#queue.enqueue(
      () => void child.resolve(get(this.target, this.#queue.model as never, undefined as never)),
    );
    return child;
  }

  #load(wanted: unknown): object {
    const paths =
      typeof wanted === "string" ? wanted.split(",") : Array.isArray(wanted) ? wanted.map(String) : [];
    if (paths.length === 0) this.#misused(`${this.#className}.load needs the names of what to load.`);
    const split = paths.map((path) => path.trim().split("/"));
    for (const path of split) this.#checkPath(path);
    this.#queue.enqueue(() => {
      if (this.#isResolved && this.#target === null) return;
      this.#items = undefined;
      for (const path of split) this.#fetch(path);
    });
    return this.proxy;
  }

  #checkPath([name = "", ...rest]: readonly string[]): void {
    const member = this.#member(name);
    if (member.kind === "method")
      this.#misused(`${this.#className}.${name} is a method and cannot be loaded.`);
    if (member.leadsTo && rest.length > 0)
      new StrictObject(member.leadsTo, this.#queue, this.#misused).#checkPath(rest);
    else if (member.leadsTo || rest.length > 0)
      this.#misused(`${this.#className}.${name} cannot be loaded as a value.`);
  }

  #fetch([name = "", ...rest]: readonly string[]): void {
    if (name === "items") {
      const leadsTo = this.#member(name).leadsTo ?? "";
      const list = BEHAVIOURS[this.#className]?.items?.(this.target, this.#queue.model) ?? [];
      this.#items ??= list.map((target) =>
        new StrictObject(leadsTo, this.#queue, this.#misused).resolve(target),
      );
      for (const item of this.#items) item.#fetch(rest);
      return;
    }
    const { leadsTo } = this.#member(name);
    const value = this.#behaviour("get", name)(this.target, this.#queue.model as never, undefined as never);
    if (!leadsTo) {
      this.#loaded.set(name, structuredClone(value));
      this.#queue.receive(value);
      return;
    }
    const child = this.#children.get(name) ?? new StrictObject(leadsTo, this.#queue, this.#misused);
    this.#children.set(name, child);
    child.resolve(value).#fetch(rest);
  }

  #member(name: string): Member {
    const member = this.#queue.typings.get(this.#className)?.get(name);
    if (!member) return this.#misused(`${this.#className}.${name} is not in the published typings.`);
    if ((member.since ?? 0) > this.#queue.version) {
      return this.#misused(
        `${this.#className}.${name} is newer than this Excel and was used without asking for it.`,
      );
    }
    return member;
  }

  #behaviour(
    kind: Exclude<keyof Behaviour, "items">,
    name: string,
  ): (target: never, second: never, third: never) => unknown {
    const found = BEHAVIOURS[this.#className]?.[kind]?.[name];
    return (
      found ??
      this.#misused(`${this.#className}.${name} is published, but the stand-in does not model it (${kind}).`)
    );
  }
}

const isStrict = (value: unknown): value is object =>
  typeof value === "object" && value !== null && TARGETS.has(value);

const insideOf = (value: unknown): unknown => (isStrict(value) ? TARGETS.get(value)?.target : value);

/** A reporter that remembers what it threw, because an adapter may swallow it. */
export const rememberMisuse = (remembered: string[]): Misused => {
  return (message) => {
    remembered.push(message);
    throw new MisuseError(message);
  };
};
