import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import type { NotedMiscue } from "../../../src/domain/probe/noted-miscue";
import type { Probe } from "../../../src/domain/probe/probe";
import { findConfusions, pairConfusions } from "../../../src/domain/probe/sign-confusions";
import { collectEvidence } from "../../../src/domain/progress/sign-evidence";
import type { Way } from "../../../src/domain/progress/way";
import type { Day } from "../../../src/domain/units";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const transcribeIn = () => (text: string) => contracted.transcribe(text);
const DAY = 46_000 as Day;
const source = { sheet: "Probes", row: 2 };
const probe = (fields: Partial<Probe>): Probe => ({ pupil: "Heron", day: DAY, source, ...fields });
const miscue = (expected: string, response: string, fields: Partial<NotedMiscue> = {}): NotedMiscue => ({
  ...{ pupil: "Heron", day: DAY, task: "read aloud", expected, response, source },
  ...fields,
});
const find = (probes: readonly Probe[], miscues: readonly NotedMiscue[] = []) =>
  findConfusions(probes, miscues, collectEvidence(probes, miscues, transcribeIn), transcribeIn);
const named = (probes: readonly Probe[], miscues: readonly NotedMiscue[], way: Way) =>
  find(probes, miscues)[way].map(({ expected, given, times }) => [expected, given, times]);

describe("signs taken for others", () => {
  it.each<[string, string, string, readonly (readonly [string, string, number])[]]>([
    ["a sign named for another", "ch", "sh", [["ch", "sh", 1]]],
    ["two words that differ in one sign", "chip", "ship", [["ch", "sh", 1]]],
    ["words that differ in several signs tell nothing", "cat", "dog", []],
    ["a word left out tells nothing", "chip", "", []],
  ])("reading: %s", (_, expected, response, told) => {
    expect(named([], [miscue(expected, response)], "reading")).toEqual(told);
  });

  it.each<[string, Partial<Probe>, Way, readonly (readonly [string, string, number])[]]>([
    [
      "cells written of another sign",
      { task: "copied", unit: "signs", expected: "ch sh", response: "⠩⠩" },
      "writing",
      [["ch", "sh", 1]],
    ],
    [
      "with support it tells nothing",
      { task: "copied", unit: "signs", expected: "ch", response: "⠩", support: "prompted" },
      "writing",
      [],
    ],
    [
      "a word heard for another",
      { task: "read aloud", expected: "a chip", response: "a ship" },
      "reading",
      [["ch", "sh", 1]],
    ],
    [
      "print tells nothing",
      { task: "read aloud", medium: "print", expected: "chip", response: "ship" },
      "reading",
      [],
    ],
  ])("probes: %s", (_, fields, way, told) => {
    expect(named([probe(fields)], [], way)).toEqual(told);
  });

  it("counts a text and its noted miscues once", () => {
    const read = probe({ task: "read aloud", expected: "a chip", response: "a ship" });
    expect(named([read], [miscue("chip", "ship", { position: 2 })], "reading")).toEqual([["ch", "sh", 1]]);
  });

  it("takes a noted miscue as one of the trials counted on its day", () => {
    const trials = probe({ task: "signs named", sign: "ch", correct: 7, opportunities: 8, unit: "signs" });
    const [confusion] = find([trials], [miscue("ch", "sh", { task: "signs named" })]).reading;
    expect(confusion).toMatchObject({ times: 1, chances: 8 });
  });

  it("adds up both directions of a pair over both ways", () => {
    const written = probe({ task: "copied", unit: "signs", expected: "sh", response: "⠡" });
    expect(pairConfusions(find([written], [miscue("ch", "sh"), miscue("ch", "wh")]))).toEqual([
      { signs: ["ch", "sh"], times: 2 },
      { signs: ["ch", "wh"], times: 1 },
    ]);
  });
});
