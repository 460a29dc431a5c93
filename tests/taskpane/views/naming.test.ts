import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { collectEvidence } from "../../../src/domain/progress/sign-evidence";
import { judgeSigns, type SignRecords } from "../../../src/domain/progress/pupil-signs";
import type { Day, Seconds } from "../../../src/domain/units";
import { appendEntries } from "../../../src/records/append-entries";
import { readRecords } from "../../../src/records/read-records";
import {
  askAgain,
  dropMark,
  formatNaming,
  isOver,
  newNaming,
  parseNaming,
  setMark,
  signsOfRow,
  stopNaming,
  type NamingTask,
} from "../../../taskpane/views/naming-draft";
import { entriesOfNaming } from "../../../taskpane/views/naming-entries";
import { listRowItems } from "../../../taskpane/views/naming-handout";
import { listPools } from "../../../taskpane/views/naming-pools";
import { describeNaming, listEarlierRows, listMissed } from "../../../taskpane/views/naming-result";
import { drawSheet } from "../../records/drawn-sheet";

const TODAY = 46_351 as Day;
const TASK: NamingTask = {
  pupil: "Heron",
  task: "signs named",
  medium: "braille",
  signs: ["ch", "in wordsign", "full stop", "ch", "b"],
  seed: 7,
  limit: 60,
};
const marked = (...marks: readonly ("correct" | "incorrect" | "prompted" | "no response")[]) =>
  marks.reduce((draft, mark, place) => setMark(draft, place, mark), newNaming(TASK));
const DONE = marked("correct", "prompted", "correct", "incorrect");

describe("marks of a row", () => {
  it("are set one after the other, changed, and taken off from the end", () => {
    expect(DONE.marks).toEqual(["correct", "prompted", "correct", "incorrect"]);
    expect(setMark(DONE, 1, "correct").marks).toEqual(["correct", "correct", "correct", "incorrect"]);
    expect(dropMark(DONE).marks).toEqual(["correct", "prompted", "correct"]);
    const full = setMark(DONE, 4, "correct");
    for (const [draft, place] of [
      [newNaming(TASK), 1],
      [full, 5],
      [DONE, -1],
    ] as const)
      expect(setMark(draft, place, "correct")).toBe(draft);
  });

  it("are kept with their clock, and damaged or foreign texts are none", () => {
    const running = { ...DONE, started: 1000, seen: 5000 };
    expect(parseNaming(formatNaming(running))).toEqual(running);
    const damaged = { ...running, marks: ["correct", "huh", "correct"] };
    expect(parseNaming(JSON.stringify(damaged))?.marks).toEqual(["correct"]);
    for (const text of [
      undefined,
      "{",
      "{}",
      JSON.stringify({ ...running, task: { ...TASK, signs: ["ch", "zorp"] } }),
      JSON.stringify({ ...running, task: { ...TASK, signs: [] } }),
      JSON.stringify({ ...running, task: { ...TASK, task: "juggled" } }),
    ])
      expect(parseNaming(text)).toBeUndefined();
  });
});

describe("the clock of a row", () => {
  it("stops at the time that it was set to, although it is looked at once a second", () => {
    const running = { ...DONE, started: 1000 };
    expect([60_900, 61_000].map((now) => isOver(running, now))).toEqual([false, true]);
    expect(stopNaming(running, 61_840).seconds).toBe(60);
    expect(stopNaming(running, 31_240).seconds).toBe(30.2);
    const open = { ...running, task: { ...TASK, limit: 0 } };
    expect(isOver(open, 999_000)).toBe(false);
    expect(stopNaming(open, 121_000).seconds).toBe(120);
  });
});

