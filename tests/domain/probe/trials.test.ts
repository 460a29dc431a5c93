import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countMarks, parseMark, OUTCOMES, type Outcome } from "../../../src/domain/probe/trials";

describe("marks of trials", () => {
  it.each<[Outcome, readonly (string | number | boolean)[]]>([
    ["correct", ["+", "＋", "✓", "✔", "✔️", "√", "✅", 1, "1", true, "c", "Y", " yes "]],
    ["incorrect", ["-", "−", "–", "—", "‐", "‑", "－", "✗", "✘", "×", "❌", "x", "X", 0, "0", false, "No"]],
    ["prompted", ["P", "p", "Prompted", "pr."]],
    ["no response", ["NR", "nr", "N/R", "No  response"]],
    ["absent", ["A", "abs.", "Absent", "n/a"]],
  ])("%s: %j", (outcome, marks) => {
    for (const mark of marks) expect(parseMark(mark), String(mark)).toBe(outcome);
  });

  it.each(["?", "", "10", 2, "-1", "maybe", "Heron"])("%j is no mark", (mark) => {
    expect(parseMark(mark)).toBeUndefined();
  });

  it("counts prompted and no response as opportunities, absent as none, and skips blanks", () => {
    expect(countMarks(["+", "−", "✓", "✗", 1, 0, "P", "NR", "A", null, ""])).toEqual({
      ok: true,
      value: { correct: 3, opportunities: 8, prompted: 1, noResponse: 1, absent: 1 },
    });
  });

  it.each([
    { cell: "+ − P", correct: 1, opportunities: 3 },
    { cell: "++-+", correct: 3, opportunities: 4 },
    { cell: "+,+,NR, A", correct: 2, opportunities: 3 },
    { cell: "✓✓✗P", correct: 2, opportunities: 4 },
    { cell: "no response", correct: 0, opportunities: 1 },
  ])("reads several marks in one cell: $cell", ({ cell, correct, opportunities }) => {
    expect(countMarks([cell])).toMatchObject({ ok: true, value: { correct, opportunities } });
  });

  it.each(["?", "10", "+?+", "ok then"])("refuses %j and names it", (cell) => {
    const counted = countMarks(["+", cell]);
    expect(counted).toMatchObject({ ok: false, fault: { code: "unknown-mark" } });
    expect(counted.ok ? "" : counted.fault.message).toContain(cell.split(" ")[0]);
  });

  it("counts two rows as it counts them apart", () => {
    const marks = fc.array(fc.constantFrom("+", "−", "P", "NR", "A", 1, 0, null));
    fc.assert(
      fc.property(marks, marks, (first, second) => {
        const [a, b, both] = [countMarks(first), countMarks(second), countMarks([...first, ...second])];
        if (!a.ok || !b.ok || !both.ok) throw new Error("all of these are marks");
        for (const key of ["correct", "opportunities", "prompted", "noResponse", "absent"] as const) {
          expect(both.value[key]).toBe(a.value[key] + b.value[key]);
        }
      }),
    );
  });

  it("has a spelling for every outcome", () => {
    for (const outcome of OUTCOMES) expect(parseMark(outcome)).toBe(outcome);
  });
});
