import { stringifyA1Ref, translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx";

const addressOf = (row: number, column: number): string =>
  stringifyA1Ref({ range: { top: row, left: column, bottom: row, right: column } });

/**
 * The formula as filling it down (or across) from one cell to another writes it: relative references move along,
 * absolute and structured ones stay.
 */
export const fillFormula = (
  formula: string,
  from: { readonly row: number; readonly column: number },
  to: { readonly row: number; readonly column: number },
): string =>
  translateFormulaToA1(
    translateFormulaToR1C1(formula, addressOf(from.row, from.column)),
    addressOf(to.row, to.column),
  );
