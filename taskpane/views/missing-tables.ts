import type { FoundBlock } from "../../src/records/found-block";
import { TABLE_ORDER, TABLE_PLANS } from "../../src/records/table-plans";

/** The names of the tables that the workbook lacks, in the order in which they are set up. */
export const missingTables = (blocks: readonly FoundBlock[]): readonly string[] => {
  const had = new Set(blocks.filter(({ leftOut }) => !leftOut).map(({ kind }) => kind));
  return TABLE_ORDER.filter((kind) => !had.has(kind)).map((kind) => TABLE_PLANS[kind].name);
};
