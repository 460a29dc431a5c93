import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatSettings, parseSettings } from "../../../src/adapters/office/settings-part";

describe("the settings part", () => {
  it("is one element a key in the project's own namespace", () => {
    expect(formatSettings(new Map([["columns", "dmy"]]))).toBe(
      '<settings xmlns="urn:cellwright:settings:1"><setting key="columns">dmy</setting></settings>',
    );
  });

  it.each([
    [
      "with a declaration and line breaks between elements",
      '<?xml version="1.0"?>\n<settings xmlns="urn:cellwright:settings:1">\n  <setting key="a">1</setting>\n</settings>',
      "1",
    ],
    [
      "with a prefix",
      '<c:settings xmlns:c="urn:cellwright:settings:1"><c:setting key="a">1</c:setting></c:settings>',
      "1",
    ],
    [
      "with an empty element",
      '<settings xmlns="urn:cellwright:settings:1"><setting key="a"/></settings>',
      "",
    ],
    [
      "with single quotes",
      "<settings xmlns='urn:cellwright:settings:1'><setting key='a'>1</setting></settings>",
      "1",
    ],
    [
      "with a CDATA section",
      '<settings xmlns="urn:cellwright:settings:1"><setting key="a">x<![CDATA[<&]]>y</setting></settings>',
      "x<&y",
    ],
    [
      "with character references",
      '<settings xmlns="urn:cellwright:settings:1"><setting key="a">&#x2813;&#10;&amp;amp;</setting></settings>',
      "⠓\n&amp;",
    ],
    [
      "with spelt signs",
      '<settings xmlns="urn:cellwright:settings:1"><setting key="a">_x000D__x005F_x0041_</setting></settings>',
      "\r_x0041_",
    ],
  ])("is read %s", (_, xml, expected) => {
    expect(parseSettings(xml)).toEqual(new Map([["a", expected]]));
  });

  it("gives back what was written, whatever the text", () => {
    const text = fc.string({ unit: "binary" });
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text)), (entries) => {
        const settings = new Map(entries);
        expect(parseSettings(formatSettings(settings))).toEqual(settings);
      }),
    );
  });
});
