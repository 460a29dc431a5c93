import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const TEXT =
  "The ferry left the pier at nine. Every child had the same thing to ask: which island comes first?";

/** Chooses the words of the text; the focus is on the first. */
async function prepare(page: Page): Promise<void> {
  await openView(page, "Read aloud");
  await page.getByLabel("Pupil").first().selectOption("Plover");
  const list = page.locator("cellwright-reading form select").first();
  await list.locator("option", { hasText: "The Fox and the Grapes" }).waitFor({ state: "attached" });
  expect(await list.locator("option:checked").textContent()).toMatch(
    /^The Fox and the Grapes \(\d+ words\)$/,
  );
  await list.selectOption({ label: "A text to paste or type" });
  await page.getByLabel("Title of the text").fill("The ferry");
  await page.getByLabel("The text, as the pupil has it before her or him").fill(TEXT);
  await page.locator("cellwright-reading").getByLabel("Code").selectOption("contracted");
  await page.getByRole("button", { name: "Show the words" }).click();
  await page.locator('[role="option"]:focus', { hasText: "The" }).waitFor();
}

const focused = (page: Page) => page.locator('[role="option"]:focus');
const status = (page: Page) => page.locator("cellwright-pane p[role=status].status");

describe("a timed reading probe", () => {
  it("is run, marked, stopped, looked at and written by keyboard alone, and outlives a reload", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await prepare(page);
    expect(await page.locator('[role="option"] u').allTextContents()).toEqual(
      expect.arrayContaining(["The", "Every", "child", "had", "which"]),
    );
    expect(await axeFaults(page)).toEqual([]);

    await press(page, "Enter");
    await status(page).filter({ hasText: "The clock runs." }).waitFor();
    await press(page, "ArrowRight", "m");
    expect(await focused(page).getAttribute("aria-label")).toBe("ferry, misread");
    expect(await status(page).textContent()).toBe("ferry: misread");
    await press(page, " ", " ", "o", " ", "t", " ", " ", "s", "ArrowDown", "ArrowUp");
    await page.waitForTimeout(1200);

    // A crash: the page is loaded again, and the example with it.
    await page.reload();
    await waitForGrid(page);
    await openView(page, "Read aloud");
    await page.getByText("Result").waitFor();
    const names = await page
      .locator('[role="option"][aria-label]')
      .evaluateAll((options) => options.map((option) => option.getAttribute("aria-label")));
    expect(names).toEqual([
      "ferry, misread",
      "the, left out",
      "pier, told",
      "nine., swapped",
      "Every, swapped",
    ]);
    await page.locator('[role="option"]', { hasText: "ask" }).focus();
    await press(page, "l");
    await page.getByLabel("For ferry, misread").fill("fairy");
    await page.locator("cellwright-reading").getByLabel("Seconds", { exact: true }).fill("30");
    await press(page, "Tab");
    const result = page.locator("cellwright-reading ul").first();
    expect(await result.locator("li").allTextContents()).toEqual([
      "15 words attempted, five errors, in 30 seconds.",
      expect.stringMatching(/^20 words read correctly a minute, [\d.]+ cells a minute\.$/),
      "Accuracy 66.7 %.",
      "1 misread, 2 left out or told, 2 swapped.",
    ]);
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole("button", { name: "Write into the workbook" }).click();
    await status(page).filter({ hasText: "Written: one row in Progress" }).waitFor();
    expect(bench.failures).toEqual([]);
    expect(bench.strangers).toEqual([]);
    await bench.context.close();
  });
});
