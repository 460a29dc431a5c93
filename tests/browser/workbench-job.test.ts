import { readFile } from "node:fs/promises";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { OpenWorkbench } from "./workbench-page";
import {
  heardAtFocus,
  openPage,
  openWorkbench,
  press,
  startBrowser,
  waitForGrid,
  waitForSaid,
  waitForTrajectory,
} from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const trajectoryText = (bench: OpenWorkbench) =>
  bench.page.locator("cellwright-trajectory").evaluate((view) => view.shadowRoot?.textContent ?? "");

/** Goes to a cell by its address, from the grid. */
const goTo = (bench: OpenWorkbench, address: string) =>
  press(bench.page, "Control+g", `type:${address}`, "Enter");

describe("the whole job by keyboard alone", () => {
  it("opens the example, types a probe, sees the new verdict, saves, reopens and finds it", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    const { page } = bench;
    await page.locator("#start-example").waitFor();
    await page.keyboard.press("Tab");
    while (!(await page.locator("#start-example:focus").count())) await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await waitForGrid(page);
    await waitForTrajectory(page);
    await page.getByLabel("Pupil").first().focus();
    await press(page, "type:Pl");
    await page.locator("cellwright-trajectory", { hasText: "Plover: words read correctly" }).waitFor();
    const before = await trajectoryText(bench);
    while (!(await page.locator('[role="gridcell"]:focus').count())) await page.keyboard.press("F6");

    await goTo(bench, "A5");
    await page.keyboard.press("Control+ArrowDown");
    const last = /A(\d+)$/.exec(await heardAtFocus(page))?.[1];
    await page.keyboard.press("ArrowDown");
    const row = Number(last) + 1;
    expect(await heardAtFocus(page)).toBe(`empty, A${String(row)}`);
    await press(page, "type:24/11/2026", "Tab");
    await waitForSaid(page, "Row added to table Progress");
    await press(page, "type:Plover", "Tab", "type:read aloud", "Tab", "type:The Fox and the Grapes", "Tab");
    await press(page, "Tab", "type:uncontracted", "Tab", "type:61", "Tab", "type:1", "Tab", "type:60", "Tab");
    await waitForSaid(page, "WCPM 60.0");
    expect(await heardAtFocus(page)).toContain(`60.0, formula, J${String(row)}`);
    await page.locator("cellwright-trajectory", { hasText: "latest 60 words a minute" }).waitFor();
    const after = await trajectoryText(bench);
    expect(after).not.toBe(before);
    expect(await page.locator("#file-state").innerText()).toMatch(/^\d+ edits not saved$/);

    const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    await waitForSaid(page, "Saved as example.xlsx");
    expect(await page.locator("#file-state").innerText()).toBe("Everything is saved");
    const saved = await readFile(await download.path());

    const again = await openPage(bench.context, "workbench.html");
    const [chooser] = await Promise.all([
      again.page.waitForEvent("filechooser"),
      again.page.keyboard.press("Control+o"),
    ]);
    await chooser.setFiles({ name: "mine.xlsx", mimeType: "application/octet-stream", buffer: saved });
    await waitForGrid(again.page);
    await goTo(again, `G${String(row)}`);
    expect(await heardAtFocus(again.page)).toBe(`61, G${String(row)}`);
    await press(again.page, "Control+f", "type:The Fox and the Grapes", "Enter");
    await waitForSaid(again.page, "match");
    await goTo(again, `E${String(row)}`);
    expect(await heardAtFocus(again.page)).toMatch(/^[⠀-⣿]+, formula, E/);
    expect([bench.strangers, bench.failures, again.strangers, again.failures]).toEqual([[], [], [], []]);
    await bench.context.close();
  });

  it("hears value, formula, address, errors and spill", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    const { page } = bench;
    await page.locator("#start-new").click();
    await waitForGrid(page);
    await press(page, "type:=SEQUENCE(12)", "Enter");
    await waitForSaid(page, "A1 gives 1. Filled 12 cells, A1 to A12.");
    expect(await heardAtFocus(page)).toBe("2, A2 — Filled by the formula in A1.");
    await press(page, "ArrowUp", "ArrowRight", "type:=BRAILLE.CELLS(5,", "Enter");
    expect(await page.locator("#message").innerText()).not.toBe("");
    expect(await page.locator(".grid-editor").inputValue()).toBe("=BRAILLE.CELLS(5,");
    await press(page, "Escape", 'type:=BRAILLE.TRANSLATE("children")', "Enter");
    await waitForSaid(page, "B1 gives ⠡⠝");
    await press(page, 'type:=BRAILLE.TRANSLATE("a","no such code")', "Enter");
    await waitForSaid(page, "B2 #VALUE!:");
    await press(page, "ArrowUp");
    expect(await heardAtFocus(page)).toMatch(/^#VALUE!, formula, B2 — .+/);
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });

  it("undoes, copies with adjusted formulas, fills down, inserts and deletes rows", async () => {
    const bench = await openWorkbench(browser, "workbench.html", {
      permissions: ["clipboard-read", "clipboard-write"],
    });
    const { page } = bench;
    await page.locator("#start-new").click();
    await waitForGrid(page);
    await press(page, "type:1", "Enter", "type:2", "Enter", "type:3", "Enter");
    await goTo(bench, "B1");
    await press(page, "type:=A1*10", "Enter");
    await press(page, "ArrowUp", "Control+c", "ArrowDown", "Control+v");
    await waitForSaid(page, "Pasted into B2.");
    expect(await heardAtFocus(page)).toBe("20, formula, B2");
    await press(page, "ArrowDown", "Control+d");
    expect(await heardAtFocus(page)).toBe("30, formula, B3");
    await goTo(bench, "A2");
    await press(page, "Control+i");
    await waitForSaid(page, "1 row inserted");
    await goTo(bench, "B4");
    expect(await heardAtFocus(page)).toBe("30, formula, B4");
    expect(await page.locator("#cell-contents").inputValue()).toBe("=A4*10");
    await goTo(bench, "A2");
    await press(page, "Control+Delete", "Control+z", "Control+z");
    await goTo(bench, "B3");
    expect(await page.locator("#cell-contents").inputValue()).toBe("=A3*10");
    await press(page, "Control+z");
    expect(await heardAtFocus(page)).toBe("empty, B3");
    await bench.context.close();
  });
});