describe("the next row", () => {
  it("asks for the signs missed, as many, in another order, alone where they are several", () => {
    const task = { ...TASK, signs: ["ch", "sh", "th", "wh", "ch", "sh", "th", "wh"] };
    const again = askAgain(task, ["ch", "th", "wh"]);
    expect(again).toMatchObject({ seed: 8, limit: 60, medium: "braille" });
    expect(again.signs).toHaveLength(8);
    expect([...new Set(again.signs)].toSorted()).toEqual(["ch", "th", "wh"]);
  });

  it("mixes one sign missed with others of its row", () => {
    const task = { ...TASK, signs: ["ch", "sh", "th", "wh", "ch", "sh", "th", "wh"] };
    const again = askAgain(task, ["ch"]);
    expect([...new Set(again.signs)].toSorted()).toEqual(["ch", "sh", "th", "wh"]);
    expect(askAgain({ ...TASK, signs: ["ch", "ch"] }, ["ch"]).signs).toEqual(["ch", "ch"]);
  });
});

describe("a row on a handout", () => {
  it("is lines of braille from the inventory, within the set cells, with the names as print", () => {
    const lines = listRowItems(signsOfRow({ ...TASK, signs: ["ch", "in wordsign", "full stop", "7"] }), 7);
    // ch 16, in 35, full stop 256; 7 is 1245 after the number sign: UEB 2013, sections 10.3, 10.5, 7.1, 6.1.
    expect(lines).toEqual([
      { kind: "signs", text: "⠡⠀⠀⠔⠀⠀⠲", print: "ch, in wordsign, full stop" },
      { kind: "signs", text: "⠼⠛", print: "7" },
    ]);
  });
});

describe("the result of a row", () => {
  it("counts signs right a minute, what else was marked, and what was missed", () => {
    // 2 of 4 in 30 seconds: 60 × 2 / 30 = 4 a minute.
    expect(describeNaming(DONE, 30)).toEqual([
      "Two signs of 4 named correctly, in 30 seconds.",
      "4 signs named correctly a minute.",
      "1 not correct, 1 prompted.",
      "One sign of the row not reached.",
      "Missed: in wordsign (1 of 1), ch (1 of 2).",
    ]);
    expect(describeNaming(marked("correct"), 0.4)[1]).toBe("The time is under a second: correct it beneath.");
    expect(describeNaming(newNaming(TASK), 9)).toEqual(["No sign is marked: there is nothing to write yet."]);
    expect(describeNaming(marked("correct"), 9).at(-1)).toBe("No sign was missed.");
  });

  it("stands beside the pupil's last ones of the same task and medium", () => {
    const source = { sheet: "S", row: 2 };
    const probe = { pupil: "heron", task: "Signs named", source, seconds: 60 as Seconds };
    const probes = [
      { ...probe, day: 46_300 as Day, correct: 12, opportunities: 20 },
      { ...probe, day: 46_310 as Day, correct: 15, opportunities: 20, medium: "braille" },
      { ...probe, day: 46_320 as Day, correct: 19, opportunities: 20, medium: "print" },
      { ...probe, day: 46_330 as Day, correct: 19, opportunities: 20, task: "copied" },
      { ...probe, day: 46_330 as Day, correct: 19, opportunities: 20, pupil: "Plover" },
    ];
    expect(listEarlierRows(probes, TASK)).toEqual([
      "15 Oct 2026: 15 a minute, 75 % correct",
      "5 Oct 2026: 12 a minute, 60 % correct",
    ]);
  });
});

