import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { DotCanvas } from "../../src/charts/dot-canvas";
import { plainKnown, plainMastered, plainTrajectory, type PlainChart } from "../../src/charts/plain-chart";
import { drawCells, formatBrf, type CellGraphic } from "../../src/charts/tactile-cells";
import type { Translator } from "../../src/ports/translator";
import { MASTERIES } from "./masteries";
import { TRAJECTORIES } from "./trajectories";

let translator: Translator;
beforeAll(async () => {
  translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
});

const CHARTS: Readonly<Record<string, PlainChart>> = {
  ...Object.fromEntries(Object.entries(TRAJECTORIES).map(([name, each]) => [name, plainTrajectory(each)])),
  "a-kind-known": plainKnown(MASTERIES["a-kind"] ?? { pupil: "", scope: "", courses: [] }),
  "a-kind-mastered": plainMastered(MASTERIES["a-kind"] ?? { pupil: "", scope: "", courses: [] }),
  "one-sign-known": plainKnown(MASTERIES["one-sign"] ?? { pupil: "", scope: "", courses: [] }),
};
const draw = (name: string, cells = 40, lines = 25): CellGraphic => {
  const chart = CHARTS[name];
  if (chart === undefined) throw new Error(name);
  const drawn = drawCells(chart, { cells, lines, toCells: (print) => translator.translate(print) });
  if (!drawn.ok) throw new Error(drawn.fault.message);
  return drawn.value;
};

describe("dots of a canvas", () => {
  it("are those of the cells they fall in", () => {
    const canvas = new DotCanvas(2, 1);
    canvas.drawLine([0, 0], [0, 2]);
    canvas.drawLine([3, 2], [3, 2]);
    expect(canvas.toLines()).toEqual(["\u2807\u2820"]);
  });

  it("of a weaker line keep away from those that are there", () => {
    const canvas = new DotCanvas(4, 1);
    canvas.drawLine([4, 0], [4, 2]);
    canvas.drawLine([0, 1], [7, 1], { clear: 2 });
    expect(canvas.toLines()).toEqual(["\u2812\u2800\u2807\u2810"]);
  });
});

describe("a chart in cells", () => {
  const pages = Object.keys(CHARTS).flatMap((name) => [
    { name, cells: 40, lines: 25 },
    { name, cells: 28, lines: 29 },
    { name, cells: 32, lines: 27 },
  ]);

  it.each(pages)("of $name stays within $cells cells and $lines lines", ({ name, cells, lines }) => {
    for (const page of draw(name, cells, lines).pages) {
      expect(page.length).toBeLessThanOrEqual(lines);
      for (const line of page) expect([...line].length).toBeLessThanOrEqual(cells);
    }
  });

  it.each(["one-phase", "phase-change", "a-kind-known", "a-kind-mastered"])("of %s is the reviewed file", async (name) => {
    await expect(`${draw(name).pages.map((page) => page.join("\n")).join("\n\n")}\n`).toMatchFileSnapshot(`cells-${name}.txt`);
  });

  it("says how many points are drawn", () => {
    expect(draw("one-phase").notes[0]).toBe("All 12 points are drawn.");
    expect(draw("two-years").notes[0]).toMatch(/^\d+ of 94 points are drawn/);
  });

  it("is refused where the page is too small, with what to do", () => {
    const chart = CHARTS["one-phase"];
    if (chart === undefined) throw new Error("No chart.");
    expect(drawCells(chart, { cells: 12, lines: 10, toCells: (print) => translator.translate(print) })).toMatchObject({ ok: false, fault: { code: "no-room", message: expect.stringMatching(/larger page/) } });
  });

  it("as a file has ASCII braille only, CR LF after each line and a form feed after each page", () => {
    const graphic = draw("phase-change");
    const brf = formatBrf(graphic);
    expect(brf).toMatch(/^[\x20-\x5f\r\n\f]+$/);
    expect(brf.split("\f")).toHaveLength(graphic.pages.length + 1);
    for (const line of brf.split(/\r\n\f?/)) expect(line.length).toBeLessThanOrEqual(40);
  });
});
