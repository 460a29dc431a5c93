/**
 * Text as a file of this format spells it, read: `_x000D_` stands for the sign of that number.
 *
 * Source: ECMA-376 part 1, 22.9.2.19 (ST_Xstring).
 */
export const parseFileText = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, digits: string) => String.fromCharCode(parseInt(digits, 16)))
    : text;

/** Text as a file of this format spells it: signs that XML cannot hold become `_xHHHH_`, and such a spelling is kept apart. */
export const formatFileText = (text: string): string =>
  text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_").replace(NOT_XML, wideSpelling);

/** XML 1.0, production 2 (Char), but for the carriage return, which a reader would turn into a line feed. */
const NOT_XML = /[^\t\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const wideSpelling = (sign: string): string =>
  `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;
