import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ChartPicture } from "../../src/charts/chart-picture";
import { drawMastery } from "../../src/charts/mastery";
import { countMastered, poolKnown, type Mastery, type SignCourse } from "../../src/charts/mastery-course";
import type { Day } from "../../src/domain/units";
import { MASTERIES } from "./masteries";

const masteryNamed = (name: string): Mastery => {
  const mastery = MASTERIES[name];
  if (mastery === undefined) throw new Error(name);
  return mastery;
};
const draw = (name: string, width = 640): ChartPicture => drawMastery(masteryNamed(name), { width, idPrefix: name });
const count = (svg: string, pattern: RegExp): number => [...svg.matchAll(pattern)].length;
const course = (part: Partial<SignCourse>): SignCourse => ({ sign: "ch", kind: "", way: "reading", met: [], lapses: [], known: [], ...part });
const known = (...rows: readonly (readonly [number, number, number, number])[]): SignCourse["known"] =>
  rows.map(([day, expected, low, high]) => ({ day: day as Day, expected, low, high }));

describe("the picture of mastery over time", () => {
  const cases = Object.keys(MASTERIES).flatMap((name) => [640, 320].map((width) => ({ name, width })));

  it.each(cases)("$name at $width px is the reviewed file", async ({ name, width }) => {
    await expect(`${draw(name, width).svg}\n`).toMatchFileSnapshot(`mastery-${name}-${width}.svg`);
  });

  it.each(cases)("$name at $width px keeps the content policy and stays inside", ({ name, width }) => {
    const { svg } = draw(name, width);
    expect(svg).not.toMatch(/<style|style=|<script|href=|url\(|NaN|Infinity|undefined/);
    const high = Number(/viewBox="\S+ \S+ \S+ (\S+)"/.exec(svg)?.[1]);
    for (const [, x] of svg.matchAll(/ (?:x|x1|x2|cx)="([^"]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(width);
    }
    for (const [, y] of svg.matchAll(/ (?:y|y1|y2|cy)="([^"]+)"/g)) {
      expect(Number(y)).toBeGreaterThanOrEqual(0);
      expect(Number(y)).toBeLessThanOrEqual(high);
    }
  });

  it("shows of one sign the day introduced, the days the criterion was met and the lapse", () => {
    const { svg } = draw("one-sign");
    expect(svg).toContain(">introduced<");
    expect(svg).toMatch(/>introduced<[^]*>criterion met<[^]*>lapse</);
    // One of each in the key.
    expect(count(svg, /<polygon points="[^"]*" fill="currentColor"/g)).toBe(2 + 1);
    expect(count(svg, /<path d="M[^"]*L[^"]*M/g)).toBe(1 + 1);
  });

  it("tells reading and writing apart by line and mark", () => {
    const { svg } = draw("a-kind");
    expect(count(svg, /<polyline [^>]*stroke-dasharray/g)).toBe(2);
    expect(count(svg, /<polyline [^>]*stroke-width="2"\/>/g)).toBe(2);
    expect(count(svg, />reading</g)).toBe(2);
    expect(count(svg, />writing</g)).toBe(2);
  });

  it("says the same in sentences", () => {
    expect(draw("one-sign").summary[0]).toBe(
      "Reading: introduced 9 Sep 2026; criterion met 28 Oct 2026, 23 Dec 2026; lapsed 2 Dec 2026; share expected right 97\u00A0% (90\u00A0% to 100\u00A0%) on 6 Jan 2027.",
    );
    expect(draw("a-kind").summary[0]).toMatch(
      /^Reading: 12 signs, 12 with a day introduced; 7 mastered now, 8 at most; 1 lapse; share expected to be known \d+\u00A0% /,
    );
    expect(draw("one-probe").summary[0]).toMatch(/day introduced not noted; criterion not met yet/);
  });

  it("has a table by day for one sign, by sign for several", () => {
    expect(draw("one-sign").table.headings).toEqual(["Date", "Reading, expected right", "What happened"]);
    expect(draw("one-sign").table.rows).toHaveLength(18);
    expect(draw("a-kind").table.rows).toHaveLength(24);
    expect(draw("a-kind").table.rows[4]).toEqual(["th", "reading", "23 Sep 2026", "28 Oct 2026", "16 Dec 2026", expect.stringMatching(/%/)]);
  });

  it("does not let a sign or a name become markup", () => {
    const hostile = '<script>alert(1)</script>&"';
    const { svg } = drawMastery({ pupil: hostile, scope: hostile, courses: [course({ sign: hostile })] });
    expect(svg).not.toContain("<script");
  });
});

describe("the signs mastered", () => {
  it("are one more for each criterion met and one less for each lapse", () => {
    const courses = [
      course({ met: [10 as Day, 40 as Day], lapses: [30 as Day] }),
      course({ sign: "sh", met: [20 as Day] }),
      course({ sign: "th", met: [20 as Day] }),
    ];
    expect(countMastered(courses)).toEqual([
      { day: 10, count: 1 },
      { day: 20, count: 3 },
      { day: 30, count: 2 },
      { day: 40, count: 3 },
    ]);
  });

  it("make no step on a day when one is gained and another lost", () => {
    expect(countMastered([course({ met: [10 as Day], lapses: [20 as Day] }), course({ sign: "sh", met: [20 as Day] })])).toEqual([
      { day: 10, count: 1 },
    ]);
  });
});

describe("the share of several signs", () => {
  it("is the mean, one not seen yet counted as 0, half-widths added in squares", () => {
    // (0.8 + 0) / 2 with √(0.2²) / 2 below; then (0.8 + 0.6) / 2 with √(0.2² + 0.15²) / 2 = 0.125 below.
    const pooled = poolKnown([course({ known: known([10, 0.8, 0.6, 0.9]) }), course({ sign: "sh", known: known([20, 0.6, 0.45, 0.7]) })]);
    expect(pooled).toHaveLength(2);
    expect(pooled[0]).toMatchObject({ day: 10, expected: 0.4, low: expect.closeTo(0.3, 10), high: expect.closeTo(0.45, 10) });
    expect(pooled[1]).toMatchObject({ day: 20, expected: 0.7, low: expect.closeTo(0.575, 10), high: expect.closeTo(0.7 + Math.hypot(0.1, 0.1) / 2, 10) });
  });

  it("never leaves 0 to 1, and has at most 60 days, the last among them", () => {
    const estimate = fc.tuple(fc.integer({ min: 1, max: 900 }), fc.double({ min: 0, max: 1, noNaN: true })).map(([day, share]) => [day, share, share / 2, (1 + share) / 2] as const);
    fc.assert(
      fc.property(fc.array(fc.array(estimate, { maxLength: 80 }), { minLength: 2, maxLength: 6 }), (rows) => {
        const courses = rows.map((row, i) => course({ sign: String(i), known: known(...[...row].sort((a, b) => a[0] - b[0])) }));
        const pooled = poolKnown(courses);
        expect(pooled.length).toBeLessThanOrEqual(60);
        const lastDay = Math.max(...courses.map((each) => each.known.at(-1)?.day ?? -Infinity));
        if (pooled.length > 0) expect(pooled.at(-1)?.day).toBe(lastDay);
        for (const { expected, low, high } of pooled) {
          expect(low).toBeGreaterThanOrEqual(-1e-12);
          expect(low).toBeLessThanOrEqual(expected + 1e-12);
          expect(high).toBeGreaterThanOrEqual(expected - 1e-12);
          expect(high).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });
});
