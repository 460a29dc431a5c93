import { describe, expect, it } from "vitest";
import { EmbeddedSheet } from "../../src/adapters/embedded/embedded-sheet";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { newWorkbook } from "../../src/adapters/xlsx/new-workbook";
import { OfficeSheet } from "../../src/adapters/office/office-sheet";
import type { Day, Seconds } from "../../src/domain/units";
import { HostError } from "../../src/ports/sheet";
import type { Sheet } from "../../src/ports/sheet";
import { appendEntries } from "../../src/records/append-entries";
import { addExample, removeExample } from "../../src/records/example";
import { EXAMPLE_PUPIL, exampleEntries } from "../../src/records/example-entries";
import { holdsExample } from "../../src/records/kept-example";
import type { NewEntries } from "../../src/records/new-entries";
import { readRecords } from "../../src/records/read-records";
import { setUpWorkbook } from "../../src/records/set-up";
import { TABLE_ORDER, TABLE_PLANS } from "../../src/records/table-plans";
import { Calculation, NO_FUNCTIONS } from "../../src/spreadsheet/calculation";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { StrictExcel } from "../adapters/office/stand-in/strict-excel";
import { contentsOf, valueOf } from "../adapters/xlsx/opened-files";
import { drawSheet } from "./drawn-sheet";

const TODAY = 46_351 as Day;

const embedded = (): Sheet => {
  const workbook = new OpenWorkbook(contentsOf(newWorkbook()));
  return new EmbeddedSheet(workbook, new Calculation(workbook, { library: NO_FUNCTIONS, now: () => TODAY }));
};

const excel = (): Sheet => {
  const stand = new StrictExcel([{ name: "Sheet1", rows: [] }]);
  return new OfficeSheet(stand.host, (error) => {
    throw error;
  });
};

const HOSTS: readonly (readonly [string, () => Sheet])[] = [
  ["the memory host", () => new MemorySheet([{ name: "Sheet1", rows: [] }])],
  ["the embedded host", embedded],
  ["Excel", excel],
];

const everything = async (sheet: Sheet): Promise<unknown> => {
  const outline = await sheet.outline();
  const blocks = [];
  for (const { name, used } of outline) if (used) blocks.push(await sheet.read(name, used));
  return { outline, blocks };
};

const without = (records: readonly object[]): unknown[] =>
  records.map((record) => ({ ...record, source: undefined }));

describe.each(HOSTS)("in %s", (_, open) => {
  it("a workbook is set up with every table, found again by its headers, and undone", async () => {
    const sheet = open();
    const before = await everything(sheet);
    const { kinds, undo } = await setUpWorkbook(sheet);
    expect(kinds).toEqual(TABLE_ORDER);
    const { blocks } = await readRecords(sheet);
    expect(new Map(blocks.map(({ kind, table }) => [kind, table]))).toEqual(
      new Map(TABLE_ORDER.map((kind) => [kind, TABLE_PLANS[kind].name])),
    );
    expect(blocks.flatMap(({ faults, questions }) => [...faults, ...questions])).toEqual([]);
    await undo();
    expect(await everything(sheet)).toEqual(before);
  });

  it("the example goes into the tables, is read back as it was, and exactly it is removed", async () => {
    const sheet = open();
    await setUpWorkbook(sheet);
    const blank = (await readRecords(sheet)).blocks.map(({ kind, records }) => [kind, records.length]);
    valueOf(await addExample(sheet, await readRecords(sheet), TODAY));
    const records = await readRecords(sheet);
    const entries = exampleEntries(TODAY);
    for (const kind of TABLE_ORDER) {
      const read = kind === "probes" ? [] : without(records[kind]);
      const given = kind === "probes" ? [] : without(entries[kind] ?? []);
      expect(read).toEqual(given);
    }
    expect(records.probes).toMatchObject(entries.probes ?? []);
    expect(records.blocks.flatMap(({ faults }) => faults)).toEqual([]);
    const hers: NewEntries = {
      words: [{ word: "hen", pupil: "Heron" }],
      lessons: [{ pupil: "Heron", day: TODAY, minutes: 30, held: "yes" }],
    };
    valueOf(await appendEntries(sheet, records, hers));
    expect(await holdsExample(sheet)).toBe(true);
    const rows = Object.values(entries).reduce((sum, list: readonly unknown[]) => sum + list.length, 0);
    expect(await removeExample(sheet)).toEqual({ removed: rows, kept: 0 });
    expect(await holdsExample(sheet)).toBe(false);
    const left = await readRecords(sheet);
    expect(left.words.map(({ word }) => word)).toEqual(["hen"]);
    expect(left.lessons.map(({ pupil }) => pupil)).toEqual(["Heron"]);
    const changed = left.blocks.map(({ kind, records: hold }) => [
      kind,
      kind === "words" || kind === "lessons" ? hold.length - 1 : hold.length,
    ]);
    expect(changed).toEqual(blank);
  });

  it("a missing table is set up for what is written, and one undo takes both back", async () => {
    const sheet = open();
    const before = await everything(sheet);
    const probe = {
      pupil: "Heron",
      day: TODAY,
      task: "read aloud",
      unit: "words",
      words: 84,
      errors: 3,
      seconds: 90 as Seconds,
    };
    const added = valueOf(
      await appendEntries(sheet, await readRecords(sheet), {
        probes: [probe],
        miscues: [{ pupil: "Heron", day: TODAY, position: 2, expected: "=was", response: "+saw" }],
      }),
    );
    expect(added.rows.map(({ kind, setUp, leftOut }) => [kind, setUp, leftOut])).toEqual([
      ["probes", true, []],
      ["miscues", true, []],
    ]);
    const { probes, miscues } = await readRecords(sheet);
    expect(probes).toMatchObject([probe]);
    expect(miscues).toMatchObject([{ expected: "=was", response: "+saw" }]);
    await added.undo();
    expect(await everything(sheet)).toEqual(before);
  });
});

