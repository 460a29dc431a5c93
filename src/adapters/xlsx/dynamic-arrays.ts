import type { WorkbookPackage } from "./workbook-package";
import { childOf, childrenOf, descendants, parseXml, type XmlElement } from "./xml-source";
import { setAttribute, Splices } from "./xml-splice";

/** The key of the future metadata that says "dynamic array"; [MS-XLSX] 2.2.4.9. */
const DYNAMIC_URI = "{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}";

/** The numbers of `cm` by which a file marks dynamic arrays. */
export const readDynamicMarks = (parts: WorkbookPackage, workbook: string): Set<string> => {
  const part = parts.related(workbook, "sheetMetadata");
  return part === undefined ? new Set() : dynamicMarks(parts.document(part).root);
};

/** ECMA-376 part 1, 18.9.10 (metadata): `cm` counts `bk` of cellMetadata from 1, whose `rc` names type and value. */
const dynamicMarks = (root: XmlElement): Set<string> => {
  const types = childrenOf(childOf(root, "metadataTypes"), "metadataType").map(
    (type) => type.attributes["name"],
  );
  const dynamic = childrenOf(
    childrenOf(root, "futureMetadata").find((one) => one.attributes["name"] === "XLDAPR"),
    "bk",
  ).map((block) => [...descendants(block)].some((one) => one.attributes["fDynamic"] === "1"));
  const marks = new Set<string>();
  childrenOf(childOf(root, "cellMetadata"), "bk").forEach((block, index) => {
    const yes = childrenOf(block, "rc").some(
      ({ attributes }) => types[Number(attributes["t"]) - 1] === "XLDAPR" && dynamic[Number(attributes["v"])],
    );
    if (yes) marks.add(String(index + 1));
  });
  return marks;
};

const FUTURE_BLOCK = `<bk><extLst><ext uri="${DYNAMIC_URI}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk>`;
const TYPE = `<metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>`;

/** The metadata part of a file that had none, in which `cm="1"` means a dynamic array. */
export const NEW_METADATA = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1">${TYPE}</metadataTypes><futureMetadata name="XLDAPR" count="1">${FUTURE_BLOCK}</futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/**
 * A metadata part with the mark of dynamic arrays added, where it holds other things only.
 *
 * @param text - the part
 * @returns the new text and the mark, or undefined where the part writes its namespace in a way that is not known
 */
export const addDynamicMark = (text: string): { text: string; mark: string } | undefined => {
  const { root, scope } = parseXml(text);
  const known = [...dynamicMarks(root)][0];
  if (known !== undefined) return { text, mark: known };
  const types = childOf(root, "metadataTypes");
  if (scope.fileQualifier("") !== "" || !types || types.empty) return undefined;
  const splices = new Splices(text);
  const rename = (element: XmlElement, count: number): void =>
    splices.replace(
      element.start,
      element.openEnd,
      setAttribute(text.slice(element.start, element.openEnd), "count", String(count)),
    );
  const typeNumber = types.children.length + 1;
  rename(types, typeNumber);
  splices.insert(types.closeStart, TYPE);
  const futures = childrenOf(root, "futureMetadata");
  const block = FUTURE_BLOCK.replace(
    "dynamicArrayProperties ",
    'dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" ',
  );
  // futureMetadata stands after metadataStrings and mdxMetadata, before cellMetadata and valueMetadata (18.9.10).
  const cellMetadata = childOf(root, "cellMetadata");
  const valueMetadata = childOf(root, "valueMetadata");
  const afterFuture = futures.at(-1)?.end ?? cellMetadata?.start ?? valueMetadata?.start ?? root.closeStart;
  splices.insert(afterFuture, `<futureMetadata name="XLDAPR" count="1">${block}</futureMetadata>`);
  const entry = `<bk><rc t="${typeNumber}" v="0"/></bk>`;
  if (cellMetadata && !cellMetadata.empty) {
    rename(cellMetadata, cellMetadata.children.length + 1);
    splices.insert(cellMetadata.closeStart, entry);
    return { text: splices.apply(), mark: String(cellMetadata.children.length + 1) };
  }
  splices.insert(
    valueMetadata?.start ?? childOf(root, "extLst")?.start ?? root.closeStart,
    `<cellMetadata count="1">${entry}</cellMetadata>`,
  );
  return { text: splices.apply(), mark: "1" };
};
