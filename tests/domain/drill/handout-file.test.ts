import { expect, it } from "vitest";
import { HANDOUT_ENDINGS, HANDOUT_MEDIA, nameHandoutFile } from "../../../src/domain/drill/handout-file";

it("names every file alike, with a media type each", () => {
  expect(HANDOUT_ENDINGS.map((ending) => nameHandoutFile(ending))).toEqual(
    HANDOUT_ENDINGS.map((ending) => `handout.${ending}`),
  );
  expect(nameHandoutFile("svg", 2)).toBe("handout-2.svg");
  for (const ending of HANDOUT_ENDINGS) expect(HANDOUT_MEDIA[ending]).toMatch(/^[a-z]+\/[a-z0-9.+-]+$/);
});
