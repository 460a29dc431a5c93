import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const view = (page: Page) => page.locator("cellwright-next");
const items = (page: Page) => view(page).getByRole("listitem");
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe("what next", () => {
  it("lists signs and passages with their reasons, and each can be done by keyboard alone", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "What next");
    await items(page).filter({ hasText: "Teach" }).first().waitFor();
    await items(page).filter({ hasText: "can be read" }).last().waitFor();
    expect(await axeFaults(page)).toEqual([]);

    const marking = view(page)
      .getByRole("button", { name: /^Mark .+ as taught$/ })
      .first();
    const first = await marking.innerText();
    await marking.focus();
    await press(page, "Enter");
    await view(page).getByText(" is marked as taught. Written: one row").waitFor();
    await expect.poll(() => marking.innerText()).not.toBe(first);
    expect(await view(page).locator("button:focus").count()).toBe(1);
    await view(page).getByRole("button", { name: "Take it back" }).focus();
    await press(page, "Enter");
    await view(page).getByText("Taken back.").waitFor();
    await expect.poll(() => marking.innerText()).toBe(first);

    await view(page).getByLabel("New signs are to open").selectOption("common");
    await items(page).filter({ hasText: "of common English text" }).first().waitFor();
    const reading = view(page).getByRole("button", { name: /^Read .+ aloud$/ });
    const title = (await reading.first().innerText()).replace(/^Read (.+) aloud$/, "$1");
    await reading.first().focus();
    await press(page, "Enter");
    await page.locator("cellwright-pane h2", { hasText: "Read aloud" }).waitFor();
    await expect
      .poll(() => page.locator("cellwright-reading").getByLabel("Title of the text").inputValue())
      .toBe(title);
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it.each<[string, Parameters<typeof openWorkbench>[2]]>([
    ["320 px", { viewport: { width: 320, height: 640 } }],
    ["400 % zoom, in the dark", { viewport: { width: 320, height: 256 }, colorScheme: "dark" }],
    ["forced colours and reduced motion", { forcedColors: "active", reducedMotion: "reduce" }],
  ])("holds at %s", async (_, look) => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1", look);
    await waitForGrid(page);
    await openView(page, "What next");
    await items(page).first().waitFor();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });
});
