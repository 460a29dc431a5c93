import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawBraillePages, fitPaper, USUAL_LOOK, type BraillePageLook } from "../../src/charts/braille-page";
import { layOutPages } from "../../src/domain/drill/embosser-page";
import { USUAL_HANDOUT, type HandoutOptions } from "../../src/domain/drill/handout";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import { handoutOf, wordsOf } from "../domain/drill/handouts";

const A4_SIZE = { cellsPerLine: 30, linesPerPage: 27 };

const draw = (
  entries: readonly HandoutEntry[],
  options: Partial<HandoutOptions> = A4_SIZE,
  look: Partial<BraillePageLook> = { paper: "a4" },
): string[] => {
  const drawn = attempt(entries, options, look);
  if (!drawn.ok) throw new Error(drawn.fault.message);
  return drawn.value.map(({ svg }) => svg);
};

const attempt = (entries: readonly HandoutEntry[], options: Partial<HandoutOptions>, look: Partial<BraillePageLook>) => {
  const size = { ...USUAL_HANDOUT, ...options };
  return drawBraillePages(layOutPages(handoutOf(entries, size)), size, { ...USUAL_LOOK, ...look });
};

/** Centres and radii of the circles of a page, in millimetres. */
const circlesOf = (svg: string): { cx: number; cy: number; r: number }[] =>
  [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/g)].map(([, cx, cy, r]) => ({
    cx: Number(cx),
    cy: Number(cy),
    r: Number(r),
  }));

/** NLS Specification 800 section 3.2, as quoted by BANA: millimetres. */
const SPECIFICATION = { dotBase: 1.44, dotToDot: 2.34, cellToCell: 6.2, lineToLine: 10 };

