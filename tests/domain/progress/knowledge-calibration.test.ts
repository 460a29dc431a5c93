import { describe, expect, it } from "vitest";
import { brier, judge, mean, METHODS, WordSource } from "../../simulation/knowledge-simulation";
import { tableOf } from "../contraction/word-tables";

/** Words as common as each other; each sign stands in several, beside different others. */
const TABLE = tableOf(
  "ch_a_t sh_ou_t th_a_t ch_i_p sh_i_p wh_i_p ou_t ow_l t_ow_n ed_g_e st_a_r st_ou_t gh_o_st er_a ar_m f_ar h_er b_ar_n s_ing ch_er r_ing t_ea t_ea_ch ea_r en_d t_en p_en th_en wh_en sh_ed"
    .split(" ")
    .map((signs) => [signs.replaceAll("_", ""), 1, signs.replaceAll("_", " ")] as const),
);

describe("what is said of signs of pupils whose knowledge is known (seed 7, 60 pupils, 120 words each)", () => {
  const source = new WordSource(
    TABLE,
    Array.from({ length: TABLE.size }, (_, word) => word),
  );
  const noise = { slip: 0.1, guess: 0.1 };
  const said = judge(
    source,
    { truth: "as the model believes", pupils: 60, weeks: 4, wordsAWeek: 30, noise },
    7,
  );
  const judged = said["by moments"];

  it("holds on average: of the signs given some chance, about that share is known", () => {
    for (const [from, to] of [
      [0.2, 0.4],
      [0.4, 0.6],
      [0.6, 0.8],
      [0.8, 1],
    ] as const) {
      const within = judged.filter(({ chanceKnown }) => chanceKnown >= from && chanceKnown < to);
      const saying = mean(within.map(({ chanceKnown }) => chanceKnown));
      const known = mean(within.map(({ isKnown }) => Number(isKnown)));
      // Four standard errors of a share of that many signs, and what the approximation itself is off by.
      const room = 4 * Math.sqrt((saying * (1 - saying)) / within.length) + 0.05;
      expect(within.length).toBeGreaterThan(30);
      expect(Math.abs(known - saying)).toBeLessThan(room);
    }
  });

  it("is nearer to the truth than the other ways to take a word in", () => {
    for (const method of METHODS.slice(1)) expect(brier(judged)).toBeLessThan(brier(said[method]));
  });
});
