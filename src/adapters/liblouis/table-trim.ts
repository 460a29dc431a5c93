/**
 * Rules that are left out of the UEB tables while they are loaded; the files on disk stay as they are. Without
 * any `correct` or `pass2` rule the engine goes over a text once instead of three times, which takes less than
 * half the time.
 */
const LEFT_OUT: Readonly<Record<string, RegExp>> = {
  // 100 rules for each pair of digits with a space between, one of them with a slip, and 2 of the same kind.
  // Lost are numeric spaces (UEB 2013 section 6.6); gained, `1 2 3 4` comes out as separate numbers.
  "en-ueb-g1.ctb": /^noback\s+(?:pass2\s+@[\d-]+-5-3456-|(?:context|correct)\s+_\$d\[")/,
  // 10 rules that move a combining accent before its letter, and 1 that puts the capital sign before a tilde:
  // accents are joined to their letters before translation, see letter-accents.ts.
  "en-ueb-chardefs.uti": /^noback\s+(?:correct\s+\[\$l\]|pass2\s+@45-12456-6)/,
  // 4 rules for private characters of a linear notation for mathematics, which no print text holds.
  "en-ueb-math.ctb": /^noback\s+pass2\s/,
};

/** Whether a table file has rules to leave out. */
export const isTrimmed = (name: string): boolean => Object.hasOwn(LEFT_OUT, name);

/**
 * A table file as the engine gets it.
 *
 * @param name - the file's name
 * @param text - what it holds
 * @returns the same lines without those left out
 */
export const trimTable = (name: string, text: string): string => {
  const rule = LEFT_OUT[name];
  if (rule === undefined) return text;
  return text
    .split("\n")
    .filter((line) => !rule.test(line))
    .join("\n");
};
