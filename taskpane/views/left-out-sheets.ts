import { chooseInBlock } from "../../src/records/column-choices";
import type { PaneContext } from "./pane-context";

/**
 * Has sheets that the pane wrote itself left out of the reading from now on: they are made of records, and read as such
 * they would count twice.
 *
 * @param context - as it is after the sheets were written and read
 */
export const leaveOutSheets = async (
  { records, choices, keepChoices }: Pick<PaneContext, "records" | "choices" | "keepChoices">,
  sheets: readonly string[],
): Promise<void> => {
  const found = records.blocks.filter((block) => sheets.includes(block.sheet) && !block.leftOut);
  if (found.length === 0) return;
  await keepChoices(found.reduce((kept, { key }) => chooseInBlock(kept, key, { leftOut: true }), choices));
};
