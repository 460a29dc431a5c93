import type { Probe } from "../domain/probe/probe";
import type { Goal } from "../domain/progress/goal";
import type { TaughtSign } from "../domain/contraction/taught-sign";
import type { Day } from "../domain/units";
import { isColumnKind, NUMBER_KINDS } from "./column-kind";
import type { AnyKind, ColumnKind } from "./column-kind";
import type { FoundBlock, ListName, ListRecords } from "./found-block";
import type { ProbeEntry } from "./probe-entry";

/** A record that stands nowhere yet. */
export type Unplaced<T> = Omit<T, "source">;

/** Records to be written, by the kind of their table. */
export interface NewEntries extends Partial<{
  readonly [K in ListName]: readonly Unplaced<ListRecords[K]>[];
}> {
  readonly probes?: readonly Unplaced<Probe>[];
  readonly goals?: readonly Goal[];
  readonly taught?: readonly Unplaced<TaughtSign>[];
}

/** One value of an entry, under the meaning of its column. */
export interface EntryValue {
  readonly kind: AnyKind;
  readonly value: string | number;
  /** a day, which is written as the column writes its days */
  readonly isDay: boolean;
}

/** Columns of fields that are called otherwise. */
const COLUMNS: Partial<Record<FoundBlock["kind"], Readonly<Record<string, AnyKind>>>> = {
  goals: { startDay: "startDate", goalDay: "goalDate" },
  lessons: { day: "date" },
  miscues: { day: "date", kind: "error kind" },
  passages: { text: "passageText" },
};
const DAYS = new Set(["day", "startDay", "goalDay", "introduced", "checkAgain"]);

/** What an entry says, one value a column; blank texts are left out. */
export const listValues = (kind: FoundBlock["kind"], entry: object): readonly EntryValue[] =>
  Object.entries(entry as Readonly<Record<string, unknown>>).flatMap(([field, value]) =>
    field !== "source" && ((typeof value === "string" && value !== "") || typeof value === "number")
      ? [{ kind: COLUMNS[kind]?.[field] ?? (field as AnyKind), value, isDay: DAYS.has(field) }]
      : [],
  );

/** A probe as an entry of a probe table. */
export function entryOfProbe(probe: Unplaced<Probe>): ProbeEntry {
  const numbers = new Map<ColumnKind, number>();
  const texts = new Map<ColumnKind, string>();
  const keys: ColumnKind[] = ["date"];
  for (const { kind, value, isDay } of listValues("probes", probe)) {
    if (isDay || !isColumnKind(kind)) continue;
    keys.push(kind);
    if (typeof value === "number" && NUMBER_KINDS.includes(kind)) numbers.set(kind, value);
    else texts.set(kind, String(value));
  }
  return { day: Math.floor(probe.day) as Day, numbers, texts, keys };
}

/** The entry without some of its keys. */
export const withoutKeys = (entry: ProbeEntry, gone: ReadonlySet<ColumnKind>): ProbeEntry => ({
  day: entry.day,
  numbers: new Map([...entry.numbers].filter(([kind]) => !gone.has(kind))),
  texts: new Map([...entry.texts].filter(([kind]) => !gone.has(kind))),
  keys: entry.keys.filter((kind) => !gone.has(kind)),
});
