import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openView, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const status = (page: Page) => page.locator("cellwright-pane p[role=status].status");
const report = (page: Page) => page.getByRole("region", { name: "The report" });

const savedText = async (page: Page, name: string): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    (async () => {
      await page.getByRole("button", { name }).focus();
      await press(page, "Enter");
    })(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^report\.(txt|brf)$/);
  return readFileSync(await download.path(), "latin1");
};

/** Jargon and levels that a family is spared. */
const SPARED = /interval|%|frustration|trend|median|verdict|probe|p-value|slope/i;

describe("the report for family and team", () => {
  it("is read, added to, printed on one page, saved and copied by keyboard, and names one pupil only", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1");
    const { page } = bench;
    await waitForGrid(page);
    await openView(page, "Report");
    await page.getByLabel("Pupil").first().selectOption("Dunlin");
    await report(page).getByRole("heading", { name: "Progress report: Dunlin" }).waitFor();
    await report(page).locator("svg").waitFor();
    const headings = await report(page).locator("h4").allTextContents();
    expect(headings[0]).toBe("What Dunlin can do");
    expect(headings.at(-1)).toBe("Please keep in mind");
    const text = await report(page).innerText();
    expect(text).not.toMatch(SPARED);
    expect(text).not.toMatch(/Heron|Plover|Avocet/);
    expect(text).toContain("no diagnosis");
    expect(await axeFaults(page)).toEqual([]);

    await page.getByLabel("Your own sentences, if any").focus();
    await press(page, "type:Dunlin reads to Heron now.");
    await page.locator("cellwright-report p[role=alert]", { hasText: "Your sentences name Heron" }).waitFor();
    expect(await report(page).innerText()).not.toContain("Heron");
    await press(page, "Control+a", "type:=Dunlin reads menus alone <b>now</b>.");
    await report(page).getByText("=Dunlin reads menus alone <b>now</b>.").waitFor();

    expect(await savedText(page, "Save as text")).toContain("\nThe goal\nAs it is written:");
    const brf = await savedText(page, "Save in braille (.brf)");
    expect(brf).toContain(",MA*9E");
    const lines = brf.split("\r\n").map((line) => line.replace("\f", ""));
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(32);

    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as a document (.docx)" }).press("Enter"),
    ]);
    expect(file.suggestedFilename()).toBe("report.docx");
    const files = unzipSync(new Uint8Array(readFileSync(await file.path())));
    expect(strFromU8(files["word/document.xml"] ?? new Uint8Array())).toContain("Progress report: Dunlin");
    expect(Object.keys(files).filter((name) => name.endsWith(".png"))).toHaveLength(1);
    await status(page).filter({ hasText: "The document is saved." }).waitFor();

    // What is next names the signs that the view of signs has due for a check.
    const next = (await report(page).innerText()).split("What is next")[1] ?? "";
    await openView(page, "Signs");
    await page.locator("cellwright-signs").getByLabel("State").selectOption("check again");
    const due = page.locator("cellwright-signs .sign");
    const first = (await due.count()) > 0 ? await due.first().getAttribute("data-sign") : undefined;
    expect(next.includes("still known")).toBe(first !== undefined);
    if (first !== undefined) expect(next).toContain(first ?? "");
    await openView(page, "Report");

    // The dialog is held off; what would be printed is printed to a file.
    await page.evaluate(() => {
      window.print = () => {
        const sheet = document.querySelector(".print-area > div");
        const clone = sheet?.shadowRoot?.innerHTML ?? "";
        const styles = [...(sheet?.shadowRoot?.adoptedStyleSheets ?? [])]
          .flatMap((each) => [...each.cssRules])
          .map(({ cssText }) => cssText)
          .join("\n");
        const size = sheet instanceof HTMLElement ? sheet.style.getPropertyValue("--size") : "";
        (window as unknown as { printed: string }).printed =
          `<style>@page{size:210mm 297mm;margin:0}body{margin:0;--size:${size}}${styles}</style>${clone}`;
      };
    });
    await page.getByRole("button", { name: "Print", exact: true }).focus();
    await press(page, "Enter");
    await status(page).filter({ hasText: "Given to the printer." }).waitFor();
    const markup = await page.evaluate(() => (window as unknown as { printed: string }).printed);
    const sheet = await bench.context.newPage();
    await sheet.setContent(markup);
    const pdf = await sheet.pdf({ preferCSSPageSize: true });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
    expect(bench.failures).toEqual([]);
    expect(bench.strangers).toEqual([]);
    await bench.context.close();
  });

  it("stands narrow and large in forced colours, and says what to do where days are wrong or copying is refused", async () => {
    const bench = await openWorkbench(browser, "workbench.html?example=1", {
      viewport: { width: 320, height: 256 },
      forcedColors: "active",
      reducedMotion: "reduce",
    });
    const { page } = bench;
    await waitForGrid(page);
    await page.evaluate(() => {
      Object.defineProperty(navigator, "clipboard", { value: undefined });
      document.execCommand = () => false;
    });
    await openView(page, "Report");
    await page.getByLabel("Pupil").first().selectOption("Plover");
    await report(page).getByRole("heading", { name: "Progress report: Plover" }).waitFor();
    const alert = page.locator("cellwright-report p[role=alert]");
    await page.getByLabel("From", { exact: true }).fill("2030-01-01");
    await alert.filter({ hasText: "the first not after the last" }).waitFor();
    await page.getByLabel("From", { exact: true }).fill("2020-01-01");
    await page.getByRole("button", { name: "Copy" }).click();
    await alert.filter({ hasText: "clipboard is closed" }).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    const overflow = await page
      .locator("cellwright-report")
      .evaluate((view) => view.scrollWidth - view.clientWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });
});
