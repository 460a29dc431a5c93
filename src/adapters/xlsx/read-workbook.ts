import type { Result } from "../../domain/result";
import type { DefinedName, Worksheet, WorkbookContents } from "../../spreadsheet/workbook";
import { readDynamicMarks } from "./dynamic-arrays";
import { FormulaSpelling } from "./formula-spelling";
import type { CellContext } from "./read-cells";
import { readComments, readPersons } from "./read-comments";
import { readDrawings } from "./read-drawings";
import { readSheetPart } from "./read-sheet";
import { readSharedStrings } from "./read-strings";
import { readStyles } from "./read-styles";
import { readTables } from "./read-tables";
import { readSettings } from "./settings-part";
import { openPackage } from "./workbook-kind";
import type { WorkbookPackage } from "./workbook-package";
import { childOf, childrenOf, isTrue, type XmlElement } from "./xml-source";
import { refuseInsteadOfThrowing, XlsxRefusal } from "./xlsx-refusal";

export interface XlsxOptions {
  /** The add-in's functions, with namespace: `BRAILLE.TRANSLATE`; files spell them `_xldudf_BRAILLE_TRANSLATE`. */
  readonly functions: readonly string[];
}

/** An opened file. */
export interface ReadWorkbook {
  readonly contents: WorkbookContents;
  /** What the teacher should know of this file before she edits it, a sentence each. */
  readonly cautions: readonly string[];
}

/**
 * Reads an .xlsx workbook into the model. What the model has no place for stays in the bytes: keep them for
 * `saveWorkbook`.
 *
 * @param bytes - the whole file
 * @returns the contents, or a fault: `empty-file`, `not-a-workbook`, `encrypted`, `old-format`, `binary-format`,
 *   `strict-format`, `too-large`, `damaged-file`
 */
export const readWorkbook = (bytes: Uint8Array, options: XlsxOptions): Result<ReadWorkbook> =>
  refuseInsteadOfThrowing(() => {
    const { parts, workbook } = openPackage(bytes);
    const { root } = parts.document(workbook);
    const spelling = new FormulaSpelling(options.functions);
    const styles = readStyles(parts, workbook);
    const date1904 = isTrue(childOf(root, "workbookPr")?.attributes["date1904"]);
    const context: CellContext = {
      strings: readSharedStrings(parts, workbook),
      spelling,
      date1904,
      styleCount: styles.length,
      dynamicMarks: readDynamicMarks(parts, workbook),
    };
    const persons = readPersons(parts, workbook);
    const sheets = listSheets(parts, workbook).map((sheet) => readSheet(parts, sheet, context, persons));
    const names = readNames(root, sheets, spelling);
    const settings = readSettings(parts, workbook);
    return {
      contents: { sheets, names, styles, date1904, settings },
      cautions: listCautions(parts, workbook),
    };
  });

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  readonly sheetId: string;
  readonly visibility: "visible" | "hidden" | "veryHidden";
  readonly kind: "cells" | "other";
  /** Name of its part. */
  readonly part: string;
}

/** The sheets of a workbook in the order of their tabs. */
export const listSheets = (parts: WorkbookPackage, workbook: string): ListedSheet[] => {
  const targets = new Map(parts.relationships(workbook).map((one) => [one.id, one]));
  const elements = childrenOf(childOf(parts.document(workbook).root, "sheets"), "sheet");
  const listed = elements.map(({ attributes }): ListedSheet => {
    const relationship = targets.get(attributes["r:id"] ?? "");
    const state = attributes["state"];
    return {
      name: attributes["name"] ?? "",
      sheetId: attributes["sheetId"] ?? "",
      visibility: state === "hidden" || state === "veryHidden" ? state : "visible",
      kind: relationship?.type === "worksheet" ? "cells" : "other",
      part: relationship?.target ?? "",
    };
  });
  if (listed.length === 0)
    throw new XlsxRefusal(
      "damaged-file",
      "This workbook has no sheets. Open it in your spreadsheet program and save a copy.",
    );
  const lacking = listed.find((sheet) => !parts.has(sheet.part));
  if (lacking) parts.bytes(lacking.part || `of the sheet ${lacking.name}`);
  return listed;
};

const readSheet = (
  parts: WorkbookPackage,
  { name, visibility, kind, part }: ListedSheet,
  context: CellContext,
  persons: ReadonlyMap<string, string>,
): Worksheet => {
  const text = kind === "cells" ? parts.text(part) : "<worksheet/>";
  const tables = kind === "cells" ? readTables(parts, part, context.spelling) : [];
  return {
    name,
    visibility,
    kind,
    ...readSheetPart(text, context, tables),
    tables,
    objects: readDrawings(parts, part),
    comments: kind === "cells" ? readComments(parts, part, persons) : [],
  };
};

const readNames = (
  root: XmlElement,
  sheets: readonly Worksheet[],
  spelling: FormulaSpelling,
): DefinedName[] =>
  childrenOf(childOf(root, "definedNames"), "definedName").map(({ attributes, text }) => {
    const sheet =
      attributes["localSheetId"] === undefined ? undefined : sheets[Number(attributes["localSheetId"])]?.name;
    return {
      name: attributes["name"] ?? "",
      ...(sheet !== undefined && { sheet }),
      formula: spelling.toTyped(text),
      hidden: isTrue(attributes["hidden"]),
    };
  });

const listCautions = (parts: WorkbookPackage, workbook: string): string[] => {
  const cautions: string[] = [];
  if (parts.relationships("").some((one) => one.type === "origin" && one.target.includes("_xmlsignatures"))) {
    cautions.push(
      "This workbook is signed; any change would break the signature, so it can be read here but not saved.",
    );
  }
  if (parts.related(workbook, "vbaProject") !== undefined) {
    cautions.push("This workbook has macros: they are kept in the file, but do not run here.");
  }
  return cautions;
};
