import { describe, expect, it } from "vitest";
import { drawSignMap, drawSignMapPages, type SignMap } from "../../src/charts/sign-map";
import { drawStateMark } from "../../src/charts/state-mark";
import { listSignStates, SIGN_STATES, type SignStanding } from "../../src/domain/progress/sign-states";
import type { Day } from "../../src/domain/units";

const TODAY = 46_351 as Day;
const NOTHING = { words: [], direct: [], trials: [] };
const all = listSignStates({
  ...{ taught: [], evidence: { reading: NOTHING, writing: NOTHING }, asOf: TODAY },
  nextCheck: () => undefined,
});
/** One state after the other in reading, the other way round in writing. */
const mapOf = (kind: string): SignMap => {
  const standings = all
    .filter(({ sign }) => sign.kind === kind)
    .map((standing, place): SignStanding => {
      const [read, written] = [SIGN_STATES[place % 6], SIGN_STATES[5 - (place % 6)]];
      return {
        ...standing,
        reading: { ...standing.reading, state: read ?? "taught" },
        writing: { ...standing.writing, state: written ?? "taught" },
      };
    });
  return { pupil: "Plover", scope: `${kind}s`, asOf: TODAY, standings };
};
const CASES = [
  { kind: "strong groupsign", width: 640 },
  { kind: "strong groupsign", width: 300 },
  { kind: "punctuation", width: 640 },
];

describe("the map of signs", () => {
  it.each(CASES)("of $kind at $width px is the reviewed file", async ({ kind, width }) => {
    const { svg } = drawSignMap(mapOf(kind), { width });
    await expect(`${svg}\n`).toMatchFileSnapshot(`signs-${kind.replace(" ", "-")}-${width}.svg`);
  });

  it.each([...CASES, { kind: "shortform", width: 240 }, { kind: "shortform", width: 860 }])(
    "of $kind at $width px keeps the content policy and stays inside",
    ({ kind, width }) => {
      const { svg } = drawSignMap(mapOf(kind), { width });
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
    },
  );

  it("says the same in sentences and as a table", () => {
    const { title, summary, table } = drawSignMap(mapOf("strong groupsign"));
    expect(title).toBe("Plover: strong groupsigns on 25 Nov 2026");
    expect(summary[0]).toBe("12 signs.");
    expect(summary).toContain("Reading, mastered, 2: wh, ar.");
    expect(summary).toContain("Writing, growing, 2: th, st.");
    expect(table.rows).toHaveLength(12);
    expect(table.rows[0]).toEqual(["ch", "⠡", "16", "not taught", "check again"]);
  });

  it("gives each state a mark of its own", () => {
    expect(new Set(SIGN_STATES.map((state) => drawStateMark(state, 0, 0, 5))).size).toBe(SIGN_STATES.length);
  });

  it("has every sign once on its pages", () => {
    const map = mapOf("shortform");
    const pages = drawSignMapPages(map, { width: 760 }, 1.4);
    expect(pages.flatMap(({ table }) => table.rows.map(([name]) => name))).toEqual(
      map.standings.map(({ sign }) => sign.name),
    );
    for (const { svg } of pages) {
      const [, width, height] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg) ?? [];
      expect(Number(height) / Number(width)).toBeLessThanOrEqual(1.4);
    }
  });
});
