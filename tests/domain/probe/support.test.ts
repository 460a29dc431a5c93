import { describe, expect, it } from "vitest";
import { isSupported } from "../../../src/domain/probe/support";

describe("support", () => {
  it.each([
    undefined,
    "",
    "  ",
    "None",
    "no",
    "N",
    "0",
    "–",
    "Independent",
    "I",
    "unprompted",
    "no help.",
    "n/a",
  ])("%j means none", (support) => expect(isSupported(support)).toBe(false));
  it.each(["yes", "verbal prompt", "P", "hand over hand", "1", "full", "some help", "peer", "model"])(
    "%j means help",
    (support) => expect(isSupported(support)).toBe(true),
  );
});
