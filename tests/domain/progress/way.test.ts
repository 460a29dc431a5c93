import { describe, expect, it } from "vitest";
import { wayOf } from "../../../src/domain/progress/way";

describe("whether a task is read or written (common practice, no source)", () => {
  it.each([
    { task: "read aloud", way: "reading" },
    { task: "signs named", way: "reading" },
    { task: "braille reading", way: "reading" },
    { task: "heard and brailled", way: "writing" },
    { task: "Copied", way: "writing" },
    { task: "dictation", way: "writing" },
    { task: "Spelling", way: "writing" },
    { task: "", way: "reading" },
  ])("$task: $way", ({ task, way }) => {
    expect(wayOf({ task })).toBe(way);
  });

  it("goes by the medium where the task does not tell", () => {
    expect(wayOf({ medium: "braillewriter" })).toBe("writing");
    expect(wayOf({ medium: "slate" })).toBe("writing");
    expect(wayOf({ medium: "display" })).toBe("reading");
  });
});
