/** A sheet of the stub: rows of values from A1 on, formulas beside them where there are any. */
export interface StubSheet {
  readonly name: string;
  readonly rows: (number | string | boolean)[][];
  readonly formulas?: Record<string, string>;
  readonly dateColumns?: readonly number[];
  readonly isProtected?: boolean;
}

/** What the stub is told before the page's own scripts run. */
export interface StubOptions {
  readonly host: "Excel" | null;
  readonly supported: boolean;
  readonly sheets: StubSheet[];
  /** never answers */
  readonly isSilent?: boolean;
}

/**
 * Puts an `Office` and an `Excel` on the page that are good enough to draw the pane. Lenient: what the adapter may
 * ask of Excel is checked elsewhere, by the strict stand-in. Runs inside the page, so it refers to nothing outside.
 */
export function installExcelStub({ host, supported, sheets, isSilent }: StubOptions): void {
  type Handler = (event: object) => Promise<unknown>;
  const handlers: Handler[] = [];
  const parts: { xml: string }[] = [];
  const load = (): void => undefined;
  const sync = (): Promise<void> => (isSilent === true ? new Promise(() => undefined) : Promise.resolve());

  const makeRange = (sheet: StubSheet, top: number, left: number, height: number, width: number): object => {
    const cells = <T>(
      look: (value: number | string | boolean | undefined, row: number, column: number) => T,
    ): T[][] =>
      Array.from({ length: height }, (_, down) =>
        Array.from({ length: width }, (__, across) =>
          look(sheet.rows[top + down]?.[left + across], top + down, left + across),
        ),
      );
    return {
      load,
      isNullObject: false,
      getUsedRangeOrNullObject: () => ({ load, isNullObject: true }),
      rowIndex: top,
      columnIndex: left,
      rowCount: height,
      columnCount: width,
      get values() {
        return cells((value) => value ?? "");
      },
      get valueTypes() {
        return cells((value) =>
          value === undefined || value === ""
            ? "Empty"
            : typeof value === "number"
              ? "Double"
              : String(value).startsWith("#")
                ? "Error"
                : "String",
        );
      },
      get formulas() {
        return cells((value, row, column) => sheet.formulas?.[`${row},${column}`] ?? value ?? "");
      },
      set formulas(entered: unknown[][]) {
        Reflect.set(globalThis, "stubEntered", entered);
        const row = (sheet.rows[top] ??= []);
        row[left] = "entered again";
      },
      get numberFormat() {
        return cells((_, row, column) =>
          row > 0 && sheet.dateColumns?.includes(column) === true ? "dd/mm/yyyy" : "General",
        );
      },
      select: () => {
        Reflect.set(globalThis, "stubSelected", [sheet.name, top, left]);
      },
    };
  };
  const makeSheet = (sheet: StubSheet): object => ({
    load,
    isNullObject: false,
    name: sheet.name,
    id: sheet.name,
    visibility: "Visible",
    tables: { items: [] },
    protection: { load, protected: sheet.isProtected === true },
    activate: load,
    getUsedRangeOrNullObject: () =>
      makeRange(sheet, 0, 0, sheet.rows.length, Math.max(...sheet.rows.map((row) => row.length))),
    getRangeByIndexes: (top: number, left: number, height: number, width: number) =>
      makeRange(sheet, top, left, height, width),
  });
  const find = (name: string): object =>
    sheets.filter((sheet) => sheet.name === name).map(makeSheet)[0] ?? { load, isNullObject: true };
  const context = {
    sync,
    runtime: {},
    workbook: {
      worksheets: {
        load,
        get items() {
          return sheets.map(makeSheet);
        },
        getItem: find,
        getItemOrNullObject: find,
        onChanged: {
          add: (handler: Handler) => {
            handlers.push(handler);
            return { context, remove: load };
          },
        },
      },
      customXmlParts: {
        getByNamespace: () => ({
          load,
          items: parts.map((part) => ({
            load,
            getXml: () => ({ value: part.xml }),
            setXml: (xml: string) => void (part.xml = xml),
          })),
        }),
        add: (xml: string) => void parts.push({ xml }),
      },
    },
  };
  Reflect.set(globalThis, "Excel", {
    run: async (...args: readonly unknown[]) => {
      const batch = args.at(-1);
      return typeof batch === "function" ? (batch(context) as unknown) : undefined;
    },
  });
  Reflect.set(globalThis, "Office", {
    HostType: { Excel: "Excel" },
    onReady: async () => ({ host }),
    context: { requirements: { isSetSupported: () => supported } },
  });
  Reflect.set(globalThis, "CustomFunctions", {
    associate: load,
    Error: class extends Error {},
    ErrorCode: {},
  });
  Reflect.set(globalThis, "stubParts", parts);
  Reflect.set(globalThis, "stubType", async (name: string, row: number, values: (number | string)[]) => {
    const sheet = sheets.find((each) => each.name === name);
    if (!sheet) return;
    sheet.rows[row] = values;
    const event = {
      type: "WorksheetChanged",
      changeType: "RangeEdited",
      worksheetId: name,
      address: `A${row + 1}`,
    };
    for (const handler of handlers) await handler(event);
  });
}
