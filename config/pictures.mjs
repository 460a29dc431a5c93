// npm run pictures: makes the README's pictures from the real page (build first).
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

ensureInstalled();
const { ensureBrowser, QUIET_FLAGS } = await import("./browser.mjs");
const { serve } = await import("./serve.mjs");
const { chromium } = await import("playwright-core");

const server = await serve();
const browser = await chromium.launch({ executablePath: ensureBrowser(), args: QUIET_FLAGS });

/** Opens the workbench on the example and waits until the chart is drawn. */
async function openExample(viewport, options = {}) {
  const page = await browser.newPage({ viewport, deviceScaleFactor: 1, ...options });
  await page.goto(`${server.address}workbench.html?example=1`);
  await page.locator("cellwright-trajectory svg").first().waitFor();
  return page;
}

async function goTo(page, cell) {
  await page.locator("#cell-place").fill(cell);
  await page.locator("#cell-place").press("Enter");
}

const save = (page, name) =>
  page.screenshot({ path: fileURLToPath(new URL(`../src/assets/pictures/${name}.png`, import.meta.url)) });

const sheet = await openExample({ width: 1280, height: 800 });
await save(sheet, "sheet-and-trajectory");
await sheet.getByRole("tab", { name: "Words and passages" }).click();
await goTo(sheet, "G7");
await sheet.locator("#command-pane").click();
await save(sheet, "sheet-functions");
await sheet.close();

const narrow = await openExample({ width: 320, height: 640 });
await narrow
  .locator("cellwright-trajectory svg")
  .first()
  .evaluate((chart) => chart.scrollIntoView({ block: "start" }));
await save(narrow, "narrow");
await narrow.close();

const found = await openExample({ width: 1280, height: 800 }, { colorScheme: "dark" });
await found.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Workbook" }).click();
await found.locator("cellwright-columns").evaluate((view) => {
  for (const details of view.shadowRoot?.querySelectorAll("details") ?? []) details.open = true;
});
await found.locator("cellwright-columns").scrollIntoViewIfNeeded();
await save(found, "found-columns");
await found.close();

await browser.close();
await server.close();
