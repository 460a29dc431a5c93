import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { dayOf } from "../../src/domain/calendar";
import { readRecords } from "../../src/records/read-records";
import type { WorkbookRecords } from "../../src/records/read-records";
import { drawSheet } from "./drawn-sheet";

const read = async (drawing: string, name = "Sheet1"): Promise<WorkbookRecords> =>
  readRecords(new MemorySheet([drawSheet(name, drawing)]));

const faultsOf = (records: WorkbookRecords): string[] =>
  records.blocks.flatMap(({ faults }) => faults.map(({ cell, code }) => `${cell} ${code}`));

describe("pupils", () => {
  it.each([
    [
      "as the tool sets the table up",
      "Pupil | Code | Teacher | Cells per line | Minutes planned | Note\nHeron | contracted | Tern | 32 | 90 | likes boats",
    ],
    [
      "under a teacher's own headings",
      "Child | Braille code | TVI | Display cells | Weekly minutes | Comments\nHeron | contracted | Tern | 32 | 90 | likes boats",
    ],
  ])("are read %s", async (_, drawing) => {
    const records = await read(`My pupils\n\n${drawing}`);
    expect(records.pupils).toEqual([
      {
        pupil: "Heron",
        code: "contracted",
        teacher: "Tern",
        cellsPerLine: 32,
        minutesPlanned: 90,
        note: "likes boats",
        source: { sheet: "Sheet1", row: 4 },
      },
    ]);
    expect(faultsOf(records)).toEqual([]);
  });

  it("one bad row hides no other, and is named by its cell", async () => {
    const records = await read(
      "Pupil | Cells per line | Minutes planned\nHeron | thirty | 90\n| 32 | 60\nPlover | 20 | ninety\nDunlin | 40 | '1:30",
    );
    expect(faultsOf(records)).toEqual(["B2 no-count", "A3 no-pupil", "C4 no-number"]);
    expect(records.pupils).toMatchObject([{ pupil: "Dunlin", cellsPerLine: 40, minutesPlanned: 1.5 }]);
  });
});

describe("lessons", () => {
  const day = dayOf({ year: 2026, month: 11, date: 2 });

  it("say whether they were held, in any words for it", async () => {
    const { lessons } = await read(`
      Date | Pupil | Minutes | Held | Worked on | Note
      @2026-11-02 | Heron | 45 | yes | letter cards |
      @2026-11-02 | Heron | | absent - ill | |
      @2026-11-02 | Heron | 0 | Teacher away | |
      @2026-11-02 | Heron | | Half term | |
      @2026-11-02 | Heron | 30 | | reading |
      @2026-11-02 | Heron | | N | |`);
    expect(lessons.map(({ held, minutes }) => [held, minutes])).toEqual([
      ["yes", 45],
      ["pupil absent", 0],
      ["teacher absent", 0],
      ["school closed", 0],
      ["yes", 30],
      ["no", 0],
    ]);
    expect(lessons[0]).toMatchObject({ day, pupil: "Heron", workedOn: "letter cards" });
  });

  it("are no probes, and ask which of day and month comes first", async () => {
    const records = await read("Date | Child | Mins | Focus\n'2/11/2026 | Heron | 45 | letters", "Diary");
    expect(records.probes).toEqual([]);
    expect(records.lessons).toEqual([]);
    expect(records.blocks[0]?.questions).toHaveLength(1);
    expect(
      (
        await readRecords(
          new MemorySheet([
            drawSheet("Diary", "Date | Child | Mins | Focus\n'2/11/2026 | Heron | 45 | letters"),
          ]),
          { dayOrder: "dmy" },
        )
      ).lessons,
    ).toMatchObject([{ day }]);
  });

  it("without minutes, day or a clear word are faults at their cells", async () => {
    const records = await read(`
      Date | Pupil | Minutes | Held
      @2026-11-02 | Heron | | yes
      | Heron | 30 | yes
      @2026-11-02 | Heron | 30 | perhaps
      @2026-11-02 | Heron | 30 | yes`);
    expect(faultsOf(records)).toEqual(["C2 no-minutes", "A3 no-date", "D4 held-unclear"]);
    expect(records.lessons).toHaveLength(1);
  });
});

describe("miscues", () => {
  it("are read with a word left out and one added", async () => {
    const records = await read(`
      Date | Pupil | Task | Position | Expected | Response | Kind
      @2026-11-02 | Heron | read aloud | 3 | was | saw | misread
      @2026-11-02 | Heron | read aloud | 7 | the | | left out
      @2026-11-02 | Heron | read aloud | 9 | | and | added
      @2026-11-02 | Heron | read aloud | x | = | | `);
    expect(records.probes).toEqual([]);
    expect(records.miscues.map(({ position, expected, response }) => [position, expected, response])).toEqual(
      [
        [3, "was", "saw"],
        [7, "the", ""],
        [9, "", "and"],
      ],
    );
    expect(faultsOf(records)).toEqual(["D5 no-count"]);
  });
});

describe("words, passages and exceptions", () => {
  it("are told from one another on one sheet, titles above and blank rows between", async () => {
    const records = await read(`
      For drills
      Word | For | In braille
      hen | Heron | =BRAILLE.TRANSLATE(A3)->⠓⠢
      roe | Heron | =BRAILLE.TRANSLATE(A4)->⠗⠕⠑

      Title | Text | Cells
      The Hen | A hen sat. | 9

      Word | Braille
      Theo | ⠠⠹⠑⠕

      Not a word any more`);
    expect(records.words.map(({ word, pupil }) => [word, pupil])).toEqual([
      ["hen", "Heron"],
      ["roe", "Heron"],
    ]);
    expect(records.passages).toEqual([
      { title: "The Hen", text: "A hen sat.", source: { sheet: "Sheet1", row: 7 } },
    ]);
    expect(records.exceptions).toMatchObject([{ word: "Theo", braille: "⠠⠹⠑⠕" }]);
    expect(faultsOf(records)).toEqual([]);
  });

  it.each([
    ["a passage without its text", "Title | Text\nThe Hen |\nThe Fox | A fox ran.", "B2 no-text"],
    [
      "an exception that is no braille",
      "Word | Braille\nTheo | theo?é\nUS | ⠠⠠⠥⠎",
      "B2 exception-not-braille",
    ],
    ["a word list with a gap", "Word | List\n| sea\nhen | farm", "A2 no-word"],
  ])("%s is a fault, and the next row is read", async (_, drawing, fault) => {
    const records = await read(drawing, "Exceptions");
    expect(faultsOf(records)).toEqual([fault]);
    expect(records.blocks[0]?.records).toHaveLength(1);
  });

  it("text that begins with = or holds a tag is text", async () => {
    const { words, passages } = await read("Word | List\n'=cmd() | '<script>");
    expect(words).toMatchObject([{ word: "=cmd()", list: "<script>" }]);
    expect(passages).toEqual([]);
  });
});

describe("taught signs", () => {
  it("carry the columns that the tool fills", async () => {
    const { taught, blocks } = await read(
      "Pupil | Sign | Introduced | Reading | Writing | Check again\nHeron | ch | @2026-09-07 | mastered | growing | @2026-11-30",
      "Taught",
    );
    expect(taught).toMatchObject([
      {
        sign: "ch",
        reading: "mastered",
        writing: "growing",
        checkAgain: dayOf({ year: 2026, month: 11, date: 30 }),
      },
    ]);
    expect(blocks[0]?.columns.flatMap(({ kinds }) => kinds)).toEqual([
      "pupil",
      "sign",
      "introduced",
      "reading",
      "writing",
      "checkAgain",
    ]);
  });
});
