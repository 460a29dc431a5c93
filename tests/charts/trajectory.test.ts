import { describe, expect, it } from "vitest";
import { drawTrajectory } from "../../src/charts/trajectory";
import { spanOfDays } from "../../src/charts/trajectory-frame";
import type { ChartPicture } from "../../src/charts/chart-picture";
import { buildSeries } from "../../src/domain/progress/series";
import { buildTrajectory, type Trajectory } from "../../src/domain/progress/trajectory";
import { probeOf, START } from "../domain/progress/probes";
import { TRAJECTORIES } from "./trajectories";

const trajectoryNamed = (name: string): Trajectory => {
  const trajectory = TRAJECTORIES[name];
  if (trajectory === undefined) throw new Error(name);
  return trajectory;
};
const draw = (name: string, width = 640): ChartPicture =>
  drawTrajectory(trajectoryNamed(name), { width, idPrefix: name });
const count = (svg: string, pattern: RegExp): number => [...svg.matchAll(pattern)].length;

describe("the picture of a trajectory", () => {
  const cases = Object.keys(TRAJECTORIES).flatMap((name) => [640, 320].map((width) => ({ name, width })));

  it.each(cases)("$name at $width px is the reviewed file", async ({ name, width }) => {
    await expect(`${draw(name, width).svg}\n`).toMatchFileSnapshot(`${name}-${width}.svg`);
  });

  it.each(cases)("$name at $width px keeps the content policy and stays inside", ({ name, width }) => {
    const { svg } = draw(name, width);
    expect(svg).not.toMatch(/<style|style=|<script|href=|url\(|NaN|Infinity|undefined/);
    const [, , , wide = NaN, high = NaN] = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)?.map(Number) ?? [];
    expect(wide).toBe(width);
    for (const [, x] of svg.matchAll(/ (?:x|x1|x2|cx)="([^"]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(wide);
    }
    for (const [, y] of svg.matchAll(/ (?:y|y1|y2|cy)="([^"]+)"/g)) {
      expect(Number(y)).toBeGreaterThanOrEqual(0);
      expect(Number(y)).toBeLessThanOrEqual(high);
    }
  });

  it("has the same ratio of axes at every width", () => {
    const ratioAt = (width: number): number => {
      const { svg } = draw("one-phase", width);
      const lines = [...svg.matchAll(/<line x1="(\S+)" x2="(\S+)" y1="(\S+)" y2="(\S+)"/g)].map((line) => line.map(Number));
      const across = lines.find(([, x1, x2, y1, y2]) => y1 === y2 && x1 !== x2) ?? [];
      const up = lines.find(([, x1, x2, y1, y2]) => x1 === x2 && y1 !== y2) ?? [];
      return ((up[4] ?? NaN) - (up[3] ?? NaN)) / ((across[2] ?? NaN) - (across[1] ?? NaN));
    };
    for (const width of [320, 480, 640, 1200]) expect(ratioAt(width)).toBeCloseTo(0.6, 3);
  });

  it("fits into a given height", () => {
    const { svg } = drawTrajectory(trajectoryNamed("one-phase"), { width: 640, height: 240 });
    expect(svg).toContain('viewBox="0 0 640 240"');
  });

  it("draws a circle a day, open in the first phase and filled in the second, and a triangle for each supported probe", () => {
    const { svg } = draw("phase-change");
    expect(count(svg, /<circle [^>]*fill="none"[^>]*data-day/g)).toBe(6);
    expect(count(svg, /<circle [^>]*fill="currentColor"[^>]*data-day/g)).toBe(11);
    expect(count(svg, /<polygon points=/g)).toBe(2);
    expect(svg).toContain(">with support<");
  });

  it("breaks the data path at the phase change and names both phases", () => {
    const { svg } = draw("phase-change");
    expect(count(svg, /<path /g)).toBe(2);
    expect(count(svg, /stroke-dasharray="4 4"/g)).toBe(1);
    expect(svg).toContain(">Baseline<");
    expect(svg).toContain(">Paired reading<");
  });

  it("shows each of a day's probes beside their median", () => {
    const { svg } = draw("accuracy");
    expect(count(svg, /data-day/g)).toBe(10);
    expect(count(svg, /<circle /g)).toBe(40);
    expect(svg).toContain(">criterion: 90\u00A0%<");
  });

  it("goes from 0, and to 100 % for accuracy", () => {
    expect(draw("one-phase").svg).toMatch(/text-anchor="end">0</);
    expect(draw("accuracy").svg).toMatch(/text-anchor="end">0\u00A0%</);
    expect(draw("accuracy").svg).toMatch(/text-anchor="end">100\u00A0%</);
    expect(draw("accuracy").svg).not.toMatch(/text-anchor="end">1[2-9]0/);
  });

  it("shows no trend, aim or verdict where there is none", () => {
    const { svg, summary } = draw("few-points");
    expect(svg).not.toMatch(/accent|>aim/);
    expect(summary.join(" ")).not.toMatch(/trend/i);
  });

  it("draws one probe alone", () => {
    const series = buildSeries([probeOf({ rate: 12, day: START })])[0];
    if (series === undefined) throw new Error("No series.");
    const { svg, table } = drawTrajectory(buildTrajectory(series));
    expect(count(svg, /<circle /g)).toBe(1);
    expect(svg).not.toMatch(/NaN/);
    expect(table.rows).toEqual([["2 Sep 2026", "12"]]);
  });

  it("does not let a name or a phase become markup", () => {
    const hostile = '<script>alert(1)</script>&"';
    const series = buildSeries([
      probeOf({ rate: 1, pupil: hostile, phase: hostile }),
      probeOf({ rate: 2, pupil: hostile, phase: `${hostile}\u0000`, day: START + 7 }),
    ])[0];
    if (series === undefined) throw new Error("No series.");
    const { svg } = drawTrajectory(buildTrajectory(series));
    expect(svg).not.toContain("<script");
    expect(svg).toContain("&lt;script&gt;");
    expect(svg).not.toContain("\u0000");
  });
});

