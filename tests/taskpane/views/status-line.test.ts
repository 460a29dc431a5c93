import { beforeAll, describe, expect, it, vi } from "vitest";
import { StatusLine } from "../../../taskpane/views/status-line";

/** As much of an element as the line needs: these tests run without a page. */
beforeAll(() => {
  vi.stubGlobal("document", {
    createElement: () => ({ textContent: "", setAttribute: () => undefined, append: () => undefined }),
  });
});

const open = () => {
  let now = 50;
  const line = new StatusLine(() => now);
  return {
    line,
    text: () => line.element.textContent,
    pass: (seconds: number) => {
      now += 1000 * seconds;
    },
  };
};

describe("the pane's line of messages", () => {
  it("keeps a message over the readings of the next ten seconds, and no longer than the first after them", () => {
    const { line, text, pass } = open();
    line.say("Written: one row.");
    line.readWell();
    pass(9);
    line.readWell();
    expect(text()).toBe("Written: one row.");
    pass(1);
    expect(text()).toBe("Written: one row.");
    line.readWell();
    expect(text()).toBe("");
  });

  it("clears an old message where another view is opened, and keeps a new one", () => {
    const { line, text, pass } = open();
    line.say("Copied.");
    line.goOn();
    expect(text()).toBe("Copied.");
    pass(10);
    line.goOn();
    expect(text()).toBe("");
  });

  it("has one message give way to the next at once, which gets its own ten seconds", () => {
    const { line, text, pass } = open();
    line.say("One.");
    pass(8);
    line.say("Two.");
    pass(8);
    line.readWell();
    expect(text()).toBe("Two.");
  });

  it("takes a problem with reading away with the next good reading, and not before", () => {
    const { line, text, pass } = open();
    line.sayProblem("A cell is being edited. Press Enter.");
    pass(60);
    line.goOn();
    expect(text()).toBe("A cell is being edited. Press Enter.");
    line.readWell();
    expect(text()).toBe("");
  });

  it("counts the same words said again as said now", () => {
    const { line, text, pass } = open();
    line.say("Copied.");
    pass(9);
    line.say("Copied.");
    pass(9);
    line.readWell();
    expect(text()).toBe("Copied.");
  });
});
