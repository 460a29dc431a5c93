import { existsSync, readFileSync } from "node:fs";
import { extname } from "node:path";
import { pathToFileURL } from "node:url";
import { strToU8, unzipSync, zipSync } from "fflate";
import { chromium } from "playwright-core";
import type { Browser, Page } from "playwright-core";
import { newWorkbook } from "../../src/adapters/xlsx/new-workbook";
import type { BenchFigure } from "./figure";

const PROBES = 5000;
const PUPILS = 40;
const RUNS = 3;
const ORIGIN = "https://localhost:3443";
const SHEET = "xl/worksheets/sheet1.xml";
const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".woff2": "font/woff2",
};
const dist = new URL(process.env["CELLWRIGHT_DIST"] ?? "dist/", pathToFileURL(`${process.cwd()}/`));

const HEADINGS = ["Date", "Pupil", "Task", "Code", "Words", "Errors", "Seconds"];
const text = (column: number, row: number, value: string): string =>
  `<c r="${"ABCDEFG".charAt(column)}${row}" t="inlineStr"><is><t>${value}</t></is></c>`;

/** 5,000 probes of 40 pupils, a week between those of one pupil. */
const makeWorkbook = (): Buffer => {
  const rows = [`<row r="1">${HEADINGS.map((heading, column) => text(column, 1, heading)).join("")}</row>`];
  for (let place = 0; place < PROBES; place++) {
    const row = place + 2;
    const numbers = [40 + (place % 17) + Math.floor(place / 200), place % 5, 60];
    rows.push(
      `<row r="${row}"><c r="A${row}"><v>${45_400 + Math.floor(place / PUPILS) * 7}</v></c>` +
        text(1, row, `P${1 + (place % PUPILS)}`) +
        text(2, row, "read aloud") +
        text(3, row, "contracted") +
        numbers.map((value, at) => `<c r="${"EFG".charAt(at)}${row}"><v>${value}</v></c>`).join("") +
        "</row>",
    );
  }
  const parts = unzipSync(newWorkbook("Probes"));
  const sheet = new TextDecoder()
    .decode(parts[SHEET])
    .replace("<sheetData/>", `<sheetData>${rows.join("")}</sheetData>`);
  return Buffer.from(zipSync({ ...parts, [SHEET]: strToU8(sheet) }));
};

/** Watches in the page: from now until an element is drawn, looked for at every frame through the shadow roots. */
const WATCH = `
  globalThis.findDeep = (path) => path.reduce((from, one) => {
    const found = from && (from.shadowRoot ?? from).querySelector(one);
    return found;
  }, document);
  globalThis.timeUntil = (act, done) => new Promise((resolve) => {
    const start = performance.now();
    act();
    const look = () => (done() ? resolve(performance.now() - start) : requestAnimationFrame(look));
    look();
  });`;

async function openPage(browser: Browser): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, "showOpenFilePicker");
  });
  await page.addInitScript(WATCH);
  await page.route("**/*", async (route) => {
    const { pathname } = new URL(route.request().url());
    const file = new URL(`.${pathname}`, dist);
    if (!existsSync(file)) return route.fulfill({ status: 404, body: "" });
    await route.fulfill({
      body: readFileSync(file),
      contentType: TYPES[extname(pathname)] ?? "application/octet-stream",
    });
  });
  await page.goto(`${ORIGIN}/workbench.html`, { waitUntil: "load" });
  return page;
}

/** From the file in the page's hands until the first chart of the caseload is drawn. */
async function openTo(page: Page, workbook: Buffer): Promise<number> {
  // The functions bundle is asked for when the page loads: it is waited for, as a teacher choosing a file would.
  await page.waitForLoadState("networkidle");
  return page.evaluate(
    (bytes) =>
      timeUntil(
        () => {
          const transfer = new DataTransfer();
          transfer.items.add(
            new File([Uint8Array.from(atob(bytes), (one) => one.charCodeAt(0))], "bench.xlsx"),
          );
          document.dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, cancelable: true }));
        },
        () => findDeep(["cellwright-pane", "cellwright-caseload", ".line svg"]) !== null,
      ),
    workbook.toString("base64"),
  );
}

