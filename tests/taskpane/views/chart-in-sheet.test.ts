import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { plainTrajectory } from "../../../src/charts/plain-chart";
import { drawTrajectory } from "../../../src/charts/trajectory";
import { HostError } from "../../../src/ports/sheet";
import { putChartInSheet } from "../../../taskpane/views/chart-in-sheet";
import { TRAJECTORIES } from "../../charts/trajectories";

class ChartlessSheet extends MemorySheet {
  override addChart(): Promise<void> {
    return Promise.reject(new HostError("No charts here."));
  }
}

const trajectory = TRAJECTORIES["one-phase"];
if (trajectory === undefined) throw new Error("No trajectory.");
const chart = plainTrajectory(trajectory);
const picture = drawTrajectory(trajectory);

const start = [{ name: "Probes", rows: [["Date"]] }];

describe("a chart put into the sheet", () => {
  it("has its numbers as a table of its own, named without the pupil", async () => {
    const sheet = new MemorySheet(start);
    expect(await putChartInSheet(sheet, chart, picture)).toBe(
      "The chart, its numbers and its description are on the new sheet Chart1.",
    );
    const { values } = await sheet.read("Chart1", { top: 0, left: 0, bottom: 2, right: 2 });
    expect(values[0]).toEqual(["Date", "Words read correctly a minute", "Aim"]);
    expect(values[1]).toEqual([trajectory.aimLine?.fromDay, null, 20]);
    expect(await putChartInSheet(sheet, chart, picture)).toContain("Chart2");
  });

  it("leaves numbers and description where the host draws no charts, and says so", async () => {
    const sheet = new ChartlessSheet(start);
    expect(await putChartInSheet(sheet, chart, picture)).toMatch(
      /draws no chart.*numbers and its description are on the new sheet Chart1/,
    );
    const { values } = await sheet.read("Chart1", { top: 0, left: 4, bottom: 1, right: 4 });
    expect(values).toEqual([[picture.title], [picture.summary[0]]]);
  });
});
