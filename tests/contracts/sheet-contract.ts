import { beforeEach, describe, expect, it } from "vitest";
import type { Area } from "../../src/domain/area";
import type { CellValue } from "../../src/domain/cell-value";
import { isCellError } from "../../src/domain/cell-value";
import { HostError } from "../../src/ports/sheet";
import type { CellInput, ChartRequest, NewTable, Sheet, SheetChange } from "../../src/ports/sheet";
import { STARTING_WORKBOOK } from "./starting-workbook";
import type { StartingWorkbook } from "./starting-workbook";

/** An adapter with its workbook open, and what the contract must know of its host. */
export interface SheetUnderTest {
  readonly sheet: Sheet;
  /** Types into a cell as the teacher would: not through the port. */
  typeInto(sheet: string, row: number, column: number, value: CellValue): Promise<void>;
  /** What happens to cells beneath a table that grows: they move down with it, or the host refuses. */
  readonly beneathTable: "shifts" | "refuses";
  /** The same for cells beneath a plain range. */
  readonly beneathRange: "shifts" | "refuses";
  /** Whether formulas have values as soon as they are written. */
  readonly calculates: boolean;
  /** Whether the host has native charts. */
  readonly charts: boolean;
  /** What a cell shows and takes beside its contents, where the port does not tell. */
  lookAt(sheet: string, row: number, column: number): Promise<CellLook>;
}

/** Beside a cell's contents: its font, choices to pick from, and whether it takes days alone. */
export interface CellLook {
  readonly font?: string | undefined;
  readonly choices?: readonly string[] | undefined;
  readonly daysOnly?: boolean | undefined;
}

const area = (top: number, left: number, bottom: number, right: number): Area => ({
  top,
  left,
  bottom,
  right,
});

