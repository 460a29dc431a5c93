import type { Area } from "../domain/area";
import type { Lesson } from "../domain/caseload/lesson";
import type { Pupil } from "../domain/caseload/pupil";
import type { KeptException } from "../domain/contraction/kept-exception";
import type { TaughtSign } from "../domain/contraction/taught-sign";
import type { KeptWord } from "../domain/drill/kept-word";
import type { Passage } from "../domain/drill/passages";
import type { NotedMiscue } from "../domain/probe/noted-miscue";
import type { Probe } from "../domain/probe/probe";
import type { Goal } from "../domain/progress/goal";
import type { Fault } from "../domain/result";
import type { RowSource } from "../domain/row-source";
import type { AnyKind } from "./column-kind";
import type { DayOrder } from "./day-text";
import type { ClockMeaning } from "./duration";

/** A fault at a cell; row and column count from zero, `cell` is as shown. */
export interface CellFault extends Fault {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly cell: string;
}

/** A column of a block as found. In a grid the dates (or the signs) stand across `column` to `lastColumn`. */
export interface FoundColumn {
  readonly column: number;
  readonly lastColumn: number;
  /** `D`, or `B:H` for what stands across */
  readonly letters: string;
  readonly header: string;
  /** place of the (lowest) header cell */
  readonly headerRow: number;
  /** names the column in {@link ColumnChoices}: its header, with a count where a header stands twice */
  readonly key: string;
  readonly kinds: readonly AnyKind[];
  /** the teacher said so */
  readonly chosen: boolean;
}

/** Something that the data cannot settle; asked once, answered in {@link ColumnChoices}. */
export interface Question {
  readonly kind: "day order" | "clock";
  /** the header cell that it is about */
  readonly row: number;
  readonly column: number;
  readonly cell: string;
  readonly header: string;
  readonly message: string;
  /** one value of the column as it stands, with each of its readings in words */
  readonly example: {
    readonly shown: string;
    readonly dmy?: string;
    readonly mdy?: string;
    readonly mss?: string;
    readonly hmm?: string;
  };
}

/** What every block has in common. */
interface BlockOutline {
  /** names the block in {@link ColumnChoices}: its sheet and its headers in alphabetical order */
  readonly key: string;
  readonly sheet: string;
  readonly hidden: boolean;
  /** name of the host's table that it is */
  readonly table?: string;
  /** from the header row to the last row that holds data; totals rows after it are left out */
  readonly area: Area;
  readonly range: string;
  readonly headerRow: number;
  readonly columns: readonly FoundColumn[];
  readonly faults: readonly CellFault[];
  readonly questions: readonly Question[];
  readonly leftOut: boolean;
}

/** A block of probes: one a row, or a grid of signs and dates with a mark in each cell. */
export interface ProbeBlock extends BlockOutline {
  readonly kind: "probes";
  readonly layout: "rows" | "signs down" | "dates down";
  readonly records: readonly Probe[];
  /** how date texts and clock values were read; absent where nothing settles the order, or there are none */
  readonly dayOrder?: DayOrder;
  readonly clock?: ClockMeaning;
  /** rows that would be records if the question of day order were answered */
  readonly waiting: number;
}

export interface GoalBlock extends BlockOutline {
  readonly kind: "goals";
  readonly layout: "rows";
  readonly records: readonly Goal[];
}

export interface TaughtBlock extends BlockOutline {
  readonly kind: "taught";
  readonly layout: "rows";
  readonly records: readonly TaughtSign[];
}

/** A passage with the place where it stands. */
export interface KeptPassage extends Passage {
  readonly source: RowSource;
}

/** The records of each kind of list. */
export interface ListRecords {
  readonly pupils: Pupil;
  readonly lessons: Lesson;
  readonly miscues: NotedMiscue;
  readonly words: KeptWord;
  readonly passages: KeptPassage;
  readonly exceptions: KeptException;
}
export type ListName = keyof ListRecords;

/** A list that is known by its headers alone. */
export interface ListBlockOf<K extends ListName> extends BlockOutline {
  readonly kind: K;
  readonly layout: "rows";
  readonly records: readonly ListRecords[K][];
  readonly dayOrder?: DayOrder;
}
export type ListBlock = { [K in ListName]: ListBlockOf<K> }[ListName];

export type FoundBlock = ProbeBlock | GoalBlock | TaughtBlock | ListBlock;

/** The column that holds a kind, or undefined. */
export const columnOf = (columns: readonly FoundColumn[], kind: AnyKind): FoundColumn | undefined =>
  columns.find((column) => column.kinds.includes(kind));
