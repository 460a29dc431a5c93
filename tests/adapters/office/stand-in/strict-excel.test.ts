import { describe, expect, it } from "vitest";
import { STARTING_WORKBOOK } from "../../../contracts/starting-workbook";
import { MisuseError } from "./office-error";
import { StrictExcel } from "./strict-excel";

/** Batches as a careless adapter would write them; what the stand-in must say of each. */
const CARELESS: [string, (context: Excel.RequestContext) => Promise<unknown>, RegExp][] = [
  [
    "reads what it did not load",
    async (context) => {
      const range = context.workbook.worksheets.getItem("Probes").getRangeByIndexes(0, 0, 1, 1);
      range.load("formulas");
      await context.sync();
      return range.values;
    },
    /Range\.values was read before load and sync/,
  ],
  [
    "reads before the sync",
    async (context) => {
      const range = context.workbook.worksheets.getItem("Probes").getRangeByIndexes(0, 0, 1, 1);
      range.load("values");
      const { values } = range;
      await context.sync();
      return values;
    },
    /Range\.values was read before load and sync/,
  ],
  [
    "leaves a write without a sync",
    async (context) => {
      await context.sync();
      context.workbook.worksheets.getItem("Empty").getRangeByIndexes(0, 0, 1, 1).values = [["lost"]];
    },
    /without a sync/,
  ],
  [
    "calls a method that is not published",
    async (context) => {
      const sheet = context.workbook.worksheets.getItem("Probes");
      const method: unknown = Reflect.get(sheet, "getCells");
      await context.sync();
      return method;
    },
    /Worksheet\.getCells is not in the published typings/,
  ],
  [
    "loads a property that is not published",
    async (context) => {
      context.workbook.worksheets.getItem("Probes").load("title");
      await context.sync();
    },
    /Worksheet\.title is not in the published typings/,
  ],
  [
    "reads an item's property that it did not load",
    async (context) => {
      const sheets = context.workbook.worksheets;
      sheets.load("items/name");
      await context.sync();
      return sheets.items.map((sheet) => sheet.visibility);
    },
    /Worksheet\.visibility was read before load and sync/,
  ],
  [
    "uses what a later ExcelApi brought",
    async (context) => {
      context.workbook.tables.getItem("Probes").resize("A1:E9");
      await context.sync();
    },
    /Table\.resize is newer than this Excel/,
  ],
  [
    "uses a null object as if it were there",
    async (context) => {
      context.workbook.worksheets.getItemOrNullObject("Nowhere").getRangeByIndexes(0, 0, 1, 1).values = [
        ["lost"],
      ];
      await context.sync();
    },
    /null object/,
  ],
  [
    "asks isNullObject before the sync",
    async (context) => context.workbook.worksheets.getItemOrNullObject("Nowhere").isNullObject,
    /isNullObject was read before a sync/,
  ],
  [
    "writes what can only be read",
    async (context) => {
      Reflect.set(context.workbook.worksheets.getItem("Empty").getRangeByIndexes(0, 0, 1, 1), "rowIndex", 4);
      await context.sync();
    },
    /Range\.rowIndex cannot be written/,
  ],
  [
    "reads a result before the sync",
    async (context) => {
      const part = context.workbook.customXmlParts.add("<a/>");
      return part.getXml().value;
    },
    /result of CustomXmlPart\.getXml was read before a sync/,
  ],
  [
    "uses what is published but not modelled here",
    async (context) => {
      context.workbook.worksheets.getItem("Empty").getRangeByIndexes(0, 0, 1, 1).unmerge();
      await context.sync();
    },
    /Range\.unmerge is published, but the stand-in does not model it/,
  ],
];

describe("the strict stand-in catches an adapter that", () => {
  it.each(CARELESS)("%s", async (_, batch, message) => {
    const excel = new StrictExcel(STARTING_WORKBOOK);
    await expect(excel.host.run(batch)).rejects.toThrow(MisuseError);
    expect(excel.misuses).toEqual([expect.stringMatching(message)]);
  });
});

describe("the strict stand-in refuses as Excel does", () => {
  it.each([
    [
      "ItemNotFound",
      async (context: Excel.RequestContext) => context.workbook.worksheets.getItem("Nowhere").load("name"),
    ],
    [
      "InvalidArgument",
      async (context: Excel.RequestContext) => {
        context.workbook.worksheets.getItem("Empty").getRangeByIndexes(0, 0, 2, 2).values = [["one cell"]];
      },
    ],
    [
      "RequestPayloadSizeLimitExceeded",
      async (context: Excel.RequestContext) => {
        context.workbook.worksheets.getItem("Empty").getRangeByIndexes(0, 0, 1, 1).values = [
          ["x".repeat(5_000_001)],
        ];
      },
    ],
  ])("with %s", async (code, act) => {
    const excel = new StrictExcel(STARTING_WORKBOOK);
    const run = excel.host.run(async (context) => {
      await act(context);
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code });
    expect(excel.misuses).toEqual([]);
  });

  it("keeping what stood before the refused operation", async () => {
    const excel = new StrictExcel(STARTING_WORKBOOK);
    const run = excel.host.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Empty");
      sheet.getRangeByIndexes(0, 0, 1, 1).values = [["written"]];
      context.workbook.worksheets.getItem("Nowhere").load("name");
      sheet.getRangeByIndexes(1, 0, 1, 1).values = [["not written"]];
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code: "ItemNotFound" });
    expect(
      excel.model
        .sheet("Empty")
        ?.rows.flat()
        .map((cell) => cell?.value),
    ).toEqual(["written"]);
  });
});
