/** Attribute values of an SVG element; an undefined one is left out. Numbers are written with at most two decimals. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text as it may stand between tags and inside quoted attributes. Characters that XML forbids become spaces. */
export const escapeText = (text: string): string =>
  text
    // eslint complains of control characters in a pattern, XML 1.0 §2.2 of control characters in a file.
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, " ")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");

const formatAttribute = (value: string | number): string =>
  typeof value === "number" ? String(Number(value.toFixed(2))) : escapeText(value);

/**
 * An SVG element as text.
 *
 * @param content - markup made by this function, or text that is already escaped; several are put in lines
 */
export const drawElement = (
  name: string,
  attributes: Attributes,
  content: string | readonly string[] = "",
): string => {
  const written = Object.entries(attributes)
    .map(([key, value]) => (value === undefined ? "" : ` ${key}="${formatAttribute(value)}"`))
    .join("");
  const inner =
    typeof content === "string" ? content : `\n${content.filter((line) => line !== "").join("\n")}\n`;
  return inner.trim() === "" ? `<${name}${written}/>` : `<${name}${written}>${inner}</${name}>`;
};
