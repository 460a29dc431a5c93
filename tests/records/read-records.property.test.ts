import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import type { DescribedCell, DescribedSheet } from "../../src/adapters/memory/memory-workbook";
import { formatColumn } from "../../src/records/cell-address";
import { formatChoices, parseChoices } from "../../src/records/column-choices";
import { readRecords } from "../../src/records/read-records";
import { reportTables } from "../../src/records/table-report";

/** A teacher's table: one column a kind, with the header and the cells of forty days. */
const COLUMNS: readonly { kind: string; header: string; format?: string; cells: DescribedCell[] }[] = [
  {
    kind: "date",
    header: "Dt",
    format: "dd/mm/yyyy",
    cells: Array.from({ length: 40 }, (_, at) => 46272 + at),
  },
  {
    kind: "pupil",
    header: "Learner",
    cells: Array.from({ length: 40 }, (_, at) => (at % 2 ? "Heron" : "Plover")),
  },
  { kind: "words", header: "Wds", cells: Array.from({ length: 40 }, (_, at) => 60 + at) },
  {
    kind: "errors",
    header: "Miscues",
    cells: Array.from({ length: 40 }, (_, at) => (at === 7 ? "six" : at % 5)),
  },
  { kind: "seconds", header: "min:sec", cells: Array.from({ length: 40 }, (_, at) => `1:${10 + (at % 40)}`) },
  {
    kind: "support",
    header: "Prompt",
    cells: Array.from({ length: 40 }, (_, at) => (at % 9 ? "none" : "verbal")),
  },
  {
    kind: "note",
    header: "Comments",
    cells: Array.from({ length: 40 }, (_, at) => (at % 6 ? null : "windy")),
  },
];

const draw = (order: readonly number[], titles: number, left: number): DescribedSheet => {
  const columns = order.map((at) => COLUMNS[at]).filter((column) => column !== undefined);
  const pad: DescribedCell[] = Array.from({ length: left }, () => null);
  return {
    name: "Reading",
    rows: [
      ...Array.from({ length: titles }, (_, at): DescribedCell[] =>
        at % 2 ? [] : [...pad, `Reading log, part ${at}`],
      ),
      [...pad, ...columns.map(({ header }) => header)],
      ...Array.from({ length: 40 }, (_, row) => [...pad, ...columns.map(({ cells }) => cells[row] ?? null)]),
    ],
    formats: columns.flatMap(({ format }, at) =>
      format
        ? [{ area: { top: titles + 1, left: left + at, bottom: titles + 40, right: left + at }, format }]
        : [],
    ),
  };
};

const order = fc.shuffledSubarray([...COLUMNS.keys()], { minLength: COLUMNS.length });

describe("readRecords", () => {
  it("finds the same whatever the order of columns, the title rows and the place", async () => {
    const whole = await readRecords(new MemorySheet([draw([...COLUMNS.keys()], 0, 0)]));
    await fc.assert(
      fc.asyncProperty(order, fc.nat(6), fc.nat(4), async (places, titles, left) => {
        const found = await readRecords(new MemorySheet([draw(places, titles, left)]));
        const [table, ...others] = reportTables(found);
        expect(others).toEqual([]);
        expect(table?.range).toBe(
          `${formatColumn(left)}${titles + 1}:${formatColumn(left + 6)}${titles + 41}`,
        );
        expect(table?.columns).toEqual(
          Object.fromEntries(COLUMNS.map(({ kind }, at) => [kind, formatColumn(left + places.indexOf(at))])),
        );
        const shifted = whole.probes.map((probe) => ({
          ...probe,
          source: { ...probe.source, row: probe.source.row + titles },
        }));
        expect(found.probes).toEqual(shifted);
        expect(table?.faults.map(({ cell }) => cell)).toEqual([
          `${formatColumn(left + places.indexOf(3))}${titles + 9}`,
        ]);
      }),
      { numRuns: 40 },
    );
  });

  it("counts every row once: as a record, or among the faults", async () => {
    const cell = fc.oneof(
      fc.integer({ min: -3, max: 200 }),
      fc.constantFrom<DescribedCell>("absent", "-", null, "x7", "45/50", "62 wpm", { error: "#N/A" }),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 30 }),
        async (rows) => {
          const sheet: DescribedSheet = {
            name: "Heron",
            rows: [
              ["Date", "Words", "Errors", "Seconds"],
              [46271, 50, 2, 60],
              ...rows.map((row, at) => [46272 + at, ...row]),
            ],
            formats: [{ area: { top: 1, left: 0, bottom: rows.length + 1, right: 0 }, format: "yyyy-mm-dd" }],
          };
          const { blocks } = await readRecords(new MemorySheet([sheet]));
          const [block] = blocks;
          if (block?.kind !== "probes") throw new TypeError("no table of probes was found");
          const recorded = block.records.map(({ source }) => source.row - 1);
          const faulted = new Set(block.faults.map(({ row }) => row));
          expect(recorded.filter((row) => faulted.has(row))).toEqual([]);
          rows.forEach(([words, errors], at) => {
            const isData = [words, errors].some(
              (value) => value !== null && value !== "absent" && value !== "-",
            );
            expect(recorded.includes(at + 2) || faulted.has(at + 2)).toBe(isData);
          });
        },
      ),
      { numRuns: 200 },
    );
  });

  it("never throws on any sheet", async () => {
    const cell = fc.oneof(
      fc.constantFrom<DescribedCell>(
        "Date",
        "Pupil",
        "Words",
        "Errors",
        "Score",
        "Letter",
        "7/10/2026",
        "+",
        "P",
        "1:30",
        "Total",
        null,
        { error: "#REF!" },
        true,
      ),
      fc.double({ noNaN: true }),
      fc.string({ maxLength: 12 }),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 12 }),
        fc.constantFrom("General", "d-mmm", "h:mm", "0%", "mm:ss"),
        async (rows, format) => {
          const formats = [{ area: { top: 0, left: 0, bottom: 11, right: 3 }, format }];
          const { blocks } = await readRecords(new MemorySheet([{ name: "S", rows, formats }]));
          expect(blocks.every(({ range }) => /^[A-Z]+\d+:[A-Z]+\d+$/.test(range))).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("choices", () => {
  it("come back from their setting as they went", () => {
    const block = fc.record(
      {
        columns: fc.dictionary(
          fc.string().filter((key) => key !== "__proto__"),
          fc.constantFrom("words", "none", "date"),
          { minKeys: 1 },
        ),
        dayOrder: fc.constantFrom("dmy", "mdy"),
        clock: fc.constantFrom("m:ss", "h:mm"),
        leftOut: fc.constant(true),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.string().filter((key) => key !== "__proto__"),
          block,
        ),
        (blocks) => {
          const choices = { dayOrder: "dmy" as const, blocks };
          expect(
            JSON.stringify(parseChoices(formatChoices(choices as Parameters<typeof formatChoices>[0]))),
          ).toBe(JSON.stringify(parseChoices(JSON.stringify(choices))));
          expect(
            Object.keys(
              parseChoices(formatChoices(choices as Parameters<typeof formatChoices>[0])).blocks ?? {},
            ),
          ).toEqual(Object.keys(blocks));
        },
      ),
    );
  });

  it.each(["", "[1]", "null", "{", '{"dayOrder":"ymd","blocks":7}'])(
    "damaged text gives none: %s",
    (text) => {
      expect(parseChoices(text)).toEqual({});
    },
  );
});
