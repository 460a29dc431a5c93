import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  axeFaults,
  openWorkbench,
  press,
  startBrowser,
  waitForGrid,
  waitForTrajectory,
} from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const LOOKS: readonly (readonly [string, BrowserContextOptions])[] = [
  ["at 1280 px", {}],
  ["at 320 px", { viewport: { width: 320, height: 640 } }],
  ["at 400 % of 1280 × 1024", { viewport: { width: 320, height: 256 } }],
  ["in the dark", { colorScheme: "dark" }],
  ["in forced colours", { forcedColors: "active" }],
];

describe("axe finds nothing", () => {
  it.each(LOOKS)("on the empty start, %s", async (_, look) => {
    const { page, context } = await openWorkbench(browser, "workbench.html", look);
    await page.locator("#start-open").waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it.each(LOOKS)("with the example open, %s", async (_, look) => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1", look);
    await waitForGrid(page);
    await waitForTrajectory(page);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it.each<[string, (page: Page) => Promise<void>]>([
    ["while a refused formula stands in its cell", (page) => press(page, "type:=SUM(", "Enter")],
    ["with the find bar open", (page) => press(page, "Control+f")],
    ["with the menu open", (page) => press(page, "Shift+F10")],
    ["with the list of a cell open", (page) => press(page, "Control+g", "type:C6", "Enter", "Alt+ArrowDown")],
    ["with the keys shown", (page) => press(page, "F1")],
  ])("%s", async (_, act) => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await act(page);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });
});

describe("the grid", () => {
  it("has one tab stop, and row and column numbers as the sheet", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await press(page, "ArrowDown", "ArrowDown", "ArrowRight");
    expect(await page.locator('[role="grid"] [tabindex="0"]').count()).toBe(1);
    const cell = page.locator('[role="gridcell"]:focus');
    expect(await cell.getAttribute("aria-colindex")).toBe("2");
    expect(await cell.locator("..").getAttribute("aria-rowindex")).toBe("3");
    await context.close();
  });

  it("needs no sideways scrolling of the page at 320 px", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1", {
      viewport: { width: 320, height: 640 },
    });
    await waitForGrid(page);
    await waitForTrajectory(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await context.close();
  });

  it("goes round the page by F6 and lets Tab leave at the sheet's end", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    const regions: (string | null)[] = [];
    for (let turn = 0; turn < 6; turn += 1) {
      await page.keyboard.press("F6");
      regions.push(await page.evaluate(() => document.activeElement?.closest("[id]")?.id ?? null));
    }
    expect(new Set(regions).size).toBe(6);
    await waitForGrid(page);
    await press(page, "Control+Home", "Shift+Tab");
    expect(await page.locator('[role="gridcell"]:focus').count()).toBe(0);
    await context.close();
  });

  it("moves the line between sheet and pane by arrow keys", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await page.locator("#split-line").focus();
    await press(page, "ArrowLeft");
    expect(await page.locator("#split-line").getAttribute("aria-valuenow")).toBe("41");
    await context.close();
  });
});
