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
  await page.locator("cellwright-caseload").waitFor();
  await page
    .getByRole("navigation", { name: "Views" })
    .getByRole("button", { name: "Progress", exact: true })
    .click();
  await page.locator("cellwright-trajectory svg").first().waitFor();
  return page;
}

async function goTo(page, cell) {
  await page.locator("#cell-place").fill(cell);
  await page.locator("#cell-place").press("Enter");
}

const pathOf = (name) => fileURLToPath(new URL(`../src/assets/pictures/${name}.png`, import.meta.url));
const save = (page, name) => page.screenshot({ path: pathOf(name) });

const sheet = await openExample({ width: 1280, height: 800 });
await save(sheet, "sheet-and-trajectory");
await sheet.getByRole("tab", { name: "Words and passages" }).click();
await goTo(sheet, "G7");
await sheet.locator("#command-pane").click();
await save(sheet, "sheet-functions");
await sheet.close();

const views = (page) => page.getByRole("navigation", { name: "Views" });
const openView = async (page, title) => {
  await views(page).getByRole("button", { name: title, exact: true }).click();
  await page.locator("cellwright-pane h2:focus").waitFor();
};

const dictation = await openExample({ width: 1280, height: 1100 });
await openView(dictation, "Heard and brailled");
const dictated = dictation.locator("cellwright-brailled");
await dictated.getByLabel(/^Words, sentences/).fill("the dog ran to the shore with her child");
await dictated.getByRole("button", { name: "Begin" }).click();
await dictated.getByLabel("Type with six keys").uncheck();
await dictated.getByLabel("What the pupil writes, in braille").fill("! FOG RAN TO ! %ORE ) H] *ILD");
await dictated.getByRole("button", { name: "Compare" }).click();
await dictated.getByRole("region", { name: "Read back as print" }).waitFor();
await dictation.getByRole("heading", { name: "Result" }).evaluate((heading) => heading.scrollIntoView());
await save(dictation, "writing-compared");
await dictation.close();

/** A picture of markup that was made for paper, on a sheet of its own. */
async function saveSheet(markup, name, width) {
  const page = await browser.newPage({ viewport: { width: 1000, height: 1400 }, deviceScaleFactor: 1 });
  await page.setContent(markup);
  await page.addStyleTag({
    content: `body { margin: 0; background: #fff } body > * { display: block; width: ${String(width)}px; height: auto }`,
  });
  await page
    .locator("body > *")
    .first()
    .screenshot({
      path: fileURLToPath(new URL(`../src/assets/pictures/${name}.png`, import.meta.url)),
    });
  await page.close();
}

/** Keeps what the page would print instead of printing it. */
const keepPrinted = (page) =>
  page.evaluate(() => {
    window.print = () => {
      window.printedPages = [...document.querySelectorAll(".print-area > *")].map((each) => each.outerHTML);
    };
  });
const printedPage = async (page) => {
  await page.waitForFunction(() => window.printedPages?.length > 0);
  return page.evaluate(() => window.printedPages[0]);
};

const week = await openExample({ width: 1280, height: 800 });
await openView(week, "Caseload");
await week.getByText("being worked out").first().waitFor({ state: "hidden" });
await save(week, "caseload");
await openView(week, "Signs");
await week.getByLabel("Pupil").first().selectOption("Dunlin");
await week.locator("cellwright-signs").getByText("ch", { exact: true }).first().waitFor();
await week
  .getByRole("heading", { name: "Signs", level: 3 })
  .last()
  .evaluate((heading) => heading.scrollIntoView());
await save(week, "signs");
await openView(week, "Read aloud");
await week.getByRole("button", { name: "Show the words" }).click();
await week.keyboard.press("Enter");
for (const key of "  m    t   s     c  o ") await week.keyboard.press(key === " " ? "ArrowRight" : key);
await save(week, "probe-running");
await openView(week, "Handouts");
await week.getByLabel("Signs to practise").fill("ea, ou");
await week.getByRole("button", { name: "Make the items" }).click();
await week
  .locator("cellwright-handouts")
  .getByText("items made")
  .or(week.getByText("items made"))
  .first()
  .waitFor();
await keepPrinted(week);
await week.getByRole("button", { name: "Print in true size" }).click();
await saveSheet(await printedPage(week), "printed-handout", 700);
await openView(week, "Report");
await week.setViewportSize({ width: 1280, height: 2400 });
await week.getByRole("region", { name: "The report" }).screenshot({ path: pathOf("report") });
await week.setViewportSize({ width: 1280, height: 800 });
await openView(week, "Progress");
await week.getByText("Feel it: a tactile graphic in braille").first().click();
await week.evaluate(() => {
  window.printedPages = [];
});
await week.getByRole("button", { name: "Print the sheets" }).first().click();
await saveSheet(await printedPage(week), "tactile-sheet", 700);
await week.close();

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
