import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { readRecords } from "../../../src/records/read-records";
import { formatHandoutDraft, parseHandoutDraft } from "../../../taskpane/views/handout-keeping";
import { describePaper, paperOptions, USUAL_SETTINGS } from "../../../taskpane/views/handout-settings";
import { putHandoutOnSheet } from "../../../taskpane/views/handout-sheet";
import { handoutOf, wordsOf } from "../../domain/drill/handouts";

describe("a handout on a sheet", () => {
  it("is a table of its own that is taken for none of her lists, texts with = staying texts", async () => {
    const sheet = new MemorySheet([]);
    const written = await putHandoutOnSheet(sheet, handoutOf(wordsOf("=egg", "nest")));
    expect(written.words).toBe("The handout stands on the new sheet Handout.");
    const [outline] = await sheet.outline();
    const { values, formulas } = await sheet.read(
      "Handout",
      outline?.used ?? { top: 0, left: 0, bottom: 0, right: 0 },
    );
    expect(values.map(([print]) => print)).toEqual([
      "In print",
      "Heron",
      "=egg",
      "nest",
      "Machine translated, not proofread.",
    ]);
    expect(formulas.flat().every((formula) => formula === null)).toBe(true);
    expect((await readRecords(sheet)).blocks).toEqual([]);
    const second = await putHandoutOnSheet(sheet, handoutOf(wordsOf("nest")));
    expect(second.words).toContain("Handout2");
  });
});

describe("the paper of a handout", () => {
  it("never has lines longer than set, nor than the paper holds", () => {
    expect(paperOptions({ ...USUAL_SETTINGS, cells: 20 }).cellsPerLine).toBe(20);
    // 30 cells of 6.2 mm fit between the margins of A4 (Specification 800 sizes).
    expect(paperOptions(USUAL_SETTINGS).cellsPerLine).toBe(30);
    expect(describePaper(USUAL_SETTINGS)).toContain("files keep 40");
    expect(describePaper({ ...USUAL_SETTINGS, cells: 20 })).not.toContain("files keep");
  });

  it("is spaced doubly for large print between the lines", () => {
    expect(paperOptions({ ...USUAL_SETTINGS, largePrint: true }).lineSpacing).toBe(2);
    expect(paperOptions({ ...USUAL_SETTINGS, largePrint: true, print: "none" }).lineSpacing).toBe(1);
  });
});

describe("a kept handout", () => {
  it("comes back as it was, and other text is no handout", () => {
    const draft = {
      title: "=Eggs",
      date: "",
      entries: [...wordsOf("egg"), { kind: "signs", text: "⠡", print: "ch" } as const],
    };
    expect(parseHandoutDraft(formatHandoutDraft(draft))).toEqual(draft);
    for (const text of [undefined, "", "{}", "[]", "null", '{"title":1,"date":"","entries":[]}'])
      expect(parseHandoutDraft(text)).toBeUndefined();
  });
});
