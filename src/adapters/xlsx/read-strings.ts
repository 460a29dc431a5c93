import { parseFileText } from "./cell-text";
import type { WorkbookPackage } from "./workbook-package";
import { scanXml, type XmlElement } from "./xml-source";

/**
 * The strings that cells share, by their number: rich text without its formats, without its readings (phonetic).
 *
 * @param parts - the opened file
 * @param workbook - name of its main part
 */
export const readSharedStrings = (parts: WorkbookPackage, workbook: string): string[] => {
  const part = parts.related(workbook, "sharedStrings");
  if (part === undefined) return [];
  const strings: string[] = [];
  let text = "";
  let reading = false;
  let phonetic = 0;
  scanXml(parts.text(part), {
    open(name) {
      if (name === "si") text = "";
      else if (name === "rPh") phonetic += 1;
      else if (name === "t") reading = phonetic === 0;
    },
    text(piece) {
      if (reading) text += piece;
    },
    close(name) {
      if (name === "si") strings.push(parseFileText(text));
      else if (name === "rPh") phonetic -= 1;
      else if (name === "t") reading = false;
    },
  });
  return strings;
};

/** The text of an element that holds plain or rich text: a comment, an inline string. */
export const richText = (element: XmlElement): string => {
  let text = "";
  for (const child of element.children) {
    if (child.name === "t") text += parseFileText(child.text);
    else if (child.name === "r") text += richText(child);
  }
  return text;
};
