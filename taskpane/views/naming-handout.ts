import { BLANK_CELL } from "../../src/domain/braille/cell";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import type { Sign } from "../../src/domain/contraction/sign";
import { cellsAlone, splitSignRow } from "../../src/domain/probe/sign-row";

/**
 * A row of signs as items of a handout: a line of braille each, with the names of its signs as print.
 *
 * @param most - cells a line at most
 */
export const listRowItems = (signs: readonly Sign[], most: number): readonly HandoutEntry[] =>
  splitSignRow(signs, most).map((line) => ({
    kind: "signs",
    text: line.map(cellsAlone).join(BLANK_CELL.repeat(2)),
    print: line.map(({ name }) => name).join(", "),
  }));
