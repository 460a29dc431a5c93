import { ERROR_CODES, type CellValue } from "../../domain/cell-value";
import { isError, isRows, makeError, Reference } from "../engine/value";
import { dereference } from "../engine/dereference";
import { cellKey } from "../workbook";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { anyValue, number, range } from "./parameters";

const test = (name: string, holds: (cell: CellValue) => boolean): OrdinaryFunction =>
  defineFunction(name, [anyValue], (_, cell) => holds(cell));

/** What kind of value a cell holds. */
export const INFORMATION: readonly OrdinaryFunction[] = [
  test("ISBLANK", (cell) => cell === null),
  test("ISNUMBER", (cell) => typeof cell === "number"),
  test("ISTEXT", (cell) => typeof cell === "string"),
  test("ISNONTEXT", (cell) => typeof cell !== "string"),
  test("ISLOGICAL", (cell) => typeof cell === "boolean"),
  test("ISERROR", isError),
  test("ISERR", (cell) => isError(cell) && cell.error !== "#N/A"),
  test("ISNA", (cell) => isError(cell) && cell.error === "#N/A"),
  defineFunction("ISEVEN", [number], (_, given) => Math.trunc(given) % 2 === 0),
  defineFunction("ISODD", [number], (_, given) => Math.trunc(given) % 2 !== 0),
  defineFunction("ISFORMULA", [range], (_, given) => {
    if (!(given instanceof Reference)) return makeError("#VALUE!", "ISFORMULA needs a cell.");
    return given.sheet.cells.get(cellKey(given.area.top, given.area.left))?.formula !== undefined;
  }),
  defineFunction("NA", [], () => makeError("#N/A")),
  defineFunction("TYPE", [range], (scope, given) => {
    const read = dereference(given, scope);
    if (isRows(read)) return 64;
    if (isError(read)) return 16;
    return typeof read === "string" ? 2 : typeof read === "boolean" ? 4 : 1;
  }),
  // The numbers of #NULL! to #N/A are 1 to 7, in the order of the list.
  defineFunction("ERROR.TYPE", [anyValue], (_, cell) => {
    const place = isError(cell) ? ERROR_CODES.indexOf(cell.error) : -1;
    return place >= 0 && place < 7 ? place + 1 : makeError("#N/A", "The cell holds no error.");
  }),
];