describe("nothing is lost", () => {
  const typeSomething = async (bench: OpenWorkbench): Promise<void> => {
    await bench.page.locator("#start-new").click();
    await waitForGrid(bench.page);
    await press(bench.page, "type:Heron", "Enter", "type:84", "Enter");
  };

  it("asks before another workbook takes the place of unsaved edits", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    const { page } = bench;
    await typeSomething(bench);
    await page.locator("#command-new").click();
    await page.locator("dialog[open]", { hasText: "edits that are not saved" }).waitFor();
    await page.keyboard.press("Escape");
    await goTo(bench, "A2");
    expect(await heardAtFocus(page)).toBe("84, A2");
    await bench.context.close();
  });

  it("warns before the window is closed", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    await typeSomething(bench);
    const [dialog] = await Promise.all([
      bench.page.waitForEvent("dialog"),
      bench.page.close({ runBeforeUnload: true }),
    ]);
    expect(dialog.type()).toBe("beforeunload");
    await dialog.accept();
    await bench.context.close();
  });

  it("offers what was typed after a crash", async () => {
    const bench = await openWorkbench(browser, "workbench.html");
    await typeSomething(bench);
    await bench.page.waitForTimeout(1500);
    await bench.page.close({ runBeforeUnload: false });
    const again = await openPage(bench.context, "workbench.html");
    await again.page.getByRole("button", { name: "Bring it back: New workbook.xlsx" }).click();
    await waitForGrid(again.page);
    await goTo(again, "A2");
    expect(await heardAtFocus(again.page)).toBe("84, A2");
    expect(await again.page.locator("#file-state").innerText()).toBe("Not saved yet");
    await bench.context.close();
  });

  it.each([
    ["a file that is not a workbook", Buffer.from("Dear diary"), "notes.xlsx"],
    ["an empty file", Buffer.alloc(0), "empty.xlsx"],
    ["an encrypted or old workbook", Buffer.from("d0cf11e0a1b11ae1", "hex"), "locked.xlsx"],
  ])("says why it does not open %s, and keeps what is open", async (_, buffer, name) => {
    const bench = await openWorkbench(browser, "workbench.html");
    const { page } = bench;
    await page.locator("#start-new").click();
    await waitForGrid(page);
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
    await chooser.setFiles({ name, mimeType: "application/octet-stream", buffer });
    await page.locator("#message", { hasText: `${name} was not opened:` }).waitFor();
    expect(await page.locator("#file-name").innerText()).toBe("New workbook.xlsx");
    expect(bench.failures).toEqual([]);
    await bench.context.close();
  });
});
