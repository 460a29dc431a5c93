import { describe, expect, it } from "vitest";
import { parseSigns } from "../../../src/domain/contraction/taught";
import { printSignLine } from "../../../src/domain/drill/sign-print";

const signs = (...names: string[]) => {
  const read = parseSigns(names);
  if (!read.ok) throw new Error(read.fault.message);
  return read.value;
};

describe("the print of a line of signs", () => {
  it.each([
    ["groupsigns", "⠡⠀⠩⠀⠬", [], "ch, sh, ing"],
    ["pairs, and the same twice", "⠡⠩⠀⠡⠡", [], "ch-sh, ch-ch"],
    ["a letter rather than its wordsign", "⠃⠀⠅", [], "b, k"],
    ["but the wordsign where that is practised", "⠃⠀⠅", signs("but"), "but, k"],
    ["a groupsign rather than its wordsign", "⠡", [], "ch"],
    ["but the word where that is practised", "⠡", signs("child"), "child"],
    ["signs of two cells", "⠐⠙⠀⠰⠎", [], "day, ness"],
    ["a digit after its number sign", "⠼⠁⠀⠼⠃⠼⠁", [], "1, 2-1"],
    ["punctuation practised", "⠲⠀⠖", signs("full stop", "exclamation mark"), "full stop, exclamation mark"],
    ["cells of no sign", "⠈⠈⠈", [], "4-4-4"],
    ["blanks alone", "⠀", [], ""],
  ])("%s", (_what, cells, preferred, print) => {
    expect(printSignLine(cells, preferred)).toBe(print);
  });
});
