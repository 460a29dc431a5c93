import { describe, expect, it } from "vitest";
import { parseSignItems } from "../../../src/domain/contraction/taught";

describe("items that are signs", () => {
  it.each([
    [
      ["ch", "sh"],
      ["ch", "sh"],
    ],
    [["ch, sh\nch"], ["ch", "sh", "ch"]],
    [["ch sh th"], ["ch", "sh", "th"]],
    [
      ["full stop", "number sign, b"],
      ["full stop", "number sign", "b"],
    ],
    [
      ["in", "in groupsign"],
      ["in wordsign", "in groupsign"],
    ],
    [
      ["-ing", "CON-"],
      ["ing", "con"],
    ],
    [["", " "], []],
  ])("%j", (cells, names) => {
    const items = parseSignItems(cells);
    expect(items.ok && items.value.map(({ name }) => name)).toEqual(names);
  });

  it("that are none are named", () => {
    expect(parseSignItems(["ch, qz", "xq th"])).toMatchObject({
      ok: false,
      fault: { code: "unknown-signs", message: expect.stringMatching(/“qz”, “xq” are not signs/) as string },
    });
  });
});
