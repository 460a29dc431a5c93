import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { findSeams } from "../../../src/adapters/liblouis/seams";
import { toAscii } from "../../../src/domain/braille/cell";
import type { Translator } from "../../../src/ports/translator";

let contracted: Translator;
beforeAll(async () => {
  contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
});

const ascii = (print: string): string => {
  const text = toAscii(contracted.translate(print));
  return text.ok ? text.value : text.fault.message;
};

describe("the seams of words", () => {
  // Expected cells written out by hand from the rules; UEB 2013, section beside each.
  it.each([
    ["nuthouse", "NUTH\\SE", "10.11.1"],
    ["gashouse", "GASH\\SE", "10.11.1"],
    ["somewhat", '"S:AT', "10.11.1, a counter-example"],
    ["threshold", "?RE%OLD", "10.11.1, a counter-example"],
    ["bishop", "BI%OP", "10.11.1, a counter-example"],
    ["autosuggestion", "AUTOSU7ES;N", "10.10.4"],
    ["afford", "AF=D", "10.10.5"],
    ["gravedigger", "GRAVEDI7]", "10.11.1"],
    ["reattach", "REATTA*", "10.11.3"],
    ["reaching", "R1*+", "10.11.3, a counter-example"],
    ["preadult", "PREADULT", "10.11.3"],
    ["preaching", "PR1*+", "10.11.3, a counter-example"],
    ["biofuel", "BIOFUEL", "10.11.3"],
    ["phoneme", "PHONEME", "10.7.6"],
    ["stonework", '/"O"W', "10.7.6, a counter-example"],
    ["dishful", "DI%;L", "10.6.1"],
    ["gnocchi", "GNOC*I", "10.10.5"],
    ["severely", "SEV]ELY", "10.7.3"],
  ])("%s is %s (%s)", (word, cells) => {
    expect(ascii(word)).toBe(cells);
  });

  it("are found in small letters and in capitals", () => {
    expect(findSeams("nuthouse")).toEqual([3]);
    expect(ascii("NUTHOUSE")).toBe(",,NUTH\\SE");
    expect(ascii("Nuthouse")).toBe(",NUTH\\SE");
  });

  it("leave the spans of a transcription without gap", () => {
    const { print, cells, spans } = contracted.transcribe("a nuthouse");
    expect(spans[0]?.printStart).toBe(0);
    for (const [index, span] of spans.entries()) {
      expect(span.printEnd).toBe(spans[index + 1]?.printStart ?? print.length);
      expect(span.cellEnd).toBe(spans[index + 1]?.cellStart ?? cells.length);
    }
  });
});

describe("numbers", () => {
  // UEB 2013 section 6; cells by hand. Which spaces belong to a number is this project's own rule.
  it.each([
    ["p.7", "P4#G"],
    ["No.16", ",NO4#AF"],
    ["1 2 3 4", "#A #B #C #D"],
    ["4 500 000", '#D"EJJ"JJJ'],
    ["020 7946 0958", '#JBJ"GIDF"JIEH'],
    ["ISBN 0 306 40615 2", ',,ISBN #J"CJF"DJFAE"B'],
    ["100 200", "#AJJ #BJJ"],
    ["1939 1945", "#AICI #AIDE"],
  ])("%s is %s", (print, cells) => {
    expect(ascii(print)).toBe(cells);
  });
});

describe("signs that the table lacks", () => {
  // Cells: UEB 2013 sections 4.2 and 11.
  it.each([
    ["✓", "@%"],
    ["≮", "@<@:"],
    ["ⱥ", "@*A"],
    ["∏", ",.P"],
  ])("%s is %s", (print, cells) => {
    expect(ascii(print)).toBe(cells);
  });
});
