import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { heardAtFocus, openWorkbench, press, startBrowser, waitForGrid } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

it("is loaded in the page when a formula first needs it, from the page's own origin", async () => {
  const { page, context, strangers, failures } = await openWorkbench(browser, "workbench.html?example=1");
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await waitForGrid(page);
  expect(asked).not.toContain("/word-bank.bin");
  await press(page, "Control+g", "type:AZ1", "Enter");
  await press(page, 'type:=TEXTJOIN(" ",TRUE,BRAILLE.DRILL("ch","the",3))', "Enter", "ArrowUp");
  await expect
    .poll(() => heardAtFocus(page), { timeout: 20_000 })
    .toMatch(/^[a-z]*ch[a-z]* [a-z]*ch[a-z]* [a-z]*ch[a-z]*, formula, AZ1/);
  expect(asked.filter((path) => path === "/word-bank.bin")).toHaveLength(1);
  expect(strangers).toEqual([]);
  expect(failures).toEqual([]);
  await context.close();
});
