import { formatDay } from "../../src/domain/calendar";
import type { CaseloadLine } from "../../src/domain/caseload/caseload";
import {
  COORDINATOR_HEADINGS,
  countByVerdict,
  tabulateCaseload,
} from "../../src/domain/caseload/coordinator";
import type { Day } from "../../src/domain/units";

type Row = readonly (string | number)[];

/**
 * A caseload for a coordinator: a row a pupil, then pupils counted by verdict, groups under five not counted. Nothing is
 * averaged across pupils.
 *
 * @param period - first and last day
 */
export const caseloadTable = (
  lines: readonly CaseloadLine[],
  [from, to]: readonly [Day, Day],
): readonly Row[] => [
  COORDINATOR_HEADINGS,
  ...tabulateCaseload(lines, from),
  [],
  ["Verdict", "Pupils"],
  ...countByVerdict(lines).map(({ name, pupils }) => [name, pupils]),
  [],
  [`Period: ${formatDay(from)} to ${formatDay(to)}`],
];

/** A text that a spreadsheet would take for a formula, made plain by an apostrophe. */
const keepText = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

const formatField = (value: string | number): string => {
  const text = typeof value === "number" ? String(value) : keepText(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** Rows as comma-separated values with CR LF (RFC 4180); text that begins as a formula is kept text. */
export const formatCsv = (rows: readonly Row[]): string =>
  rows.map((row) => `${row.map(formatField).join(",")}\r\n`).join("");
