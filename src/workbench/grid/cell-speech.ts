import type { CellError, CellValue } from "../../domain/cell-value";
import { isCellError } from "../../domain/cell-value";

/** What is known about the cell that a screen reader comes to. Addresses are as shown: `B5`. */
export interface CellFacts {
  readonly address: string;
  /** Last cell of a merged area, such as `D5`. */
  readonly mergedTo?: string;
  readonly shown: string;
  readonly value: CellValue;
  readonly hasFormula: boolean;
  readonly spilledFrom?: string;
  readonly notRecalculated: boolean;
  readonly comment?: string;
  readonly choices: boolean;
  readonly prompt?: string;
  /** Chart or picture that lies over the cell. */
  readonly under?: string;
}

/**
 * The name of a cell: what it shows first, then what it is, then where it stands, so that she can move on as soon
 * as she has heard enough.
 */
export function nameCell(facts: CellFacts): string {
  const what = facts.shown.trim() === "" ? "empty" : facts.shown;
  const place =
    facts.mergedTo === undefined ? facts.address : `${facts.address} to ${facts.mergedTo}, merged`;
  return [what, ...(facts.hasFormula ? ["formula"] : []), place].join(", ");
}

/** Sentences heard after the name and shown beside the cell: errors, notes and what can be chosen. */
export function explainCell(facts: CellFacts): readonly string[] {
  const sentences: string[] = [];
  if (isCellError(facts.value)) sentences.push(explainError(facts.value));
  if (facts.notRecalculated) {
    sentences.push(
      "Not recalculated: this value was kept from the file, because the formula uses a function that is not known here.",
    );
  }
  if (facts.spilledFrom !== undefined) sentences.push(`Filled by the formula in ${facts.spilledFrom}.`);
  if (facts.comment !== undefined) sentences.push(endSentence(`Comment: ${facts.comment}`));
  if (facts.prompt !== undefined) sentences.push(endSentence(facts.prompt));
  if (facts.choices) sentences.push("Alt with Down arrow offers a list.");
  if (facts.under !== undefined) sentences.push(`Lies under ${facts.under}.`);
  return sentences;
}

/** What an edit led to. */
export interface EditOutcome {
  readonly address: string;
  readonly typed: string;
  readonly shown: string;
  readonly value: CellValue;
  readonly hasFormula: boolean;
  /** Where a spilling result lies and how many cells it fills. */
  readonly spill?: { readonly range: string; readonly cells: number };
  /** A row was added to this table. */
  readonly newRow?: string;
  /** Calculated columns of the same table row that show something else now. */
  readonly calculated: readonly { readonly column: string; readonly shown: string }[];
}

/**
 * What the live region says about an edit; undefined where it would only repeat what she typed.
 */
export function describeEdit(outcome: EditOutcome): string | undefined {
  const parts: string[] = [];
  if (isCellError(outcome.value)) parts.push(describeError(outcome.address, outcome.value));
  else if (outcome.hasFormula || outcome.shown.trim() !== outcome.typed.trim()) {
    parts.push(
      `${outcome.address} ${outcome.hasFormula ? "gives" : "shows"} ${outcome.shown === "" ? "nothing" : outcome.shown}.`,
    );
  }
  if (outcome.spill !== undefined)
    parts.push(`Filled ${countOf(outcome.spill.cells, "cell")}, ${outcome.spill.range}.`);
  if (outcome.newRow !== undefined) parts.push(`Row added to table ${outcome.newRow}.`);
  for (const { column, shown } of outcome.calculated) parts.push(`${column} ${shown}.`);
  return parts.length === 0 ? undefined : parts.join(" ");
}

function describeError(address: string, value: CellError): string {
  return value.error === "#BUSY!"
    ? `${address} is being worked out.`
    : `${address} ${value.error}: ${explainError(value)}`;
}

/** What each error means, where the function that gave it did not say. */
const MEANINGS: Readonly<Record<CellError["error"], string>> = {
  "#NULL!": "Two ranges that the formula crosses have no cell in common.",
  "#DIV/0!": "The formula divides by zero or by an empty cell.",
  "#VALUE!": "The formula got a text, a date or a range where it needs something else.",
  "#REF!": "The formula refers to cells that are not there any more.",
  "#NAME?": "The formula has a name or a function that is not known here.",
  "#NUM!": "A number in the formula is impossible for what it asks.",
  "#N/A": "There is nothing to give.",
  "#SPILL!": "The result has no room: empty the cells beneath or beside the formula.",
  "#CALC!": "The formula leads to an empty result.",
  "#BUSY!": "The result is being worked out.",
};

const explainError = (value: CellError): string => endSentence(value.message ?? MEANINGS[value.error]);

/** A number with its noun: `1 cell`, `12 cells`. */
export const countOf = (count: number, noun: string): string =>
  `${count.toLocaleString("en-GB")} ${noun}${count === 1 ? "" : "s"}`;

const endSentence = (text: string): string => (/[.!?…]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`);
