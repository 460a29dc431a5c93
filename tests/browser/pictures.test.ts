import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFaults, openWorkbench, startBrowser, waitForGrid, waitForTrajectory } from "./workbench-page";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const trajectory = (page: Page) => page.locator("cellwright-trajectory");
const mastery = (page: Page) => page.locator("cellwright-mastery");
const unfold = (page: Page, name: RegExp) => trajectory(page).locator("summary", { hasText: name }).click();

async function openProgress(look: Parameters<typeof openWorkbench>[2] = {}) {
  const bench = await openWorkbench(browser, "workbench.html?example=1", look);
  await waitForGrid(bench.page);
  await waitForTrajectory(bench.page);
  return bench;
}

describe("the pictures of a pupil's progress", () => {
  it.each([
    { about: "at 1280 px", look: {} },
    { about: "at 320 px", look: { viewport: { width: 320, height: 900 } } },
    { about: "in forced colours", look: { forcedColors: "active" } },
  ] as const)("unfold everything $about: axe finds nothing, nothing leaves the page", async ({ look }) => {
    const { page, context, strangers, failures } = await openProgress(look);
    await mastery(page).locator("svg").first().waitFor();
    await unfold(page, /All series/);
    await trajectory(page).locator(".multiples svg").first().waitFor();
    await unfold(page, /Hear it/);
    await trajectory(page).locator(".player").waitFor();
    await unfold(page, /Feel it/);
    await trajectory(page).locator(".proof svg").first().waitFor();
    expect(await axeFaults(page)).toEqual([]);
    expect(strangers).toEqual([]);
    expect(failures).toEqual([]);
    const wider = await trajectory(page).evaluate((view) => view.scrollWidth - view.clientWidth);
    expect(wider).toBeLessThanOrEqual(0);
    await context.close();
  });

  it("play a chart by the arrow keys and say each point", async () => {
    const { page, context, failures } = await openProgress();
    await unfold(page, /Hear it/);
    const player = trajectory(page).locator(".player");
    await player.focus();
    await page.keyboard.press("ArrowRight");
    await trajectory(page)
      .locator(".said", { hasText: /\d{4}, [\d.]+/ })
      .waitFor();
    expect(failures).toEqual([]);
    await context.close();
  });

  it("save as SVG and PNG without the pupil's name, and tactile sheets for an embosser", async () => {
    const { page, context } = await openProgress();
    const save = async (button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> => {
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        trajectory(page).getByRole("button", { name: button }).click(),
      ]);
      return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
    };
    const svg = await save("Save as SVG");
    expect(svg.name).toBe("progress.svg");
    expect(svg.bytes.toString("utf8")).toMatch(/^<\?xml[^]*<svg[^]*fill="#ffffff"/);
    expect(svg.bytes.toString("utf8")).not.toContain("currentColor");
    const png = await save("Save as PNG");
    expect(png.name).toBe("progress.png");
    expect([...png.bytes.subarray(1, 4)]).toEqual([..."PNG"].map((letter) => letter.charCodeAt(0)));
    await unfold(page, /Feel it/);
    await trajectory(page).locator(".proof svg").first().waitFor();
    const brf = await save("Save for an embosser (.brf)");
    expect(brf.name).toBe("tactile-chart.brf");
    expect(brf.bytes.toString("latin1")).toMatch(/^[\x20-\x5f\r\n\f]+$/);
    await context.close();
  });

  it("go into the sheet with their numbers", async () => {
    const { page, context } = await openProgress();
    await trajectory(page).getByRole("button", { name: "Put in the sheet" }).click();
    await trajectory(page).getByRole("status").filter({ hasText: "on the new sheet Chart1" }).waitFor();
    const tabs = page.getByRole("tab", { name: /^Chart/ });
    await tabs.waitFor();
    await page.getByRole("button", { name: "Caseload", exact: true }).click();
    await page
      .locator("cellwright-caseload")
      .getByText("4 pupils;")
      .or(page.getByText("Four pupils;"))
      .waitFor();
    await waitForTrajectory(page);
    await trajectory(page).getByRole("button", { name: "Take it back" }).click();
    await trajectory(page).getByText("Taken back.").waitFor();
    expect(await tabs.count()).toBe(0);

    await mastery(page).getByRole("button", { name: "Put in the sheet" }).click();
    await mastery(page).getByText("on the new sheets Chart1 and Chart2").waitFor();
    await mastery(page).getByRole("button", { name: "Take it back" }).click();
    await mastery(page).getByText("Taken back.").waitFor();
    expect(await tabs.count()).toBe(0);

    await unfold(page, /All series/);
    const count = await trajectory(page).locator(".multiples svg").count();
    await trajectory(page)
      .getByRole("button", { name: /^Put (all|the|it) .*in the sheet$/ })
      .click();
    await trajectory(page)
      .getByRole("status")
      .filter({ hasText: `${Math.min(12, count)} charts, their numbers and descriptions` })
      .waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it("change to a ratio scale and back, and to another series from the small pictures", async () => {
    const { page, context } = await openProgress();
    const scale = trajectory(page).getByLabel("Scale");
    await scale.selectOption("ratio");
    await trajectory(page).locator("li", { hasText: "Ratio scale: equal heights" }).waitFor();
    await unfold(page, /All series/);
    const buttons = trajectory(page).locator(".multiples button");
    await buttons.last().focus();
    await page.keyboard.press("Enter");
    expect(await trajectory(page).evaluate((view) => view.shadowRoot?.activeElement?.tagName)).toBe("SELECT");
    await context.close();
  });
});
