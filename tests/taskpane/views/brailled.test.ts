import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { collectEvidence } from "../../../src/domain/progress/sign-evidence";
import type { Day } from "../../../src/domain/units";
import { appendEntries } from "../../../src/records/append-entries";
import { readRecords } from "../../../src/records/read-records";
import {
  compareWriting,
  describeWriting,
  listErrors,
  listMissedSigns,
  nameSides,
} from "../../../taskpane/views/brailled-comparison";
import {
  formatBrailled,
  newBrailled,
  parseBrailled,
  readableOf,
  turnPunched,
  type BrailledTask,
} from "../../../taskpane/views/brailled-draft";
import { entriesOfBrailled } from "../../../taskpane/views/brailled-entries";
import { drawSheet } from "../../records/drawn-sheet";

const TODAY = 46_351 as Day;
const TASK: BrailledTask = {
  pupil: "Heron",
  title: "",
  text: "the dog",
  code: "contracted",
  medium: "braillewriter",
  isTimed: true,
};
const SIGNS: BrailledTask = { ...TASK, text: "ch, d, ing", code: "signs", isTimed: false };
const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const compare = (task: BrailledTask, written: string) => {
  const compared = compareWriting(task, written, contracted);
  if (!compared.ok) throw new Error(compared.fault.message);
  return compared.value;
};

describe("writing compared", () => {
  it.each([
    ["Unicode braille", "⠮⠀⠙⠕⠛"],
    ["ASCII braille", "! DOG"],
    ["dot numbers", "2346-0-145-135-1245"],
    ["two lines", "⠮\n⠙⠕⠛"],
  ])("is right in %s", (_, written) => {
    expect(describeWriting(compare(TASK, written), undefined)).toEqual([
      "Five cells right of 5 expected, 100 %.",
      "Nothing changed, left out or added.",
      "Dots right: 100 %.",
    ]);
  });

  it("names a reversal by its signs, and counts cells right a minute", () => {
    const compared = compare(TASK, "⠮⠀⠋⠕⠛");
    expect(listErrors(compared).map((error) => [error.kind, ...nameSides(error)])).toEqual([
      ["reversal", "d", "f"],
    ]);
    // 4 of 5 cells in 30 seconds: 60 × 4 / 30 = 8.
    expect(describeWriting(compared, 30).at(-1)).toBe("8 cells right a minute, in 30 seconds.");
    expect(listMissedSigns(compared)).toEqual(["d"]);
  });

  it("keeps the cells of an error that is no whole sign", () => {
    const compared = compare(TASK, "⠞⠓⠑⠀⠙⠕⠛");
    expect(listErrors(compared).map((error) => [error.kind, ...nameSides(error)])).toEqual([
      ["contraction not used", "⠮", "⠞⠓⠑"],
    ]);
  });

  it("takes the cells of signs from the inventory, blanks between them or not", () => {
    expect(compare(SIGNS, "⠡⠀⠙⠀⠬").score.right).toBe(3);
    expect(compare(SIGNS, "⠡⠋⠬").score.right).toBe(2);
  });

  it.each([
    ["a text with a character that has no cells", { ...TASK, text: "a \u{13000}" }, "⠁", "untranslatable"],
    ["what is no braille", TASK, "½", "not-ascii-braille"],
  ])("refuses %s", (_, task, written, code) => {
    const compared = compareWriting(task, written, contracted);
    expect(compared.ok ? "" : compared.fault.code).toBe(code);
  });
});

describe("cells as a slate punches them", () => {
  it("have their columns swapped, their order kept; twice is as before", () => {
    // d is dots 145; from the back of the paper 4 and 1, 2 stand there: f mirrored.
    expect(turnPunched("⠋⠁\n⠃")).toBe("⠙⠈\n⠘");
    expect(turnPunched(turnPunched("⠮⠀⠙\n⠡"))).toBe("⠮⠀⠙\n⠡");
    expect(turnPunched("! DOG")).toBe("! DOG");
    expect(readableOf({ ...newBrailled(TASK), written: "⠋", isPunched: true })).toBe("⠙");
  });
});

it("is kept whole, and damaged or foreign texts are none", () => {
  const draft = { ...newBrailled(TASK), written: "⠮⠀⠙", started: 5, seen: 9, isPunched: true };
  expect(parseBrailled(formatBrailled(draft))).toEqual(draft);
  for (const text of [undefined, "{", "[]", JSON.stringify({ ...draft, task: { ...TASK, code: "morse" } })])
    expect(parseBrailled(text)).toBeUndefined();
});

describe("writing in the workbook", () => {
  const PROBES =
    "Date | Pupil | Task | Code | Medium | Unit | Attempted | Correct | Seconds | Expected | Response | Note\n@2026-10-05 | Heron | read aloud | contracted | braille | words | 40 | 38 | 60 | | | ";
  const MISCUES = "Date | Pupil | Task | Position | Expected | Response | Kind\n";
  const write = async (task: BrailledTask, written: string, seconds?: number) => {
    const sheet = new MemorySheet([drawSheet("Probes", PROBES), drawSheet("Miscues", MISCUES)]);
    const entries = entriesOfBrailled(
      task,
      compare(task, written),
      seconds,
      { support: "", note: "=1+1" },
      TODAY,
    );
    const appended = await appendEntries(sheet, await readRecords(sheet), entries);
    expect(appended.ok).toBe(true);
    return readRecords(sheet);
  };
  const transcribe = (text: string) => contracted.transcribe(text);

  it("is one row, a row an error, and evidence for each sign in writing", async () => {
    const { probes, miscues } = await write(TASK, "⠮⠀⠋⠕⠛", 30);
    expect(probes.at(-1)).toMatchObject({
      ...{ task: "heard and brailled", medium: "braillewriter", code: "contracted", unit: "cells" },
      ...{ correct: 4, seconds: 30, expected: "the dog", response: "⠮⠀⠋⠕⠛", note: "=1+1" },
    });
    expect(miscues).toMatchObject([{ position: 3, expected: "d", response: "f", kind: "reversal" }]);
    const { reading, writing } = collectEvidence(probes.slice(-1), miscues, () => transcribe);
    expect(reading.direct).toEqual([]);
    expect(
      writing.direct.map(({ sign, correct, opportunities }) => [sign, correct, opportunities]).toSorted(),
    ).toEqual([
      ["d", 0, 1],
      ["g", 1, 1],
      ["o", 1, 1],
      ["the", 1, 1],
    ]);
  });

  it("of signs is counted in signs, without a code", async () => {
    const { probes, miscues } = await write(SIGNS, "⠡⠋⠬");
    expect(probes.at(-1)).toMatchObject({ unit: "signs", correct: 2, expected: "ch, d, ing" });
    const { writing } = collectEvidence(probes.slice(-1), miscues, () => undefined);
    expect(writing.direct.find(({ sign }) => sign === "d")).toMatchObject({ correct: 0, opportunities: 1 });
    expect(writing.direct.find(({ sign }) => sign === "ch")).toMatchObject({ correct: 1, opportunities: 1 });
  });
});
