import { describe, expect, it } from "vitest";
import { secondsOf, stageOf, startClock, stopClock, takeUpAgain } from "../../../taskpane/views/probe-time";
import { formatDraft, newDraft, parseDraft } from "../../../taskpane/views/reading-draft";

const task = {
  pupil: "Heron",
  title: "The ferry",
  text: "The ferry left at nine.",
  code: "contracted",
  medium: "braille",
  wait: 5,
};

describe("a reading probe in progress", () => {
  it("goes from ready to running to stopped, at a tenth of a second", () => {
    const ready = newDraft(task);
    const running = startClock(ready, 1_000);
    const stopped = stopClock(running, 41_260);
    expect([ready, running, stopped].map(stageOf)).toEqual(["ready", "running", "stopped"]);
    expect(secondsOf(running, 3_500)).toBe(2.5);
    expect(stopped.seconds).toBe(40.3);
    expect(secondsOf(stopped, 99_000)).toBe(40.3);
  });

  it("comes back as it was kept", () => {
    const draft = {
      ...startClock(newDraft(task), 1_000),
      notes: { marks: [{ word: 1, kind: "misread" as const, heard: "fairy" }], last: 3 },
    };
    expect(parseDraft(formatDraft(draft))).toEqual(draft);
  });

  it("does not count the time after a crash", () => {
    const running = { ...startClock(newDraft(task), 1_000), seen: 31_000 };
    const again = takeUpAgain(running);
    expect(stageOf(again)).toBe("stopped");
    expect(again.seconds).toBe(30);
    expect(takeUpAgain(newDraft(task))).toEqual(newDraft(task));
  });

  it("does not run backwards when the system's clock is set back", () => {
    expect(secondsOf(startClock(newDraft(task), 5_000), 1_000)).toBe(0);
  });

  it.each([
    ["nothing", undefined],
    ["no JSON", "{"],
    ["null", "null"],
    ["another thing", '{"task":{"pupil":"Heron"},"notes":{"marks":[]}}'],
    ["marks that are no list", JSON.stringify({ task, notes: { marks: 3 } })],
  ])("is undefined from %s", (_, text) => {
    expect(parseDraft(text)).toBeUndefined();
  });

  it("drops marks that it does not know", () => {
    const text = JSON.stringify({
      task,
      notes: { marks: [{ word: 1, kind: "sung" }, null, { word: 2, kind: "told" }] },
    });
    expect(parseDraft(text)?.notes.marks).toEqual([{ word: 2, kind: "told" }]);
  });
});
