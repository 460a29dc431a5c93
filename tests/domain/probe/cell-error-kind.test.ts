import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellOf } from "../../../src/domain/braille/cell";
import {
  compareDots,
  countDifferentDots,
  countDots,
  nameCellChange,
} from "../../../src/domain/probe/cell-error-kind";
import pairs from "../../check-values/letter-pairs.json";

const cell = (dots: string): string => cellOf([...dots].map(Number));

const KIND_OF: Readonly<Record<string, string>> = {
  mirror_left_right: "reversal",
  flip_top_bottom: "inversion",
  added_one_dot: "added dot",
  missed_one_dot: "missed dot",
};

describe("the name of what happened to a cell", () => {
  const rows = pairs.rows.map(([shown, dots, readAs, others, differ, relation]) => ({
    shown: String(shown),
    dots: String(dots),
    readAs: String(readAs),
    others: String(others),
    differ: Number(differ),
    relation: String(relation),
  }));

  it.each(rows.filter(({ relation }) => relation !== ""))(
    "$shown written $readAs: $relation",
    ({ dots, others, differ, relation }) => {
      expect(nameCellChange(cell(dots), cell(others))).toBe(KIND_OF[relation]);
      expect(countDifferentDots(cell(dots), cell(others))).toBe(differ);
    },
  );

  it.each(rows.filter(({ relation }) => relation === ""))(
    "$shown written $readAs: none of these four",
    ({ dots, others, differ }) => {
      const kind = nameCellChange(cell(dots), cell(others));
      expect(["reversal", "inversion"]).not.toContain(kind);
      if (kind === "missed dot" || kind === "added dot") expect(differ).toBeGreaterThan(1);
    },
  );

  /** The pairs that the project's shared page names. */
  it.each([
    ["d", "145", "f", "124", "reversal"],
    ["e", "15", "i", "24", "reversal"],
    ["h", "125", "j", "245", "reversal"],
    ["r", "1235", "w", "2456", "reversal"],
    ["m", "134", "u", "136", "inversion"],
    ["n", "1345", "z", "1356", "inversion"],
    ["p", "1234", "v", "1236", "inversion"],
  ])("%s and %s, both ways", (_one, dots, _other, others, kind) => {
    expect(nameCellChange(cell(dots), cell(others))).toBe(kind);
    expect(nameCellChange(cell(others), cell(dots))).toBe(kind);
  });

  it.each([
    ["b as bb", "12", "23", "one row lower"],
    ["h as lower h", "125", "236", "one row lower"],
    ["g as lower g, which is its inversion too", "1245", "2356", "one row lower"],
    ["en as e", "26", "15", "one row higher"],
    ["bb as b", "23", "12", "one row higher"],
    ["ch as st, mirror image and upside down at once", "16", "34", "reversal"],
    ["q as a: four dots missed", "12345", "1", "missed dot"],
    ["a as a full cell", "1", "123456", "added dot"],
    ["d as j: turned within the upper four dots", "145", "245", "one cell for another"],
    ["a cell for a blank", "", "1", "one cell for another"],
    ["a blank for a cell", "1", "", "one cell for another"],
    ["eight dots: a mirror image", "17", "48", "reversal"],
    ["eight dots: nothing is moved out of the cell", "127", "238", "one cell for another"],
  ])("%s", (_name, dots, others, kind) => {
    expect(nameCellChange(cell(dots), cell(others))).toBe(kind);
  });

  it("is refused for the same cell", () => {
    expect(() => nameCellChange("⠁", "⠁")).toThrow(RangeError);
  });

  const WAY_BACK: Readonly<Record<string, string>> = {
    "missed dot": "added dot",
    "added dot": "missed dot",
    "one row lower": "one row higher",
    "one row higher": "one row lower",
  };

  it("names the way back as the counterpart, for any two cells", () => {
    const cells = fc.integer({ min: 0x2800, max: 0x28ff }).map((code) => String.fromCharCode(code));
    fc.assert(
      fc.property(cells, cells, (one, other) => {
        fc.pre(one !== other);
        const kind = nameCellChange(one, other);
        expect(nameCellChange(other, one)).toBe(WAY_BACK[kind] ?? kind);
        const { both, either } = compareDots(one, other);
        expect(either - both).toBe(countDifferentDots(one, other));
        expect(both + either).toBe(countDots(one) + countDots(other));
      }),
    );
  });
});
