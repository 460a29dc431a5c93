import { describe, expect, it } from "vitest";
import { judgeSigns } from "../../../src/domain/progress/pupil-signs";
import type { Day } from "../../../src/domain/units";
import {
  describeSign,
  groupByKind,
  nameKind,
  passesFilter,
  type SignFilter,
} from "../../../taskpane/views/sign-words";

const TODAY = 46_100 as Day;
const judge = (signs: readonly string[]) =>
  judgeSigns(
    {
      ...{ probes: [], miscues: [] },
      taught: signs.map((sign) => ({ pupil: "Plover", sign, source: { sheet: "Taught", row: 2 } })),
    },
    "Plover",
    TODAY,
    () => undefined,
    () => undefined,
  );

describe("the signs of a pupil in words", () => {
  it("have every kind of the inventory, each under its name", () => {
    expect(groupByKind(judge([]).all).map(({ kind }) => nameKind(kind))).toEqual([
      "Letters",
      "Alphabetic wordsigns",
      "Strong wordsigns",
      "Strong contractions",
      "Strong groupsigns",
      "Lower wordsigns",
      "Lower groupsigns",
      "Initial-letter contractions",
      "Final-letter groupsigns",
      "Shortforms",
      "Digits",
      "Punctuation",
      "Indicators",
    ]);
  });

  it.each([
    { taught: [], sign: "full stop", words: "counts as taught" },
    { taught: ["full stop"], sign: "full stop", words: "taught earlier" },
    { taught: ["full stop"], sign: "comma", words: "" },
    { taught: [], sign: "a", words: "counts as taught" },
    { taught: ["a"], sign: "a", words: "taught earlier" },
    { taught: [], sign: "ch", words: "" },
  ])("say of $sign, where the table names $taught: $words", ({ taught, sign, words }) => {
    const found = judge(taught).all.find((each) => each.sign.name === sign);
    expect(found && describeSign(found).taught).toBe(words);
  });

  it("leave out of what is practised the digits, marks and indicators that no record names", () => {
    expect(judge([]).standings.map(({ sign }) => sign.name)).not.toContain("7");
    const names = judge(["7"]).standings.map(({ sign }) => sign.name);
    expect(names).toContain("7");
    expect(names).not.toContain("8");
  });

  it.each<{ search: string; finds: readonly string[] }>([
    { search: "?", finds: ["question mark"] },
    { search: "period", finds: ["full stop"] },
    { search: "3456", finds: ["number sign"] },
    { search: "ness", finds: ["ness"] },
  ])("are found by $search", ({ search, finds }) => {
    const filter: SignFilter = { kind: "", state: "", search };
    const found = judge([]).all.filter((standing) => passesFilter(standing, filter));
    expect(found.map(({ sign }) => sign.name)).toEqual(expect.arrayContaining([...finds]));
    expect(found.length).toBeLessThan(4);
  });
});
