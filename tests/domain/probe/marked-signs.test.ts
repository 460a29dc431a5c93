import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CONTRACTIONS } from "../../../src/domain/contraction/inventory";
import { LETTERS } from "../../../src/domain/contraction/sign";
import {
  formatSignMarks,
  formatSigns,
  readMarkedSigns,
  SIGN_MARKS,
} from "../../../src/domain/probe/marked-signs";

const read = (expected: string, response: string, isWriting = false): string | undefined =>
  readMarkedSigns(expected, response, isWriting)
    ?.map(({ sign, mark }) => `${sign.name}: ${mark}`)
    .join("; ");

describe("a row of signs with its marks", () => {
  it.each([
    ["as the pane writes it", "ch, sh", "✓, ✗", "ch: correct; sh: incorrect"],
    ["in words", "ch, sh", "prompted, no response", "ch: prompted; sh: no response"],
    ["as a run", "ch sh the", "+-P", "ch: correct; sh: incorrect; the: prompted"],
    ["parted by spaces", "ch sh the", "✓ NR ✗", "ch: correct; sh: no response; the: incorrect"],
    ["ended early", "ch, sh, the", "✓, ✗", "ch: correct; sh: incorrect"],
    ["with one absent", "ch, sh, the", "✓, A, ✗", "ch: correct; the: incorrect"],
    ["of one sign", "full stop", "✓", "full stop: correct"],
  ])("is read %s", (_, expected, response, marked) => {
    expect(read(expected, response)).toBe(marked);
  });

  it.each([
    ["no signs", "a ferry", "✓, ✗", false],
    ["more marks than signs", "ch", "✓, ✗", false],
    ["a word that is no mark", "ch, sh", "✓, shop", false],
    ["nothing", "ch, sh", " ", false],
    ["letters that may be ASCII braille", "c, a, x", "c a x", true],
  ])("is none with %s", (_, expected, response, isWriting) => {
    expect(read(expected, response, isWriting)).toBeUndefined();
  });

  const item = fc.record({
    sign: fc.constantFrom(...LETTERS, ...CONTRACTIONS),
    mark: fc.constantFrom(...SIGN_MARKS),
  });
  it("is read as it was written, and never looks like a formula", () => {
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 30 }), fc.boolean(), (items, isWriting) => {
        const expected = formatSigns(items.map(({ sign }) => sign));
        const response = formatSignMarks(items.map(({ mark }) => mark));
        const again = readMarkedSigns(expected, response, isWriting);
        expect(again?.map(({ sign, mark }) => [sign.name, mark])).toEqual(
          items.map(({ sign, mark }) => [sign.name, mark]),
        );
        expect(response).not.toMatch(/^[=+\-@]/);
      }),
    );
  });
});