describe("a page of braille in true size", () => {
  it("is the reviewed file", async () => {
    const entries = [...wordsOf("egg"), { kind: "sentence", text: "an egg is in the nest" } as const];
    const size = { cellsPerLine: 14, linesPerPage: 12 };
    const [svg = ""] = draw(entries, size, { paper: "letter", guideDots: true });
    await expect(`${svg}\n`).toMatchFileSnapshot("braille-page.svg");
  });

  it("is as large as its paper", () => {
    expect(draw(wordsOf("egg"))[0]).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
    expect(draw(wordsOf("egg"), { cellsPerLine: 31, linesPerPage: 25 }, { paper: "letter" })[0]).toContain(
      'width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"',
    );
    expect(draw(wordsOf("egg"), {}, { paper: "braille" })[0]).toContain('viewBox="0 0 292.1 279.4"');
  });

  it("has every dot where the specification puts it", () => {
    const entries = [...wordsOf("abcdefghijklm", "nopqrstuvwxyz"), { kind: "signs", text: "⠿⠀⠿⠸⠇" } as const];
    const handout = handoutOf(entries, A4_SIZE);
    const [page] = layOutPages(handout);
    const expected = (page?.rows ?? []).flatMap(({ cells }, row) =>
      [...cells].flatMap((cell, column) =>
        [0, 1, 2, 3, 4, 5]
          .filter((bit) => (cell.charCodeAt(0) - 0x2800) & (1 << bit))
          .map((bit) => ({
            cx: 12.7 + 0.72 + column * SPECIFICATION.cellToCell + Math.floor(bit / 3) * SPECIFICATION.dotToDot,
            cy: 12.7 + 0.72 + row * SPECIFICATION.lineToLine + (bit % 3) * SPECIFICATION.dotToDot,
          })),
      ),
    );
    const circles = circlesOf(draw(entries)[0] ?? "");
    expect(circles).toHaveLength(expected.length);
    expect(circles.length).toBeGreaterThan(100);
    for (const [index, { cx, cy, r }] of circles.entries()) {
      expect(2 * r).toBeCloseTo(SPECIFICATION.dotBase, 6);
      expect(cx).toBeCloseTo(expected[index]?.cx ?? NaN, 2);
      expect(cy).toBeCloseTo(expected[index]?.cy ?? NaN, 2);
    }
  });

  it("shows the places of missing dots faintly where asked, but none in a blank cell", () => {
    const count = (guideDots: boolean): number =>
      circlesOf(draw([{ kind: "signs", text: "⠁⠀⠿⠃" }], A4_SIZE, { paper: "a4", guideDots })[0] ?? "").filter(
        ({ cy }) => cy > 32 && cy < 42,
      ).length;
    expect(count(false)).toBe(1 + 6 + 2);
    expect(count(true)).toBe(18);
  });

  it("sets the print of a line beneath it, clear of the dots above and below", () => {
    const [svg = ""] = draw(wordsOf("egg"));
    const text = /<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)">egg<\/text>/.exec(svg);
    const [x, baseline, size] = [Number(text?.[1]), Number(text?.[2]), Number(text?.[3])];
    const rowTop = 12.7 + 2 * SPECIFICATION.lineToLine;
    expect(x).toBeCloseTo(12.7, 2);
    expect(baseline - 0.74 * size).toBeGreaterThan(rowTop + 2 * SPECIFICATION.dotToDot + SPECIFICATION.dotBase);
    expect(baseline + 0.22 * size).toBeLessThan(rowTop + SPECIFICATION.lineToLine);
    expect(size).toBeCloseTo((10.2 * 25.4) / 72, 1);
    expect(draw(wordsOf("egg"), A4_SIZE, { paper: "a4", printBetween: false })[0]).not.toContain("<text");
  });

  it("sets large print in 18 points in the empty line of double spacing", () => {
    const look = { paper: "a4", largePrint: true } as const;
    const [svg = ""] = draw(wordsOf("egg"), { ...A4_SIZE, linesPerPage: 26, lineSpacing: 2 }, look);
    expect(Number(/font-size="([\d.]+)"/.exec(svg)?.[1])).toBeCloseTo((18 * 25.4) / 72, 2);
    const refused = attempt(wordsOf("egg"), A4_SIZE, look);
    expect(refused.ok ? undefined : refused.fault.message).toContain("choose double spacing");
  });

  it("keeps room for the large print under the last line", () => {
    const look = { ...USUAL_LOOK, margin: 14.7 };
    expect(fitPaper({ ...look, largePrint: false }).linesPerPage).toBe(25);
    expect(fitPaper({ ...look, largePrint: true }).linesPerPage).toBe(24);
    const size = { cellsPerLine: 20, linesPerPage: 24, lineSpacing: 2 } as const;
    const [svg = ""] = draw(wordsOf("egg"), size, { ...look, largePrint: true });
    const baselines = [...svg.matchAll(/<text x="\S+" y="([\d.]+)"/g)].map(([, y]) => Number(y));
    expect(Math.max(...baselines) + 0.22 * 6.35).toBeLessThan(279.4 - 14.7);
  });

  it("sets print narrower that would run past the line", () => {
    const [svg = ""] = draw([{ kind: "signs", text: "⠡", print: "x".repeat(200) }]);
    expect(svg).toContain('textLength="183.58" lengthAdjust="spacingAndGlyphs"');
  });

  it("keeps the content policy, escapes, and says its lines in print", () => {
    const [svg = ""] = draw(wordsOf("<script>alert(1)</script>"));
    expect(svg).not.toMatch(/<style|style=|<script|href=|url\(|NaN|Infinity|undefined/);
    expect(svg).toContain("&lt;script&gt;");
    const drawn = attempt(wordsOf("egg"), A4_SIZE, { paper: "a4" });
    if (!drawn.ok) throw new Error(drawn.fault.message);
    expect(drawn.value[0]).toMatchObject({
      title: "Page of braille",
      summary: ["Heron", "egg", "Machine translated, not", "proofread."],
    });
  });

  it("stays inside the margins on every paper, as full as it can be", () => {
    const property = fc.property(
      fc.constantFrom("a4", "letter", "braille"),
      fc.integer({ min: 0, max: 40 }),
      fc.boolean(),
      (paper, margin, printBetween) => {
        const look = { ...USUAL_LOOK, paper, margin, printBetween } as BraillePageLook;
        const most = fitPaper(look);
        const words = Array.from({ length: 30 }, () => "q".repeat(most.cellsPerLine));
        const [svg = ""] = draw(wordsOf(...words), most, look);
        const [, width = NaN, height = NaN] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg)?.map(Number) ?? [];
        const circles = circlesOf(svg);
        const right = Math.max(...circles.map(({ cx, r }) => cx + r));
        const bottom = Math.max(...circles.map(({ cy, r }) => cy + r));
        expect(right).toBeLessThanOrEqual(width - margin + 0.01);
        expect(bottom).toBeLessThanOrEqual(height - margin + 0.01);
        expect(right + SPECIFICATION.cellToCell).toBeGreaterThan(width - margin);
      },
    );
    fc.assert(property, { numRuns: 25 });
  });
});

describe("what does not fit on paper", () => {
  it.each([
    ["40 cells on A4", { cellsPerLine: 40 }, { paper: "a4" }, /40 cells is 245.6 mm long; A4 .* room for 30 cells/],
    ["40 cells on Letter", { cellsPerLine: 40 }, { paper: "letter" }, /room for 31 cells/],
    ["26 lines on braille paper", { linesPerPage: 26 }, { paper: "braille" }, /room for 25 lines, not 26/],
    ["no room at all", { cellsPerLine: 8 }, { paper: "a4", margin: 110 }, /room for 0 cells/],
    ["a margin below 0", { cellsPerLine: 8 }, { paper: "a4", margin: -1 }, /0 mm or more/],
  ] as const)("%s", (_what, options, look, message) => {
    const drawn = attempt(wordsOf("egg"), options, look);
    expect(drawn.ok ? "" : drawn.fault.message).toMatch(message);
  });

  it("cells with dots 7 or 8", () => {
    const drawn = attempt([{ kind: "signs", text: "⣿" }], A4_SIZE, { paper: "a4" });
    expect(drawn.ok ? "" : drawn.fault.code).toBe("eight-dots");
  });

  it("fits 40 × 25 on braille paper", () => {
    expect(attempt(wordsOf("egg"), {}, { paper: "braille" }).ok).toBe(true);
  });
});
