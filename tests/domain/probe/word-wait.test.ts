import { describe, expect, it } from "vitest";
import { noteWait, USUAL_WAIT, waitOfNote } from "../../../src/domain/probe/word-wait";
import type { Seconds } from "../../../src/domain/units";

describe("the wait kept with a probe", () => {
  it.each([
    [undefined, 3],
    ["", 3],
    ["tired today", 3],
    ["told after lunch", 3],
    ["Told after 5 s.", 5],
    ["tired; told after 10 seconds", 10],
    ["Told after 4,5 s", 4.5],
    ["told after 0 s", 3],
  ])("of the note %j is %d s", (note, wait) => {
    expect(waitOfNote(note)).toBe(wait);
  });

  it.each([
    ["", 5, "Told after 5 s."],
    ["tired", 5, "tired. Told after 5 s."],
    ["tired!", 4.5, "tired! Told after 4.5 s."],
    ["tired. Told after 5 s.", 8, "tired. Told after 8 s."],
    ["tired. Told after 5 s.", 3, "tired."],
  ])("is noted: %j, %d s", (note, wait, noted) => {
    expect(noteWait(note, wait as Seconds)).toBe(noted);
    expect(waitOfNote(noted)).toBe(wait);
  });

  it("is 3 s by print convention", () => {
    expect(USUAL_WAIT).toBe(3);
  });
});
