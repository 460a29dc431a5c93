import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { extname } from "node:path";
import { chromium } from "playwright-core";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";

export const ORIGIN = "https://localhost:3443";
/** What the server sends with the page: see config/serve.mjs. */
const CONTENT_POLICY = "default-src 'self'; img-src 'self' blob:";
const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".png": "image/png",
  ".woff2": "font/woff2",
};
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const dist = new URL(process.env["CELLWRIGHT_DIST"] ?? new URL("../../dist/", import.meta.url).href);

/** A workbench in a browser, with everything that must not happen written down. */
export interface OpenWorkbench {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses asked for outside the page's own origin. */
  readonly strangers: string[];
  /** Errors of the page, and what its content policy stopped. */
  readonly failures: string[];
}

/** Starts the browser that the tests share. */
export const startBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env["CELLWRIGHT_BROWSER"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });

/**
 * Opens the workbench from dist/ without any network. File dialogs cannot be answered by a test, so the page sees a
 * browser without them: it opens by a file field and saves by a download.
 *
 * @param path - such as `workbench.html?example=1`
 */
export async function openWorkbench(
  browser: Browser,
  path: string,
  look: BrowserContextOptions = {},
): Promise<OpenWorkbench> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    locale: "en-GB",
    ...look,
  });
  return openPage(context, path);
}

/** Opens another page of the same browser profile. */
export async function openPage(context: BrowserContext, path: string): Promise<OpenWorkbench> {
  const page = await context.newPage();
  const strangers: string[] = [];
  const failures: string[] = [];
  // Made known before any test presses a key, because the browser is told of it only then.
  page.on("filechooser", () => undefined);
  page.on("pageerror", (error) => failures.push(error.message));
  page.on("console", (message) => {
    if (/Content Security Policy/i.test(message.text())) failures.push(message.text());
  });
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, "showOpenFilePicker");
    Reflect.deleteProperty(window, "showSaveFilePicker");
  });
  await page.route("**/*", async (route) => {
    const { origin, pathname, protocol } = new URL(route.request().url());
    if (protocol === "blob:") return route.continue();
    if (origin !== ORIGIN) strangers.push(route.request().url());
    const file = new URL(`.${pathname}`, dist);
    if (origin !== ORIGIN || !existsSync(file)) return route.fulfill({ status: 404, body: "" });
    await route.fulfill({
      body: readFileSync(file),
      contentType: TYPES[extname(pathname)] ?? "application/octet-stream",
      headers: { "content-security-policy": CONTENT_POLICY },
    });
  });
  await page.goto(`${ORIGIN}/${path}`);
  return { page, context, strangers, failures };
}

/** Waits for a workbook to be shown, with the focus in its grid. */
export async function waitForGrid(page: Page): Promise<void> {
  await page.locator('[role="gridcell"]:focus').waitFor();
}

/** Chooses a view of the pane by its title; the focus goes to its heading. */
export async function openView(page: Page, title: string): Promise<void> {
  const views = page.getByRole("navigation", { name: "Views" });
  await views.getByRole("button", { name: title, exact: true }).click();
  await page.locator("cellwright-pane h2:focus", { hasText: title }).waitFor();
}

/** Has the pane show a pupil's series. */
export async function waitForTrajectory(page: Page): Promise<void> {
  await openView(page, "Progress");
  await page.locator("cellwright-trajectory svg").first().waitFor();
}

/** What a screen reader hears of the element with the focus: its name and what describes it. */
export const heardAtFocus = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { activeElement } = document;
    const name = activeElement?.getAttribute("aria-label") ?? activeElement?.textContent?.trim() ?? "";
    return [name, activeElement?.getAttribute("aria-description")].filter(Boolean).join(" — ");
  });

/** Waits until the live region has said something that contains these words. */
export async function waitForSaid(page: Page, words: string): Promise<void> {
  await page.locator("#speech", { hasText: words }).waitFor({ state: "attached" });
}

/** Presses keys one after the other; text after `type:` is typed. */
export async function press(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) {
    if (key.startsWith("type:")) await page.keyboard.type(key.slice("type:".length));
    else await page.keyboard.press(key);
  }
}

/** What axe finds wrong, a line each. */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: runner } = window as unknown as { axe: { run(): Promise<AxeResult> } };
    interface AxeResult {
      readonly violations: readonly {
        readonly id: string;
        readonly nodes: readonly { readonly html: string }[];
      }[];
    }
    const { violations } = await runner.run();
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`,
    );
  });
}