describe("calculated columns of the table of probes", () => {
  it.each([
    ["words, errors and seconds", { words: 84, errors: 3, seconds: 90 as Seconds }, 54, 81 / 84],
    ["words and errors untimed", { words: 84, errors: 3 }, "", 81 / 84],
    ["signs right of signs shown", { opportunities: 20, correct: 15, unit: "signs" }, "", 0.75],
    [
      "signs right in a time",
      { opportunities: 20, correct: 15, unit: "signs", seconds: 30 as Seconds },
      30,
      0.75,
    ],
  ])("%s", async (_, fields, rate, accuracy) => {
    const sheet = embedded();
    const added = await appendEntries(sheet, await readRecords(sheet), {
      probes: [{ pupil: "Heron", day: TODAY, ...fields }],
    });
    const [place] = valueOf(added).rows;
    if (!place) throw new Error("no row");
    const { values } = await sheet.read(place.sheet, place.area);
    const [shownRate, shownAccuracy] = values[0]?.slice(-2) ?? [];
    if (typeof rate === "number") expect(shownRate).toBeCloseTo(rate, 9);
    else expect(shownRate).toBe(rate);
    expect(shownAccuracy).toBeCloseTo(accuracy, 9);
  });
});

describe("a teacher's own tables", () => {
  const LOG = `
    Date | Child | Words | Errs | Secs | WCPM
    '07/10/2026 | Heron | 84 | 3 | '1:30 | =C2->54
    '14/10/2026 | Heron | 80 | 3 | '1:30 | =C3->54`;

  it("take a probe in her columns and her manner; what has no column is told", async () => {
    const sheet = new MemorySheet([drawSheet("Log", LOG)]);
    const added = valueOf(
      await appendEntries(sheet, await readRecords(sheet), {
        probes: [{ pupil: "heron", day: TODAY, words: 90, errors: 1, seconds: 75 as Seconds, response: "a" }],
      }),
    );
    expect(added.rows).toMatchObject([{ kind: "probes", sheet: "Log", setUp: false, leftOut: ["response"] }]);
    const { values, formulas } = await sheet.read(
      "Log",
      added.rows[0]?.area ?? { top: 0, left: 0, bottom: 0, right: 0 },
    );
    expect(values[0]?.slice(0, 5)).toEqual(["25/11/2026", "Heron", 90, 1, "1:15"]);
    expect(formulas[0]?.[5]).toBe("=C4");
    await added.undo();
    expect((await readRecords(sheet)).probes).toHaveLength(2);
  });

  it("of several the pupil's own sheet is chosen", async () => {
    const rows = "Date | Words | Errors | Secs\n@2026-09-07 | 40 | 2 | 60";
    const sheet = new MemorySheet([drawSheet("Heron", rows), drawSheet("Plover", rows)]);
    const added = valueOf(
      await appendEntries(sheet, await readRecords(sheet), {
        probes: [{ pupil: "plover", day: TODAY, words: 41, errors: 1, seconds: 60 as Seconds }],
      }),
    );
    expect(added.rows[0]).toMatchObject({ sheet: "Plover", leftOut: [] });
  });

  it("with something beneath refuse by what to do, and leave nothing of the whole", async () => {
    const sheet = new MemorySheet([drawSheet("Log", `${LOG}\nTotal | | 164 | 6 | | `)]);
    const records = await readRecords(sheet);
    const before = await everything(sheet);
    await expect(
      appendEntries(sheet, records, {
        pupils: [{ pupil: "Heron" }],
        probes: [{ pupil: "Heron", day: TODAY, words: 90, errors: 1, seconds: 75 as Seconds }],
      }),
    ).rejects.toBeInstanceOf(HostError);
    expect(await everything(sheet)).toEqual(before);
  });
});

