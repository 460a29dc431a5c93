import { HostError } from "../../ports/sheet";

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

/** XML 1.0 §2.2: control characters, lone surrogates and two non-characters have no place, not even escaped. */
const isUnwritable = (character: string): boolean => {
  const code = character.codePointAt(0) ?? 0;
  const isControl = code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0d;
  return isControl || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff;
};

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
    if (key) settings.set(unescapeXml(key[1] ?? key[2] ?? ""), textOf(content));
  }
  return settings;
};

/**
 * Writes the part for these settings.
 * @throws {HostError} for control characters, which XML cannot hold
 */
export const formatSettings = (settings: ReadonlyMap<string, string>): string => {
  const elements = [...settings].map(([key, value]) => {
    if ([...key, ...value].some(isUnwritable)) {
      throw new HostError("A setting holds a control character, which a workbook cannot keep. Take it out.");
    }
    return `<setting key="${escapeXml(key)}">${escapeXml(value)}</setting>`;
  });
  return `<settings xmlns="${SETTINGS_NAMESPACE}">${elements.join("")}</settings>`;
};
