import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const view = (page: Page) => page.locator("cellwright-naming");
const status = (page: Page) => page.locator("cellwright-pane p[role=status].status");
const focused = (page: Page) => page.locator('[role="option"]:focus');
/** What is heard of each sign: names, dots, mark. */
const labels = (page: Page) =>
  view(page)
    .locator('[role="option"]')
    .evaluateAll((options) =>
      options.map((option) =>
        [...option.querySelectorAll(".name, small, .mark")]
          .map((part) => part.textContent)
          .filter((part) => part !== "")
          .join(", "),
      ),
    );
const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

async function open(page: Page): Promise<void> {
  await waitForGrid(page);
  await openView(page, "Signs named");
  await page.getByLabel("Pupil").first().selectOption("Dunlin");
}

describe("signs named", () => {
  it("are drawn, marked, taken up after a crash, and written, by keyboard alone", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await open(page);
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByLabel("Signs from").selectOption({ label: "Signs that I name" });
    const named = view(page).getByLabel("Signs, such as ch, ea, in wordsign");
    await named.fill("ch, zorp");
    await press(page, "Enter");
    await view(page).getByRole("alert").filter({ hasText: "zorp" }).waitFor();
    expect(await named.evaluate((field) => field.matches(":focus"))).toBe(true);
    await named.fill("ch, sh, ing");
    await view(page).getByLabel("How many in the row").fill("6");
    await press(page, "Enter");
    await focused(page).waitFor();
    const drawn = await labels(page);
    expect(drawn).toHaveLength(6);
    expect(drawn.filter((label) => label === "ch or child, dots 16")).toHaveLength(2);

    // Nothing is marked before the clock runs.
    await press(page, "c");
    expect(await status(page).textContent()).toBe("Start the clock first: Enter.");
    await press(page, "Enter");
    await status(page).filter({ hasText: "The clock runs." }).waitFor();
    await press(page, "c", "n", "p");
    expect((await labels(page)).map((label) => label.split(", ")[2])).toEqual([
      ...["✓ correct", "✗ not correct", "prompted"],
      ...[undefined, undefined, undefined],
    ]);
    expect(await axeFaults(page)).toEqual([]);
    await press(page, "Backspace", "r", "ArrowLeft", "ArrowLeft", "c");
    await page.waitForTimeout(1200);

    await page.reload();
    await open(page);
    await view(page).getByText("Result").waitFor();
    expect((await labels(page)).map((label) => label.split(", ")[2])).toEqual([
      ...["✓ correct", "✓ correct", "no response"],
      ...[undefined, undefined, undefined],
    ]);
    await view(page).getByLabel("Seconds", { exact: true }).fill("10");
    await press(page, "Tab");
    expect(await view(page).locator("ul").first().locator("li").allTextContents()).toEqual([
      "Two signs of 3 named correctly, in 10 seconds.",
      "12 signs named correctly a minute.",
      "1 no response.",
      "Three signs of the row not reached.",
      expect.stringMatching(/^Missed: (ch|sh|ing) \(1 of 1\)\.$/),
    ]);
    expect(await axeFaults(page)).toEqual([]);
    const missed = (await labels(page))[2]?.split(" or ")[0]?.split(",")[0] ?? "";
    await view(page).getByRole("button", { name: "Write, and probe the missed again" }).press("Enter");
    await status(page).filter({ hasText: "Written: one row in Progress" }).waitFor();
    await focused(page).waitFor();
    // One sign missed comes among the others of its row.
    const again = await labels(page);
    expect(again).toHaveLength(6);
    expect(again.filter((label) => label.startsWith(missed))).toHaveLength(2);
    await press(page, "Enter", "c", "Enter");
    await view(page).getByRole("button", { name: "Write into the workbook" }).press("Enter");
    await view(page).getByRole("button", { name: "Show the row" }).waitFor();
    expect(await status(page).textContent()).toContain("Written: one row in Progress");
    expect(
      await view(page)
        .getByLabel("The pupil")
        .evaluate((list) => list.matches(":focus")),
    ).toBe(true);
    expect(bench.failures).toEqual([]);
    expect(bench.strangers).toEqual([]);
    await bench.context.close();
  });

  it("stop by themselves at the row's end, and go to a handout as they stand", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await open(page);
    await view(page).getByLabel("The pupil").selectOption({ label: "copies them" });
    await view(page).getByLabel("How many in the row").fill("3");
    await view(page).getByRole("button", { name: "Show the row" }).click();
    await focused(page).waitFor();
    const names = (await labels(page)).map((label) => label.split(" or ")[0]?.split(",")[0]);
    await view(page).getByRole("button", { name: "Print or emboss this row" }).click();
    await page.locator("cellwright-handouts h3:focus", { hasText: "Items" }).waitFor();
    await page.locator("cellwright-handouts li", { hasText: names.join(", ") }).waitFor();
    await openView(page, "Signs named");
    await focused(page).or(view(page).locator('[role="option"][tabindex="0"]')).first().focus();
    await press(page, "Enter", "c", "c", "c");
    await page.locator("cellwright-naming h3:focus", { hasText: "Dunlin: three signs to copy" }).waitFor();
    expect(await status(page).textContent()).toMatch(/^Stopped\. Three signs of 3 copied correctly/);
    // Asked twice before anything is lost.
    await view(page).getByRole("button", { name: "Leave this row" }).click();
    await view(page)
      .getByRole("button", { name: /will be lost/ })
      .click();
    await view(page).getByRole("button", { name: "Show the row" }).waitFor();
    await context.close();
  });

  it("are taken over from the signs chosen, and from what is due", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await openView(page, "Signs");
    await page.getByLabel("Pupil").first().selectOption("Dunlin");
    await page.locator("cellwright-signs .sign").first().focus();
    await press(page, " ", "p");
    await page.locator("cellwright-pane h2", { hasText: "Signs named" }).waitFor();
    expect(await view(page).getByLabel("Signs, such as ch, ea, in wordsign").inputValue()).toBe("a");
    // One sign alone would be known before it is felt.
    expect(await view(page).getByLabel("Mix with other signs taught").isChecked()).toBe(true);
    await view(page).getByRole("button", { name: "Show the row" }).press("Enter");
    await focused(page).waitFor();
    expect(new Set(await labels(page)).size).toBe(4);
    await view(page).getByRole("button", { name: "Leave this row" }).press("Enter");
    await openView(page, "What next");
    await page
      .getByRole("button", { name: /^Probe / })
      .first()
      .press("Enter");
    await page.locator("cellwright-pane h2", { hasText: "Signs named" }).waitFor();
    expect(await view(page).getByLabel("Signs, such as ch, ea, in wordsign").inputValue()).not.toBe("a");
    await context.close();
  });

  it("say what to do in a workbook without pupils", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html");
    await page.getByRole("button", { name: "New", exact: true }).first().click();
    await waitForGrid(page);
    await openView(page, "Signs named");
    await view(page).getByText("The workbook has no pupil yet").waitFor();
    expect(await view(page).locator("form").isVisible()).toBe(false);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it.each([
    ["320 px", { viewport: { width: 320, height: 640 } }],
    ["400 % zoom", { viewport: { width: 320, height: 256 } }],
    ["forced colours and reduced motion", { forcedColors: "active", reducedMotion: "reduce" }],
  ] as const)("hold at %s", async (_, look) => {
    const { page, context, failures } = await openWorkbench(browser, "workbench.html?example=1", look);
    await waitForGrid(page);
    await openView(page, "Signs named");
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByRole("button", { name: "Show the row" }).press("Enter");
    await focused(page).waitFor();
    await press(page, "Enter", "c", "n", "p", "r", "Enter");
    await page.locator("cellwright-naming h3:focus").waitFor();
    expect(await axeFaults(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(failures).toEqual([]);
    await context.close();
  });
});
