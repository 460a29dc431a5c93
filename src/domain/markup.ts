/**
 * Text as it may stand between tags and inside quoted attributes of XML and HTML. Characters that XML forbids
 * (XML 1.0 section 2.2) become spaces.
 */
export const escapeText = (text: string): string =>
  dropForbidden(text)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");

/** Text without the characters that XML 1.0 forbids (section 2.2): each becomes a space. */
export const dropForbidden = (text: string): string =>
  text.replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, " ");
