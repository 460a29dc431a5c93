import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { createPassageReader } from "../../../src/domain/contraction/passage";
import { parseTaught } from "../../../src/domain/contraction/taught";
import { tabulateWords } from "../../../src/domain/contraction/word-table";
import { rankPassages } from "../../../src/domain/drill/passages";
import { listSignStates } from "../../../src/domain/progress/sign-states";
import type { Day } from "../../../src/domain/units";
import { listChecks, listPassages, listSignsToTeach } from "../../../taskpane/views/next-list";
import { describeSign, passesFilter, speakSign } from "../../../taskpane/views/sign-words";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const reader = createPassageReader((text) => contracted.transcribe(text));
const taught = parseTaught(["sh"]);
if (!taught.ok) throw new Error(taught.fault.message);
const known = taught.value;
const DAY = 46_000 as Day;

const trials = [0, 7, 14].map((after) => ({
  ...{ day: (DAY + after) as Day, sign: "ch", correct: 10, opportunities: 10 },
}));
const NOTHING = { words: [], direct: [], trials: [] };
const source = { sheet: "Taught", row: 2 };
const standings = listSignStates({
  taught: [{ pupil: "Heron", sign: "ch", introduced: DAY, source }],
  evidence: { reading: { words: [], direct: trials, trials }, writing: NOTHING },
  asOf: (DAY + 60) as Day,
  nextCheck: (occasions) => (occasions.length === 0 ? undefined : ((DAY + 40) as Day)),
});
const ch = standings.find(({ sign }) => sign.name === "ch");
if (ch === undefined) throw new Error("ch is a sign");

describe("what comes next", () => {
  it("names the sign whose check is due, with the day", () => {
    const [check, ...others] = listChecks(standings, [], (DAY + 60) as Day);
    expect(others).toEqual([]);
    expect(check).toMatchObject({ kind: "check", sign: "ch", title: "Check ch" });
    expect(check?.reason).toMatch(/the criterion was met on .+; a check has been due since .+\.$/);
  });

  it("names a sign whose written day has come", () => {
    const row = { pupil: "Heron", sign: "sh", checkAgain: (DAY + 50) as Day, source };
    const [, check] = listChecks(standings, [row], (DAY + 60) as Day);
    expect(check?.title).toBe("Check sh");
    expect(check?.reason).toMatch(/^Your table says to check it again on .+; it was not met since\.$/);
  });

  it("names the sign that opens most words, and how many", () => {
    const table = tabulateWords(reader.read("chip chop ship thin"));
    const [first] = listSignsToTeach(table, known, "your passages and words");
    expect(first).toMatchObject({ kind: "teach", sign: "ch" });
    expect(first?.reason).toBe(
      "It opens two running words of your passages and words; 75 % of them can be read then.",
    );
  });

  it("lists passages by what can be read, with what they lack, and none of which nothing can be", () => {
    const ranked = rankPassages(
      [
        { title: "Half", text: "ship chip" },
        { title: "All", text: "ship" },
        { title: "None", text: "chip" },
      ],
      reader,
      known,
    );
    expect(listPassages(ranked).map(({ title, reason }) => [title, reason])).toEqual([
      ["Read All", "All of its one word can be read."],
      ["Read Half", "50 % of its two words can be read; it lacks ch."],
    ]);
  });
});

describe("a sign in words", () => {
  it("says both ways with what there is to go by", () => {
    expect(speakSign(describeSign(ch))).toMatch(
      /^ch, dots 16, taught .+\. Reading: check again, \d+ to \d+ %, 30 uses, last on .+, criterion met on .+; check on .+\. Writing: taught, not seen yet\.$/,
    );
  });

  it.each<[string, Partial<Parameters<typeof passesFilter>[1]>, boolean]>([
    ["its print", { search: "CH" }, true],
    ["its dots", { search: "dots 16" }, true],
    ["its dots parted", { search: "1 6" }, true],
    ["its cell", { search: "⠡" }, true],
    ["other dots", { search: "146" }, false],
    ["its state in reading", { state: "check again" }, true],
    ["its state in writing", { state: "taught" }, true],
    ["a state that it has in neither", { state: "mastered" }, false],
    ["another kind", { kind: "shortform" }, false],
  ])("is found by %s", (_, filter, passes) => {
    expect(passesFilter(ch, { kind: "", state: "", search: "", ...filter })).toBe(passes);
  });
});
