import type { UntranslatableCharacter } from "../../ports/translator";

/** A message must fit where a spreadsheet shows it. */
const MOST_NAMED = 20;

/**
 * The sentence that names characters without cells, each with its place, and says what to do.
 *
 * @param code - the braille code
 * @param text - the whole text
 * @param characters - at least one, in order
 */
export const explainUntranslatable = (
  code: string,
  text: string,
  characters: readonly UntranslatableCharacter[],
): string => {
  const named = characters
    .slice(0, MOST_NAMED)
    .map(
      ({ character, index }) => `${nameCharacter(character)} at position ${countCharacters(text, index) + 1}`,
    );
  const more = characters.length - named.length;
  const rest = more > 0 ? `, and ${more} more` : "";
  return `The code "${code}" has no braille for ${named.join(", ")}${rest}. Write it in words or leave it out.`;
};

const nameCharacter = (character: string): string => {
  const point = character.codePointAt(0) ?? 0;
  const number = `U+${point.toString(16).toUpperCase().padStart(4, "0")}`;
  return /[\p{C}\p{Z}\p{M}]/u.test(character) ? number : `${character} (${number})`;
};

/** Places are counted in whole characters, as a reader counts them. */
const countCharacters = (text: string, end: number): number => [...text.slice(0, end)].length;
