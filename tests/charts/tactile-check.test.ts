import { describe, expect, it } from "vitest";
import { checkTactileLayout, type TactileElement, type TactilePage } from "../../src/charts/tactile-check";
import { drawAround } from "../../src/charts/tactile-line";
import { gapBetween, type TactileShape } from "../../src/charts/tactile-shape";

const disc = (x: number, y: number, radius = 3.2): TactileShape => ({ kind: "disc", at: { x, y }, radius });
const block = (left: number, top: number, right: number, bottom: number): TactileShape => ({ kind: "block", left, top, right, bottom });
const line = (width: number, ...spots: (readonly [number, number])[]): TactileShape => ({ kind: "line", width, spots: spots.map(([x, y]) => ({ x, y })) });
const element = (name: string, shape: TactileShape, more: Partial<TactileElement> = {}): TactileElement => ({ name, group: name, shapes: [shape], ...more });
const page = (...elements: readonly TactileElement[]): TactilePage => ({ title: "", summary: "", width: 210, height: 297, process: "embossed", elements });

describe("the free paper between shapes", () => {
  it.each([
    { about: "two discs, edge to edge", one: disc(20, 20), other: disc(30, 20), gap: 10 - 6.4 },
    { about: "a disc above a thick line", one: disc(50, 20), other: line(2, [20, 30], [80, 30]), gap: 10 - 3.2 - 1 },
    { about: "lines that cross", one: line(1, [20, 20], [40, 40]), other: line(1, [20, 40], [40, 20]), gap: 0 },
    { about: "a disc inside a block", one: disc(30, 30, 1), other: block(20, 20, 40, 40), gap: 0 },
    { about: "a block and a line beyond its corner", one: block(20, 20, 30, 30), other: line(0, [33, 34], [60, 34]), gap: 5 },
    { about: "a line that ends before another", one: line(2, [20, 20], [40, 20]), other: line(2, [50, 10], [50, 40]), gap: 8 },
  ])("of $about is $gap mm", ({ one, other, gap }) => {
    expect(gapBetween(one, other)).toBeCloseTo(gap, 9);
    expect(gapBetween(other, one)).toBeCloseTo(gap, 9);
  });
});

// Source of the distances: web pages that summarise the BANA guidelines for tactile graphics.
describe("a layout is refused", () => {
  it("where two elements are under 3.2 mm apart, and both are named", () => {
    const checked = checkTactileLayout(page(element("aim", disc(50, 50)), element("words a minute", disc(59.5, 50))));
    expect(checked).toMatchObject({ ok: false, fault: { code: "too-close", elements: ["aim", "words a minute"] } });
    expect(checked.ok ? "" : checked.fault.message).toBe(
      "“aim” and “words a minute” are 3.1 mm apart; 3.2 mm are needed. Choose a larger paper, or turn it.",
    );
  });

  it("on capsule paper under 6.4 mm", () => {
    const elements = [element("aim", disc(50, 50)), element("path", disc(62.7, 50))];
    expect(checkTactileLayout(page(...elements)).ok).toBe(true);
    expect(checkTactileLayout({ ...page(...elements), process: "capsule" })).toMatchObject({ ok: false, fault: { code: "too-close" } });
  });

  it.each<[string, TactileShape]>([
    ["a symbol of 6 mm", disc(50, 50, 3)],
    ["a dash of 5 mm", line(1.2, [50, 50], [53.8, 50])],
  ])("where %s cannot be felt", (_, shape) => {
    expect(checkTactileLayout(page(element("it", shape)))).toMatchObject({ ok: false, fault: { code: "too-small", elements: ["it"] } });
  });

  it("where more than five line styles are to be told apart", () => {
    const styles = Array.from({ length: 6 }, (_, i) =>
      element(`line ${i}`, line(1, [30, 30 + 20 * i], [90, 30 + 20 * i]), { style: { of: "line", name: `style ${i}` } }),
    );
    expect(checkTactileLayout(page(...styles.slice(1))).ok).toBe(true);
    expect(checkTactileLayout(page(...styles))).toMatchObject({ ok: false, fault: { code: "too-many" } });
  });

  it("where something reaches into the margin", () => {
    expect(checkTactileLayout(page(element("title", block(12, 20, 60, 30))))).toMatchObject({ ok: false, fault: { code: "off-paper", elements: ["title"] } });
  });

  it("but not where parts of one group touch", () => {
    const group = "path";
    expect(checkTactileLayout(page(element("line", line(2, [30, 30], [90, 60]), { group }), element("point", disc(30, 30), { group }))).ok).toBe(true);
  });
});

describe("a weaker line", () => {
  const spots = [
    { x: 20, y: 50 },
    { x: 120, y: 50 },
  ];
  const obstacle = line(2, [70, 20], [70, 80]);

  it("is interrupted around a stronger one", () => {
    const pieces = drawAround(spots, { width: 1 }, [obstacle], 3.2);
    expect(pieces).toHaveLength(2);
    for (const piece of pieces) expect(gapBetween(piece, obstacle)).toBeGreaterThanOrEqual(3.2);
  });

  it("has dashes that are a gap apart and none too short", () => {
    const pieces = drawAround(spots, { width: 1, dash: 7 }, [obstacle], 3.2);
    expect(pieces.length).toBeGreaterThan(6);
    pieces.forEach((piece, i) => {
      expect(checkTactileLayout(page(element("dash", piece))).ok).toBe(true);
      const next = pieces[i + 1];
      // Ends are cut straight: the free paper along the line is the gap, whatever the width.
      if (next?.kind === "line" && piece.kind === "line") expect((next.spots[0]?.x ?? NaN) - (piece.spots.at(-1)?.x ?? NaN)).toBeGreaterThanOrEqual(3.2 - 1e-9);
    });
  });

  it("leaves out what is too short to be felt", () => {
    expect(drawAround([{ x: 20, y: 50 }, { x: 26, y: 50 }], { width: 1 }, [], 3.2)).toEqual([]);
  });
});
