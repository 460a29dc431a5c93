import { columnOf, rowOf, type Comment } from "../../spreadsheet/workbook";
import { keyOfAddress } from "./cell-places";
import { richText } from "./read-strings";
import type { WorkbookPackage } from "./workbook-package";
import { childOf, childrenOf } from "./xml-source";

/**
 * What people noted at cells: notes, and threads of comments, which newer programs keep in a part of their own and
 * repeat as a note that asks for a newer program. Of a thread the text and its answers are shown.
 *
 * @param persons - names by id, from {@link readPersons}
 */
export const readComments = (
  parts: WorkbookPackage,
  sheetPart: string,
  persons: ReadonlyMap<string, string>,
): Comment[] => {
  const found = new Map<number, Comment>();
  for (const { target } of related(parts, sheetPart, "comments")) {
    const { root } = parts.document(target);
    const authors = childrenOf(childOf(root, "authors"), "author").map((author) => author.text);
    for (const element of childrenOf(childOf(root, "commentList"), "comment")) {
      const key = keyOfAddress(element.attributes["ref"] ?? "");
      const text = childOf(element, "text");
      if (key < 0) continue;
      const author = authors[Number(element.attributes["authorId"])];
      found.set(key, {
        row: rowOf(key),
        column: columnOf(key),
        ...(author !== undefined && author !== "" && !author.startsWith("tc={") && { author }),
        text: text ? richText(text) : "",
      });
    }
  }
  const threads = new Map<number, Comment>();
  for (const { target } of related(parts, sheetPart, "threadedComment")) {
    for (const element of childrenOf(parts.document(target).root, "threadedComment")) {
      const key = keyOfAddress(element.attributes["ref"] ?? "");
      if (key < 0) continue;
      const author = persons.get(element.attributes["personId"] ?? "");
      const text = childOf(element, "text")?.text ?? "";
      const thread = threads.get(key);
      const answer = author === undefined ? text : `${author}: ${text}`;
      threads.set(
        key,
        thread
          ? { ...thread, text: `${thread.text}\n${answer}` }
          : { row: rowOf(key), column: columnOf(key), ...(author !== undefined && { author }), text },
      );
    }
  }
  for (const [key, thread] of threads) found.set(key, thread);
  return [...found.values()];
};

const related = (parts: WorkbookPackage, part: string, type: string): { target: string }[] =>
  parts.relationships(part).filter((one) => one.type === type && !one.external && parts.has(one.target));

/** The names of those who wrote comments, by id. */
export const readPersons = (parts: WorkbookPackage, workbook: string): Map<string, string> => {
  const persons = new Map<string, string>();
  for (const { target } of related(parts, workbook, "person")) {
    for (const { attributes } of childrenOf(parts.document(target).root, "person")) {
      if (attributes["id"] !== undefined) persons.set(attributes["id"], attributes["displayName"] ?? "");
    }
  }
  return persons;
};
