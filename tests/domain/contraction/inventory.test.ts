import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  CONTRACTIONS,
  contractionsOfPrint,
  findContraction,
  formatKind,
} from "../../../src/domain/contraction/inventory";

type CheckRow = [
  id: string,
  print: string,
  dots: string,
  cells: string,
  category: string,
  section: string,
  places: string,
  embeds: string[],
  freeUse: boolean,
  seenIn: string[],
];

const check = JSON.parse(
  readFileSync(new URL("../../check-values/ueb-contractions.json", import.meta.url), "utf8"),
) as { rows: CheckRow[] };

describe("the inventory of contractions", () => {
  it("has the 182 uses of the check values, in the rule book's order", () => {
    expect(CONTRACTIONS.map(({ print, kind }) => `${print} ${formatKind(kind)}`)).toEqual(
      check.rows.map(([, print, , , category]) => `${print} ${category}`),
    );
  });

  it("has 180 signs: be and in each have two uses", () => {
    expect(new Set(CONTRACTIONS.map(({ print, cells }) => print + cells)).size).toBe(180);
    expect(contractionsOfPrint("in").map(({ name }) => name)).toEqual(["in wordsign", "in groupsign"]);
    expect(contractionsOfPrint("be").map(({ name }) => name)).toEqual(["be wordsign", "be groupsign"]);
  });

  it.each(check.rows.map((row, index) => [row[0], index, row] as const))("%s", (_id, index, row) => {
    const [, print, dots, cells, category, section, places, embeds, freeUse] = row;
    const contraction = CONTRACTIONS[index];
    expect(contraction).toMatchObject({ print, dots, cells, section, freeUse, order: index });
    expect(formatKind(contraction?.kind ?? "")).toBe(category);
    expect(contraction?.places.map((place) => place[0]).join("")).toBe(places);
    expect(contraction?.embeds.map((name) => idOfName(name))).toEqual(embeds);
  });

  it("finds a contraction by its name, and none by an unknown one", () => {
    expect(findContraction("oneself")?.dots).toBe("5-135-124");
    expect(findContraction("in wordsign")?.kind).toBe("lower wordsign");
    expect(findContraction("in")).toBeUndefined();
    expect(findContraction("to")).toBeUndefined(); // "to", "into" and "by" left the code with UEB
  });
});

const idOfName = (name: string): string => check.rows[findContraction(name)?.order ?? -1]?.[0] ?? "";
