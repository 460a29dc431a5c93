import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { OfficeSheet } from "../../src/adapters/office/office-sheet";
import type { Day } from "../../src/domain/units";
import type { Sheet } from "../../src/ports/sheet";
import { appendEntries } from "../../src/records/append-entries";
import { fillTaught } from "../../src/records/fill-taught";
import { readRecords } from "../../src/records/read-records";
import { StrictExcel } from "../adapters/office/stand-in/strict-excel";

const TODAY = 46_351 as Day;
const excel = (): Sheet =>
  new OfficeSheet(new StrictExcel([{ name: "Sheet1", rows: [] }]).host, (error) => {
    throw error;
  });

const prepare = async (sheet: Sheet) => {
  const taught = ["Heron ch", "Plover sh", "Heron th"].map((row) => {
    const [pupil = "", sign = ""] = row.split(" ");
    return { pupil, sign, introduced: TODAY };
  });
  const done = await appendEntries(sheet, await readRecords(sheet, {}), { taught });
  expect(done.ok).toBe(true);
  return readRecords(sheet, {});
};
const statesOf = async (sheet: Sheet) =>
  (await readRecords(sheet, {})).taught.map(({ sign, reading, writing, checkAgain }) => [
    sign,
    reading,
    writing,
    checkAgain,
  ]);

describe("the columns that the tool fills", () => {
  it.each<[string, () => Sheet]>([
    ["the memory host", () => new MemorySheet([{ name: "Sheet1", rows: [] }])],
    ["Excel", excel],
  ])("are filled for one pupil and put back, in %s", async (_, open) => {
    const sheet = open();
    const { blocks } = await prepare(sheet);
    const filled = await fillTaught(sheet, blocks, ({ pupil, sign }) =>
      pupil === "Heron"
        ? { reading: "growing", writing: "taught", ...(sign === "ch" && { checkAgain: TODAY }) }
        : undefined,
    );
    if (!filled.ok) throw new Error(filled.fault.message);
    expect(filled.value).toMatchObject({ rows: 2, sheets: ["Taught"] });
    expect(await statesOf(sheet)).toEqual([
      ["ch", "growing", "taught", TODAY],
      ["sh", undefined, undefined, undefined],
      ["th", "growing", "taught", undefined],
    ]);
    await filled.value.undo();
    expect((await statesOf(sheet)).flatMap(([, ...states]) => states)).toEqual(new Array(9).fill(undefined));
  });

  it("says what to do without a table, and where no row is meant", async () => {
    const bare = new MemorySheet([{ name: "Sheet1", rows: [] }]);
    const none = await fillTaught(bare, (await readRecords(bare, {})).blocks, () => undefined);
    expect(!none.ok && none.fault.message).toContain("Mark a sign as taught");
    const { blocks } = await prepare(bare);
    const idle = await fillTaught(bare, blocks, () => undefined);
    expect(idle).toMatchObject({ ok: false, fault: { code: "nothing-to-give" } });
  });
});
