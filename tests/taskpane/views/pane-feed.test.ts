import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { HostError } from "../../../src/ports/sheet";
import type { ColumnChoices } from "../../../src/records/column-choices";
import { CHOICES_SETTING, parseChoices } from "../../../src/records/column-choices";
import type { PaneReading } from "../../../taskpane/views/pane-context";
import { followWorkbook } from "../../../taskpane/views/pane-feed";
import type { PaneFeed } from "../../../taskpane/views/pane-feed";

const probes = () =>
  new MemorySheet([
    {
      name: "Probes",
      rows: [
        ["Date", "Pupil", "Words", "Errors", "Seconds"],
        [46300, "Heron", 62, 4, 60],
        [46307, "Heron", 66, 3, 60],
      ],
      formats: [{ area: { top: 1, left: 0, bottom: 9, right: 0 }, format: "dd/mm/yyyy" }],
    },
  ]);

describe("following a workbook", () => {
  let sheet: MemorySheet;
  let readings: PaneReading[];
  let said: string[];
  let feed: PaneFeed | undefined;
  const start = (): PaneFeed => {
    readings = [];
    said = [];
    feed = followWorkbook(
      sheet,
      {
        publish: (reading) => readings.push(reading),
        say: (text) => said.push(text),
        sayProblem: (text) => said.push(text),
        readWell: () => said.push("read well"),
      },
      20,
    );
    return feed;
  };
  const latest = (): PaneReading => readings.at(-1) ?? expect.fail("nothing was published");
  const words = () => latest().records.probes.map((probe) => probe.words);

  beforeEach(() => {
    sheet = probes();
  });
  afterEach(() => feed?.stop());

  it("shows what the workbook holds at once", async () => {
    await start().refresh();
    expect(words()).toEqual([62, 66]);
    expect(latest().records.blocks.map((block) => block.range)).toEqual(["A1:E3"]);
  });

  it("follows a typed probe", async () => {
    await start().refresh();
    [46314, "Heron", 71, 2, 60].forEach((value, column) => sheet.typeInto("Probes", 3, column, value));
    await vi.waitFor(() => expect(words()).toEqual([62, 66, 71]));
  });

  it("reads once for many changes at once", async () => {
    await start().refresh();
    const read = vi.spyOn(sheet, "outline");
    for (let typed = 0; typed < 50; typed++) sheet.typeInto("Probes", 1, 2, 60 + typed);
    await vi.waitFor(() => expect(words()[0]).toBe(109));
    expect(read).toHaveBeenCalledTimes(1);
  });

  it("keeps a correction in the workbook, and starts from it the next time", async () => {
    await start().refresh();
    const key = latest().records.blocks[0]?.key ?? "";
    const choices: ColumnChoices = { blocks: { [key]: { leftOut: true } } };
    await feed?.keepChoices(choices);
    expect(parseChoices(await sheet.readSetting(CHOICES_SETTING))).toEqual(choices);
    expect(words()).toEqual([]);
    feed?.stop();
    await start().refresh();
    expect(latest().choices).toEqual(choices);
    expect(words()).toEqual([]);
  });

  it("publishes as a problem what the host refuses before anything was read", async () => {
    const read = vi
      .spyOn(sheet, "outline")
      .mockRejectedValue(new HostError("A cell is being edited. Press Enter."));
    start();
    expect(latest().state).toBe("loading");
    await feed?.refresh();
    expect(latest().state).toEqual({ problem: "A cell is being edited. Press Enter." });
    read.mockRestore();
    await feed?.refresh();
    expect(latest().state).toBe("ready");
  });

  it("says what the host refuses and keeps what was shown", async () => {
    await start().refresh();
    vi.spyOn(sheet, "outline").mockRejectedValue(new HostError("A cell is being edited. Press Enter in it."));
    await feed?.refresh();
    expect(said.at(-1)).toBe("A cell is being edited. Press Enter in it.");
    expect(words()).toHaveLength(2);
    vi.restoreAllMocks();
    await feed?.refresh();
    expect(said.at(-1)).toBe("read well");
  });

  it("says so where a correction cannot be kept", async () => {
    await start().refresh();
    vi.spyOn(sheet, "keepSetting").mockRejectedValue(
      new HostError("The workbook is protected. Take it off."),
    );
    await feed?.keepChoices({});
    expect(said.at(-1)).toMatch(/could not be kept.*protected/);
  });

  it("lets go of the workbook", async () => {
    await start().refresh();
    feed?.stop();
    sheet.typeInto("Probes", 1, 2, 99);
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(words()[0]).toBe(62);
  });
});