describe("on a ratio scale", () => {
  const drawRatio = (name: string, width = 640): ChartPicture =>
    drawTrajectory(trajectoryNamed(name), { width, idPrefix: name, scale: "ratio" });

  it.each([
    { name: "one-phase", width: 640 },
    { name: "phase-change", width: 320 },
    { name: "with-zeros", width: 640 },
    { name: "with-zeros", width: 320 },
  ])("$name at $width px is the reviewed file", async ({ name, width }) => {
    await expect(`${drawRatio(name, width).svg}\n`).toMatchFileSnapshot(`${name}-ratio-${width}.svg`);
  });

  it("doubling takes the same height everywhere", () => {
    const { svg } = drawRatio("with-zeros");
    const heightOf = (tick: number): number =>
      Number(new RegExp(`y="([^"]+)" text-anchor="end">${tick}<`).exec(svg)?.[1]);
    expect(heightOf(1) - heightOf(2)).toBeCloseTo(heightOf(5) - heightOf(10), 1);
    expect(heightOf(1) - heightOf(2)).toBeCloseTo(heightOf(10) - heightOf(20), 1);
  });

  it("draws days at 0 as triangles at the foot, with no path to them, and says so", () => {
    const { svg, summary } = drawRatio("with-zeros");
    expect(count(svg, /<polygon [^>]*data-day/g)).toBe(2);
    expect(count(svg, /<circle [^>]*data-day/g)).toBe(10);
    expect(count(/<path d="([^"]+)" fill="none" stroke="currentColor" stroke-width="1.5"\/>/.exec(svg)?.[1] ?? "", /M/g)).toBe(9);
    expect(summary.join(" ")).toContain("2 days at 0 have no place on a ratio scale");
  });

  it("fits the trend to logarithms", () => {
    // 22 rising by a tenth a week, without scatter.
    const series = buildSeries([0, 1, 2, 3, 4, 5, 6, 7].map((week) => probeOf({ day: START + 7 * week, rate: 22 * 1.1 ** week })))[0];
    if (series === undefined) throw new Error("No series.");
    const { svg, summary } = drawTrajectory(buildTrajectory(series), { width: 640, scale: "ratio" });
    expect(svg).toContain(">trend: ×1.10 a week (8 days)<");
    expect(summary).toContain("Trend: ×1.10 each week over 8 days above 0 (95 % interval ×1.10 to ×1.10).");
  });

  it("has a scale even where every value is 0", () => {
    const series = buildSeries([0, 1, 2].map((week) => probeOf({ day: START + 7 * week, rate: 0 })))[0];
    if (series === undefined) throw new Error("No series.");
    expect(drawTrajectory(buildTrajectory(series), { width: 320, scale: "ratio" }).svg).not.toMatch(/NaN|Infinity/);
  });
});

