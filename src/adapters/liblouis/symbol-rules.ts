/**
 * Signs that the UEB table lacks: code point in hexadecimal, dots.
 * Source: UEB 2013 section 11 (signs of operation, comparison, set theory, logic) and 3 (check mark), from memory.
 */
const SIGNS = `
2713 4-146
2714 4-146
220f 6-46-1234
2211 6-46-234
2216 456-16
2217 5-35
2223 456-1256
223c 4-35
22a2 456-25
2af4 3456-456-123
2afc 3456-456-123
27e8 4-126
27e9 4-345
2215 456-34
`;

/** A mark through a letter, and the letters that have it. Source: UEB 2013 sections 4.2.1 and 4.3 (from memory). */
const STROKES: readonly (readonly [dots: string, letters: string])[] = [
  // horizontal: the capital and the small letter and the plain letter in turn
  ["4-25", "Ƀƀb Đđd Ǥǥg Ħħh Ɨɨi Ɉɉj Ꝁꝁk Ƚƚl Ꝋꝋo Ᵽᵽp Ꝑꝑp Ꝗꝗq Ɍɍr Ŧŧt Ʉʉu Ɏɏy Ƶƶz Ɵɵo"],
  // oblique
  ["4-16", "Ⱥⱥa Ȼȼc Ɇɇe Ꝃꝃk Łłl Øøo Ꝙꝙq Ꞧꞧr Ꞩꞩs Ⱦⱦt Ꝟꝟv Ꞡꞡg Ꞥꞥn"],
];

/** Small letters with an accent that have no capital in one character, with the plain letter and the accent. */
const SMALL_ONLY = "ǰj45-346 ẗt45-25 ẘw45-1246 ẙy45-1246";

/** Two letters joined by the ligature sign. Source: UEB 2013 section 4.3. */
const LIGATURES = "uppercase \\x0132 24-6-45-235-245\nlowercase \\x0133 24-45-235-245\n";

const LETTERS = new Map(
  "a1 b12 c14 d145 e15 f124 g1245 h125 i24 j245 k13 l123 m134 n1345 o135 p1234 q12345 r1235 s234 t2345 u136 v1236 w2456 x1346 y13456 z1356"
    .split(" ")
    .map((pair) => [pair.charAt(0), pair.slice(1)]),
);
const NEGATION = "4-156";
const NEGATION_OVERLAY = "\u0338";
const FIRST_OPERATOR = 0x2190;
const LAST_OPERATOR = 0x2aff;
const DEFINITION =
  /^(?:noback\s+)?(?:sign|math|punctuation|uplow|lowercase|uppercase|letter)\s+((?:\\x[0-9a-f]{4}){1,2}|\S)\s+([\d-]+)/gim;

/**
 * Rules for signs and letters that a table lacks; a sign with a stroke through it, such as ≮, is made from the sign
 * without it, because Unicode says which that is.
 *
 * @param table - the texts of the table's character definitions
 */
export const formatSymbolRules = (table: string): string => {
  const dotsOf = new Map<string, string>();
  for (const [, characters = "", dots = ""] of table.matchAll(DEFINITION)) {
    for (const [, code = ""] of characters.matchAll(/\\x([0-9a-f]{4})/gi))
      dotsOf.set(String.fromCharCode(Number.parseInt(code, 16)), dots);
    if (characters.length === 1) dotsOf.set(characters, dots);
  }
  const rules: string[] = [];
  const define = (opcode: string, character: string, dots: string): void => {
    if (dotsOf.has(character.charAt(0))) return;
    for (const each of character) dotsOf.set(each, dots);
    rules.push(`${opcode} ${[...character].map(formatEscape).join("")} ${dots}\n`);
  };
  for (const line of SIGNS.trim().split("\n")) {
    const [code = "", dots = ""] = line.split(" ");
    define("sign", String.fromCharCode(Number.parseInt(code, 16)), dots);
  }
  for (const [stroke, letters] of STROKES) {
    for (const [upper = "", lower = "", plain = ""] of letters.split(" "))
      define("uplow", upper + lower, `${stroke}-${LETTERS.get(plain) ?? ""}`);
  }
  for (const entry of SMALL_ONLY.split(" "))
    define("lowercase", entry.charAt(0), `${entry.slice(2)}-${LETTERS.get(entry.charAt(1)) ?? ""}`);
  for (let code = FIRST_OPERATOR; code <= LAST_OPERATOR; code += 1) {
    const character = String.fromCharCode(code);
    const [plain = "", overlay] = character.normalize("NFD");
    const dots = dotsOf.get(plain);
    if (overlay === NEGATION_OVERLAY && dots !== undefined) define("sign", character, `${dots}-${NEGATION}`);
  }
  return LIGATURES + rules.join("");
};

const formatEscape = (character: string): string =>
  `\\x${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
