import type { EngineSource } from "./louis-module";
import { isTrimmed, trimTable } from "./table-trim";

/** A table file as the engine gets it. */
export interface TableFile {
  readonly name: string;
  readonly content: Uint8Array | string;
}

/** Why a table cannot be had, in a teacher's words. */
export class MissingTableError extends Error {
  override readonly name = "MissingTableError";
}

/** File names only: a code typed into a cell must never become a path. */
const TABLE_NAME = /^[A-Za-z0-9_-][A-Za-z0-9_.-]*\.(?:ctb|utb|tbl|cti|uti|dis|dic)$/;
const INCLUDE = /^\s*include\s+(\S+)/gm;

/** Whether a code could be the file name of a table: no folders, an ending that liblouis uses. */
export const isTableName = (name: string): boolean => TABLE_NAME.test(name);

/**
 * A table and all that it includes, each file once, in the order in which they are met.
 *
 * @param source - where the files come from
 * @param name - the table's file name
 * @throws {MissingTableError} where one of them is not in the build
 */
export const collectTableFiles = async (source: EngineSource, name: string): Promise<TableFile[]> => {
  const files = new Map<string, TableFile>();
  const collect = async (wanted: string): Promise<void> => {
    if (files.has(wanted)) return;
    const content = await loadTable(source, wanted);
    const text = typeof content === "string" ? content : new TextDecoder().decode(content);
    files.set(wanted, { name: wanted, content: isTrimmed(wanted) ? trimTable(wanted, text) : content });
    for (const match of text.matchAll(INCLUDE)) {
      if (match[1] !== undefined) await collect(match[1]);
    }
  };
  await collect(name);
  return [...files.values()];
};

const loadTable = async (source: EngineSource, name: string): Promise<Uint8Array | string> => {
  if (!isTableName(name)) throw new MissingTableError(`"${name}" is not the name of a braille table`);
  try {
    return await source.loadTable(name);
  } catch (cause) {
    throw new MissingTableError(`the table "${name}" is not in the build`, { cause });
  }
};
