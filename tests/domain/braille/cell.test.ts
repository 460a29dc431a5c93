import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BLANK_CELL,
  cellOf,
  dotsOf,
  formatDots,
  fromAscii,
  isBraille,
  parseCells,
  parseDots,
  toAscii,
} from "../../../src/domain/braille/cell";
import type { Result } from "../../../src/domain/result";

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};
const codeOf = (result: Result<unknown>): string | undefined => (result.ok ? undefined : result.fault.code);

const cell = (most: number) =>
  fc.integer({ min: 0, max: most }).map((pattern) => String.fromCharCode(0x2800 + pattern));
const sixDotText = fc.array(cell(63)).map((cells) => cells.join(""));
const eightDotLines = fc
  .array(
    fc.array(cell(255)).map((cells) => cells.join("")),
    { minLength: 1 },
  )
  .map((lines) => lines.join("\n"));

describe("cells and dots", () => {
  // Source: Unicode Standard, chapter 21.1: U+2800 plus one bit a dot.
  it.each([
    ["⠀", []],
    ["⠁", [1]],
    ["⠓", [1, 2, 5]],
    ["⠿", [1, 2, 3, 4, 5, 6]],
    ["⣿", [1, 2, 3, 4, 5, 6, 7, 8]],
    ["⢀", [8]],
  ])("%s has the dots %j", (print, dots) => {
    expect(dotsOf(print)).toEqual(dots);
    expect(cellOf([...dots].reverse())).toBe(print);
  });

  it("refuses what is no cell and no dot", () => {
    expect(() => dotsOf("a")).toThrow(RangeError);
    expect(() => dotsOf("⠁⠁")).toThrow(RangeError);
    expect(() => dotsOf("")).toThrow(RangeError);
    expect(() => cellOf([9])).toThrow(RangeError);
    expect(() => cellOf([1.5])).toThrow(RangeError);
  });

  it("tells braille from print", () => {
    expect(isBraille("⠁ ⠃\n⠉")).toBe(true);
    for (const other of ["", "  ", "a⠁", "125-15"]) expect(isBraille(other)).toBe(false);
  });

  it("reads braille with spaces and any line breaks, and names the first stranger", () => {
    expect(valueOf(parseCells("⠁ ⠃\r\n⠉"))).toBe("⠁⠀⠃\n⠉");
    const refused = parseCells("⠁x");
    expect(codeOf(refused)).toBe("not-a-cell");
    expect(refused.ok ? "" : refused.fault.message).toMatch(/"x" at position 2/);
  });
});

describe("dot numbers", () => {
  it("writes cells joined by hyphens and a blank as 0", () => {
    // The example of the project's design.
    expect(formatDots("⠓⠑⠀⠅")).toBe("125-15-0-13");
    expect(formatDots("")).toBe("");
    expect(formatDots("⠁\n⠃⠀")).toBe("1\n12-0");
  });

  it.each([
    ["125-15-0-13", "⠓⠑⠀⠅"],
    ["125 15 0 13", "⠓⠑⠀⠅"],
    ["125, 15, 0, 13", "⠓⠑⠀⠅"],
    ["521", "⠓"],
    [" 1 ", "⠁"],
    ["1\r\n12", "⠁\n⠃"],
    ["", ""],
  ])("reads %j", (text, cells) => {
    expect(valueOf(parseDots(text))).toBe(cells);
  });

  it.each(["9", "1-", "11", "10", "a", "1--2", "-1", "1.5"])("refuses %j", (text) => {
    expect(codeOf(parseDots(text))).toBe("not-dots");
  });

  it("reads back what it wrote", () => {
    fc.assert(
      fc.property(eightDotLines, (cells) => {
        expect(valueOf(parseDots(formatDots(cells)))).toBe(cells);
      }),
    );
  });
});

describe("North American ASCII braille", () => {
  // Letters as everyone writes them; contractions and punctuation from memory.
  it.each([
    ["⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚⠅⠇⠍⠝⠕⠏⠟⠗⠎⠞⠥⠧⠺⠭⠽⠵", "ABCDEFGHIJKLMNOPQRSTUVWXYZ"],
    ["⠼⠁⠃", "#AB"],
    ["⠯⠿⠷⠮⠾", "&=(!)"],
    ["⠡⠩⠹⠱⠳⠌⠣⠫⠻⠪", "*%?:\\/<$]["],
    ["⠂⠆⠒⠲⠢⠖⠶⠦⠔⠴", "1234567890"],
    ["⠀⠠⠐⠈⠘⠸⠰⠨", ' ,"@^_;.'],
    ["⠄⠤⠬⠜", "'-+>"],
  ])("%s is %s", (cells, ascii) => {
    expect(valueOf(toAscii(cells))).toBe(ascii);
    expect(valueOf(fromAscii(ascii))).toBe(cells);
  });

  it("is read without regard to case and with the variants that some programs write", () => {
    expect(valueOf(fromAscii("abc"))).toBe("⠁⠃⠉");
    expect(valueOf(fromAscii("`{|}~"))).toBe(valueOf(fromAscii("@[\\]^")));
  });

  it("keeps line breaks", () => {
    expect(valueOf(toAscii("⠁\n⠃"))).toBe("A\nB");
    expect(valueOf(fromAscii("A\r\nB"))).toBe("⠁\n⠃");
  });

  it("refuses cells of eight dots and other characters, naming the place", () => {
    expect(codeOf(toAscii("⠁⡀"))).toBe("eight-dots");
    expect(codeOf(toAscii("⠁a"))).toBe("not-a-cell");
    const refused = fromAscii("Aé");
    expect(codeOf(refused)).toBe("not-ascii-braille");
    expect(refused.ok ? "" : refused.fault.message).toMatch(/"é" at position 2/);
    expect(codeOf(fromAscii("ſ"))).toBe("not-ascii-braille");
  });

  it("reads back what it wrote, in either case", () => {
    fc.assert(
      fc.property(sixDotText, (cells) => {
        const ascii = valueOf(toAscii(cells));
        expect(ascii).toMatch(/^[\x20-\x5f]*$/);
        expect(valueOf(fromAscii(ascii))).toBe(cells);
        expect(valueOf(fromAscii(ascii.toLowerCase()))).toBe(cells);
      }),
    );
  });

  it("gives each of the 64 patterns a character of its own", () => {
    const all = Array.from({ length: 64 }, (_, pattern) => String.fromCharCode(0x2800 + pattern)).join("");
    expect(new Set(valueOf(toAscii(all))).size).toBe(64);
    expect(all.startsWith(BLANK_CELL)).toBe(true);
  });
});
