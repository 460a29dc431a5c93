import type { Area } from "../../domain/area";
import { formatArea } from "../../spreadsheet/address";
import type { CopiedCells } from "./grid-model";
import type { EditReport } from "./grid-edits";
import { shrinkToUsed } from "./grid-edits";
import type { GridScene } from "./grid-scene";
import { formatTabSeparated, parseTabSeparated } from "./tab-separated";

/**
 * Copying and pasting. The system's clipboard gets texts with tabs; beside it the grid remembers the cells
 * themselves, so that formulas and formats come along while the clipboard still holds what was copied here.
 */
export class GridClipboard {
  private remembered:
    { readonly text: string; readonly cells: CopiedCells; readonly cut: boolean } | undefined;

  /** Takes the selected cells; returns the text for the clipboard. */
  take(scene: GridScene, area: Area, cut: boolean): { readonly text: string; readonly said: string } {
    const used = shrinkToUsed(scene, area);
    const rows: string[][] = [];
    for (let row = used.top; row <= used.bottom; row += 1) {
      const texts: string[] = [];
      for (let column = used.left; column <= used.right; column += 1)
        texts.push(scene.model.shownText(scene.sheet, { row, column }));
      rows.push(texts);
    }
    const text = formatTabSeparated(rows);
    this.remembered = { text, cells: scene.model.copy(scene.sheet, used), cut };
    return { text, said: `${formatArea(used)} ${cut ? "cut. It moves when you paste." : "copied."}` };
  }

  /** The text that was last taken here, where the browser does not let the page read its clipboard. */
  get lastText(): string | undefined {
    return this.remembered?.text;
  }

  /** Puts the clipboard's text, or the remembered cells where the text is theirs, into the selection. */
  put(scene: GridScene, area: Area, text: string): EditReport {
    if (text === "") return { ok: false, said: "The clipboard holds no text to paste." };
    const own = this.remembered;
    const isOwn = own !== undefined && sameText(own.text, text);
    const result = !isOwn
      ? scene.model.enter(
          scene.sheet,
          { row: area.top, column: area.left },
          repeatInto(area, parseTabSeparated(text)),
        )
      : own.cut
        ? scene.model.move(scene.sheet, area, own.cells)
        : scene.model.paste(scene.sheet, area, own.cells);
    if (!result.ok) return { ok: false, said: result.fault.message };
    if (isOwn && own.cut) this.remembered = undefined;
    return { ok: true, area: result.value, said: `Pasted into ${formatArea(result.value)}.` };
  }
}

/** One copied text fills the whole selection, as does a block that fits into it a whole number of times. */
export function repeatInto(area: Area, rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const height = area.bottom - area.top + 1;
  const width = area.right - area.left + 1;
  const across = rows[0]?.length ?? 1;
  if (height % rows.length !== 0 || width % across !== 0) return rows;
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (__, column) => rows[row % rows.length]?.[column % across] ?? ""),
  );
}

/** Clipboards change line ends and drop the last one. */
const sameText = (a: string, b: string): boolean => normalLines(a) === normalLines(b);
const normalLines = (text: string): string => text.replaceAll("\r\n", "\n").replace(/\n$/, "");
