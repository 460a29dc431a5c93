import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const view = (page: Page) => page.locator("cellwright-brailled");
const status = (page: Page) => page.locator("cellwright-pane p[role=status].status");
const field = (page: Page) => view(page).getByLabel("What the pupil writes, in braille");
const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Presses the keys of each cell together, such as `SDF J _`. */
async function braille(page: Page, chords: string): Promise<void> {
  for (const chord of chords.split(" ")) {
    const keys = [...chord].map((key) => (key === "_" ? "Space" : `Key${key}`));
    for (const key of keys) await page.keyboard.down(key);
    for (const key of keys) await page.keyboard.up(key);
  }
}

/** The text is typed; the focus is in the field. */
async function begin(page: Page, text: string, code = "contracted"): Promise<void> {
  await openView(page, "Heard and brailled");
  await page.getByLabel("Pupil").first().selectOption("Dunlin");
  await view(page).getByLabel("Code").selectOption(code);
  await view(page)
    .getByLabel(/^Words, sentences/)
    .fill(text);
  await view(page).getByRole("button", { name: "Begin" }).press("Enter");
  await expect.poll(() => field(page).evaluate((one) => one.matches(":focus"))).toBe(true);
}

describe("heard and brailled", () => {
  it("is dictated, typed with six keys, taken up after a crash, compared and written by keyboard alone", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Heard and brailled");
    expect(await axeFaults(page)).toEqual([]);
    await view(page)
      .getByLabel(/^Timed/)
      .check();
    await begin(page, "the dog");
    await press(page, "Control+Enter");
    await view(page).getByText("1 of 2: the", { exact: true }).waitFor();
    // No voice here: a screen reader says the word.
    expect(await status(page).textContent()).toBe("the");
    await press(page, "Control+Enter", "Control+Enter");
    await view(page).getByText("All words are said.").waitFor();
    // ⠮ ⠀ ⠋ (for d) ⠕ ⠛, with a slip of the hand that Backspace takes out; g and a type nothing.
    await view(page).getByLabel("Of each cell say").selectOption("print");
    await field(page).focus();
    await braille(page, "DSJL _ FDJ FSK F");
    expect(await status(page).textContent()).toBe("a");
    await press(page, "Backspace", "g", "a");
    await braille(page, "FDJK");
    expect(await field(page).inputValue()).toBe("⠮⠀⠋⠕⠛");
    expect(await axeFaults(page)).toEqual([]);
    await page.waitForTimeout(1100);

    await page.reload();
    await waitForGrid(page);
    await openView(page, "Heard and brailled");
    await expect.poll(() => field(page).inputValue()).toBe("⠮⠀⠋⠕⠛");
    // Nothing is trapped: Tab goes on from the field.
    await field(page).focus();
    await press(page, "Tab");
    expect(
      await view(page)
        .getByLabel("Type with six keys")
        .evaluate((one) => one.matches(":focus")),
    ).toBe(true);
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).locator("h4:focus", { hasText: "Result" }).waitFor();
    await view(page).getByLabel("Seconds", { exact: true }).fill("30");
    await press(page, "Tab");
    expect(await view(page).locator("ul").first().locator("li").allTextContents()).toEqual([
      "Four cells right of 5 expected, 80 %.",
      "1 changed.",
      expect.stringMatching(/^Dots right: [\d.]+ %\.$/),
      "8 cells right a minute, in 30 seconds.",
    ]);
    expect(await view(page).locator("tbody tr").innerText()).toBe(
      "1: cell 3\tdots 145\tdots 124\treversal\td",
    );
    await view(page).getByRole("region", { name: "Read back as print" }).getByText("the fog").waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByRole("button", { name: "Write into the workbook" }).press("Enter");
    await status(page).filter({ hasText: "Written: one row in Progress" }).waitFor();
    expect(bench.failures).toEqual([]);
    expect(bench.strangers).toEqual([]);
    await bench.context.close();
  });

  it("takes pasted braille and a braille file, refuses others, turns a slate's cells, and shows both readings", async () => {
    const { page, context, failures } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await begin(page, "ch, d, ing", "signs");
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).getByRole("alert").filter({ hasText: "Nothing is written yet" }).waitFor();
    const file = view(page).getByLabel(/^Or from a braille file/);
    const load = (contents: string) =>
      file.setInputFiles({ name: "a.brf", mimeType: "text/plain", buffer: Buffer.from(contents) });
    await load("½ no braille ½");
    await view(page).getByRole("alert").filter({ hasText: "no braille file" }).waitFor();
    await load("*\r\nD\r\n+\f");
    await expect.poll(() => field(page).inputValue()).toBe("⠡\n⠙\n⠬");
    await view(page)
      .getByLabel(/^Cells as a slate/)
      .check();
    await view(page).getByText("As it is read: ⠌").waitFor();
    await view(page)
      .getByLabel(/^Cells as a slate/)
      .uncheck();
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).getByText("Three cells right of 3 expected, 100 %.").waitFor();
    await view(page).getByRole("button", { name: "Leave this writing" }).click();
    await view(page)
      .getByRole("button", { name: /will be lost/ })
      .click();

    // ASCII braille as it stands; its cells are those of more than one print text.
    await begin(page, "yrs");
    await view(page).getByLabel("Type with six keys").uncheck();
    await field(page).fill(",YRS");
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).locator("h4:focus", { hasText: "Result" }).waitFor();
    const readings = view(page).getByRole("region", { name: "Read back as print" });
    await readings.waitFor();
    expect(await readings.innerText()).toMatch(/ or /);
    expect(failures).toEqual([]);
    await context.close();
  });

  it("lets the clock run on where nothing can be compared", async () => {
    const { page, context } = await openWorkbench(browser, "workbench.html?example=1");
    await waitForGrid(page);
    await openView(page, "Heard and brailled");
    await view(page)
      .getByLabel(/^Timed/)
      .check();
    await begin(page, "the dog");
    await view(page).getByLabel("Type with six keys").uncheck();
    await field(page).fill("½");
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).getByRole("alert").filter({ hasText: "½" }).waitFor();
    const seconds = await view(page).getByRole("timer").textContent();
    await expect.poll(() => view(page).getByRole("timer").textContent(), { timeout: 4000 }).not.toBe(seconds);
    await field(page).fill("! DOG");
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).locator("h4:focus", { hasText: "Result" }).waitFor();
    const stopped = await view(page).getByRole("timer").textContent();
    await page.waitForTimeout(1500);
    expect(await view(page).getByRole("timer").textContent()).toBe(stopped);
    await context.close();
  });

  it("speaks by a voice of this computer alone", async () => {
    const { page, context, strangers } = await openWorkbench(browser, "workbench.html");
    await page.addInitScript(() => {
      const said: string[] = [];
      Object.assign(globalThis, { said });
      const voice = (name: string, localService: boolean) => ({ name, localService, lang: "en-GB" });
      class Utterance {
        voice: { name: string } | undefined;
        constructor(readonly text: string) {}
      }
      Object.defineProperty(globalThis, "SpeechSynthesisUtterance", { value: Utterance });
      Object.defineProperty(globalThis, "speechSynthesis", {
        value: {
          getVoices: () => [voice("far", false), voice("near", true)],
          addEventListener: () => undefined,
          cancel: () => undefined,
          speak: (one: Utterance) => said.push(`${one.voice?.name ?? ""}: ${one.text}`),
        },
      });
    });
    await page.goto("https://localhost:3443/workbench.html?example=1");
    await waitForGrid(page);
    await begin(page, "the dog");
    expect(await view(page).getByText("no voice of its own").isVisible()).toBe(false);
    await press(page, "Control+Enter", "Control+Enter", "Control+Shift+Enter");
    expect(await page.evaluate(() => (globalThis as unknown as { said: string[] }).said)).toEqual([
      "near: the",
      "near: dog",
      "near: dog",
    ]);
    expect(strangers).toEqual([]);
    await context.close();
  });

  it.each([
    ["320 px", { viewport: { width: 320, height: 640 } }],
    ["400 % zoom", { viewport: { width: 320, height: 256 } }],
    ["forced colours and reduced motion", { forcedColors: "active", reducedMotion: "reduce" }],
  ] as const)("holds at %s", async (_, look) => {
    const { page, context, failures } = await openWorkbench(browser, "workbench.html?example=1", look);
    await waitForGrid(page);
    await begin(page, "the dog ran");
    await braille(page, "DSJL _ FDJ FSK");
    expect(await axeFaults(page)).toEqual([]);
    await view(page).getByRole("button", { name: "Compare" }).press("Enter");
    await view(page).locator("h4:focus", { hasText: "Result" }).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    // "ran" is left out; of the cells that are right none has a box, in forced colours neither.
    const boxes = await view(page)
      .locator(".pair")
      .evaluateAll((pairs) =>
        pairs.map((pair) => [pair.matches(".wrong"), getComputedStyle(pair).borderTopStyle !== "none"]),
      );
    expect(boxes.some(([isWrong]) => isWrong === true)).toBe(true);
    expect(boxes.filter(([isWrong, isBoxed]) => isWrong !== isBoxed)).toEqual([]);
    expect(failures).toEqual([]);
    await context.close();
  });
});
