import { ARITHMETIC } from "./arithmetic";
import { BLOCKS } from "./blocks";
import { CRITERIA } from "./criteria";
import { DATES } from "./dates";
import { INFORMATION } from "./information";
import { LISTED } from "./listed-functions";
import { LOGIC } from "./logic";
import { LOOKUP } from "./lookup";
import type { OrdinaryFunction } from "./ordinary-function";
import { STATISTICS } from "./statistics";
import { TEXT } from "./text";

/** The allow-list: every function here is checked against values that another spreadsheet program computed. */
const FUNCTIONS: ReadonlyMap<string, OrdinaryFunction> = new Map(
  [LOGIC, ARITHMETIC, STATISTICS, CRITERIA, LOOKUP, BLOCKS, TEXT, DATES, INFORMATION, LISTED]
    .flat()
    .map((each) => [each.name, each]),
);

/** The ordinary function of that name in upper case, or undefined where it is not on the list. */
export const ordinaryFunction = (name: string): OrdinaryFunction | undefined => FUNCTIONS.get(name);

/** The names of all ordinary functions, in alphabetical order. */
export const ordinaryFunctionNames = (): readonly string[] => [...FUNCTIONS.keys()].sort();
