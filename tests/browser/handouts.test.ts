import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const status = (page: Page) => page.locator("cellwright-pane p[role=status].status");
const items = (page: Page) => page.locator("cellwright-handouts ol.items li");
const fields = (page: Page) => items(page).locator("input, textarea");

/** Goes by Tab to the next control of that name; fails where the focus never gets there. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let step = 0; step < 60; step++) {
    await page.keyboard.press("Tab");
    const focused = await page.evaluate(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      const label = (active as HTMLInputElement | null)?.labels?.[0]?.textContent;
      return active?.getAttribute("aria-label") ?? label ?? active?.textContent ?? "";
    });
    if (focused.startsWith(name)) return;
  }
  throw new Error(`no ${name} by Tab`);
}

const moveInGrid = async (page: Page): Promise<void> => {
  await page.locator('[role="gridcell"][tabindex="0"]').focus();
  await press(page, "ArrowDown");
};

const savedBy = async (page: Page, act: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> => {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
};

describe("drills and handouts", () => {
  it("makes, edits and hands over a drill by keyboard alone, and nothing is longer than the cells set", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Handouts");
    await page.getByLabel("Pupil").first().selectOption("Dunlin");
    expect(await axeFaults(page)).toEqual([]);

    await page.locator("cellwright-pane h2").focus();
    await tabTo(page, "Signs to practise");
    await press(page, "type:nosuchsign", "Enter");
    await page.locator("cellwright-handouts form p[role=alert]", { hasText: "not a sign" }).waitFor();
    await press(page, "Control+a", "type:ea", "Enter");
    await status(page).filter({ hasText: "Ten items made." }).waitFor();
    const words = await fields(page).evaluateAll((all) =>
      all.map((field) => (field as HTMLInputElement).value),
    );
    expect(words).toHaveLength(10);
    expect(words.filter((word) => /^[a-z]+$/.test(word)).every((word) => word.includes("ea"))).toBe(true);
    expect((await items(page).first().locator("p.braille").textContent())?.includes("⠂")).toBe(true);

    // Change, add, move, remove.
    await tabTo(page, "Item 1");
    await press(page, "Control+a", "type:-teacher", "Enter", "type:The chat was over.");
    await press(page, "Alt+ArrowUp");
    await status(page).filter({ hasText: "Item 1 of 11." }).waitFor();
    expect(await fields(page).first().inputValue()).toBe("The chat was over.");
    await press(page, "Enter", "Backspace");
    expect(await items(page).count()).toBe(11);
    expect(await axeFaults(page)).toEqual([]);

    await tabTo(page, "Cells a line");
    await press(page, "Control+a", "type:20");
    await tabTo(page, "Save for an embosser (.brf)");
    const brf = await savedBy(page, () => press(page, "Enter"));
    expect(brf.name).toBe("handout.brf");
    const lines = brf.bytes.toString("latin1").split(/\r\n/);
    expect(Math.max(...lines.map((line) => line.replace("\f", "").length))).toBeLessThanOrEqual(20);
    // "Machine translated, not proofread." in North American ASCII braille begins so.
    expect(brf.bytes.toString("latin1")).toContain(",MA*9E");
    await tabTo(page, "Save for an embosser (.pef)");
    const pef = await savedBy(page, () => press(page, "Enter"));
    expect(pef.bytes.toString("utf8")).toContain('cols="20"');
    await tabTo(page, "Save as a document (.docx)");
    const docx = await savedBy(page, () => press(page, "Enter"));
    expect(docx.bytes.subarray(0, 2).toString()).toBe("PK");

    await tabTo(page, "Copy as a table");
    await bench.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await press(page, "Enter");
    await status(page).filter({ hasText: "Copied." }).waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    expect(copied).toContain("'-teacher\t");
    expect(copied.endsWith("Machine translated, not proofread.")).toBe(true);

    await tabTo(page, "Put on a new sheet");
    await press(page, "Enter");
    await status(page).filter({ hasText: "stands on the new sheet Handout" }).waitFor();
    expect(await page.getByRole("alert").filter({ visible: true }).count()).toBe(0);
    // The tabs below the grid are drawn anew when its selection moves.
    const tabs = page.getByRole("tab", { name: "Handout" });
    await moveInGrid(page);
    await tabs.waitFor();
    await page.getByRole("button", { name: "Put on a new sheet" }).focus();
    await tabTo(page, "Take it out of the workbook again");
    await press(page, "Enter");
    await status(page).filter({ hasText: "Taken out" }).waitFor();
    await moveInGrid(page);
    await tabs.waitFor({ state: "detached" });

    // The last errors, by one action.
    await page.getByRole("button", { name: "Practise what the last probe missed" }).click();
    await status(page)
      .filter({ hasText: /^Signs missed on 16 Nov 2026: .*Ten items made\.$/ })
      .waitFor();

    // A reload loses nothing.
    const before = await fields(page).evaluateAll((all) =>
      all.map((field) => (field as HTMLInputElement).value),
    );
    await page.reload();
    await waitForGrid(page);
    await openView(page, "Handouts");
    await items(page).first().waitFor();
    expect(
      await fields(page).evaluateAll((all) => all.map((field) => (field as HTMLInputElement).value)),
    ).toEqual(before);
    expect(bench.failures).toEqual([]);
    expect(bench.strangers).toEqual([]);
    await bench.context.close();
  });

  it("prints pages in true size, each the paper's own size, with the notice", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Handouts");
    await page.getByRole("button", { name: "Add an item" }).click();
    await press(page, "type:aaaaaaaaaaaaaaaaaaaaaa");
    // The dialog is held open while the page is printed to a file.
    await page.evaluate(() => {
      window.print = () => {
        const area = document.querySelector(".print-area");
        (window as unknown as { printed: string }).printed = area?.innerHTML ?? "";
      };
    });
    await page.getByRole("button", { name: "Print in true size" }).click();
    await status(page).filter({ hasText: "given to the printer" }).waitFor();
    const markup = await page.evaluate(() => (window as unknown as { printed: string }).printed);
    expect(markup.match(/<svg/g)).toHaveLength(1);
    expect(markup).toContain("Machine translated, not");
    const sheet = await bench.context.newPage();
    await sheet.setContent(
      `<style>@page{size:210mm 297mm;margin:0}body{margin:0}svg{display:block}</style>${markup}`,
    );
    const pdf = await sheet.pdf({ preferCSSPageSize: true });
    // A4 in points, as the file names the size of each of its pages.
    const sizes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    expect(sizes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))])).toEqual(
      [[595, 842]],
    );
    // Dots 1 of neighbouring cells: 6.2 mm apart on the screen as on paper, at 96 dots an inch.
    const across = await sheet.locator("svg circle").evaluateAll((circles) => {
      const rows = new Map<number, number[]>();
      for (const circle of circles) {
        const { x, y } = circle.getBoundingClientRect();
        rows.set(Math.round(y), [...(rows.get(Math.round(y)) ?? []), x]);
      }
      const longest = [...rows.values()].sort((a, b) => b.length - a.length)[0] ?? [];
      return ((longest[20] ?? 0) - (longest[0] ?? 0)) / 20;
    });
    expect((across / 96) * 25.4).toBeCloseTo(6.2, 1);
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });

  it("says what to do where the browser refuses, and stands narrow, large, in forced colours", async () => {
    const bench = await openWorkbench(browser, "workbench.html", {
      viewport: { width: 320, height: 256 },
      forcedColors: "active",
      reducedMotion: "reduce",
    });
    const { page } = bench;
    await page
      .getByRole("button", { name: /new|example/i })
      .first()
      .waitFor();
    await page.goto(`${page.url().split("?")[0] ?? ""}?example=1`);
    await waitForGrid(page);
    await page.evaluate(() => {
      Object.defineProperty(navigator, "clipboard", { value: undefined });
      document.execCommand = () => false;
    });
    await openView(page, "Handouts");
    await page.getByRole("button", { name: "Copy as a table" }).click();
    await page.locator("cellwright-handouts p[role=alert]", { hasText: "The handout is empty" }).waitFor();
    await page.getByRole("button", { name: "Add an item" }).click();
    await press(page, "type:=<script>");
    await page.getByRole("button", { name: "Copy as a table" }).click();
    await page.locator("cellwright-handouts p[role=alert]", { hasText: "clipboard is closed" }).waitFor();
    const shown = page.getByLabel("The handout as text", { exact: true });
    await shown.waitFor();
    expect(await shown.inputValue()).toContain("'=<script>");
    expect(await axeFaults(page)).toEqual([]);
    const overflow = await page
      .locator("cellwright-handouts")
      .evaluate((view) => view.scrollWidth - view.clientWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });
});
