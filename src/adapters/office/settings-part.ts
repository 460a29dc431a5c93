/** Namespace of the custom XML part that holds Cellwright's settings, the same in every host. */
export const SETTINGS_NAMESPACE = "urn:cellwright:settings:1";

const ENTITIES: Readonly<Record<string, string>> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };

const unescapeXml = (text: string): string =>
  text.replace(
    /&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi,
    (whole, hex?: string, decimal?: string, name?: string) => {
      if (hex) return String.fromCodePoint(Number.parseInt(hex, 16));
      if (decimal) return String.fromCodePoint(Number(decimal));
      return ENTITIES[name ?? ""] ?? whole;
    },
  );

/** XML 1.0 §2.11 and §3.3.3: line ends and blanks survive parsing only as character references. */
const escapeXml = (text: string): string =>
  text
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/[\t\n\r]/g, (blank) => `&#${blank.charCodeAt(0)};`)
    .replace(/^ | $/g, "&#32;");

/** XML 1.0 §2.2: these have no place, not even escaped; the carriage return would become a line feed. */
const NOT_XML = /[^\t\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

/**
 * Signs that XML cannot hold, spelt as every part of a workbook spells them, so that the .xlsx adapter reads the same.
 *
 * Source: ECMA-376 part 1, 22.9.2.19 (ST_Xstring).
 */
const spellSigns = (text: string): string =>
  text
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
    .replace(NOT_XML, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`);

const readSigns = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, digits: string) =>
    String.fromCharCode(Number.parseInt(digits, 16)),
  );

const SETTING = /<(?:[\w.-]+:)?setting\b([^>]*?)(?:\/>|>([\s\S]*?)<\/(?:[\w.-]+:)?setting\s*>)/g;

const textOf = (content: string): string =>
  content
    .split(/(<!\[CDATA\[[\s\S]*?\]\]>)/)
    .map((piece) => (piece.startsWith("<![CDATA[") ? piece.slice(9, -3) : unescapeXml(piece)))
    .join("");

/** Reads the settings of a part: `<settings xmlns="…"><setting key="…">text</setting></settings>`. */
export const parseSettings = (xml: string): Map<string, string> => {
  const settings = new Map<string, string>();
  for (const [, attributes = "", content = ""] of xml.matchAll(SETTING)) {
    const key = /\bkey\s*=\s*(?:"([^"]*)"|'([^']*)')/.exec(attributes);
    if (key) settings.set(readSigns(unescapeXml(key[1] ?? key[2] ?? "")), readSigns(textOf(content)));
  }
  return settings;
};

/** Writes the part for these settings. */
export const formatSettings = (settings: ReadonlyMap<string, string>): string => {
  const elements = [...settings].map(
    ([key, value]) =>
      `<setting key="${escapeXml(spellSigns(key))}">${escapeXml(spellSigns(value))}</setting>`,
  );
  return `<settings xmlns="${SETTINGS_NAMESPACE}">${elements.join("")}</settings>`;
};
