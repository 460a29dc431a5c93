import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import type { NotedMiscue } from "../../../src/domain/probe/noted-miscue";
import type { Probe } from "../../../src/domain/probe/probe";
import { collectEvidence, type TranscribeIn } from "../../../src/domain/progress/sign-evidence";
import type { Day } from "../../../src/domain/units";

const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const contracted = await translators.translator("contracted");
const uncontracted = await translators.translator("uncontracted");
const transcribeIn: TranscribeIn = (code) => {
  if (code === "music") return undefined;
  return (text) => (code === "uncontracted" ? uncontracted : contracted).transcribe(text);
};

const DAY = 46_000 as Day;
const source = { sheet: "Probes", row: 2 };
const probe = (fields: Partial<Probe>): Probe => ({
  pupil: "Heron",
  day: DAY,
  task: "read aloud",
  source,
  ...fields,
});
const miscue = (fields: Partial<NotedMiscue>): NotedMiscue => ({
  ...{ pupil: "Heron", day: DAY, task: "read aloud", expected: "", response: "", source },
  ...fields,
});
const collect = (probes: readonly Probe[], miscues: readonly NotedMiscue[] = []) =>
  collectEvidence(probes, miscues, transcribeIn);
/** Words as `ch a t +` (right) or `ch −` (missed). */
const read = (probes: readonly Probe[], miscues: readonly NotedMiscue[] = []): readonly string[] =>
  collect(probes, miscues).reading.words.map(
    ({ signs, isRight }) => `${signs.join(" ")} ${isRight ? "+" : "−"}`,
  );
const written = (fields: Partial<Probe>): readonly string[] =>
  collect([probe({ task: "heard and brailled", ...fields })]).writing.direct.map(
    ({ sign, correct }) => `${sign} ${correct === 1 ? "+" : "−"}`,
  );

describe("evidence of signs from words read", () => {
  it.each([
    { name: "right", response: "chat", words: ["ch a t +"] },
    { name: "misread for a word that shares a and t", response: "hat", words: ["ch −"] },
    { name: "misread for a word that shares no sign", response: "moon", words: ["ch a t −"] },
    { name: "told", response: "(told)", words: ["ch a t −"] },
    { name: "put right by the reader", response: "cat (sc) chat", words: ["ch a t +"] },
    { name: "not attempted", response: "]", words: [] },
  ])("a word $name: $words", ({ response, words }) => {
    expect(read([probe({ expected: "chat", response })])).toEqual(words);
  });

  it("takes a word left out by itself as missed, several in a row as a line skipped", () => {
    const expected = "at chat in out cat";
    expect(read([probe({ expected, response: "at in out cat" })])).toContain("ch a t −");
    expect(read([probe({ expected, response: "at cat" })])).toEqual(["a t +", "c a t +"]);
  });

  it("takes a swapped pair as read", () => {
    expect(read([probe({ expected: "chat cat", response: "cat chat" })])).toEqual(["ch a t +", "c a t +"]);
  });

  it("reads each word in its place in the text, without what cannot be heard", () => {
    expect(read([probe({ expected: "“Chat, child!”", response: "chat child" })])).toEqual([
      "ch a t +",
      "child +",
    ]);
  });

  it("knows letters alone in uncontracted", () => {
    expect(read([probe({ expected: "chat", response: "chat", code: "uncontracted" })])).toEqual([
      "c h a t +",
    ]);
  });

  it.each([
    { name: "with support", fields: { support: "prompted" } },
    { name: "in print", fields: { medium: "print" } },
    { name: "in a code whose signs are not known", fields: { code: "music" } },
    { name: "without a response or miscues", fields: { response: "" } },
  ])("leaves out a text read $name", ({ fields }) => {
    expect(read([probe({ expected: "chat", response: "chat", ...fields })])).toEqual([]);
  });
});

describe("evidence of signs from the list of miscues", () => {
  const text = { expected: "at chat cat", words: 3, errors: 1 };

  it("reads a text without a response by its miscues: the other words attempted were right", () => {
    const missed = miscue({ position: 2, expected: "chat", response: "hat", kind: "misread" });
    expect(read([probe(text)], [missed])).toEqual(["a t +", "ch −", "c a t +"]);
    expect(read([probe({ ...text, words: 2 })], [missed])).toEqual(["a t +", "ch −"]);
  });

  it("takes a text without errors as right", () => {
    expect(read([probe({ ...text, errors: 0 })])).toEqual(["a t +", "ch a t +", "c a t +"]);
  });

  it("counts a word once that stands in the response and in the list", () => {
    const missed = miscue({ position: 2, expected: "chat", response: "hat", kind: "misread" });
    expect(read([probe({ ...text, response: "at hat cat" })], [missed])).toEqual([
      "a t +",
      "ch −",
      "c a t +",
    ]);
  });

  it("takes a miscue without its text as a missed word", () => {
    expect(read([], [miscue({ expected: "chat", response: "", kind: "told" })])).toEqual(["ch a t −"]);
  });

  it("keeps a miscue out that belongs to a probe with support", () => {
    const missed = miscue({ position: 2, expected: "chat", response: "hat" });
    expect(read([probe({ ...text, support: "prompted" })], [missed])).toEqual([]);
  });

  it.each(["added", "repeated", "self-corrected"])("leaves out what was %s", (kind) => {
    expect(read([], [miscue({ expected: "chat", response: "chat", kind })])).toEqual([]);
  });
});

