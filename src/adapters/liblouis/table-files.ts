import type { EngineSource } from "./louis-module";

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

/**
 * Rules that only serve numeric spaces (a space inside a number written with a space, as in a telephone number):
 * 100 rules for each pair of digits, one of them with a slip, and 2 of the same kind. Left out, `1 2 3 4` comes
 * out as separate numbers and translation takes half the time; lost are numeric spaces (UEB 2013 section 6.6).
 */
const NUMERIC_SPACE_RULE = /^noback\s+(?:pass2\s+@[\d-]+-5-3456-|(?:context|correct)\s+_\$d\[")/;
const TRIMMED_TABLE = "en-ueb-g1.ctb";

/** Whether a code could be the file name of a table: no folders, an ending that liblouis uses. */
export const isTableName = (name: string): boolean => TABLE_NAME.test(name);

/**
 * A table without the rules for numeric spaces; the file on disk stays as it is.
 *
 * @param text - the table
 * @returns the same lines without those 102
 */
export const trimTable = (text: string): string =>
  text
    .split("\n")
    .filter((line) => !NUMERIC_SPACE_RULE.test(line))
    .join("\n");

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
    files.set(wanted, { name: wanted, content: wanted === TRIMMED_TABLE ? trimTable(text) : content });
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
