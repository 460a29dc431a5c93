import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Goal } from "../../../src/domain/progress/goal";
import { HostError } from "../../../src/ports/sheet";
import type { ColumnChoices } from "../../../src/records/column-choices";
import { CHOICES_SETTING, parseChoices } from "../../../src/records/column-choices";
import type { FoundBlock } from "../../../src/records/found-block";
import { feedViews } from "../../../taskpane/views/mount-views";
import type { CellPlace, PaneFeed } from "../../../taskpane/views/mount-views";
import type { TrajectoryState } from "../../../taskpane/views/trajectory-view";

class Trajectory extends EventTarget {
  probes: readonly Probe[] = [];
  goals: readonly Goal[] = [];
  state: TrajectoryState = "ready";
}
class Columns extends EventTarget {
  blocks: readonly FoundBlock[] = [];
  choices: ColumnChoices = {};
}

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

describe("feeding the views", () => {
  let sheet: MemorySheet;
  let elements: { trajectory: Trajectory; columns: Columns; status: { textContent: string | null } };
  let feed: PaneFeed | undefined;
  const jumps: CellPlace[] = [];
  const start = (): PaneFeed =>
    (feed = feedViews(sheet, elements, { jumpTo: (place) => jumps.push(place), quiet: 20 }));

  beforeEach(() => {
    sheet = probes();
    elements = { trajectory: new Trajectory(), columns: new Columns(), status: { textContent: "" } };
    jumps.length = 0;
  });
  afterEach(() => feed?.stop());

  it("shows what the workbook holds at once", async () => {
    await start().refresh();
    expect(elements.trajectory.probes.map((probe) => probe.words)).toEqual([62, 66]);
    expect(elements.columns.blocks.map((block) => block.range)).toEqual(["A1:E3"]);
  });

  it("follows a typed probe", async () => {
    await start().refresh();
    [46314, "Heron", 71, 2, 60].forEach((value, column) => sheet.typeInto("Probes", 3, column, value));
    await vi.waitFor(() =>
      expect(elements.trajectory.probes.map((probe) => probe.words)).toEqual([62, 66, 71]),
    );
  });

  it("reads once for many changes at once", async () => {
    await start().refresh();
    const read = vi.spyOn(sheet, "outline");
    for (let typed = 0; typed < 50; typed++) sheet.typeInto("Probes", 1, 2, 60 + typed);
    await vi.waitFor(() => expect(elements.trajectory.probes[0]?.words).toBe(109));
    expect(read).toHaveBeenCalledTimes(1);
  });

  it("keeps a correction in the workbook, and starts from it the next time", async () => {
    await start().refresh();
    const key = elements.columns.blocks[0]?.key ?? "";
    const choices: ColumnChoices = { blocks: { [key]: { leftOut: true } } };
    elements.columns.dispatchEvent(new CustomEvent("choices-changed", { detail: choices }));
    await vi.waitFor(async () =>
      expect(parseChoices(await sheet.readSetting(CHOICES_SETTING))).toEqual(choices),
    );
    expect(elements.trajectory.probes).toEqual([]);
    feed?.stop();
    elements = { trajectory: new Trajectory(), columns: new Columns(), status: { textContent: "" } };
    await start().refresh();
    expect(elements.columns.choices).toEqual(choices);
    expect(elements.trajectory.probes).toEqual([]);
  });

  it("passes on which cell to show", () => {
    start();
    const detail = { sheet: "Probes", row: 2, column: 3 };
    elements.columns.dispatchEvent(new CustomEvent("jump-to-cell", { detail }));
    elements.trajectory.dispatchEvent(new CustomEvent("jump-to-cell", { detail }));
    expect(jumps).toEqual([detail, detail]);
  });

  it("says in the graph's place what the host refuses before anything was read", async () => {
    const read = vi
      .spyOn(sheet, "outline")
      .mockRejectedValue(new HostError("A cell is being edited. Press Enter."));
    start();
    expect(elements.trajectory.state).toBe("loading");
    await feed?.refresh();
    expect(elements.trajectory.state).toEqual({ problem: "A cell is being edited. Press Enter." });
    read.mockRestore();
    await feed?.refresh();
    expect(elements.trajectory.state).toBe("ready");
  });

  it("says what the host refuses and keeps what was shown", async () => {
    await start().refresh();
    vi.spyOn(sheet, "outline").mockRejectedValue(new HostError("A cell is being edited. Press Enter in it."));
    await feed?.refresh();
    expect(elements.status.textContent).toBe("A cell is being edited. Press Enter in it.");
    expect(elements.trajectory.probes).toHaveLength(2);
  });

  it("says so where a correction cannot be kept", async () => {
    await start().refresh();
    vi.spyOn(sheet, "keepSetting").mockRejectedValue(
      new HostError("The workbook is protected. Take it off."),
    );
    elements.columns.dispatchEvent(new CustomEvent("choices-changed", { detail: {} }));
    await vi.waitFor(() => expect(elements.status.textContent).toMatch(/could not be kept.*protected/));
  });

  it("lets go of the workbook", async () => {
    await start().refresh();
    feed?.stop();
    sheet.typeInto("Probes", 1, 2, 99);
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(elements.trajectory.probes[0]?.words).toBe(62);
  });
});
