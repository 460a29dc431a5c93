import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { extname } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openView } from "./workbench-page";
import { installExcelStub } from "./excel-stub";
import type { StubOptions, StubSheet } from "./excel-stub";

const ORIGIN = "https://localhost:3000";
const OFFICE = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
};
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const dist = new URL(process.env["CELLWRIGHT_DIST"] ?? new URL("../../dist/", import.meta.url).href);

const probes = (): StubSheet => ({
  name: "Probes",
  rows: [
    ["Date", "Pupil", "Words", "Errors", "Seconds", "Braille"],
    ...[62, 64, 63, 67, 70, 69, 74, 77].map((words, week) => [46300 + 7 * week, "Heron", words, 3, 60]),
    ["7/10/2026 or so", "Heron", 80, 3, 60, "#NAME?"],
  ],
  formulas: { "9,5": "=BRAILLE.TRANSLATE(B10)" },
  dateColumns: [0],
});

let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({
    executablePath: process.env["CELLWRIGHT_BROWSER"] ?? "/usr/bin/chromium",
  });
});
afterAll(() => browser.close());

/** Opens the pane without any network: dist/ answers for its origin, the stub for Microsoft's. */
async function openPane(
  options: Partial<StubOptions> | undefined,
  look: Parameters<Browser["newContext"]>[0] = {},
): Promise<{ page: Page; requests: string[]; failures: string[] }> {
  const context = await browser.newContext({ viewport: { width: 320, height: 800 }, ...look });
  const page = await context.newPage();
  const requests: string[] = [];
  const failures: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  page.on("pageerror", (error) => failures.push(error.message));
  await page.route("**/*", async (route) => {
    const { origin, pathname } = new URL(route.request().url());
    const file = new URL(`.${pathname}`, dist);
    if (origin !== ORIGIN || !existsSync(file)) return route.abort();
    await route.fulfill({
      body: readFileSync(file),
      contentType: TYPES[extname(pathname)] ?? "application/octet-stream",
    });
  });
  if (options) {
    await page.route(OFFICE, (route) => route.fulfill({ body: "", contentType: "text/javascript" }));
    const stub: StubOptions = { host: "Excel", supported: true, sheets: [probes()], ...options };
    await page.addInitScript(installExcelStub, stub);
  }
  await page.goto(`${ORIGIN}/taskpane.html`);
  return { page, requests, failures };
}

const axeFaults = async (page: Page): Promise<unknown> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const run = Reflect.get(Reflect.get(globalThis, "axe") as object, "run") as () => Promise<{
      violations: { id: string; nodes: { html: string }[] }[];
    }>;
    return (await run()).violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
  });
};

