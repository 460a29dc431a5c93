import { escapeText } from "../domain/markup";

/** Attribute values of an SVG element; an undefined one is left out. Numbers are written with at most two decimals. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

export { escapeText };

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
