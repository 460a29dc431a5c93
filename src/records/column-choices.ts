import { isColumnKind } from "./column-kind";
import type { ColumnKind } from "./column-kind";
import { CLOCK_MEANINGS } from "./duration";
import type { ClockMeaning } from "./duration";
import { DAY_ORDERS } from "./day-text";
import type { DayOrder } from "./day-text";

/** What the teacher corrected in one block. Columns are named by {@link FoundColumn.key}, so that moving them loses nothing. */
export interface BlockChoice {
  /** key of the column → what it means, or `none` */
  readonly columns?: Readonly<Record<string, ColumnKind | "none">>;
  readonly dayOrder?: DayOrder;
  readonly clock?: ClockMeaning;
  /** the block is not to be read */
  readonly leftOut?: boolean;
}

/** The teacher's corrections and answers; kept in the workbook as a setting. */
export interface ColumnChoices {
  /** for every block that has no answer of its own */
  readonly dayOrder?: DayOrder;
  readonly clock?: ClockMeaning;
  /** by {@link FoundBlock.key} */
  readonly blocks?: Readonly<Record<string, BlockChoice>>;
}

/** The key under which {@link ColumnChoices} are kept with `Sheet.keepSetting`. */
export const CHOICES_SETTING = "columns";

/** Writes choices as the text of a setting. */
export const formatChoices = (choices: ColumnChoices): string => JSON.stringify(choices);

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isDayOrder = (value: unknown): value is DayOrder => (DAY_ORDERS as readonly unknown[]).includes(value);
const isClock = (value: unknown): value is ClockMeaning =>
  (CLOCK_MEANINGS as readonly unknown[]).includes(value);

function parseBlock(value: unknown): BlockChoice {
  if (!isRecord(value)) return {};
  const columns: Record<string, ColumnKind | "none"> = {};
  if (isRecord(value["columns"])) {
    for (const [key, kind] of Object.entries(value["columns"])) {
      if (kind === "none" || (typeof kind === "string" && isColumnKind(kind))) columns[key] = kind;
    }
  }
  return {
    ...(Object.keys(columns).length > 0 ? { columns } : {}),
    ...(isDayOrder(value["dayOrder"]) ? { dayOrder: value["dayOrder"] } : {}),
    ...(isClock(value["clock"]) ? { clock: value["clock"] } : {}),
    ...(value["leftOut"] === true ? { leftOut: true } : {}),
  };
}

/** Reads choices from the text of a setting; whatever it does not know is left out, damaged text gives none. */
export function parseChoices(text: string | undefined): ColumnChoices {
  if (text === undefined) return {};
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return {};
  }
  if (!isRecord(value)) return {};
  const blocks = isRecord(value["blocks"])
    ? Object.fromEntries(Object.entries(value["blocks"]).map(([key, block]) => [key, parseBlock(block)]))
    : undefined;
  return {
    ...(isDayOrder(value["dayOrder"]) ? { dayOrder: value["dayOrder"] } : {}),
    ...(isClock(value["clock"]) ? { clock: value["clock"] } : {}),
    ...(blocks ? { blocks } : {}),
  };
}

/** The choices with one block's changed. */
export const chooseInBlock = (choices: ColumnChoices, key: string, change: BlockChoice): ColumnChoices => ({
  ...choices,
  blocks: { ...choices.blocks, [key]: { ...choices.blocks?.[key], ...change } },
});

/** The choices with one column's meaning changed; a meaning that another column was given goes to this one. */
export function chooseColumn(
  choices: ColumnChoices,
  blockKey: string,
  columnKey: string,
  kind: ColumnKind | "none",
): ColumnChoices {
  const before = Object.entries(choices.blocks?.[blockKey]?.columns ?? {});
  const others = before.filter(([key, chosen]) => key !== columnKey && (kind === "none" || chosen !== kind));
  return chooseInBlock(choices, blockKey, { columns: { ...Object.fromEntries(others), [columnKey]: kind } });
}

/** The choices without those about the columns of a block. */
export function forgetColumns(choices: ColumnChoices, blockKey: string): ColumnChoices {
  const kept = { ...choices.blocks?.[blockKey] };
  delete kept.columns;
  return { ...choices, blocks: { ...choices.blocks, [blockKey]: kept } };
}
