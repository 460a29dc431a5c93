import { mirrorForSlate } from "../../src/domain/braille/slate";
import { isBraille, parseCells } from "../../src/domain/braille/cell";
import { readTime } from "./probe-time";
import type { ProbeTime } from "./probe-time";

/** The longest text that is compared, in words: longer ones take seconds. */
export const LONGEST_DICTATION = 1000;

/** Codes of what is to be written; `signs` where the items are signs and no text. */
export const BRAILLED_CODES = ["contracted", "uncontracted", "signs"] as const;
export type BrailledCode = (typeof BRAILLED_CODES)[number];

/** What is asked of a pupil: settled before it begins. */
export interface BrailledTask {
  readonly pupil: string;
  readonly title: string;
  /** print, or names of signs parted by commas */
  readonly text: string;
  readonly code: BrailledCode;
  /** braillewriter, slate, display */
  readonly medium: string;
  readonly isTimed: boolean;
}

/** Writing from its choice to its table row: what is kept so that a reload loses nothing. */
export interface BrailledDraft extends ProbeTime {
  readonly task: BrailledTask;
  /** as it stands in the field: Unicode braille, ASCII braille or dot numbers */
  readonly written: string;
  /** the keys were pressed as the cells are punched with a slate: columns swapped */
  readonly isPunched: boolean;
  readonly isCompared: boolean;
}

/** Writing about to be begun. */
export const newBrailled = (task: BrailledTask): BrailledDraft => ({
  task,
  written: "",
  isPunched: false,
  isCompared: false,
});

/**
 * Cells as they are read, of cells noted in the order and with the columns in which a slate punches them: each cell's
 * columns swapped, the order kept. Done twice, it is the braille again. Other text stays.
 */
export const turnPunched = (written: string): string => {
  const cells = isBraille(written) ? parseCells(written) : undefined;
  if (cells?.ok !== true) return written;
  return mirrorForSlate(cells.value)
    .split("\n")
    .map((line) => [...line].reverse().join(""))
    .join("\n");
};

/** What was written, as it is read. */
export const readableOf = ({ written, isPunched }: BrailledDraft): string =>
  isPunched ? turnPunched(written) : written;

/** Writing as it is kept. */
export const formatBrailled = (draft: BrailledDraft): string => JSON.stringify(draft);

const isText = (value: unknown): value is string => typeof value === "string";
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** A kept writing, or undefined where the text is none: another version's, or cut off. */
export function parseBrailled(text: string | undefined): BrailledDraft | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "null");
  } catch {
    return undefined;
  }
  if (!isObject(value) || !isObject(value["task"]) || !isText(value["written"])) return undefined;
  const { pupil, title, text: asked, medium } = value["task"];
  const code = BRAILLED_CODES.find((each) => each === (value["task"] as Record<string, unknown>)["code"]);
  if (code === undefined || !isText(pupil) || !isText(title) || !isText(asked) || !isText(medium))
    return undefined;
  return {
    task: { pupil, title, text: asked, code, medium, isTimed: value["task"]["isTimed"] === true },
    written: value["written"],
    isPunched: value["isPunched"] === true,
    isCompared: value["isCompared"] === true,
    ...readTime(value),
  };
}
