import { WorkbookPackage } from "./workbook-package";
import { XlsxRefusal } from "./xlsx-refusal";

const WORKBOOK_TYPES = new Set([
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
  "application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml",
  "application/vnd.ms-excel.sheet.macroenabled.main+xml",
  "application/vnd.ms-excel.template.macroenabled.main+xml",
]);

const STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main";
const SAVE_AS =
  "Open it in your spreadsheet program, choose Save As, Excel workbook (.xlsx), and open that copy here.";

/**
 * The package of an .xlsx workbook and the name of its main part, or the refusal that says what the file is instead
 * and what to do.
 *
 * @param bytes - the whole file
 * @throws {XlsxRefusal} `empty-file`, `encrypted`, `old-format`, `not-a-workbook`, `binary-format`, `strict-format`
 */
export const openPackage = (bytes: Uint8Array): { parts: WorkbookPackage; workbook: string } => {
  refuseOtherContainers(bytes);
  const parts = new WorkbookPackage(bytes);
  const workbook = parts.related("", "officeDocument");
  if (workbook === undefined) throw notAWorkbook(parts);
  const type = parts.contentType(workbook).toLowerCase();
  if (type.includes("sheet.binary")) {
    throw new XlsxRefusal(
      "binary-format",
      `This is a binary workbook (.xlsb), which cannot be read here. ${SAVE_AS}`,
    );
  }
  if (!WORKBOOK_TYPES.has(type)) throw notAWorkbook(parts);
  const uris = [...parts.document(workbook).scope.uris.values()];
  if (uris.includes(STRICT)) {
    throw new XlsxRefusal(
      "strict-format",
      `This workbook is in the format "Strict Open XML", which cannot be saved here without loss. ${SAVE_AS}`,
    );
  }
  if (!uris.includes("http://schemas.openxmlformats.org/spreadsheetml/2006/main")) throw notAWorkbook(parts);
  return { parts, workbook };
};

const refuseOtherContainers = (bytes: Uint8Array): void => {
  if (bytes.length === 0) {
    throw new XlsxRefusal(
      "empty-file",
      "This file is empty. Choose the workbook again, or copy it again from where it came.",
    );
  }
  const startsWith = (...marks: number[]): boolean => marks.every((mark, at) => bytes[at] === mark);
  if (startsWith(0xd0, 0xcf, 0x11, 0xe0)) {
    if (holdsWideText(bytes, "EncryptedPackage")) {
      throw new XlsxRefusal(
        "encrypted",
        "This workbook opens only with a password, so it cannot be read here. Open it in your spreadsheet program, take the password off, save a copy, and open that copy.",
      );
    }
    throw new XlsxRefusal(
      "old-format",
      `This is a workbook of the older format (.xls), which cannot be read here. ${SAVE_AS}`,
    );
  }
  if (!startsWith(0x50, 0x4b)) {
    throw new XlsxRefusal(
      "not-a-workbook",
      `This file is not an .xlsx workbook. If it is a table of another kind (.csv, .ods, .xls): ${SAVE_AS}`,
    );
  }
};

/** Names in a compound file are UTF-16; MS-CFB 2.6.1. */
const holdsWideText = (bytes: Uint8Array, text: string): boolean => {
  for (let at = 0; at + 2 * text.length <= bytes.length; at += 2) {
    let same = 0;
    while (
      same < text.length &&
      bytes[at + 2 * same] === text.charCodeAt(same) &&
      bytes[at + 2 * same + 1] === 0
    )
      same += 1;
    if (same === text.length) return true;
  }
  return false;
};

const notAWorkbook = (parts: WorkbookPackage): XlsxRefusal => {
  if (parts.has("content.xml") && parts.has("mimetype")) {
    return new XlsxRefusal(
      "not-a-workbook",
      `This is an OpenDocument file, which cannot be read here. ${SAVE_AS}`,
    );
  }
  return new XlsxRefusal(
    "not-a-workbook",
    `This file is an archive or a document of another kind, not an .xlsx workbook. ${SAVE_AS}`,
  );
};
