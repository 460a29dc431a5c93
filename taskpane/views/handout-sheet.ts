import { BLANK_CELL } from "../../src/domain/braille/cell";
import { BRAILLE_FONTS } from "../../src/domain/braille/fonts";
import type { Handout } from "../../src/domain/drill/handout";
import type { CellInput, NewTable, Sheet } from "../../src/ports/sheet";
import { undoable, type Written } from "../../src/records/undoable-writes";
import type { WrittenEntries } from "./entries-writing";

const NAME = "Handout";

/** A name with the least number behind it that is not taken yet. */
const freeName = (taken: ReadonlySet<string>): string => {
  let number = 1;
  const name = (): string => (number === 1 ? NAME : `${NAME}${number}`);
  while (taken.has(name().toLowerCase())) number += 1;
  return name();
};

/** The rows of a handout's table: title, date, items, closing note. Braille is not broken: a cell breaks it by itself. */
export const handoutTable = (
  { title, date, items, notice }: Handout,
  name: string,
): NewTable & { readonly rows: readonly (readonly CellInput[])[] } => ({
  name,
  sheet: name,
  columns: [
    { name: "In print", width: 36 },
    { name: "In braille", width: 60, font: BRAILLE_FONTS[0] },
  ],
  rows: [title, ...(date === undefined ? [] : [date]), ...items, notice].map(({ print, cells }) => [
    print,
    cells.replaceAll("\n", BLANK_CELL),
  ]),
});

/** Puts a handout on a sheet of its own, as a table. Texts stay texts, whatever they begin with. */
export const putHandoutOnSheet = async (sheet: Sheet, handout: Handout): Promise<WrittenEntries> => {
  const outlines = await sheet.outline();
  const taken = new Set(
    outlines
      .flatMap(({ name, tables }) => [name, ...tables.map((table) => table.name)])
      .map((name) => name.toLowerCase()),
  );
  const table = handoutTable(handout, freeName(taken));
  const written: Written[] = [];
  const undo = await undoable(
    sheet,
    async () => {
      const area = await sheet.addTable(table);
      written.push({ kind: "sheet", sheet: table.sheet, area, rows: table.rows });
    },
    written,
  );
  return { words: `The handout stands on the new sheet ${table.sheet}.`, undo };
};
