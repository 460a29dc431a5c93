import type { CellValue } from "../../domain/cell-value";
import { formatCell } from "../../spreadsheet/address";
import type { Validation } from "../../spreadsheet/workbook";

/**
 * What to say where a value breaks a validation rule; undefined where it keeps it or the rule cannot be judged
 * here (rules by formula).
 *
 * @param choices - the list, where the rule offers one and it could be found
 */
export function findBreach(
  rule: Validation,
  value: CellValue,
  choices: readonly string[] | undefined,
  place: { readonly row: number; readonly column: number },
): string | undefined {
  if (value === null || keepsRule(rule, value, choices)) return undefined;
  const address = formatCell(place.row, place.column);
  return `${address} does not take this: ${rule.errorMessage ?? describeRule(rule, choices)}`;
}

function keepsRule(rule: Validation, value: CellValue, choices: readonly string[] | undefined): boolean {
  if (rule.type === "list") {
    return (
      choices === undefined || choices.some((choice) => choice.toLowerCase() === String(value).toLowerCase())
    );
  }
  if (rule.type === "textLength") return isWithin(rule, String(value).length);
  if (!["whole", "decimal", "date", "time"].includes(rule.type)) return true;
  if (typeof value !== "number") return false;
  return (rule.type !== "whole" || Number.isInteger(value)) && isWithin(rule, value);
}

/** Compares with the rule's bounds where they are plain numbers. */
function isWithin(rule: Validation, value: number): boolean {
  const first = boundOf(rule.formula1);
  const second = boundOf(rule.formula2);
  if (first === undefined) return true;
  switch (rule.operator ?? "between") {
    case "between":
      return value >= first && (second === undefined || value <= second);
    case "notBetween":
      return second === undefined || value < first || value > second;
    case "equal":
      return value === first;
    case "notEqual":
      return value !== first;
    case "greaterThan":
      return value > first;
    case "lessThan":
      return value < first;
    case "greaterThanOrEqual":
      return value >= first;
    case "lessThanOrEqual":
      return value <= first;
    default:
      return true;
  }
}

function boundOf(formula: string | undefined): number | undefined {
  if (formula === undefined || formula.trim() === "") return undefined;
  const value = Number(formula);
  return Number.isFinite(value) ? value : undefined;
}

const KINDS: Readonly<Record<string, string>> = {
  whole: "a whole number",
  decimal: "a number",
  date: "a date",
  time: "a time",
  textLength: "a text of another length",
};

function describeRule(rule: Validation, choices: readonly string[] | undefined): string {
  if (rule.type === "list") return `choose one of ${(choices ?? []).slice(0, 12).join(", ")}.`;
  const kind = KINDS[rule.type] ?? "another value";
  const [first, second] = [boundOf(rule.formula1), boundOf(rule.formula2)];
  const isPlain = rule.type === "whole" || rule.type === "decimal";
  if (!isPlain || first === undefined) return `it takes ${kind} that its rule allows.`;
  const bounds: Readonly<Record<string, string>> = {
    between: `from ${String(first)} to ${String(second)}`,
    notBetween: `not from ${String(first)} to ${String(second)}`,
    equal: `equal to ${String(first)}`,
    notEqual: `other than ${String(first)}`,
    greaterThan: `above ${String(first)}`,
    lessThan: `below ${String(first)}`,
    greaterThanOrEqual: `of at least ${String(first)}`,
    lessThanOrEqual: `of at most ${String(first)}`,
  };
  return `it takes ${kind} ${bounds[rule.operator ?? "between"] ?? ""}.`;
}
