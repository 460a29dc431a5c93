import { SETTINGS_NAMESPACE } from "./namespaces";
import type { WorkbookPackage } from "./workbook-package";
import { childrenOf } from "./xml-source";
import { escapeAttribute, escapeText } from "./xml-splice";
import { formatFileText, parseFileText } from "./cell-text";

/** The part of the file in which Cellwright keeps its settings, if it has one. */
export const findSettingsPart = (parts: WorkbookPackage, workbook: string): string | undefined =>
  parts
    .relationships(workbook)
    .find((one) => one.type === "customXml" && parts.has(one.target) && isSettings(parts.text(one.target)))
    ?.target;

const isSettings = (text: string): boolean => text.includes(SETTINGS_NAMESPACE);

/** The settings, by key. */
export const readSettings = (parts: WorkbookPackage, workbook: string): Map<string, string> => {
  const part = findSettingsPart(parts, workbook);
  if (part === undefined) return new Map();
  return new Map(
    childrenOf(parts.document(part).root, "setting").map((element) => [
      parseFileText(element.attributes["key"] ?? ""),
      parseFileText(element.text),
    ]),
  );
};

/** The settings part: one element a key, keys in order. */
export const formatSettings = (settings: ReadonlyMap<string, string>): string => {
  const lines = [...settings]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(
      ([key, value]) =>
        `  <setting key="${escapeAttribute(formatFileText(key))}">${escapeText(formatFileText(value))}</setting>\n`,
    );
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<settings xmlns="${SETTINGS_NAMESPACE}">\n${lines.join("")}</settings>\n`;
};

/** The part that tells other programs which schema the settings follow. */
export const formatSettingsProperties = (id: string): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n<ds:datastoreItem ds:itemID="${id}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"><ds:schemaRefs><ds:schemaRef ds:uri="${SETTINGS_NAMESPACE}"/></ds:schemaRefs></ds:datastoreItem>`;