const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.skipIf(!existsSync(new URL("taskpane.html", dist)))("the task pane", () => {
  it("in Excel shows what was found and the trajectory, at 320 px", async () => {
    const { page, failures } = await openPane({});
    await openView(page, "Progress");
    const pupil = page.getByLabel("Pupil").first();
    await expect.poll(() => pupil.locator("option:checked").textContent()).toBe("Heron");
    await openView(page, "Workbook");
    expect(await page.locator("cellwright-columns h3").allTextContents()).toEqual([
      expect.stringContaining("Probes"),
    ]);
    expect(await overflow(page)).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
    expect(failures).toEqual([]);
    await page.context().close();
  });

  it.each<[string, Parameters<Browser["newContext"]>[0]]>([
    ["dark", { colorScheme: "dark" }],
    ["forced colours", { forcedColors: "active" }],
    ["400 % zoom of 1280 pixels", { viewport: { width: 320, height: 256 } }],
  ])("holds in %s", async (_, look) => {
    const { page } = await openPane({}, look);
    await openView(page, "Progress");
    await page.locator("cellwright-trajectory svg").waitFor();
    expect(await overflow(page)).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.context().close();
  });

  it("follows what is typed", async () => {
    const { page } = await openPane({});
    await openView(page, "Progress");
    const points = page.locator("cellwright-trajectory table tbody tr");
    await page.locator("cellwright-trajectory summary", { hasText: "All probes as a table" }).click();
    await expect.poll(() => points.count()).toBe(8);
    await page.evaluate(async () => {
      const type = Reflect.get(globalThis, "stubType") as (
        sheet: string,
        row: number,
        values: unknown[],
      ) => Promise<void>;
      await type("Probes", 9, [46356, "Heron", 80, 2, 60]);
    });
    await expect.poll(() => points.count()).toBe(9);
    await page.context().close();
  });

  it("leads by keyboard to the cell at fault, and keeps a correction in the workbook", async () => {
    const { page } = await openPane({});
    await openView(page, "Workbook");
    const jump = page.locator("cellwright-columns button", { hasText: "A10" }).first();
    await jump.focus();
    await page.keyboard.press("Enter");
    await expect
      .poll(() => page.evaluate(() => Reflect.get(globalThis, "stubSelected") as unknown))
      .toEqual(["Probes", 9, 0]);
    const words = page.locator("cellwright-columns select").nth(2);
    await page.locator("cellwright-columns summary").first().focus();
    await page.keyboard.press("Enter");
    await words.selectOption({ index: 1 });
    await expect
      .poll(() =>
        page.evaluate(() =>
          (Reflect.get(globalThis, "stubParts") as { xml: string }[]).map(({ xml }) => xml),
        ),
      )
      .toEqual([
        expect.stringContaining('<settings xmlns="urn:cellwright:settings:1"><setting key="columns">'),
      ]);
    await page.context().close();
  });

  it("enters formulas that show #NAME? again, says so, and keeps the focus on the button", async () => {
    const { page } = await openPane({});
    const button = page.getByRole("button", { name: "Enter the BRAILLE formulas again" });
    await button.focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator("#done").textContent()).toBe("One formula was entered again.");
    expect(await page.evaluate(() => Reflect.get(globalThis, "stubEntered") as unknown)).toEqual([
      ["=BRAILLE.TRANSLATE(B10)"],
    ]);
    expect(await button.evaluate((each) => each === document.activeElement)).toBe(true);
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator("#done").textContent()).toBe("No BRAILLE formula shows #NAME?.");
    await page.context().close();
  });

  it("keeps a row of signs that a protected sheet refuses, and says what to do", async () => {
    const { page, failures } = await openPane({ sheets: [{ ...probes(), isProtected: true }] });
    await openView(page, "Signs named");
    const view = page.locator("cellwright-naming");
    await view.getByLabel("How many in the row").fill("2");
    await view.getByRole("button", { name: "Show the row" }).press("Enter");
    await view.locator('[role="option"]:focus').waitFor();
    for (const key of ["Enter", "c", "n"]) await page.keyboard.press(key);
    await view.getByRole("button", { name: "Write into the workbook" }).press("Enter");
    await page.locator("cellwright-pane p.status", { hasText: "Take the protection off" }).waitFor();
    expect(await view.locator(".mark").allTextContents()).toEqual(["✓ correct", "✗ not correct"]);
    expect(await view.getByRole("button", { name: "Write into the workbook" }).isVisible()).toBe(true);
    expect(failures).toEqual([]);
    await page.context().close();
  });

  it("says in each view that the workbook is being read, while Excel has not answered", async () => {
    const { page, failures } = await openPane({ isSilent: true });
    for (const [title, words] of [
      ["Caseload", "The workbook is being read."],
      ["Progress", "Reading the probes of this workbook."],
      ["Signs", "Reading the workbook"],
      ["What next", "Reading the workbook"],
      ["Report", "Reading the workbook"],
    ] as const) {
      await openView(page, title);
      await page.getByText(words).filter({ visible: true }).first().waitFor();
    }
    expect(await axeFaults(page)).toEqual([]);
    expect(failures).toEqual([]);
    await page.context().close();
  });

  it("keeps the score typed where a protected sheet refuses it, and says what to do", async () => {
    const { page, failures } = await openPane({ sheets: [{ ...probes(), isProtected: true }] });
    await openView(page, "Caseload");
    const caseload = page.locator("cellwright-caseload");
    await caseload.getByRole("button", { name: "Type in a score" }).click();
    const typed = { pupil: "Heron", words: "61", errors: "2", seconds: "60" };
    const field = (name: string) => caseload.locator(`input[name="${name}"]`);
    for (const [name, value] of Object.entries(typed)) await field(name).fill(value);
    await caseload.getByRole("button", { name: "Write into the workbook" }).click();
    await page.locator("cellwright-pane p.status", { hasText: "Take the protection off" }).waitFor();
    for (const [name, value] of Object.entries(typed)) expect(await field(name).inputValue()).toBe(value);
    expect(failures).toEqual([]);
    await page.context().close();
  });

  it("asks nobody but its own origin and Microsoft's script", async () => {
    const { page, requests } = await openPane({});
    await openView(page, "Progress");
    await page.locator("cellwright-trajectory svg").waitFor();
    await page.waitForLoadState("networkidle");
    expect(requests.filter((url) => !url.startsWith(`${ORIGIN}/`))).toEqual([OFFICE]);
    await page.context().close();
  });

  it("asks for at most 150 kB of gzipped code until its first view is there, the braille engine aside", async () => {
    const { page, requests } = await openPane({});
    await page.locator("cellwright-caseload").waitFor();
    const code = new Set(requests.map((url) => new URL(url)).filter(({ origin }) => origin === ORIGIN));
    const scripts = [...code]
      .map(({ pathname }) => pathname)
      .filter((pathname) => pathname.endsWith(".js") && !pathname.includes("/liblouis/"));
    expect(scripts).toContain("/taskpane-caseload.js");
    const sizes = scripts.map((pathname) => gzipSync(readFileSync(new URL(`.${pathname}`, dist))).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(150_000);
    await page.context().close();
  });

  it.each<[string, Partial<StubOptions> | undefined, RegExp]>([
    ["without office.js", undefined, /belongs inside Excel/],
    ["in a plain browser", { host: null }, /belongs inside Excel/],
    ["in an Excel that is too old", { supported: false }, /too old.*ExcelApi 1\.9/],
  ])("%s says what to do and leads to the workbench", async (_, options, text) => {
    const { page } = await openPane(options);
    const outside = page.locator("#outside");
    await outside.waitFor();
    expect((await outside.textContent())?.replaceAll(/\s+/g, " ")).toMatch(text);
    expect(await page.getByRole("link", { name: "Open the workbench" }).getAttribute("href")).toBe(
      "workbench.html",
    );
    expect(await axeFaults(page)).toEqual([]);
    await page.context().close();
  });
});
