import type { Area } from "../../domain/area";
import { HostError } from "../../ports/sheet";
import type {
  Block,
  CellInput,
  ChartRequest,
  NewTable,
  RowsTarget,
  Sheet,
  SheetChange,
  SheetOutline,
} from "../../ports/sheet";
import { writeCells } from "./block-writing";
import { readBlock } from "./cell-transfer";
import { ChangeFollowing } from "./change-following";
import { addNativeChart } from "./chart-adding";
import type { OfficeHost } from "./office-host";
import { readOutline } from "./office-outline";
import { keepDocumentSetting, readDocumentSetting } from "./office-settings";
import { appendToRange } from "./range-rows";
import { askExcel, writeToExcel } from "./refusal";
import { removeTableRows } from "./row-removal";
import { loadProtection, refuseProtected } from "./sheet-protection";
import { makeTable } from "./table-making";
import { appendToTable } from "./table-rows";

type Rows = readonly (readonly CellInput[])[];

/**
 * The workbook open in Excel behind the {@link Sheet} port, by Office.js (ExcelApi 1.9).
 *
 * Own writes are not told to listeners. There is no `undo`: Office.js has none, and Excel's own Ctrl+Z takes back
 * what an add-in wrote where Excel keeps a step of it.
 */
export class OfficeSheet implements Sheet {
  readonly #host: OfficeHost;
  readonly #changes: ChangeFollowing;

  /**
   * @param host - Office.js, once it is ready
   * @param reportFault - told of what goes wrong outside a call: following changes
   */
  constructor(host: OfficeHost, reportFault: (error: unknown) => void) {
    this.#host = host;
    this.#changes = new ChangeFollowing(host, reportFault);
  }

  outline(): Promise<readonly SheetOutline[]> {
    return askExcel(this.#host, "workbook", readOutline);
  }

  read(sheet: string, area: Area): Promise<Block> {
    return askExcel(this.#host, `sheet "${sheet}"`, (context) => readBlock(context, sheet, area));
  }

  async appendRows(target: RowsTarget, rows: Rows): Promise<{ sheet: string; area: Area }> {
    if (rows.length === 0) throw new HostError("There are no rows to add. Give at least one.");
    return "table" in target
      ? writeToExcel(this.#host, `table "${target.table}"`, (context, onRefusal) =>
          appendToTable(context, onRefusal, target.table, rows),
        )
      : writeToExcel(this.#host, `sheet "${target.sheet}"`, (context, onRefusal) =>
          appendToRange(context, onRefusal, target.sheet, target.area, rows),
        );
  }

  writeBlock(
    sheet: string,
    at: { readonly row: number; readonly column: number },
    rows: Rows,
  ): Promise<Area> {
    return writeToExcel(this.#host, `sheet "${sheet}"`, (context, onRefusal) =>
      writeCells(context, onRefusal, sheet, at, rows),
    );
  }

  addTable(table: NewTable): Promise<Area> {
    return writeToExcel(this.#host, "workbook", (context, onRefusal) => makeTable(context, onRefusal, table));
  }

  removeRows(table: string, rows: readonly number[]): Promise<void> {
    return writeToExcel(this.#host, `table "${table}"`, (context, onRefusal) =>
      removeTableRows(context, onRefusal, table, rows),
    );
  }

  removeSheet(name: string): Promise<void> {
    return writeToExcel(this.#host, `sheet "${name}"`, async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      loadProtection(sheet);
      await context.sync();
      refuseProtected(sheet);
      sheet.delete();
      return () => undefined;
    });
  }

  addChart(request: ChartRequest): Promise<void> {
    return writeToExcel(this.#host, `sheet "${request.sheet}"`, (context, onRefusal) =>
      addNativeChart(context, onRefusal, request),
    );
  }

  readSetting(key: string): Promise<string | undefined> {
    return askExcel(this.#host, "workbook", (context) => readDocumentSetting(context, key));
  }

  keepSetting(key: string, value: string): Promise<void> {
    return writeToExcel(this.#host, "workbook", (context, onRefusal) =>
      keepDocumentSetting(context, onRefusal, key, value),
    );
  }

  onChange(listener: (change: SheetChange) => void): () => void {
    return this.#changes.follow(listener);
  }
}
