/** What teachers write where no help was given. */
const NONE =
  /^(0|-|x|n|i|no|none|nil|non|false|ind|indep|independent(ly)?|alone|by (him|her|them)sel(f|ves)|self|without|unsupported|unprompted|unaided|not? (supported|prompted|aided|applicable)|no (support|help|prompts?|prompting|aid|assistance)|without (support|help|prompts?|prompting|aid)|n\/?a|0 ?%)$/;

/**
 * Whether a note on support says that help was given. Nothing written, or a word for none, means no help; any other
 * text means help.
 *
 * Source: common practice, no source.
 */
export const isSupported = (support: string | undefined): boolean => {
  const words = (support ?? "")
    .normalize("NFKC")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .trim()
    .replace(/[.!]+$/, "")
    .replace(/\s+/g, " ")
    .toLowerCase();
  return words !== "" && !NONE.test(words);
};
