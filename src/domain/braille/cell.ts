import { refusal, success, type Result } from "../result";

/** Text of Unicode braille patterns U+2800–U+28FF; line breaks may stand between. Made by the parsers here. */
export type Cells = string & { readonly unit: "cells" };

/** The blank cell. */
export const BLANK_CELL = "\u2800" as Cells;

/** What a braille notation can be refused for. */
export type CellCode = "not-dots" | "not-ascii-braille" | "not-a-cell" | "eight-dots";
type CellResult<T> = Result<T, { readonly code: CellCode; readonly message: string }>;

const FIRST = 0x2800;
const LAST = 0x28ff;
const SIX_DOTS = 64;
const DOTS = /^[1-8]+$/;

/**
 * North American ASCII braille: the character of each six-dot pattern, pattern 0 first; bit n−1 is dot n.
 *
 * Source: North American ASCII braille as used for braille files since the 1960s (common practice, no standard).
 */
const ASCII = " A1B'K2L@CIF/MSP\"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)=";

/** The lower-case variants that some programs write for the five signs between letters: `{` for `[` and so on. */
const VARIANTS: Readonly<Record<string, string>> = { "`": "@", "{": "[", "|": "\\", "}": "]", "~": "^" };

const PATTERN_OF = new Map([...ASCII].map((character, pattern) => [character, pattern] as const));

/** Whether a text holds nothing but braille patterns (and, between them, line breaks and spaces). */
export const isBraille = (text: string): boolean =>
  /^[\s\u2800-\u28ff]*[\u2800-\u28ff][\s\u2800-\u28ff]*$/.test(text);

/**
 * The dots of one cell, smallest first; none for the blank cell.
 *
 * @param cell - one character U+2800–U+28FF
 * @throws {RangeError} where it is not one braille pattern
 */
export const dotsOf = (cell: string): readonly number[] => {
  const pattern = patternOf(cell);
  return [1, 2, 3, 4, 5, 6, 7, 8].filter((dot) => pattern & (1 << (dot - 1)));
};

/**
 * The cell with these dots.
 *
 * @param dots - numbers 1–8 in any order; none gives the blank cell
 * @throws {RangeError} where a number is no dot
 */
export const cellOf = (dots: Iterable<number>): Cells => {
  let pattern = 0;
  for (const dot of dots) {
    if (!Number.isInteger(dot) || dot < 1 || dot > 8) throw new RangeError(`no dot ${dot}: dots are 1 to 8`);
    pattern |= 1 << (dot - 1);
  }
  return String.fromCharCode(FIRST + pattern) as Cells;
};

/**
 * Braille as it is, checked: spaces become blank cells, line breaks stay (CR LF as one).
 *
 * @returns cells, or `not-a-cell` naming the first other character and its position
 */
export const parseCells = (text: string): CellResult<Cells> => {
  const cells = text.replaceAll(/\r\n?/g, "\n").replaceAll(/[ \t\u00a0]/g, BLANK_CELL);
  const stranger = /[^\n\u2800-\u28ff]/u.exec(cells);
  if (stranger === null) return success(cells as Cells);
  return refusal(
    "not-a-cell",
    `"${stranger[0]}" at position ${stranger.index + 1} is not a braille cell. Write Unicode braille only.`,
  );
};

/**
 * Dot numbers of a line of cells: `125-15-0-13`, cells joined by `-`, a blank cell `0`; line breaks stay.
 *
 * @param cells - Unicode braille
 * @throws {RangeError} where a character is no braille pattern
 */
export const formatDots = (cells: string): string =>
  cells
    .split("\n")
    .map((line) => [...line].map((cell) => dotsOf(cell).join("") || "0").join("-"))
    .join("\n");

/**
 * The cells that dot numbers name: `125-15-0-13`. Spaces and commas may stand between cells as well as `-`.
 *
 * @returns cells, or `not-dots` naming the part that is no cell
 */
export const parseDots = (text: string): CellResult<Cells> => {
  const lines: string[] = [];
  for (const line of text.split(/\r\n?|\n/)) {
    let cells = "";
    for (const part of line.trim().split(/\s*[-,\s]\s*/)) {
      if (part === "" && line.trim() === "") continue;
      if (part !== "0" && (!DOTS.test(part) || new Set(part).size < part.length)) {
        return refusal(
          "not-dots",
          `"${part}" is not a cell. Write dots 1 to 8 once each, cells joined by "-", a blank as 0.`,
        );
      }
      cells += part === "0" ? BLANK_CELL : cellOf([...part].map(Number));
    }
    lines.push(cells);
  }
  return success(lines.join("\n") as Cells);
};

/**
 * North American ASCII braille, upper case, a blank cell as a space; line breaks stay.
 *
 * @param cells - Unicode braille
 * @returns text, or `eight-dots` where a cell has dot 7 or 8, which this code cannot write, or `not-a-cell`
 */
export const toAscii = (cells: string): CellResult<string> => {
  let ascii = "";
  for (const [index, cell] of [...cells].entries()) {
    const pattern = cell.charCodeAt(0) - FIRST;
    if (cell === "\n") ascii += cell;
    else if (pattern < 0 || pattern > LAST - FIRST || cell.length > 1) {
      return refusal("not-a-cell", `"${cell}" at position ${index + 1} is not a braille cell.`);
    } else if (pattern >= SIX_DOTS) {
      return refusal(
        "eight-dots",
        `The cell ${formatDots(cell)} at position ${index + 1} has dot 7 or 8. ASCII braille writes six dots only.`,
      );
    } else ascii += ASCII.charAt(pattern);
  }
  return success(ascii);
};

/**
 * The cells of North American ASCII braille, read without regard to case; `` ` { | } ~ `` are read as `@ [ \ ] ^`.
 *
 * @returns cells, or `not-ascii-braille` naming the first other character
 */
export const fromAscii = (text: string): CellResult<Cells> => {
  let cells = "";
  const characters = [...text.replaceAll(/\r\n?/g, "\n")];
  for (const [index, character] of characters.entries()) {
    const pattern = PATTERN_OF.get(VARIANTS[character] ?? upperCaseOf(character));
    if (character === "\n") cells += character;
    else if (pattern === undefined) {
      return refusal(
        "not-ascii-braille",
        `"${character}" at position ${index + 1} is not ASCII braille. Use its 64 characters only.`,
      );
    } else cells += String.fromCharCode(FIRST + pattern);
  }
  return success(cells as Cells);
};

/** Only a to z: other characters, such as ſ, have upper cases among these letters too. */
const upperCaseOf = (character: string): string =>
  /^[a-z]$/.test(character) ? character.toUpperCase() : character;

const patternOf = (cell: string): number => {
  const pattern = cell.charCodeAt(0) - FIRST;
  if (cell.length !== 1 || !(pattern >= 0 && pattern <= LAST - FIRST))
    throw new RangeError(`"${cell}" is not one braille cell`);
  return pattern;
};
