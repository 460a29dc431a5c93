import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

type Cell = string | number | Date | null;
type Sheets = Readonly<Record<string, readonly (readonly Cell[])[]>>;

const makeFile = async (sheets: Sheets): Promise<Buffer> => {
  const book = new Workbook();
  for (const [name, rows] of Object.entries(sheets)) {
    const sheet = book.addWorksheet(name);
    for (const row of rows) sheet.addRow([...row]);
  }
  return Buffer.from(await book.xlsx.writeBuffer());
};

/** Opens a workbook as she would, and waits until the pane has read it. */
const openSheets = async (page: Page, sheets: Sheets): Promise<void> => {
  const buffer = await makeFile(sheets);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
  await chooser.setFiles({ name: "mine.xlsx", mimeType: "application/octet-stream", buffer });
  await page.getByRole("tab", { name: Object.keys(sheets)[0] ?? "" }).waitFor();
};

const VIEWS = [
  "Caseload",
  "Progress",
  "Signs",
  "What next",
  "Handouts",
  "Read aloud",
  "Signs named",
  "Report",
  "Workbook",
] as const;
const shown = (page: Page) => page.locator("cellwright-pane");
const day = (date: number): Date => new Date(Date.UTC(2026, 10, date));

describe("the views in a workbook", () => {
  it.each<{ name: string; sheets: Sheets; says: Partial<Record<(typeof VIEWS)[number], RegExp>> }>([
    {
      name: "without any table",
      sheets: { Letters: [["Dear parents,"], ["the trip is on Friday."]] },
      says: {
        Caseload: /No table of probes was found/,
        Progress: /No probes yet\. Open the sheet/,
        Signs: /The workbook has no pupil yet/,
        "What next": /The workbook has no pupil yet/,
        Report: /no pupil to report on yet/,
        Workbook: /No table of probes was found/,
      },
    },
    {
      name: "whose table has no dates",
      sheets: {
        Scores: [
          ["Pupil", "Words", "Errors", "Seconds"],
          ["Heron", 60, 2, 60],
          ["Plover", 40, 2, 60],
        ],
      },
      says: {
        Caseload: /name a column of dates Date/,
        Progress: /No probes yet/,
        Workbook: /No table of probes was found/,
      },
    },
    {
      name: "with one probe and no goal",
      sheets: {
        Probes: [
          ["Date", "Pupil", "Words", "Errors", "Seconds"],
          [day(20), "Heron", 60, 2, 60],
        ],
      },
      says: {
        Caseload: /Heron/,
        Progress: /no goal|No goal/,
        Signs: /Nothing is noted of this pupil's signs yet/,
        Report: /No goal is written down for this yet/,
      },
    },
  ])("$name say what to do, and nothing breaks", async ({ sheets, says }) => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openSheets(page, sheets);
    for (const title of VIEWS) {
      await openView(page, title);
      const words = says[title];
      if (words !== undefined) await shown(page).getByText(words).filter({ visible: true }).first().waitFor();
    }
    expect(await axeFaults(page)).toEqual([]);
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });

  it("take a pupil's name for text, whatever it looks like, and write it so", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    const names = ["<script>document.title='broken'</script>", "=1+1", "<img src=x onerror=alert(1)>"];
    await openSheets(page, {
      Probes: [
        ["Date", "Pupil", "Words", "Errors", "Seconds"],
        ...names.flatMap((name) => [20, 21, 22].map((date) => [day(date), name, 40 + date, 2, 60])),
      ],
    });
    for (const name of names) {
      await openView(page, "Progress");
      await shown(page).getByLabel("Pupil").first().selectOption(name);
      await page.locator("cellwright-trajectory .verdict", { hasText: name }).waitFor();
      await openView(page, "Report");
      await page.getByRole("heading", { name: `Progress report: ${name}` }).waitFor();
    }
    expect(await axeFaults(page)).toEqual([]);
    await openView(page, "Signs");
    await shown(page).getByLabel("Pupil").first().selectOption("=1+1");
    await page.locator('cellwright-signs .sign[data-sign="ch"] input').check();
    await page.locator("cellwright-signs").getByRole("button", { name: "Mark as taught" }).click();
    await page.locator("cellwright-signs").getByText("Written: one row in Taught").waitFor();
    await page.getByRole("tab", { name: "Taught" }).click();
    await page.getByRole("gridcell", { name: /=1\+1/ }).first().waitFor();
    expect(await page.title()).toContain("mine.xlsx");
    expect([bench.failures, bench.strangers]).toEqual([[], []]);
    await bench.context.close();
  });
});