describe("one of many small pictures", () => {
  it("shares the days of the others and writes nothing into the plot", () => {
    const trajectory = trajectoryNamed("one-phase");
    const days = spanOfDays(Object.values(TRAJECTORIES));
    const small = drawTrajectory(trajectory, { width: 320, small: true, days });
    expect(small.svg).not.toMatch(/>aim|>trend/);
    const lastOf = (svg: string): number => Math.max(...[...svg.matchAll(/cx="([^"]+)"/g)].map(([, x]) => Number(x)));
    expect(lastOf(small.svg)).toBeLessThan(lastOf(draw("one-phase", 320).svg) / 2);
  });
});

describe("maintenance checks", () => {
  it("are squares, counted in the text", () => {
    const { svg, summary } = draw("maintenance");
    expect(count(svg, /<rect [^>]*data-day/g)).toBe(3);
    expect(svg).toContain(">maintenance check<");
    expect(summary.join(" ")).toContain("11 probes, 3 of them maintenance checks (squares)");
  });
});

describe("its text and table say the same", () => {
  it("in sentences: verdict, trend, aim line, probes and phases", () => {
    expect(draw("phase-change").summary).toMatchInlineSnapshot(`
      [
        "Below aim: on 30 Dec 2026 the trend stands at 33.5 words a minute, somewhere from 31.3 to 35.8 (90 % interval); the aim line asks for 54. All of that is worse than the aim. Based on 11 days since 21 Oct 2026, the last change of phase.",
        "A prompt to look again: the last four days are all on the worse side of the aim line. That alone decides nothing; chance does it often.",
        "Trend: up 0.9 words a minute each week over 11 days (95 % interval +0.4 to +1.3).",
        "The band around the trend line is the 90 % interval of its value on each day.",
        "If the trend went on unchanged, it would stand at 36.2 on 20 Jan 2027 (dotted line).",
        "The aim line goes from 20 on 2 Sep 2026 to 60 on 20 Jan 2027.",
        "19 probes, 2 of them with support (triangles), from 9 Sep 2026 to 30 Dec 2026.",
        "First 19, latest 35 words a minute on 30 Dec 2026; lowest 17, highest 35.",
        "2 phases: Baseline (7 probes); Paired reading from 21 Oct 2026 (12 probes). The path is broken where the phase changes.",
        "If the trend goes on, it reaches 60 about 30 Jul 2027: 95 % interval 3 May 2027 to 22 May 2028, based on 11 days.",
        "“Paired reading” after “Baseline”: the median went from 19 words a minute (17 to 23, 6 days) to 28 words a minute (23 to 35, 11 days). 99 % of the pairs of a day before and a day after are better (NAP 0.99, 95 % interval 0.74 to 1.00); the mean changed by +47 %, 95 % interval +31 to +65 %. This is the change after, not because of, the new phase.",
      ]
    `);
  });

  it("in sentences for accuracy", () => {
    expect(draw("accuracy").summary).toMatchInlineSnapshot(`
      [
        "Above aim: on 4 Nov 2026 the trend stands at 86.1 %, somewhere from 82.4 % to 89.8 % (90 % interval); the aim line asks for 76.2 %. All of that is better than the aim. Based on 10 days since 2 Sep 2026.",
        "A prompt to look again: the last four days are all on the better side of the aim line. That alone decides nothing; chance does it often.",
        "Trend: up 2.8 percentage points each week over 10 days (95 % interval +2 to +3.7).",
        "The band around the trend line is the 90 % interval of its value on each day.",
        "If the trend went on unchanged, it would stand at 100 % on 30 Dec 2026 (dotted line).",
        "The aim line goes from 55 % on 2 Sep 2026 to 95 % on 30 Dec 2026.",
        "The criterion line is at 90 %.",
        "30 probes, from 2 Sep 2026 to 4 Nov 2026.",
        "First 59 %, latest 84 % on 4 Nov 2026; lowest 59 %, highest 85 % (the middle value of each day).",
        "If the trend goes on, it reaches 95 % about 26 Nov 2026: 95 % interval 12 Nov 2026 to 20 Dec 2026, based on 10 days.",
      ]
    `);
  });

  it("in sentences where lower is better", () => {
    expect(draw("lower-is-better").summary).toMatchInlineSnapshot(`
      [
        "Above aim: on 4 Nov 2026 the trend stands at 11.8 errors, somewhere from 10.6 to 13.1 (90 % interval); the aim line asks for 16. All of that is better than the aim, where lower is better. Based on 9 days since 2 Sep 2026.",
        "A prompt to look again: the last four days are all on the better side of the aim line. That alone decides nothing; chance does it often.",
        "Trend: down 1.48 errors each week over 9 days (95 % interval −1.8 to −1.17).",
        "The band around the trend line is the 90 % interval of its value on each day.",
        "If the trend went on unchanged, it would stand at 0 on 20 Jan 2027 (dotted line).",
        "The aim line goes from 25 on 2 Sep 2026 to 5 on 20 Jan 2027.",
        "9 probes, from 9 Sep 2026 to 4 Nov 2026.",
        "First 24, latest 11 errors on 4 Nov 2026; lowest 11, highest 24.",
        "If the trend goes on, it reaches 5 about 6 Dec 2026: 95 % interval 25 Nov 2026 to 23 Dec 2026, based on 9 days.",
      ]
    `);
  });

  it("in a row for each probe, with the columns that hold something", () => {
    const { table } = draw("phase-change");
    expect(table.headings).toEqual(["Date", "Words read correctly a minute", "Aim that day", "Phase", "Support"]);
    expect(table.rows).toHaveLength(19);
    expect(table.rows[5]).toEqual(["10 Oct 2026", "31", "30.9", "Baseline", "first letter told"]);
  });

  it("in title and description of the image", () => {
    const { svg, title, summary } = draw("one-phase");
    expect(svg).toContain(`<title id="one-phase-title">${title}</title>`);
    expect(svg).toContain(summary[0]);
    expect(svg).toContain('role="img" aria-labelledby="one-phase-title one-phase-desc"');
  });
});
