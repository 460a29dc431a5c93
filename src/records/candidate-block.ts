import type { Area } from "../domain/area";
import { formatArea, formatColumn } from "./cell-address";
import { labelsSummary } from "./cell-text";
import type { BlockChoice, ColumnChoices } from "./column-choices";
import { describeColumn } from "./column-evidence";
import type { ColumnEvidence } from "./column-evidence";
import type { AnyKind } from "./column-kind";
import { assignRoles } from "./column-roles";
import type { FoundColumn } from "./found-block";
import type { GridCells } from "./grid-cells";
import type { HeaderRegion } from "./header-region";

/** A region with its columns understood: what records are made from. */
export interface CandidateBlock {
  readonly key: string;
  readonly cells: GridCells;
  readonly region: HeaderRegion;
  readonly columns: readonly FoundColumn[];
  readonly evidence: readonly ColumnEvidence[];
  readonly choice: BlockChoice;
  /** answers for the whole workbook: they decide what the block's own choice and its data leave open */
  readonly fallback: Pick<ColumnChoices, "dayOrder" | "clock">;
  readonly hidden: boolean;
}

/** Keys of columns: their headers, with a count from the second of the same on. */
function keysOf(headers: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return headers.map((header) => {
    const count = (seen.get(header) ?? 0) + 1;
    seen.set(header, count);
    return count === 1 ? header : `${header} (${count})`;
  });
}

/** Rows that may hold data: a row of totals is no evidence of what a column holds. */
function* rowsOfEvidence(cells: GridCells, region: HeaderRegion): Generator<number> {
  for (let row = region.first; row <= region.last; row += 1) {
    let summary = false;
    for (
      let column = region.left;
      column <= Math.min(region.right, region.left + 2) && !summary;
      column += 1
    ) {
      const value = cells.value(row, column);
      summary = typeof value === "string" && labelsSummary(value);
    }
    if (!summary) yield row;
  }
}

/** The name of a block in the teacher's choices: its sheet and its headers in alphabetical order. */
export const blockKey = (sheet: string, headers: readonly string[]): string =>
  `${sheet}\n${[...headers].sort().join("\t")}`;

/** Understands the columns of a region: header words and contents weighed, the teacher's choices first. */
export function understandRegion(
  cells: GridCells,
  region: HeaderRegion,
  choices: ColumnChoices,
  hidden: boolean,
): CandidateBlock {
  const keys = keysOf(region.headers);
  const key = blockKey(cells.sheet, region.headers);
  const choice = choices.blocks?.[key] ?? {};
  const rows = [...rowsOfEvidence(cells, region)];
  const evidence = region.headers.map((_, place) => describeColumn(cells, region.left + place, rows));
  const roles = assignRoles(
    region.headers.map((header, place) => ({
      key: keys[place] ?? "",
      header,
      group: region.groups[place] ?? "",
      evidence: evidence[place] ?? describeColumn(cells, region.left + place, []),
    })),
    choice,
  );
  const columns = region.headers.map((header, place): FoundColumn => {
    const column = region.left + place;
    return {
      column,
      lastColumn: column,
      letters: formatColumn(column),
      header,
      headerRow: region.headerRows[place] ?? region.headerRow,
      key: keys[place] ?? "",
      kinds: roles[place]?.kinds ?? [],
      chosen: roles[place]?.chosen ?? false,
    };
  });
  return { key, cells, region, columns, evidence, choice, fallback: choices, hidden };
}

/** Area and range of a block that ends at this row. */
export function outlineArea(region: HeaderRegion, lastRow: number): { area: Area; range: string } {
  const area = {
    top: region.top,
    left: region.left,
    bottom: Math.max(lastRow, region.headerRow),
    right: region.right,
  };
  return { area, range: formatArea(area) };
}

/** Whether a block has a column of this kind. */
export const holds = (block: Pick<CandidateBlock, "columns">, kind: AnyKind): boolean =>
  block.columns.some((column) => column.kinds.includes(kind));