/** From the choice of another pupil until that pupil's trajectory is drawn; the first pupil is not counted. */
async function movePupil(page: Page): Promise<number> {
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Progress" }).click();
  await page.locator("cellwright-trajectory svg").first().waitFor();
  const times: number[] = [];
  for (const pupil of ["P7", "P21", "P33"]) {
    times.push(
      await page.evaluate((name) => {
        const list = findDeep(["cellwright-pane", ".heading select"]) as HTMLSelectElement;
        const path = ["cellwright-pane", "cellwright-progress", "cellwright-trajectory", "svg"];
        const before = findDeep(path);
        return timeUntil(
          () => {
            list.value = name;
            list.dispatchEvent(new Event("change", { bubbles: true }));
          },
          () => findDeep(path) !== before,
        );
      }, pupil),
    );
  }
  return median(times);
}

/** From the key until the page with the mark is painted: the slowest of thirty signs in the longest row. */
async function markSign(page: Page): Promise<number> {
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Signs named" }).click();
  const view = page.locator("cellwright-naming");
  await view.getByLabel("How many in the row").fill("180");
  await view.getByRole("button", { name: "Show the row" }).click();
  await view.locator('[role="option"]:focus').press("Enter");
  return timeMarks(page, "cellwright-naming", "c");
}

/** The same in a text of 1,000 words: a word is marked as misread, then the next is gone to. */
async function markWord(page: Page): Promise<number> {
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Read aloud" }).click();
  const view = page.locator("cellwright-reading");
  await view
    .getByLabel("The text, as the pupil has it")
    .fill("every child had the same thing to ask ".repeat(125));
  await view.getByRole("button", { name: "Show the words" }).click();
  await view.locator('[role="option"]:focus').press("Enter");
  return timeMarks(page, "cellwright-reading", "m");
}

/** The slowest of thirty marks, from the key to the painted page; the next item is gone to between them. */
const timeMarks = (page: Page, view: string, key: string): Promise<number> =>
  page.evaluate(
    async ([name, mark, marks]) => {
      const press = (option: Element | null, pressed: string) =>
        option?.dispatchEvent(new KeyboardEvent("keydown", { key: pressed, bubbles: true }));
      let slowest = 0;
      for (let turn = 0; turn < marks; turn++) {
        const option = findDeep(["cellwright-pane", name, '[role="option"][tabindex="0"]']);
        const start = performance.now();
        press(option, mark);
        await new Promise((resolve) =>
          requestAnimationFrame(() => {
            setTimeout(resolve);
          }),
        );
        const isMarked = option?.hasAttribute("data-mark") === true;
        slowest = Math.max(slowest, isMarked ? performance.now() - start : Infinity);
        if (option?.getAttribute("tabindex") === "0") press(option, "ArrowRight");
      }
      return slowest;
    },
    [view, key, 30] as const,
  );

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

/** How fast the pane shows 5,000 probes in the workbench; medians of three pages. */
export default async function run(): Promise<BenchFigure[]> {
  const workbook = makeWorkbook();
  const browser = await chromium.launch({
    executablePath: process.env["CELLWRIGHT_BROWSER"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  const opened: number[] = [];
  const moved: number[] = [];
  const marked: number[] = [];
  const markedWords: number[] = [];
  try {
    for (let turn = 0; turn < RUNS; turn++) {
      const page = await openPage(browser);
      opened.push(await openTo(page, workbook));
      moved.push(await movePupil(page));
      marked.push(await markSign(page));
      markedWords.push(await markWord(page));
      await page.close();
    }
  } finally {
    await browser.close();
  }
  const [open, move, mark, word] = [opened, moved, marked, markedWords].map(median) as [
    number,
    number,
    number,
    number,
  ];
  const against = "nothing: no other pane over a sheet is at hand";
  return [
    {
      name: `open ${PROBES} probes of ${PUPILS} pupils from a file, to the caseload's first chart`,
      value: open,
      unit: "ms",
      against,
      ratio: null,
      goal: "under 1,000 ms",
      met: open < 1000,
    },
    {
      name: "move to another of these pupils, to the trajectory drawn",
      value: move,
      unit: "ms",
      against,
      ratio: null,
      goal: "under 100 ms",
      met: move < 100,
    },
    {
      name: "mark a sign in a row of 180, key to painted page, slowest of 30",
      value: mark,
      unit: "ms",
      against,
      ratio: null,
      goal: "under 50 ms",
      met: mark < 50,
    },
    {
      name: "mark a word in a text of 1,000, key to painted page, slowest of 30",
      value: word,
      unit: "ms",
      against,
      ratio: null,
      goal: "under 50 ms",
      met: word < 50,
    },
  ];
}

declare global {
  function findDeep(path: readonly string[]): Element | null;
  function timeUntil(act: () => void, done: () => boolean): Promise<number>;
}
