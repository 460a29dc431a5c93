import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { plainKnown, plainMastered, plainTrajectory, type PlainChart } from "../../src/charts/plain-chart";
import { checkTactileLayout, TACTILE_PROCESSES } from "../../src/charts/tactile-check";
import { layOutTactile, type TactileGraphic, type TactileRequest } from "../../src/charts/tactile-layout";
import { drawTactile } from "../../src/charts/tactile-svg";
import { PAPER_KEYS, PAPERS } from "../../src/domain/paper";
import { buildSeries } from "../../src/domain/progress/series";
import { buildTrajectory } from "../../src/domain/progress/trajectory";
import type { Translator } from "../../src/ports/translator";
import { goalOf, probeOf, START } from "../domain/progress/probes";
import { MASTERIES } from "./masteries";
import { TRAJECTORIES } from "./trajectories";

let translator: Translator;
beforeAll(async () => {
  translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
});
const toCells = (print: string): string => translator.translate(print);

const CHARTS: Readonly<Record<string, PlainChart>> = {
  ...Object.fromEntries(Object.entries(TRAJECTORIES).map(([name, each]) => [name, plainTrajectory(each)])),
  ...Object.fromEntries(
    Object.entries(MASTERIES)
      .filter(([name]) => name !== "nothing")
      .map(([name, each]) => [`${name}-known`, plainKnown(each)]),
  ),
  "a-kind-mastered": plainMastered(MASTERIES["a-kind"] ?? { pupil: "", scope: "", courses: [] }),
};
const chartNamed = (name: string): PlainChart => {
  const chart = CHARTS[name];
  if (chart === undefined) throw new Error(name);
  return chart;
};
const A4: Omit<TactileRequest, "toCells"> = { paper: PAPERS.a4, landscape: true, process: "embossed", sheets: "one" };
const layOut = (chart: PlainChart, request: Partial<TactileRequest> = {}): TactileGraphic => {
  const laid = layOutTactile(chart, { ...A4, toCells, ...request });
  if (!laid.ok) throw new Error(laid.fault.message);
  return laid.value;
};