/** `[@Words]`, `Probes[@Words]` and `Probes[[#This Row],[Words]]` are three spellings of one reference. */
const spelling = (formula: string | null | undefined): string | null =>
  formula === null || formula === undefined
    ? null
    : formula
        .replace(/\w*\[\[#This Row\],\s*\[?(\w+)\]?\]/g, "[@$1]")
        .replace(/\w*\[@\[?(\w+)\]?\]/g, "[@$1]")
        .replace(/\s/g, "");

const isRefusal = (error: unknown): boolean => error instanceof HostError && error.message.length > 20;
const refused = expect.toSatisfy(isRefusal, "a HostError that says what to do");

/**
 * The contract of the {@link Sheet} port, run by every adapter over {@link STARTING_WORKBOOK}. A cell's formula that
 * was written or filled need not have a value unless the host calculates; its formula text must be there.
 *
 * @param name - the adapter, as the report shows it
 * @param setup - opens a fresh workbook of this description
 */
export function runSheetContract(
  name: string,
  setup: (start: StartingWorkbook) => Promise<SheetUnderTest>,
): void {
  describe(`${name} keeps the contract of a sheet`, () => {
    let host: SheetUnderTest;
    let sheet: Sheet;
    beforeEach(async () => {
      host = await setup(STARTING_WORKBOOK);
      sheet = host.sheet;
    });

    const values = async (sheetName: string, where: Area): Promise<readonly (readonly CellValue[])[]> =>
      (await sheet.read(sheetName, where)).values;

    /** Everything that the workbook shows: what must be as it was after a refusal. */
    const everything = async (): Promise<unknown> => {
      const outline = await sheet.outline();
      const blocks = [];
      for (const { name: sheetName } of outline) blocks.push(await sheet.read(sheetName, area(0, 0, 11, 7)));
      return { outline, blocks };
    };
    const refusesWithoutTrace = async (attempt: () => Promise<unknown>): Promise<void> => {
      const before = await everything();
      await expect(attempt()).rejects.toEqual(refused);
      expect(await everything()).toEqual(before);
    };

    describe("outline", () => {
      it("lists sheets in tab order, hidden ones marked", async () => {
        const sheets = await sheet.outline();
        expect(sheets.map((each) => [each.name, each.hidden])).toEqual([
          ["Reading log", false],
          ["Probes", false],
          ["Stacked", false],
          ["Kept", true],
          ["Empty", false],
        ]);
      });

      it("gives the used area, and none for an empty sheet", async () => {
        const sheets = await sheet.outline();
        expect(sheets.map((each) => each.used)).toEqual([
          area(0, 0, 4, 4),
          area(0, 0, 5, 4),
          area(0, 0, 3, 3),
          area(0, 0, 1, 3),
          undefined,
        ]);
      });

      it("gives the tables with header and totals row", async () => {
        const sheets = await sheet.outline();
        expect(sheets.map((each) => each.tables)).toEqual([
          [],
          [{ name: "Probes", area: area(0, 0, 3, 4), headerRow: true, totalsRow: true }],
          [{ name: "Taught", area: area(0, 0, 2, 1), headerRow: true, totalsRow: false }],
          [],
          [],
        ]);
      });
    });

    describe("read", () => {
      it("gives values: booleans, numbers, text, null for an empty cell, errors", async () => {
        const block = await sheet.read("Kept", area(0, 0, 1, 3));
        const plain = block.values.map((row) =>
          row.map((value) => (isCellError(value) ? value.error : value)),
        );
        expect(plain).toEqual([
          [true, 0.25, "=not a formula", "#DIV/0!"],
          [null, -3, "⠓⠑⠗⠕⠝", false],
        ]);
      });

      it("gives formulas with =, and null for text that only looks like one", async () => {
        const block = await sheet.read("Kept", area(0, 0, 0, 3));
        expect(block.formulas).toEqual([[null, null, null, "=1/0"]]);
      });

      it("gives number formats", async () => {
        expect((await sheet.read("Kept", area(0, 0, 0, 1))).formats).toEqual([["General", "0%"]]);
        expect((await sheet.read("Reading log", area(3, 0, 3, 0))).formats).toEqual([["dd/mm/yyyy"]]);
      });

      it("says which sheet and area it read, and reads beyond the used area as empty", async () => {
        const block = await sheet.read("Empty", area(7, 2, 8, 3));
        expect(block).toMatchObject({ sheet: "Empty", area: area(7, 2, 8, 3) });
        expect(block.values).toEqual([
          [null, null],
          [null, null],
        ]);
      });

      it("refuses a sheet that is not there", async () => {
        await refusesWithoutTrace(() => sheet.read("Nowhere", area(0, 0, 0, 0)));
      });
    });

    describe("appendRows to a table", () => {
      const row: readonly CellInput[] = [46314, "Plover", 40, 2, undefined];

      it("adds above the totals row, says where, and grows the table", async () => {
        expect(await sheet.appendRows({ table: "Probes" }, [row])).toEqual({
          sheet: "Probes",
          area: area(3, 0, 3, 4),
        });
        expect((await values("Probes", area(3, 0, 3, 3)))[0]).toEqual([46314, "Plover", 40, 2]);
        const totals = await sheet.read("Probes", area(4, 0, 4, 4));
        expect(totals.values[0]?.[0]).toBe("Total");
        expect(totals.formulas[0]?.[4]).toBe("=SUBTOTAL(109,Probes[Correct])");
        const outlined = (await sheet.outline())[1]?.tables[0];
        expect(outlined).toMatchObject({ area: area(0, 0, 4, 4), totalsRow: true });
      });

      it("adds several rows in their order", async () => {
        const rows = [
          row,
          [46321, "Plover", 44, 1, undefined],
          [46328, null, null, null, undefined],
        ] as const;
        const added = await sheet.appendRows({ table: "Probes" }, rows);
        expect(added.area).toEqual(area(3, 0, 5, 4));
        expect((await values("Probes", area(3, 0, 5, 3))).map((each) => [...each])).toEqual([
          [46314, "Plover", 40, 2],
          [46321, "Plover", 44, 1],
          [46328, null, null, null],
        ]);
      });

      it("fills the calculated column where the cell is undefined", async () => {
        await sheet.appendRows({ table: "Probes" }, [row]);
        const block = await sheet.read("Probes", area(2, 4, 3, 4));
        expect(spelling(block.formulas[1]?.[0])).toBe("=[@Words]-[@Errors]");
        expect(spelling(block.formulas[1]?.[0])).toBe(spelling(block.formulas[0]?.[0]));
        if (host.calculates) expect(block.values[1]?.[0]).toBe(38);
      });

      it("leaves the calculated column empty where the cell is null, and takes a value where one is given", async () => {
        await sheet.appendRows({ table: "Probes" }, [
          [46314, "Plover", 40, 2, null],
          [46321, "Plover", 41, 2, 39],
        ]);
        const block = await sheet.read("Probes", area(3, 4, 4, 4));
        expect(block.formulas).toEqual([[null], [null]]);
        expect(block.values).toEqual([[null], [39]]);
      });

      it("copies the number formats of the row above", async () => {
        await sheet.appendRows({ table: "Probes" }, [row, row]);
        const { formats } = await sheet.read("Probes", area(3, 0, 4, 1));
        expect(formats).toEqual([
          ["yyyy-mm-dd", "General"],
          ["yyyy-mm-dd", "General"],
        ]);
      });

      it("loses nothing beneath: what stands there moves down, or the host refuses", async () => {
        const rows: readonly (readonly CellInput[])[] = [
          ["th", 46294],
          ["wh", 46301],
        ];
        if (host.beneathTable === "refuses") {
          await refusesWithoutTrace(() => sheet.appendRows({ table: "Taught" }, rows));
          return;
        }
        await sheet.appendRows({ table: "Taught" }, rows);
        expect(await values("Stacked", area(2, 0, 5, 0))).toEqual([
          ["ch"],
          ["th"],
          ["wh"],
          ["Directly beneath"],
        ]);
      });

      it("leaves the cells beside the table where they are, unless whole rows move", async () => {
        if (host.beneathTable === "refuses") return;
        await sheet.appendRows({ table: "Taught" }, [["th", 46294]]);
        const beside = (await values("Stacked", area(0, 3, 4, 3))).flat().filter((value) => value !== null);
        expect(beside).toEqual(["Beside", "one", "two", "three"]);
      });

      it("refuses a table that is not there", async () => {
        await refusesWithoutTrace(() => sheet.appendRows({ table: "Nowhere" }, [["a"]]));
      });

      it("refuses rows of another width, the first good one included", async () => {
        await refusesWithoutTrace(() => sheet.appendRows({ table: "Probes" }, [row, [46314, "Plover"]]));
      });
    });

    describe("appendRows to a plain range", () => {
      const target = { sheet: "Reading log", area: area(2, 0, 4, 4) };

      it("adds beneath, with formats and formulas filled down", async () => {
        const added = await sheet.appendRows(target, [
          [46314, "Heron", 70, 2, undefined],
          [46321, "Heron", 72, 1, undefined],
        ]);
        expect(added).toEqual({ sheet: "Reading log", area: area(5, 0, 6, 4) });
        const block = await sheet.read("Reading log", area(5, 0, 6, 4));
        expect(block.values.map((row) => row.slice(0, 4))).toEqual([
          [46314, "Heron", 70, 2],
          [46321, "Heron", 72, 1],
        ]);
        expect(block.formulas.map((row) => row[4])).toEqual(["=C6-D6", "=C7-D7"]);
        expect(block.formats.map((row) => [row[0], row[4]])).toEqual([
          ["dd/mm/yyyy", "0.0"],
          ["dd/mm/yyyy", "0.0"],
        ]);
        if (host.calculates) expect(block.values.map((row) => row[4])).toEqual([68, 71]);
      });

      it("leaves a cell without formula above empty where it is undefined", async () => {
        await sheet.appendRows(target, [[46314, undefined, 70, 2, null]]);
        const block = await sheet.read("Reading log", area(5, 0, 5, 4));
        expect(block.values[0]).toEqual([46314, null, 70, 2, null]);
        expect(block.formulas[0]).toEqual([null, null, null, null, null]);
      });

      it("loses nothing beneath: what stands there moves down, or the host refuses", async () => {
        await sheet.writeBlock("Reading log", { row: 5, column: 1 }, [["A note in the way"]]);
        const row: readonly CellInput[] = [46314, "Heron", 70, 2, undefined];
        if (host.beneathRange === "refuses") {
          await refusesWithoutTrace(() => sheet.appendRows(target, [row]));
          return;
        }
        await sheet.appendRows(target, [row]);
        expect(await values("Reading log", area(5, 1, 6, 1))).toEqual([["Heron"], ["A note in the way"]]);
      });

      it("refuses a sheet that is not there, and rows of another width", async () => {
        await refusesWithoutTrace(() => sheet.appendRows({ ...target, sheet: "Nowhere" }, [[1, 2, 3, 4, 5]]));
        await refusesWithoutTrace(() => sheet.appendRows(target, [[1, 2, 3, 4, 5, 6]]));
      });
    });

    describe("text stays text", () => {
      it.each([
        ["begins with =", "=1+1"],
        ["begins with + or -", "-5 and +3"],
        ["begins with @", "@SUM(A1)"],
        ["begins with an apostrophe", "'twas"],
        ["looks like a number", "007"],
        ["looks like a date", "7/10"],
        ["looks like a time", "1:30"],
        ["looks like a share", "90%"],
        ["looks like a truth value", "TRUE"],
        ["looks like an error", "#N/A"],
        ["is braille", "⠠⠓⠑⠗⠕⠝⠀⠗⠂⠙⠎"],
        ["has line breaks", "one\ntwo"],
        ["is right to left", "שלום 7"],
        ["has an emoji", "🐦 5"],
      ])("%s", async (_, text) => {
        await sheet.writeBlock("Empty", { row: 1, column: 1 }, [[text]]);
        const written = await sheet.read("Empty", area(1, 1, 1, 1));
        expect(written).toMatchObject({ values: [[text]], formulas: [[null]] });
        await sheet.appendRows({ table: "Taught" }, [[text, 46294]]).catch((error: unknown) => {
          if (host.beneathTable === "shifts") throw error;
        });
        if (host.beneathTable === "shifts") {
          expect(await sheet.read("Stacked", area(3, 0, 3, 0))).toMatchObject({
            values: [[text]],
            formulas: [[null]],
          });
        }
      });
    });

    describe("writeBlock", () => {
      it("writes numbers, text, truth values, emptiness and formulas, and says where", async () => {
        const rows: readonly (readonly CellInput[])[] = [
          ["Words", 84, true],
          [null, 0.5, { formula: "=B3*2" }],
        ];
        expect(await sheet.writeBlock("Empty", { row: 2, column: 0 }, rows)).toEqual(area(2, 0, 3, 2));
        const block = await sheet.read("Empty", area(2, 0, 3, 2));
        expect(block.values[0]).toEqual(["Words", 84, true]);
        expect(block.values[1]?.slice(0, 2)).toEqual([null, 0.5]);
        expect(block.formulas[1]?.[2]).toBe("=B3*2");
        if (host.calculates) expect(block.values[1]?.[2]).toBe(168);
      });

      it("makes the sheet where there is none of that name, behind the others", async () => {
        await sheet.writeBlock("New sheet", { row: 0, column: 0 }, [["Sign"], ["ea"]]);
        const sheets = await sheet.outline();
        expect(sheets.map((each) => each.name).at(-1)).toBe("New sheet");
        expect(sheets.at(-1)).toMatchObject({ hidden: false, used: area(0, 0, 1, 0), tables: [] });
        expect(await values("New sheet", area(0, 0, 1, 0))).toEqual([["Sign"], ["ea"]]);
      });

      it("empties a cell by null, formula included, and leaves it alone by undefined", async () => {
        await sheet.writeBlock("Reading log", { row: 3, column: 1 }, [[null, undefined, 5, null]]);
        const block = await sheet.read("Reading log", area(3, 1, 3, 4));
        expect(block.values[0]).toEqual([null, 62, 5, null]);
        expect(block.formulas[0]).toEqual([null, null, null, null]);
      });

      it("keeps number formats", async () => {
        await sheet.writeBlock("Reading log", { row: 3, column: 0 }, [[46301]]);
        expect((await sheet.read("Reading log", area(3, 0, 3, 0))).formats).toEqual([["dd/mm/yyyy"]]);
      });

      it("refuses ragged rows and nothing at all", async () => {
        await refusesWithoutTrace(() =>
          sheet.writeBlock("Empty", { row: 0, column: 0 }, [["a", "b"], ["c"]]),
        );
        await refusesWithoutTrace(() => sheet.writeBlock("Empty", { row: 0, column: 0 }, []));
      });
    });

    describe("addTable", () => {
      const request: NewTable = {
        name: "Lessons",
        sheet: "Lessons",
        columns: [
          { name: "Date", format: "yyyy-mm-dd", takes: "days", width: 12 },
          { name: "Held", takes: { choices: ["yes", "pupil absent"] } },
          { name: "Minutes" },
          { name: "Hours", format: "0.00", formula: "=Lessons[[#This Row],[Minutes]]/60" },
          { name: "In braille", font: "Noto Sans Symbols 2" },
        ],
      };
      const first: readonly CellInput[] = [46314, "yes", 45, undefined, "⠓⠑⠗⠕⠝"];
      const second: readonly CellInput[] = [46315, "=no", null, undefined, "⠏"];

      it("makes it on a new sheet behind the others, with one blank row of its formats and formulas", async () => {
        expect(await sheet.addTable(request)).toEqual(area(0, 0, 1, 4));
        const made = (await sheet.outline()).at(-1);
        expect(made).toMatchObject({ name: "Lessons", hidden: false });
        expect(made?.tables).toEqual([
          { name: "Lessons", area: area(0, 0, 1, 4), headerRow: true, totalsRow: false },
        ]);
        const block = await sheet.read("Lessons", area(0, 0, 1, 4));
        expect(block.values[0]).toEqual(["Date", "Held", "Minutes", "Hours", "In braille"]);
        expect(block.formats[1]).toEqual(["yyyy-mm-dd", "General", "General", "0.00", "General"]);
        expect(block.formulas[1]?.map(spelling)).toEqual([null, null, null, "=[@Minutes]/60", null]);
        expect([0, 1, 2, 4].map((column) => block.values[1]?.[column])).toEqual([null, null, null, null]);
      });

      it("fonts, choices and days go with its cells", async () => {
        await sheet.addTable(request);
        expect(await host.lookAt("Lessons", 1, 0)).toMatchObject({ daysOnly: true });
        expect(await host.lookAt("Lessons", 1, 1)).toMatchObject({ choices: ["yes", "pupil absent"] });
        expect(await host.lookAt("Lessons", 1, 4)).toMatchObject({ font: "Noto Sans Symbols 2" });
      });

      it("starts with rows where some are given", async () => {
        expect(await sheet.addTable({ ...request, rows: [first, second] })).toEqual(area(0, 0, 2, 4));
        const block = await sheet.read("Lessons", area(1, 0, 2, 4));
        expect(block.values.map((row) => [row[0], row[1], row[2], row[4]])).toEqual([
          [46314, "yes", 45, "⠓⠑⠗⠕⠝"],
          [46315, "=no", null, "⠏"],
        ]);
        expect(block.formats.map(([format]) => format)).toEqual(["yyyy-mm-dd", "yyyy-mm-dd"]);
        expect(block.formulas.map((row) => spelling(row[3]))).toEqual(["=[@Minutes]/60", "=[@Minutes]/60"]);
        if (host.calculates) expect(block.values[0]?.[3]).toBe(0.75);
      });

      it("its first appended row takes the blank one, further rows grow it with formats and formulas", async () => {
        await sheet.addTable(request);
        expect(await sheet.appendRows({ table: "Lessons" }, [first])).toEqual({
          sheet: "Lessons",
          area: area(1, 0, 1, 4),
        });
        expect((await sheet.appendRows({ table: "Lessons" }, [second, second])).area).toEqual(
          area(2, 0, 3, 4),
        );
        const block = await sheet.read("Lessons", area(1, 0, 3, 4));
        expect(block.values.map((row) => row[1])).toEqual(["yes", "=no", "=no"]);
        expect(block.formulas.map((row) => spelling(row[3]))).toEqual(
          Array.from({ length: 3 }, () => "=[@Minutes]/60"),
        );
        expect(block.formats.map(([format]) => format)).toEqual(["yyyy-mm-dd", "yyyy-mm-dd", "yyyy-mm-dd"]);
        expect((await sheet.outline()).at(-1)?.tables[0]?.area).toEqual(area(0, 0, 3, 4));
      });

      it("takes several rows at once into a blank table", async () => {
        await sheet.addTable(request);
        expect((await sheet.appendRows({ table: "Lessons" }, [first, second])).area).toEqual(
          area(1, 0, 2, 4),
        );
        expect((await values("Lessons", area(1, 1, 2, 1))).flat()).toEqual(["yes", "=no"]);
      });

      it("uses an empty sheet of that name", async () => {
        await sheet.addTable({ ...request, sheet: "Empty" });
        const sheets = await sheet.outline();
        expect(sheets.map((each) => each.name)).toHaveLength(5);
        expect(sheets.at(-1)?.tables.map(({ name: table }) => table)).toEqual(["Lessons"]);
      });

      it("refuses a sheet in use, a name that a table has, and rows of another width", async () => {
        await refusesWithoutTrace(() => sheet.addTable({ ...request, sheet: "Reading log" }));
        await refusesWithoutTrace(() => sheet.addTable({ ...request, name: "probes" }));
        await refusesWithoutTrace(() => sheet.addTable({ ...request, rows: [[1, 2]] }));
      });
    });

    describe("removeRows", () => {
      it("takes rows out wherever they stand; what is beneath moves up", async () => {
        await sheet.removeRows("Probes", [1]);
        expect((await values("Probes", area(0, 0, 2, 0))).flat()).toEqual(["Date", 46307, "Total"]);
        expect((await sheet.outline())[1]?.tables[0]).toMatchObject({ area: area(0, 0, 2, 4) });
      });

      it("leaves one blank row where all are taken out, which the next row fills", async () => {
        await sheet.removeRows("Probes", [1, 2]);
        const block = await sheet.read("Probes", area(1, 0, 2, 4));
        expect(block.values.map((row) => row.slice(0, 4))).toEqual([
          [null, null, null, null],
          ["Total", null, null, null],
        ]);
        const added = await sheet.appendRows({ table: "Probes" }, [[46314, "Plover", 40, 2, undefined]]);
        expect(added.area).toEqual(area(1, 0, 1, 4));
      });

      it("refuses rows that are none of the table's, and a table that is not there", async () => {
        await refusesWithoutTrace(() => sheet.removeRows("Probes", [0]));
        await refusesWithoutTrace(() => sheet.removeRows("Probes", [3]));
        await refusesWithoutTrace(() => sheet.removeRows("Nowhere", [1]));
      });
    });

    describe("removeSheet, where a host without undo has it", () => {
      it("takes a sheet out, and refuses one that is not there", async () => {
        if (!sheet.removeSheet) return expect(sheet.undo).toBeDefined();
        await sheet.removeSheet("Empty");
        expect((await sheet.outline()).map((each) => each.name)).not.toContain("Empty");
        await expect(sheet.removeSheet("Empty")).rejects.toEqual(refused);
      });
    });

    describe("group, where the host can undo", () => {
      const writes = async (): Promise<void> => {
        await sheet.writeBlock("Empty", { row: 0, column: 0 }, [["a"]]);
        await sheet.addTable({ name: "New", sheet: "New", columns: [{ name: "Word" }] });
        await sheet.appendRows({ table: "New" }, [["hen"]]);
      };

      it("makes several writes one for undo", async () => {
        if (!sheet.group || !sheet.undo) return expect(sheet.removeSheet).toBeDefined();
        const before = await everything();
        await sheet.group(writes);
        expect(await everything()).not.toEqual(before);
        await sheet.undo();
        expect(await everything()).toEqual(before);
      });

      it("takes back what was written where a later write is refused", async () => {
        const { group } = sheet;
        if (!group) return expect(sheet.removeSheet).toBeDefined();
        await refusesWithoutTrace(() =>
          group.call(sheet, async () => {
            await writes();
            await sheet.appendRows({ table: "Nowhere" }, [["a"]]);
          }),
        );
      });
    });

    describe("addChart", () => {
      const request: ChartRequest = {
        sheet: "Reading log",
        title: "Heron, read aloud",
        xTitle: "Date",
        yTitle: "Words read correctly a minute",
        x: area(3, 0, 4, 0),
        series: [{ name: "Right", y: area(3, 4, 4, 4) }],
        at: { row: 7, column: 0 },
        summary: "Two probes; 58, then 63 words.",
      };

      it("adds a native chart with its summary in a cell, or refuses where the host has none", async () => {
        if (!host.charts) return refusesWithoutTrace(() => sheet.addChart(request));
        await sheet.addChart(request);
        const column = (await values("Reading log", area(7, 0, 60, 0))).flat();
        expect(column.filter((value) => value === request.summary)).toHaveLength(1);
      });

      it("writes the summary over nothing that stands there", async () => {
        if (!host.charts) return;
        await sheet.addChart(request);
        await sheet.addChart({ ...request, summary: "The same probes once more." });
        const texts = (await values("Reading log", area(7, 0, 120, 0)))
          .flat()
          .filter((value) => value !== null);
        expect(texts.sort()).toEqual(["The same probes once more.", request.summary].sort());
      });

      it("refuses a sheet that is not there", async () => {
        await refusesWithoutTrace(() => sheet.addChart({ ...request, sheet: "Nowhere" }));
      });
    });

    describe("settings", () => {
      it("has none under a key that was never kept", async () => {
        expect(await sheet.readSetting("columns")).toBeUndefined();
      });

      it.each([
        ["plain text", "dmy"],
        ["JSON", '{"Probes!A3":{"date":"A","words":"D"},"quote":"\\"<&>\'"}'],
        ["XML's own characters, line breaks and blanks", '  ]]> <b a="1">&amp;</b>\n\t two  spaces '],
        ["text outside the basic plane", "⠓⠑⠗⠕⠝ 🐦 שלום"],
        ["nothing", ""],
      ])("comes back as it was kept: %s", async (_, value) => {
        await sheet.keepSetting("columns", value);
        expect(await sheet.readSetting("columns")).toBe(value);
      });

      it("keeps each key apart and takes the last value", async () => {
        await sheet.keepSetting("columns", "first");
        await sheet.keepSetting("day & order", "dmy");
        await sheet.keepSetting("columns", "second");
        expect(await sheet.readSetting("columns")).toBe("second");
        expect(await sheet.readSetting("day & order")).toBe("dmy");
      });
    });

    describe("onChange", () => {
      it("tells of what the teacher types", async () => {
        const heard: SheetChange[] = [];
        sheet.onChange((change) => heard.push(change));
        await host.typeInto("Probes", 1, 2, 33);
        expect(heard.length).toBeGreaterThan(0);
        expect(heard[0]?.sheet).toBe("Probes");
        if (heard[0]?.area) expect(heard[0].area).toEqual(area(1, 2, 1, 2));
        expect(await values("Probes", area(1, 2, 1, 2))).toEqual([[33]]);
      });

      it("tells every listener, and none that has stopped", async () => {
        const heard: string[] = [];
        const stop = sheet.onChange(() => heard.push("stopped"));
        sheet.onChange(() => heard.push("listening"));
        stop();
        stop();
        await host.typeInto("Probes", 1, 2, 33);
        expect(new Set(heard)).toEqual(new Set(["listening"]));
      });

      it("still tells after a refusal", async () => {
        const heard: SheetChange[] = [];
        sheet.onChange((change) => heard.push(change));
        await sheet.appendRows({ table: "Nowhere" }, [["a"]]).catch(() => undefined);
        await host.typeInto("Empty", 0, 0, "typed");
        expect(heard.map((change) => change.sheet)).toContain("Empty");
      });
    });

    describe("undo, where the host has it", () => {
      it("takes back what the port last wrote", async () => {
        if (!sheet.undo) return;
        const before = await everything();
        await sheet.appendRows({ table: "Probes" }, [[46314, "Plover", 40, 2, undefined]]);
        expect(await everything()).not.toEqual(before);
        await sheet.undo();
        expect(await everything()).toEqual(before);
        await sheet.writeBlock("New sheet", { row: 0, column: 0 }, [["a"]]);
        await sheet.undo();
        expect(await everything()).toEqual(before);
      });
    });
  });
}
