import { expect, it } from "vitest";
import { describeSpark, drawSpark } from "../../src/charts/spark-line";
import type { Day } from "../../src/domain/units";

const daily = [
  { day: 46300 as Day, value: 30 },
  { day: 46310 as Day, value: 26 },
  { day: 46320 as Day, value: 40.25 },
];
const aim = { startDay: 46300, startScore: 30, goalDay: 46340, goalScore: 50 };

it("says what it shows", () => {
  expect(describeSpark(daily, "rate", aim)).toBe(
    "3 days from 5 Oct 2026 to 25 Oct 2026: first 30, last 40.3, between 26 and 40.3. The aim on the last day: 40.",
  );
  expect(describeSpark(daily.slice(0, 1), "accuracy", undefined)).toBe("One value: 3000\u00A0% on 5 Oct 2026.");
  expect(describeSpark([], "rate", undefined)).toBe("No values yet.");
});

it("draws values as a line to a dot, higher is up, the aim dashed", () => {
  const svg = drawSpark(daily, "rate", aim);
  expect(svg).toContain('points="4.0,24.1 64.0,32.0 124.0,4.0"');
  expect(svg).toContain('stroke-dasharray="3 3"');
  expect(svg).toMatch(/^<svg [^>]*role="img" aria-label="3 days/);
  expect(drawSpark(daily, "rate", undefined)).not.toContain("dasharray");
});

it.each([
  ["one value is a dot alone", daily.slice(0, 1), 0],
  ["level values lie in the middle", [daily[0], { day: 46301 as Day, value: 30 }] as typeof daily, 1],
])("%s", (_, values, lines) => {
  const svg = drawSpark(values, "rate", undefined);
  expect(svg.match(/<polyline/g)?.length ?? 0).toBe(lines);
  expect(svg).toContain('cy="18"');
});

it("draws nothing of nothing", () => {
  expect(drawSpark([], "rate", aim)).toBe("");
});