describe("a tactile graphic", () => {
  const sheets = PAPER_KEYS.flatMap((paper) =>
    [true, false].flatMap((landscape) =>
      TACTILE_PROCESSES.flatMap((process) => Object.keys(CHARTS).map((name) => ({ paper, landscape, process, name }))),
    ),
  );

  it.each(sheets)("of $name fits $paper, landscape $landscape, $process", ({ paper, landscape, process, name }) => {
    const { pages } = layOut(chartNamed(name), { paper: PAPERS[paper], landscape, process });
    for (const page of pages) expect(checkTactileLayout(page)).toMatchObject({ ok: true });
  });

  it("keeps every distance whatever the values", () => {
    const days = fc.array(fc.tuple(fc.integer({ min: 1, max: 700 }), fc.integer({ min: 0, max: 150 }), fc.constantFrom("A", "B", "C")), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(days, fc.constantFrom(...TACTILE_PROCESSES), fc.boolean(), fc.constantFrom(...PAPER_KEYS), (rows, process, landscape, paper) => {
        const probes = [...rows].sort((a, b) => a[0] - b[0]).map(([day, rate, phase]) => probeOf({ day: START + day, rate, phase }));
        const [series] = buildSeries(probes);
        if (series === undefined) throw new Error("No series.");
        const laid = layOutTactile(plainTrajectory(buildTrajectory(series, [goalOf()])), { ...A4, paper: PAPERS[paper], landscape, process, toCells });
        if (!laid.ok) expect(laid.fault).toMatchObject({ code: "no-room" });
      }),
      { numRuns: 60 },
    );
  });

  it("draws every point of a short series and says so", () => {
    const { pages, notes } = layOut(chartNamed("one-phase"));
    expect(notes[0]).toBe("All 12 points are drawn.");
    expect(pages[0]?.elements.filter(({ style }) => style?.name === "disc").flatMap(({ shapes }) => shapes)).toHaveLength(12);
  });

  it("thins a long series from its latest point back, and says how many are drawn", () => {
    const { pages, notes } = layOut(chartNamed("two-years"));
    const points = pages[0]?.elements.filter(({ style }) => style?.name === "disc").flatMap(({ shapes }) => shapes) ?? [];
    expect(notes[0]).toBe(`${points.length} of 94 points are drawn: there is no room for the others between them. The table has them all.`);
    expect(points.length).toBeGreaterThan(15);
  });

  it("spreads a long series over several sheets when asked", () => {
    const { pages, notes } = layOut(chartNamed("two-years"), { sheets: "several" });
    expect(pages.length).toBeGreaterThan(3);
    const drawn = Number(/^(?:All )?(\d+)/.exec(notes[0] ?? "")?.[1]);
    expect(drawn).toBeGreaterThan(85);
    expect(pages[1]?.title).toMatch(/, sheet 2 of \d$/);
  });

  it("names phases by a letter that the key explains", () => {
    const { pages } = layOut(chartNamed("phase-change"));
    const texts = pages.map(({ elements }) => elements.flatMap(({ label }) => label?.print ?? []));
    expect(texts[0]).toContain("a");
    expect(texts.at(-1)).toEqual(["Key: Heron: words read correctly a minute (read aloud, words, contracted, braille)", "words read correctly a minute", "aim", "a: Paired reading"]);
  });

  it("has no line that is stronger than the data path", () => {
    for (const name of Object.keys(CHARTS)) {
      const lines = layOut(chartNamed(name)).pages[0]?.elements.flatMap(({ style, shapes }) => shapes.flatMap((shape) => (shape.kind === "line" ? [{ style, width: shape.width }] : []))) ?? [];
      for (const { style, width } of lines) if (style?.name !== "thick full line") expect(width).toBeLessThan(2);
    }
  });

  it("is refused where there is nothing to draw, with what to do", () => {
    const nothing = plainKnown({ pupil: "Heron", scope: "all signs", courses: [] });
    expect(layOutTactile(nothing, { ...A4, toCells })).toMatchObject({ ok: false, fault: { code: "nothing-to-draw", message: expect.stringMatching(/add probes/) } });
  });

  it("is refused where a title leaves no room", () => {
    const chart = { ...chartNamed("one-phase"), title: "word ".repeat(400) };
    expect(layOutTactile(chart, { ...A4, toCells })).toMatchObject({ ok: false, fault: { code: "no-room" } });
  });
});

describe("its file", () => {
  it.each(["one-phase", "phase-change", "two-years", "a-kind-known", "a-kind-mastered", "one-sign-known"])("of %s is the reviewed one", async (name) => {
    const { pages } = layOut(chartNamed(name));
    for (const [i, page] of pages.entries()) {
      const svg = drawTactile(page);
      expect(svg).not.toMatch(/<style|style=|<script|href=|url\(|NaN|Infinity|undefined|currentColor/);
      await expect(`${svg}\n`).toMatchFileSnapshot(`tactile-${name}-${i + 1}.svg`);
    }
  });

  it("has the size of the paper and dots of Specification 800", () => {
    const page = layOut(chartNamed("one-phase")).pages[0];
    const svg = page === undefined ? "" : drawTactile(page);
    expect(svg).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"');
    expect(svg).toContain('r="0.72"');
  });

  it("as a proof has outlines and the print", async () => {
    const page = layOut(chartNamed("phase-change")).pages[0];
    const svg = page === undefined ? "" : drawTactile(page, { proof: true });
    expect(svg).toContain(">Heron: words read correctly a minute (read aloud, words, contracted, braille)</text>");
    await expect(`${svg}\n`).toMatchFileSnapshot("tactile-phase-change-proof.svg");
  });
});
