import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { drawBraillePages, USUAL_LOOK } from "../../src/charts/braille-page";
import { layOutPages } from "../../src/domain/drill/embosser-page";
import { PAPERS } from "../../src/domain/paper";
import { handoutOf } from "../domain/drill/handouts";
import { startBrowser } from "./workbench-page";

const DOTS_PER_INCH = 600;
const MILLIMETRE = DOTS_PER_INCH / 25.4;
const canRaster = spawnSync("pdftoppm", ["-v"]).error === undefined;
const size = { cellsPerLine: 30, linesPerPage: 25, lineSpacing: 1 } as const;

/** Prints markup through the browser and gives the first page as grey pixels. */
const printPage = async (
  svg: string,
  paper: string,
): Promise<{ width: number; height: number; grey: Buffer }> => {
  const folder = mkdtempSync(join(tmpdir(), "cellwright-"));
  try {
    const browser = await startBrowser();
    const page = await browser.newPage();
    await page.setContent(
      `<style>@page { size: ${paper}; margin: 0 } body { margin: 0 } svg { display: block }</style>${svg}`,
    );
    writeFileSync(join(folder, "page.pdf"), await page.pdf({ preferCSSPageSize: true }));
    await browser.close();
    const options = ["-gray", "-r", String(DOTS_PER_INCH), "-singlefile"];
    const done = spawnSync("pdftoppm", [...options, join(folder, "page.pdf"), join(folder, "page")]);
    expect(done.status).toBe(0);
    const file = readFileSync(join(folder, "page.pgm"));
    const [head = "", width = "", height = ""] =
      /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString("latin1", 0, 40)) ?? [];
    return { width: Number(width), height: Number(height), grey: file.subarray(head.length) };
  } finally {
    rmSync(folder, { recursive: true });
  }
};

/** Centres and diameters in millimetres of the dark spots that lie in a band of the page, from left to right. */
const spotsIn = (
  { width, grey }: { readonly width: number; readonly grey: Buffer },
  [top, bottom]: readonly [number, number],
): { x: number; y: number; across: number }[] => {
  const rows = { from: Math.round(top * MILLIMETRE), to: Math.round(bottom * MILLIMETRE) };
  const spots: { x: number; y: number; across: number }[] = [];
  let open: { pixels: [number, number][]; from: number } | undefined;
  for (let x = 0; x <= width; x++) {
    const dark: [number, number][] = [];
    for (let y = rows.from; x < width && y < rows.to; y++)
      if ((grey[y * width + x] ?? 255) < 128) dark.push([x, y]);
    if (dark.length > 0) (open ??= { pixels: [], from: x }).pixels.push(...dark);
    else if (open !== undefined) {
      const mean = (axis: 0 | 1): number =>
        (open?.pixels ?? []).reduce((sum, pixel) => sum + pixel[axis] + 0.5, 0) / (open?.pixels.length ?? 1);
      spots.push({ x: mean(0) / MILLIMETRE, y: mean(1) / MILLIMETRE, across: (x - open.from) / MILLIMETRE });
      open = undefined;
    }
  }
  return spots;
};

describe.skipIf(!canRaster)(
  "braille printed by the browser (measured with pdftoppm, where it is installed)",
  () => {
    it("is as large on paper as Specification 800 says", async () => {
      const entries = [
        { kind: "signs", text: "⠁".repeat(30) },
        { kind: "signs", text: "⠉⠄" },
        { kind: "signs", text: "⠁" },
      ] as const;
      const pages = layOutPages(handoutOf(entries, size));
      const drawn = drawBraillePages(pages, size, { ...USUAL_LOOK, paper: "a4", printBetween: false });
      if (!drawn.ok) throw new Error(drawn.fault.message);
      const image = await printPage(drawn.value[0]?.svg ?? "", "A4");
      expect(image.width / MILLIMETRE).toBeCloseTo(PAPERS.a4.width, 0);
      expect(image.height / MILLIMETRE).toBeCloseTo(PAPERS.a4.height, 0);
      // Title, empty line, 30 times dot 1, empty line, dots 1-4 and dot 3, empty line, dot 1.
      const rowTop = (row: number): number => USUAL_LOOK.margin + 10 * row;
      const row = spotsIn(image, [rowTop(2) - 1, rowTop(2) + 3]);
      expect(row).toHaveLength(30);
      const [first, last] = [row[0], row.at(-1)];
      expect(((last?.x ?? 0) - (first?.x ?? 0)) / 29).toBeCloseTo(6.2, 2);
      expect(first?.across).toBeGreaterThan(1.44 - 0.06);
      expect(first?.across).toBeLessThan(1.44 + 0.06);
      const pair = spotsIn(image, [rowTop(4) - 1, rowTop(4) + 1.6]);
      expect((pair[1]?.x ?? 0) - (pair[0]?.x ?? 0)).toBeCloseTo(2.34, 1);
      const [third] = spotsIn(image, [rowTop(4) + 4, rowTop(4) + 7]);
      expect((third?.y ?? 0) - (pair[0]?.y ?? 0)).toBeCloseTo(4.68, 1);
      const [below] = spotsIn(image, [rowTop(6) - 1, rowTop(6) + 3]);
      expect(((below?.y ?? 0) - (first?.y ?? 0)) / 4).toBeCloseTo(10, 2);
    });
  },
);
