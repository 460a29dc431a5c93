import { parse, tokenize, tokenTypes, type AstExpression, type Token } from "@borgar/fx";
import { refusal, success, type Result } from "../domain/result";

/**
 * A formula's syntax tree.
 *
 * @param formula - without its `=`
 * @returns a fault `formula` that says where the formula cannot be read
 */
export function parseFormula(formula: string): Result<AstExpression> {
  try {
    return success(parse(joinLostSheets(tokenize(formula))));
  } catch (thrown) {
    return refusal("formula", describeFault(formula, thrown));
  }
}

/** `Sheet1!#REF!`, as spreadsheet programs write a reference whose cells are gone, is an error like `#REF!`. */
function joinLostSheets(tokens: readonly Token[]): Token[] {
  return tokens.filter((token, index) => {
    const isContext = token.type === tokenTypes.CONTEXT || token.type === tokenTypes.CONTEXT_QUOTE;
    const isMark = token.type === tokenTypes.OPERATOR && token.value === "!";
    if (isContext) return tokens[index + 2]?.type !== tokenTypes.ERROR;
    return !(isMark && tokens[index + 1]?.type === tokenTypes.ERROR);
  });
}

function describeFault(formula: string, thrown: unknown): string {
  const open = [...formula.replaceAll(/"(?:[^"]|"")*"/g, "")];
  const count = (sign: string): number => open.filter((letter) => letter === sign).length;
  const advice = "Correct it, or begin with an apostrophe to keep it as text.";
  if ((formula.match(/"/g) ?? []).length % 2 === 1)
    return `This formula has a quotation mark without its partner. ${advice}`;
  if (count("(") > count(")")) return `This formula lacks a closing parenthesis. ${advice}`;
  if (count(")") > count("(")) return `This formula has a closing parenthesis too many. ${advice}`;
  const offset =
    thrown instanceof Error && "sourceOffset" in thrown ? Number(thrown.sourceOffset) : formula.length;
  const rest = formula.slice(Math.max(0, offset - 1), offset + 11);
  const place = offset >= formula.length ? "its end" : `“${rest}”`;
  return `This formula cannot be read at ${place}. ${advice}`;
}