describe("a row in the workbook", () => {
  const HEADINGS =
    "Date | Pupil | Task | Code | Medium | Sign | Unit | Attempted | Correct | Seconds | Expected | Response | Note\n" +
    "@2026-10-05 | Heron | read aloud | contracted | braille | | words | 40 | 38 | 60 | | | \n" +
    "@2026-10-06 | Heron | Signs named | uncontracted | braille | | signs | 20 | 9 | 60 | | | ";
  const writeAndRead = async (draft: typeof DONE) => {
    const sheet = new MemorySheet([drawSheet("Probes", HEADINGS)]);
    const records = await readRecords(sheet);
    const remarks = { support: "", note: "=HYPERLINK(1)" };
    const written = await appendEntries(sheet, records, entriesOfNaming(draft, 30, remarks, TODAY, records));
    expect(written.ok).toBe(true);
    return readRecords(sheet);
  };

  it("is evidence for each of its signs when it is read again", async () => {
    const { probes } = await writeAndRead(DONE);
    // The task as she spells it in her rows.
    expect(probes.at(-1)).toMatchObject({
      ...{ pupil: "Heron", day: TODAY, task: "Signs named", medium: "braille", unit: "signs", seconds: 30 },
      ...{
        correct: 2,
        code: "contracted",
        expected: "ch, in wordsign, full stop, ch",
        note: "=HYPERLINK(1)",
      },
      response: "✓, prompted, ✓, ✗",
    });
    const { trials } = collectEvidence(probes.slice(-1), [], () => undefined).reading;
    expect(trials.map(({ sign, correct, opportunities }) => [sign, correct, opportunities])).toEqual([
      ["ch", 1, 2],
      ["in wordsign", 0, 1],
      ["full stop", 1, 1],
    ]);
  });

  it("of one sign has it in the column Sign; copied, it tells of writing", async () => {
    const only = { ...TASK, task: "copied" as const, medium: "slate", signs: ["ch", "ch"] };
    const { probes } = await writeAndRead(setMark(setMark(newNaming(only), 0, "correct"), 1, "incorrect"));
    expect(probes.at(-1)).toMatchObject({ sign: "ch", task: "copied" });
    const { reading, writing } = collectEvidence(probes.slice(-1), [], () => undefined);
    expect(reading.trials).toEqual([]);
    expect(writing.trials).toMatchObject([{ sign: "ch", correct: 1, opportunities: 2 }]);
  });

  it("goes on with the pupil's series: letters have the code of the last such row", async () => {
    const letters = { ...TASK, signs: ["b", "k"] };
    const named = await writeAndRead(setMark(newNaming(letters), 0, "correct"));
    expect(named.probes.at(-1)).toMatchObject({ code: "uncontracted", sign: "b" });
    const copied = await writeAndRead(setMark(newNaming({ ...letters, task: "copied" }), 0, "correct"));
    expect(copied.probes.at(-1)?.code).toBeUndefined();
  });

  it("hands the missed signs on, most often missed first", () => {
    expect(listMissed(DONE).map(({ sign }) => sign)).toEqual(["in wordsign", "ch"]);
  });
});

describe("signs to draw from", () => {
  const source = { sheet: "T", row: 2 };
  const records: SignRecords = {
    taught: ["ch", "sh", "th"].map((sign) => ({ pupil: "Heron", sign, introduced: 46_000 as Day, source })),
    probes: [46_340, 46_341, 46_342].map((day) => ({
      ...{ pupil: "Heron", day: day as Day, task: "signs named", sign: "ch", source },
      ...{ correct: 10, opportunities: 10 },
    })),
    miscues: [
      {
        ...{ pupil: "Heron", day: 46_342 as Day, task: "signs named", source },
        expected: "sh",
        response: "th",
      },
    ],
  };
  const signs = judgeSigns(
    records,
    "Heron",
    TODAY,
    () => undefined,
    () => undefined,
  );
  const names = (way: "reading" | "writing") =>
    Object.fromEntries(
      listPools(signs, way).map(({ name, signs: own }) => [name, own.map((one) => one.name)]),
    );

  it("are those taught, those still open in the way asked for, and those confused", () => {
    const { taught, open, confused } = names("reading");
    // Without a letter in the table all letters count as taught.
    expect(taught?.slice(-3)).toEqual(["ch", "sh", "th"]);
    expect(taught).toHaveLength(29);
    expect(open).not.toContain("ch");
    expect(open).toEqual(expect.arrayContaining(["sh", "th"]));
    expect(confused?.toSorted()).toEqual(["sh", "th"]);
    expect(names("writing")["open"]).toContain("ch");
  });
});
