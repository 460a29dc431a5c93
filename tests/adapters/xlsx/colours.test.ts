import { describe, expect, it } from "vitest";
import { ColourTable } from "../../../src/adapters/xlsx/colours";
import { parseXml } from "../../../src/adapters/xlsx/xml-source";

const TINTS = [
  "0.7999816888943144",
  "0.5999938962981048",
  "0.3999755851924192",
  "-0.249977111117893",
  "-0.499984740745262",
];

describe("tints of theme colours", () => {
  // The palette that Office shows for its theme of 2013: lighter 80, 60, 40 %, darker 25, 50 %. Values from memory.
  it.each([
    ["4472c4", "d9e1f2 b4c6e7 8ea9db 305496 203764"],
    ["ed7d31", "fce4d6 f8cbad f4b084 c65911 833c0c"],
    ["a5a5a5", "ededed dbdbdb c9c9c9 7b7b7b 525252"],
    ["ffc000", "fff2cc ffe699 ffd966 bf8f00 806000"],
    ["5b9bd5", "ddebf7 bdd7ee 9bc2e6 2f75b5 1f4e78"],
    ["70ad47", "e2efda c6e0b4 a9d08e 548235 375623"],
  ])("%s", (rgb, shades) => {
    const colours = new ColourTable(undefined, undefined);
    const shown = TINTS.map((tint) =>
      colours.resolve(parseXml(`<color rgb="FF${rgb}" tint="${tint}"/>`).root),
    );
    expect(shown.join(" ")).toBe(shades.replace(/\w+/g, "#$&"));
  });

  it("gives no colour for automatic ones", () => {
    const colours = new ColourTable(undefined, undefined);
    expect(colours.resolve(parseXml('<color auto="1"/>').root)).toBeUndefined();
    expect(colours.resolve(parseXml('<color indexed="64"/>').root)).toBeUndefined();
  });
});
