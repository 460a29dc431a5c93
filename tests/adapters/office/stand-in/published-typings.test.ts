import { describe, expect, it } from "vitest";
import { readPublishedTypings } from "./published-typings";

describe("the published typings of Excel", () => {
  const typings = readPublishedTypings();

  it.each([
    ["Range", "values", { kind: "property", readOnly: false }],
    ["Range", "rowIndex", { kind: "property", readOnly: true }],
    ["Range", "copyFrom", { kind: "method", since: 109 }],
    ["Range", "format", { kind: "property", leadsTo: "RangeFormat" }],
    ["Worksheet", "getUsedRangeOrNullObject", { kind: "method", leadsTo: "Range" }],
    ["WorksheetCollection", "items", { kind: "property", leadsTo: "Worksheet" }],
    ["WorksheetCollection", "onChanged", { kind: "property", isEvent: true, since: 109 }],
    ["CustomXmlPart", "getXml", { kind: "method", givesResult: true, since: 105 }],
    ["Table", "resize", { kind: "method", since: 113 }],
    ["WorksheetProtection", "pauseProtection", { kind: "method", since: Number.POSITIVE_INFINITY }],
  ])("declare %s.%s", (owner, name, expected) => {
    expect(typings.get(owner)?.get(name)).toMatchObject(expected);
  });

  it("know nothing of members that were never published", () => {
    expect(typings.get("Range")?.get("cellValues")).toBeUndefined();
    expect(typings.get("Spreadsheet")).toBeUndefined();
  });
});
