import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const status = (page: Page) => view(page).getByRole("status");
const view = (page: Page) => page.locator("cellwright-caseload");
const lines = (page: Page) => view(page).getByRole("grid", { name: "Caseload" }).locator(".line");
/** What has the focus, through every shadow root. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const element = active as HTMLElement | null;
    return element?.dataset["name"] ?? element?.innerText ?? "";
  });
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe("the caseload", () => {
  it("is the first view, walked, opened and logged in by keyboard alone", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await lines(page).first().waitFor();
    expect(await lines(page).count()).toBe(4);
    expect(await lines(page).first().locator("svg").getAttribute("aria-label")).toMatch(
      /days from .+ first .+ last/,
    );
    expect(await axeFaults(page)).toEqual([]);

    await lines(page).first().focus();
    const first = await focused(page);
    await press(page, "ArrowDown");
    const second = await focused(page);
    expect(second).not.toBe(first);
    await press(page, "ArrowRight", "ArrowRight");
    expect(await page.locator("cellwright-caseload .need:focus").count()).toBe(1);
    await press(page, "Enter");
    await page.locator("cellwright-pane h2:focus", { hasText: "Progress" }).waitFor();
    expect(await page.getByLabel("Pupil").first().inputValue()).toBe(second);

    await page.getByRole("button", { name: "Caseload", exact: true }).focus();
    await press(page, "Enter");
    await lines(page).filter({ hasText: second }).focus();
    await press(page, "p");
    expect(await focused(page)).toBe("Read aloud");
    expect(await axeFaults(page)).toEqual([]);
    await press(page, "Escape");
    expect(await focused(page)).toBe(second);

    await press(page, "p", "Tab", "Tab", "Tab", "Tab", "Enter");
    await page.locator("cellwright-caseload input[name=words]:focus").waitFor();
    await press(page, "type:40", "Tab", "type:50", "Enter");
    expect(await view(page).getByRole("alert").textContent()).toContain("more errors than words");
    expect(await page.locator("cellwright-caseload input[name=errors]:focus").count()).toBe(1);
    expect(await axeFaults(page)).toEqual([]);
    await press(page, "Control+a", "type:2");
    await page.locator("cellwright-caseload input[name=seconds]").focus();
    await press(page, "type:1:00");
    await page.locator("cellwright-caseload input[name=note]").focus();
    await press(page, "type:=HYPERLINK(1)", "Enter");
    await status(page).filter({ hasText: "Written: one row in Progress" }).waitFor();
    expect(await focused(page)).toBe(second);
    expect(await lines(page).filter({ hasText: second }).innerText()).toMatch(/today/);
    await view(page).getByRole("button", { name: "Take it back" }).focus();
    await press(page, "Enter");
    await view(page).getByText("Taken back.").waitFor();
    expect(await focused(page)).toBe(second);
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it("saves the table for a coordinator with small groups left out, as a file and into a sheet", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await lines(page).first().waitFor();
    await view(page).getByText("Save the table for a coordinator").click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      view(page).getByRole("button", { name: "Save as .csv" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^caseload \d{4}-\d\d-\d\d\.csv$/);
    await view(page).getByRole("button", { name: "Put into a new sheet" }).click();
    await status(page).filter({ hasText: "was put into the sheet Caseload" }).waitFor();
    expect(await lines(page).count()).toBe(4);
    expect(await axeFaults(page)).toEqual([]);
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });

  it.each<[string, Parameters<typeof openWorkbench>[2]]>([
    ["320 px", { viewport: { width: 320, height: 640 } }],
    ["400 % zoom, in the dark", { viewport: { width: 320, height: 256 }, colorScheme: "dark" }],
    ["forced colours and reduced motion", { forcedColors: "active", reducedMotion: "reduce" }],
  ])("holds at %s, list and form", async (_, look) => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1", look);
    await waitForGrid(page);
    await lines(page).first().waitFor();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByRole("button", { name: "Type in a score" }).click();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });
});

describe("the first run", () => {
  it("sets up the tables with an example, removes it, and takes all of it back", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    const { page } = bench;
    await page.locator("#start-new").click();
    await waitForGrid(page);
    const setUp = view(page).getByRole("button", { name: "Set up the tables" });
    await setUp.waitFor();
    await view(page).getByText("Sheet1: empty.").waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByLabel("with an example pupil").check();
    await setUp.focus();
    await press(page, "Enter");
    await status(page).filter({ hasText: "Set up: nine tables" }).waitFor();
    expect(await focused(page)).toBe("Take it back");
    expect(await lines(page).allInnerTexts()).toEqual([expect.stringContaining("Sandpiper")]);
    expect(await page.getByRole("tab", { name: "Probes" }).count()).toBe(1);
    expect(await axeFaults(page)).toEqual([]);

    await press(page, "Enter");
    await view(page).getByText("Taken back.").waitFor();
    await setUp.waitFor();
    expect(await focused(page)).toBe("Set up the tables");
    expect(await page.getByRole("tab").allInnerTexts()).toEqual(["Sheet1"]);

    await press(page, "Enter");
    await status(page).filter({ hasText: "Set up: nine tables" }).waitFor();
    await view(page).getByRole("button", { name: "Remove the example" }).click();
    await status(page).filter({ hasText: "of the example taken out." }).waitFor();
    await view(page).getByText("No pupil is named in this workbook yet.").waitFor();
    expect(await axeFaults(page)).toEqual([]);

    await view(page).getByRole("button", { name: "Type in a score" }).click();
    await page.locator("cellwright-caseload input[name=pupil]:focus").waitFor();
    await press(page, "type:=<script>alert(1)</script>");
    await page.locator("cellwright-caseload input[name=words]").fill("12");
    await press(page, "Enter");
    await status(page).filter({ hasText: "Written: one row in Probes" }).waitFor();
    expect(await lines(page).locator(".who").allInnerTexts()).toEqual(["=<script>alert(1)</script>"]);
    expect(await lines(page).first().innerText()).toContain("No goal is noted");
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it("says that a table has no dates", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html");
    await page.locator("#start-new").click();
    await waitForGrid(page);
    await press(page, "type:Pupil", "Tab", "type:Words", "Tab", "type:Errors", "Enter", "type:Heron");
    await press(page, "Enter");
    await view(page)
      .getByText("Sheet1: row 1 looks like headings of probes, but no column is of dates.")
      .waitFor();
    await context.close();
  });
});
