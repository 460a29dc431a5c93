import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const view = (page: Page) => page.locator("cellwright-signs");
const sign = (page: Page, name: string) => view(page).locator(`.sign[data-sign="${name}"]`);
const focusedSign = (page: Page) => view(page).locator(".sign:focus").getAttribute("data-sign");
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe("the view of signs", () => {
  it("finds, chooses, marks and hands over signs by keyboard alone", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Signs");
    await sign(page, "a").waitFor();
    expect(await axeFaults(page)).toEqual([]);

    await sign(page, "a").focus();
    await press(page, "ArrowDown");
    expect(await focusedSign(page)).toBe("b");
    await press(page, "End");
    expect(await focusedSign(page)).toBe("z");
    await press(page, "ArrowDown");
    expect(await focusedSign(page)).toBe("but");
    expect(await view(page).locator(".sign:focus").getAttribute("aria-label")).toMatch(
      /^but, dots 12.*Reading: .+\. Writing: .+\.$/,
    );
    await press(page, "d");
    expect(await view(page).getByRole("alert").innerText()).toContain("Choose signs first");

    await view(page).getByLabel("Print or dots").focus();
    await press(page, "type:1-6");
    expect(await view(page).locator(".sign").count()).toBeGreaterThan(0);
    expect(await sign(page, "ch").count()).toBe(1);
    expect(await sign(page, "a").count()).toBe(0);
    await press(page, "Control+a", "type:qqq");
    await view(page).getByText("No sign is like that.").waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await press(page, "Control+a", "Delete");
    const kinds = view(page).getByLabel("Kind");
    expect(await kinds.locator("option").allInnerTexts()).toEqual(
      expect.arrayContaining(["Digits", "Punctuation", "Indicators"]),
    );
    await kinds.selectOption("Punctuation");
    expect(await sign(page, "full stop").getAttribute("aria-label")).toMatch(/counts as taught/);
    await sign(page, "full stop").focus();
    await press(page, " ", "t");
    await view(page).getByText("Until now all punctuation counted as taught").waitFor();
    await expect.poll(() => sign(page, "comma").getAttribute("aria-label")).toMatch(/Reading: not taught/);
    await view(page).getByRole("button", { name: "Take it back" }).click();
    await view(page).getByText("Taken back.").waitFor();
    await kinds.selectOption("All kinds");
    await view(page).getByLabel("State").selectOption("not taught");
    const fresh = await view(page).locator(".sign").first().getAttribute("data-sign");
    await view(page).locator(".sign").first().focus();
    await press(page, " ");
    expect(await view(page).locator(".sign:focus").getAttribute("aria-selected")).toBe("true");
    await press(page, "t");
    await view(page).getByText("Written: one row in").waitFor();
    expect(await view(page).getByText("No sign is chosen.").count()).toBe(1);
    expect(await view(page).locator(".sign").first().getAttribute("data-sign")).not.toBe(fresh);
    expect(await view(page).locator(".sign:focus").count()).toBe(1);
    await view(page).getByRole("button", { name: "Take it back" }).focus();
    await press(page, "Enter");
    await view(page).getByText("Taken back.").waitFor();
    await expect.poll(() => view(page).locator(".sign").first().getAttribute("data-sign")).toBe(fresh);

    await view(page).locator(".sign").first().focus();
    await press(page, " ", "d");
    await page.locator("cellwright-pane h2", { hasText: "Handouts" }).waitFor();
    await expect
      .poll(() =>
        page
          .locator("cellwright-handouts")
          .getByLabel(/^Signs/)
          .inputValue(),
      )
      .toContain(fresh ?? "");
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it("hands the words that settle most to the view for reading aloud, and lists confused signs", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Signs");
    await sign(page, "ch").waitFor();
    await view(page).locator("summary", { hasText: "Confused signs" }).focus();
    await press(page, "Enter");
    expect(await axeFaults(page)).toEqual([]);
    await sign(page, "ch").focus();
    await press(page, " ");
    await view(page).getByRole("button", { name: "Find words that settle most" }).focus();
    await press(page, "Enter");
    await page.locator("cellwright-pane h2", { hasText: "Read aloud" }).waitFor();
    const text = page.locator("cellwright-reading textarea");
    await expect.poll(() => text.inputValue()).toMatch(/ch/);
    const words = (await text.inputValue()).split(" ");
    expect(words.length).toBeGreaterThan(5);
    expect(words.filter((word) => !word.includes("ch"))).toEqual([]);
    const again = page
      .locator("cellwright-reading")
      .getByRole("button", { name: "Find words that settle most" });
    await again.focus();
    await press(page, "Enter");
    await expect.poll(() => text.inputValue()).not.toBe(words.join(" "));
    expect(await axeFaults(page)).toEqual([]);
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it("fills the columns of the table with the states, and takes them back", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Signs");
    await sign(page, "a").waitFor();
    await view(page).getByRole("button", { name: "Write all states into the table" }).click();
    await view(page)
      .getByText(/^Written: the states of .+ signs in Taught\.$/)
      .waitFor();
    await view(page).getByRole("button", { name: "Take it back" }).click();
    await view(page).getByText("Taken back.").waitFor();
    await bench.context.close();
  });

  it("draws a kind as a picture, prints it in pages, saves it and puts it into the sheet", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Signs");
    await sign(page, "a").waitFor();
    await view(page).getByLabel("Kind").selectOption("Shortforms");
    await view(page).locator("summary", { hasText: "Picture of the signs listed" }).focus();
    await press(page, "Enter");
    const picture = view(page).locator(".sign-map svg");
    await picture.waitFor();
    expect(await picture.locator("title").textContent()).toMatch(/: shortforms on /);
    expect(await axeFaults(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    // The printer gets all of it: counted while its dialog would be open.
    await page.evaluate(() => {
      window.print = () => {
        document.title = `${document.querySelectorAll(".picture-page svg").length} pages`;
      };
    });
    await view(page).getByRole("button", { name: "Print" }).click();
    await expect.poll(() => page.title()).toBe("2 pages");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      view(page).getByRole("button", { name: "Save as SVG" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("signs.svg");
    await view(page).getByRole("button", { name: "Put in the sheet" }).click();
    await view(page).getByText("The signs are a table on the new sheet Signs1").waitFor();
    expect(await view(page).getByRole("button", { name: "Hear it" }).count()).toBe(0);
    await view(page).getByLabel("State").selectOption("mastered");
    await expect.poll(() => picture.count()).toBe(0);
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
    await openView(page, "Signs");
    await sign(page, "a").waitFor();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });
});