describe("evidence of signs from writing", () => {
  it.each([
    { name: "all right", response: "⠡⠁⠞", signs: ["ch +", "a +", "t +"] },
    { name: "another cell", response: "⠩⠁⠞", signs: ["ch −", "a +", "t +"] },
    { name: "the contraction spelled out", response: "⠉⠓⠁⠞", signs: ["ch −", "a +", "t +"] },
    { name: "nothing", response: "", signs: [] },
  ])("$name: $signs", ({ response, signs }) => {
    expect(written({ expected: "chat", response })).toEqual(signs);
  });

  it("leaves out the words after the last cell written", () => {
    expect(written({ expected: "chat cat", response: "⠡⠁⠞" })).toEqual(["ch +", "a +", "t +"]);
  });

  it("takes items that are signs from the inventory", () => {
    expect(written({ unit: "signs", expected: "ea ch ing", response: "⠂ ⠩ ⠬" })).toEqual([
      "ea +",
      "ch −",
      "ing +",
    ]);
  });
});

describe("evidence of signs from trials", () => {
  it("counts trials of a sign directly, and keeps them apart for mastery", () => {
    const { reading, writing } = collect([
      probe({ task: "signs named", sign: "ch", correct: 8, opportunities: 10 }),
    ]);
    expect(reading.trials).toEqual([{ day: DAY, sign: "ch", correct: 8, opportunities: 10 }]);
    expect(reading.direct).toEqual(reading.trials);
    expect(writing.trials).toEqual([]);
  });

  it("counts plain in for both of its uses, which are one cell", () => {
    const { trials } = collect([probe({ sign: "in", correct: 1, opportunities: 2 })]).reading;
    expect(trials.map(({ sign }) => sign).sort()).toEqual(["in groupsign", "in wordsign"]);
  });

  it.each([
    { name: "several signs counted together", fields: { sign: "ch, sh", correct: 8, opportunities: 10 } },
    { name: "more right than asked", fields: { sign: "ch", correct: 11, opportunities: 10 } },
    { name: "no sign of the inventory", fields: { sign: "xyz", correct: 1, opportunities: 2 } },
    { name: "support", fields: { sign: "ch", correct: 8, opportunities: 10, support: "yes" } },
  ])("leaves out trials with $name", ({ fields }) => {
    expect(collect([probe(fields)]).reading.trials).toEqual([]);
  });
});

describe("evidence of signs from a row of signs", () => {
  const row = { unit: "signs", expected: "ch, sh, ch, the" };
  it.each([
    { task: "signs named", way: "reading" as const },
    { task: "copied", way: "writing" as const },
  ])("$task: trials of each sign in $way", ({ task, way }) => {
    const evidence = collect([probe({ ...row, task, response: "✓, ✗, prompted" })]);
    const trials = [
      { day: DAY, sign: "ch", correct: 1, opportunities: 2 },
      { day: DAY, sign: "sh", correct: 0, opportunities: 1 },
    ];
    expect(evidence[way].trials).toEqual(trials);
    expect(evidence[way].direct).toEqual(trials);
  });

  it("written in cells needs no code", () => {
    expect(written({ ...row, code: "signs", response: "⠡ ⠌ ⠡ ⠮" })).toEqual([
      "ch +",
      "sh −",
      "ch +",
      "the +",
    ]);
  });

  it("never takes names of signs for a text that was read", () => {
    const evidence = collect([probe({ ...row, task: "signs named", response: "cheese" })]);
    expect([...evidence.reading.words, ...evidence.reading.direct]).toEqual([]);
  });
});

describe("a sign shown by itself and missed, noted as a miscue", () => {
  const missed = miscue({ task: "signs named", expected: "ch", response: "sh", kind: "misread" });

  it("speaks against that sign, and not against its letters", () => {
    const { reading } = collect([], [missed]);
    expect(reading.words).toEqual([]);
    expect(reading.direct).toEqual([{ day: DAY, sign: "ch", correct: 0, opportunities: 1 }]);
  });

  it("is not counted again where the trials of that day have it", () => {
    const { reading } = collect(
      [probe({ task: "signs named", sign: "ch", correct: 3, opportunities: 4 })],
      [missed],
    );
    expect(reading.direct).toEqual([{ day: DAY, sign: "ch", correct: 3, opportunities: 4 }]);
    expect(reading.words).toEqual([]);
  });
});