describe("adding the example", () => {
  const notes = [
    ["Word", "Pupil"],
    ["tern", "Heron"],
    [null, null],
    ["Words go to the drill on Friday.", null],
  ];

  it("makes a table of its own where something stands beneath a plain range of hers", async () => {
    const sheet = new MemorySheet([{ name: "Mine", rows: notes }]);
    const before = await readRecords(sheet);
    expect(before.words.map(({ word }) => word)).toContain("tern");
    const { rows, undo } = valueOf(await addExample(sheet, before, TODAY));
    expect(rows.find(({ kind }) => kind === "words")).toMatchObject({ sheet: "Words", setUp: true });
    expect((await sheet.read("Mine", { top: 0, left: 0, bottom: 3, right: 1 })).values).toEqual(notes);
    await undo();
    expect((await sheet.outline()).map(({ name }) => name)).toEqual(["Mine"]);
  });

  it("takes a plain range of hers that has room, and is emptied out of it again", async () => {
    const sheet = new MemorySheet([{ name: "Mine", rows: notes.slice(0, 2) }]);
    const { rows } = valueOf(await addExample(sheet, await readRecords(sheet), TODAY));
    expect(rows.find(({ kind }) => kind === "words")).toMatchObject({ sheet: "Mine", setUp: false });
    expect(await removeExample(sheet)).toMatchObject({ kept: 0 });
    expect((await readRecords(sheet)).words).toMatchObject([{ word: "tern", pupil: "Heron" }]);
  });

  it("stays in a plain range where a row of hers stands behind it now", async () => {
    const sheet = new MemorySheet([{ name: "Mine", rows: notes.slice(0, 2) }]);
    valueOf(await addExample(sheet, await readRecords(sheet), TODAY));
    sheet.typeInto("Mine", 6, 0, "gull");
    expect(await removeExample(sheet)).toMatchObject({ kept: 4 });
    expect((await readRecords(sheet)).words).toHaveLength(6);
  });

  it("says that it is there already, and adds nothing", async () => {
    const sheet = new MemorySheet([]);
    valueOf(await addExample(sheet, await readRecords(sheet), TODAY));
    const once = await everything(sheet);
    const again = await addExample(sheet, await readRecords(sheet), TODAY);
    expect(again).toMatchObject({ ok: false, fault: { code: "example-there" } });
    expect(await everything(sheet)).toEqual(once);
  });
});

describe("removing the example", () => {
  it("leaves a row that was changed since", async () => {
    const sheet = new MemorySheet([]);
    await setUpWorkbook(sheet);
    valueOf(await addExample(sheet, await readRecords(sheet), TODAY));
    sheet.typeInto("Words", 1, 0, "gull");
    expect((await removeExample(sheet)).kept).toBe(1);
    expect((await readRecords(sheet)).words).toMatchObject([{ word: "gull", pupil: EXAMPLE_PUPIL }]);
  });
});
