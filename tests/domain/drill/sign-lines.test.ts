import { describe, expect, it } from "vitest";
import { makeSignLines, type LineWish } from "../../../src/domain/drill/sign-lines";
import { seededRandom } from "../../../src/domain/seeded-random";
import { signsNamed } from "../contraction/word-tables";

const lines = (
  wanted: string[],
  known: string[],
  more: Partial<LineWish> = {},
): ReturnType<typeof makeSignLines> =>
  makeSignLines({
    wanted: signsNamed(...wanted),
    known: known.length === 0 ? [] : signsNamed(...known),
    lines: 6,
    mostCells: 11,
    random: seededRandom(3),
    ...more,
  });

describe("lines of signs", () => {
  // Source of the cells: UEB 2013, sections 10.4, 10.6.5 and 10.4.3: never the letters of the print.
  it.each([
    ["ea", "⠂"],
    ["ch", "⠡"],
    ["ing", "⠬"],
    ["ence", "⠰⠑"],
    ["children", "⠡⠝"],
    ["capital", "⠠"],
    ["1", "⠼⠁"],
  ])("show %s by its own cells %s", (name, cells) => {
    const [singles] = lines([name], [], { lines: 1 });
    expect(new Set(singles?.cells.split("⠀"))).toEqual(new Set([cells]));
  });

  it("come in three kinds in turn", () => {
    expect(lines(["ch"], ["sh"]).map(({ kind }) => kind)).toEqual([
      "singles",
      "pairs",
      "same or different",
      "singles",
      "pairs",
      "same or different",
    ]);
  });

  it("pair a sign with another wanted one, or with the known ones most like it", () => {
    const pairs = (wanted: string[], known: string[]): Set<string> =>
      new Set(
        lines(wanted, known, { lines: 30 })
          .filter(({ kind }) => kind === "pairs")
          .flatMap(({ cells }) => cells.split("⠀")),
      );
    expect(pairs(["ch", "sh"], [])).toEqual(new Set(["⠡⠩", "⠩⠡"]));
    // ch is dots 16: a (1), u (136) and sh (146) are one dot away, with (23456) far.
    expect(pairs(["ch"], ["a", "u", "sh", "with", "ence"])).toEqual(
      new Set(["⠡⠁", "⠁⠡", "⠡⠥", "⠥⠡", "⠡⠩", "⠩⠡"]),
    );
  });

  it.each([
    // Of two cells there are none among the known: those of one cell that are nearest; ence is dots 56-15.
    ["ence", ["a", "1", "comma"], "⠁"],
    ["q", ["a", "exclamation mark", "7"], "⠁"],
    ["1", ["a", "ence", "2"], "⠼⠃"],
    ["comma", ["a", "ea", "semicolon"], "⠆"],
  ])("pair %s among %j with nothing but its like", (wanted, known, companion) => {
    const items = lines([wanted], known, { lines: 30, mostCells: 40 })
      .filter(({ kind }) => kind === "pairs")
      .flatMap(({ cells }) => cells.split("⠀"));
    const [own] = lines([wanted], [], { lines: 1, mostCells: 40 })[0]?.cells.split("⠀") ?? [];
    expect(new Set(items)).toEqual(new Set([`${own}${companion}`, `${companion}${own}`]));
  });

  it("have same and different items in one line", () => {
    for (const { kind, cells } of lines(["ch"], ["sh"], { lines: 60 })) {
      if (kind !== "same or different") continue;
      const same = cells.split("⠀").map((item) => item[0] === item[1]);
      expect(new Set(same).size).toBe(2);
    }
  });

  it.each([2, 3, 5, 8, 11, 40])("keep within %d cells", (mostCells) => {
    for (const { cells } of lines(["ch", "ence"], ["sh"], { mostCells, lines: 20 }))
      expect(cells.length).toBeLessThanOrEqual(mostCells);
  });

  it("are singles alone where there is nothing to pair with", () => {
    // The cells of `in` as wordsign and groupsign are the same: one sign under the finger.
    expect(new Set(lines(["in"], []).map(({ kind }) => kind))).toEqual(new Set(["singles"]));
  });

  it("are none where two signs do not fit", () => {
    expect(lines(["ch"], ["sh"], { mostCells: 1 })).toEqual([]);
    expect(lines(["ence"], ["ance"], { mostCells: 4 })).toEqual([]);
    expect(lines(["ence"], ["a"], { mostCells: 4 })).toEqual([]);
  });

  it("begin items with each wanted sign about equally often", () => {
    const singles = lines(["ch", "sh", "th"], [], { lines: 30, mostCells: 40 })
      .filter(({ kind }) => kind === "singles")
      .flatMap(({ cells }) => cells.split("⠀"));
    const times = ["⠡", "⠩", "⠹"].map((sign) => singles.filter((item) => item === sign).length);
    expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
  });
});
