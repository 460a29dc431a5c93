/** A private character for the space inside a number; the engine writes it as dot 5 and stays in numeric mode. */
export const NUMERIC_SPACE = "\uf8fa";

/** The rule for it. Source: UEB 2013 section 6.6.1 (from memory). */
export const NUMERIC_SPACE_RULE = "math \\xF8FA 5\nnumericmodechars \\xF8FA\n";

const GROUPS = /(?<![\p{L}\p{N}.,/:-])\+?\d+(?: \d+)+(?![\p{L}\p{N}])/gu;
const HAS_GROUPS = /\d \d/;
const ISBN_PREFIX = /ISBN(?:-1[03])?:? $/i;

/**
 * Whether groups of digits are one number written with spaces, not numbers beside each other. One number are: an
 * ISBN; a telephone number, which begins with 0 or +; thousands, where a group begins with 0 or two groups of three
 * follow one or two digits; a day or a time whose later part has a leading 0. UEB 2013 section 6.6 speaks of numbers
 * written with spaces as separators; how they are told from lists is this project's own rule.
 */
const isOneNumber = (groups: readonly string[], before: string, plus: boolean): boolean => {
  const [first = "", ...rest] = groups;
  const digits = groups.join("").length;
  if (ISBN_PREFIX.test(before)) return digits === 10 || digits === 13;
  if (/^97[89]$/.test(first) && digits === 13 && groups.length >= 3) return true;
  if ((plus || /^0\d/.test(first)) && digits >= 7) return true;
  if (/^[1-9]\d{0,2}$/.test(first) && rest.every((group) => group.length === 3)) {
    return rest.some((group) => group.startsWith("0")) || (first.length < 3 && rest.length > 1);
  }
  return (
    /^[1-9]\d+$/.test(first) &&
    rest.every((group) => group.length === 2) &&
    rest.some((group) => group.startsWith("0"))
  );
};

/**
 * A line with the spaces inside numbers marked; its length stays the same.
 *
 * @param line - print without line breaks
 */
export const markNumericSpaces = (line: string): string => {
  if (!HAS_GROUPS.test(line)) return line;
  return line.replaceAll(GROUPS, (run, place: number) => {
    const plus = run.startsWith("+");
    const groups = run.replace("+", "").split(" ");
    return isOneNumber(groups, line.slice(0, place), plus) ? run.replaceAll(" ", NUMERIC_SPACE) : run;
  });
};
