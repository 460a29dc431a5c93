import { cellsOfDots } from "./letters";

/** North American ASCII braille: the character's place is the dot pattern 0–63. */
const ASCII_BRAILLE = " A1B'K2L@CIF/MSP\"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)=";
const LOWER_VARIANTS: Readonly<Record<string, string>> = {
  "{": "[",
  "|": "\\",
  "}": "]",
  "~": "^",
  "`": "@",
};

const UNICODE_BRAILLE = /^[\u2800-\u28ff ]+$/;
const DOT_NUMBERS = /^(?:0|1?2?3?4?5?6?7?8?)(?:-(?:0|1?2?3?4?5?6?7?8?))*$/;

/**
 * Unicode braille of cells written as Unicode braille, dot numbers (`125-15`, `0` for a blank) or ASCII braille, told
 * apart by what they hold; undefined where they are none of these.
 */
export const parseAnyCells = (text: string): string | undefined => {
  if (UNICODE_BRAILLE.test(text)) return text.replaceAll(" ", "\u2800");
  if (DOT_NUMBERS.test(text) && !/^-|--|-$/.test(text))
    return text
      .split("-")
      .map((cell) => (cell === "0" ? "\u2800" : cellsOfDots(cell)))
      .join("");
  let cells = "";
  for (const character of text.toUpperCase()) {
    const pattern = ASCII_BRAILLE.indexOf(LOWER_VARIANTS[character] ?? character);
    if (pattern < 0) return undefined;
    cells += String.fromCharCode(0x2800 + pattern);
  }
  return cells;
};
