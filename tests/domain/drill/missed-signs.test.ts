import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { findLastErrors } from "../../../src/domain/drill/missed-signs";
import type { NotedMiscue } from "../../../src/domain/probe/noted-miscue";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Day } from "../../../src/domain/units";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const transcribeIn = () => (text: string) => contracted.transcribe(text);
const DAY = 46_000;
const source = { sheet: "Probes", row: 2 };
const probe = (day: number, fields: Partial<Probe>): Probe => ({
  ...{ pupil: "Heron", day: day as Day, task: "read aloud", source },
  ...fields,
});
const missed = (day: number, expected: string): NotedMiscue => ({
  ...{ pupil: "Heron", day: day as Day, task: "read aloud", expected, response: "", source },
});
const namesOf = (probes: readonly Probe[], miscues: readonly NotedMiscue[] = []): readonly string[] =>
  findLastErrors(probes, miscues, transcribeIn)?.signs.map(({ sign }) => sign) ?? [];

describe("the signs that went wrong last", () => {
  it("are the contractions of missed words, not their letters", () => {
    expect(namesOf([], [missed(DAY, "chat"), missed(DAY, "chip"), missed(DAY, "ship")])).toEqual([
      "ch",
      "sh",
    ]);
  });

  it("are letters where no missed word has a contraction", () => {
    expect([...namesOf([], [missed(DAY, "cat")])].sort()).toEqual(["a", "c", "t"]);
  });

  it("are signs named wrong by themselves, with how often", () => {
    const trial = probe(DAY, { task: "signs named", sign: "ou", correct: 7, opportunities: 10 });
    expect(findLastErrors([trial], [], transcribeIn)?.signs).toEqual([{ sign: "ou", missed: 3, met: 10 }]);
  });

  it("are those of the last day with errors: a later day without any is passed over", () => {
    const clean = probe(DAY + 7, { task: "signs named", sign: "ou", correct: 10, opportunities: 10 });
    const found = findLastErrors([clean], [missed(DAY, "chat"), missed(DAY - 7, "ship")], transcribeIn);
    expect(found).toEqual({ day: DAY, signs: [{ sign: "ch", missed: 1, met: 1 }] });
  });

  it("are those of noted miscues where the probe has a response but not the text that it answers", () => {
    expect(namesOf([probe(DAY, { response: "then" })], [missed(DAY, "them")])).toEqual(["the"]);
  });

  it("are none where nothing tells of errors", () => {
    expect(findLastErrors([probe(DAY, { words: 50, errors: 4 })], [], transcribeIn)).toBeUndefined();
  });
});
