import { parseStructRef, stringifyStructRef, tokenize, type Token } from "@borgar/fx/xlsx";
import { fileFunctionName, givesArrays, takesRanges } from "./future-functions";

/** How a file writes the functions of an add-in: this prefix, and an underscore for each dot. */
const ADD_IN_PREFIX = "_xldudf_";
const SPELLED_APART = /_xl|\[/i;

/** Turns formulas from the file's spelling to the one that is typed, and back. */
export class FormulaSpelling {
  private readonly typedNames = new Map<string, string>();
  private readonly fileNames = new Map<string, string>();

  /** @param functions - the add-in's functions with their namespace: `BRAILLE.TRANSLATE` */
  constructor(functions: readonly string[]) {
    for (const name of functions) {
      const spelled = ADD_IN_PREFIX + name.toUpperCase().replaceAll(".", "_");
      this.typedNames.set(spelled.toUpperCase(), name.toUpperCase());
      this.fileNames.set(name.toUpperCase(), spelled);
    }
  }

  /**
   * A formula as she would type it: `_xldudf_BRAILLE_CELLS(A2)` is `BRAILLE.CELLS(A2)`, `_xlfn.ANCHORARRAY(D2)` is
   * `D2#`, `Probes[[#This Row],Words]` gets its inner brackets.
   *
   * @param formula - of the file, without `=`
   * @param table - the table that a reference without a table's name means: that of a calculated column
   */
  toTyped(formula: string, table?: string): string {
    if (!SPELLED_APART.test(formula)) return formula;
    return this.typed(tokenize(formula, {}), table);
  }

  private typed(tokens: readonly Token[], table: string | undefined): string {
    let text = "";
    for (let at = 0; at < tokens.length; at++) {
      const token = tokens[at] as Token;
      if (token.type === "func" && /^_xlfn\.(ANCHORARRAY|SINGLE)$/i.test(token.value)) {
        const close = closingParenthesis(tokens, at + 1);
        const inner = this.typed(tokens.slice(at + 2, close), table);
        text += /single$/i.test(token.value) ? `@${inner}` : `${inner}#`;
        at = close;
      } else text += this.typedToken(token, table);
    }
    return text;
  }

  private typedToken(token: Token, table: string | undefined): string {
    if (token.type === "func") {
      return (
        this.typedNames.get(token.value.toUpperCase()) ??
        token.value.replace(/^(_xlfn\.|_xlws\.|_xlpm\.)+/i, "")
      );
    }
    if (token.type === "range_named") return token.value.replace(/^_xl(pm|eta)\./i, "");
    return token.type === "structured" ? withInnerBrackets(token.value, table) : token.value;
  }

  /**
   * A typed formula as a file spells it.
   *
   * @param formula - without `=`
   * @param table - the table that the formula's cell lies in: `[@Words]` means its column
   */
  toFile(formula: string, table: string | undefined): string {
    const tokens = tokenize(formula, {});
    return this.spelled(tokens, declaredNames(tokens), table);
  }

  private spelled(
    tokens: readonly Token[],
    declared: ReadonlySet<string>,
    table: string | undefined,
  ): string {
    let text = "";
    for (let at = 0; at < tokens.length; at++) {
      const token = tokens[at] as Token;
      const next = tokens[at + 1];
      if (isOperator(token, "@")) {
        const end = endOfOperand(tokens, at + 1);
        text += `_xlfn.SINGLE(${this.spelled(tokens.slice(at + 1, end), declared, table)})`;
        at = end - 1;
      } else if (next && isOperator(next, "#") && isReference(token)) {
        text += `_xlfn.ANCHORARRAY(${this.fileToken(token, declared, table)})`;
        at += 1;
      } else text += this.fileToken(token, declared, table);
    }
    return text;
  }

  private fileToken(token: Token, declared: ReadonlySet<string>, table: string | undefined): string {
    if (token.type === "structured") return withInnerBrackets(token.value, table);
    if (token.type === "func" || token.type === "range_named") {
      if (declared.has(token.value.toLowerCase())) return `_xlpm.${token.value}`;
      if (token.type === "range_named" || token.value.startsWith("_xl")) return token.value;
      return this.fileNames.get(token.value.toUpperCase()) ?? fileFunctionName(token.value);
    }
    return token.type === "bool" ? token.value.toUpperCase() : token.value;
  }

  /**
   * Whether a typed formula must be written as a dynamic array, lest a spreadsheet program takes one cell of each
   * range: it gives or maps over several cells, or calls an add-in's function.
   */
  isDynamic(formula: string): boolean {
    const tokens = tokenize(formula, {}).filter((token) => token.type !== "whitespace");
    const callers: string[] = [];
    return tokens.some((token, at) => {
      if (token.type === "func") {
        if (this.fileNames.has(token.value.toUpperCase()) || givesArrays(token.value)) return true;
      } else if (isOperator(token, "(")) {
        const before = tokens[at - 1];
        callers.push(before?.type === "func" ? before.value : "");
      } else if (isOperator(token, ")")) callers.pop();
      else if (isOperator(token, "{") || isOperator(token, "#")) return true;
      else if (holdsSeveralCells(token)) {
        const before = tokens[at - 1];
        const after = tokens[at + 1];
        const alone = !!before && /^[(,]$/.test(before.value) && !!after && /^[),]$/.test(after.value);
        return !alone || !takesRanges(callers.at(-1) ?? "");
      }
      return false;
    });
  }

  /**
   * A formula of the file in which a table's columns have new names.
   *
   * @param renamed - old name in lower case to new name, for one table
   */
  renameColumns(formula: string, tableName: string, renamed: ReadonlyMap<string, string>): string {
    if (!formula.includes("[")) return formula;
    return tokenize(formula, {})
      .map((token) => {
        const reference = token.type === "structured" ? parseStructRef(token.value) : undefined;
        if (!reference || reference.table?.toLowerCase() !== tableName.toLowerCase()) return token.value;
        const columns = reference.columns?.map((column) => renamed.get(column.toLowerCase()) ?? column) ?? [];
        return stringifyStructRef({ ...reference, columns }, { thisRow: true });
      })
      .join("");
  }
}

const isOperator = (token: Token, sign: string): boolean => token.type === "operator" && token.value === sign;

const isReference = (token: Token): boolean => /^range|structured/.test(token.type);

const holdsSeveralCells = (token: Token): boolean => {
  if (token.type === "range_beam") return true;
  if (token.type === "range") return token.value.includes(":");
  return token.type === "structured" && !/@|#this row/i.test(token.value);
};

const withInnerBrackets = (reference: string, table: string | undefined): string => {
  const parsed = parseStructRef(reference);
  if (!parsed) return reference;
  const named = parsed.table || table === undefined ? parsed : { ...parsed, table };
  return stringifyStructRef(named, { thisRow: true });
};

const closingParenthesis = (tokens: readonly Token[], open: number): number => {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (isOperator(token, "(")) depth += 1;
    else if (isOperator(token, ")") && --depth === 0) return at;
  }
  return tokens.length;
};

/** After the operand that begins here: a reference, a call, or a parenthesis. */
const endOfOperand = (tokens: readonly Token[], start: number): number => {
  const first = tokens[start];
  if (first?.type === "func") return closingParenthesis(tokens, start + 1) + 1;
  return first && isOperator(first, "(") ? closingParenthesis(tokens, start) + 1 : start + 1;
};

/** Names that LET and LAMBDA declare, in lower case; files mark them by `_xlpm.`. */
const declaredNames = (tokens: readonly Token[]): Set<string> => {
  const declared = new Set<string>();
  const calls: { name: string; argument: number }[] = [];
  tokens.forEach((token, at) => {
    const call = calls.at(-1);
    if (isOperator(token, "(") || isOperator(token, "{")) {
      const before = tokens[at - 1];
      calls.push({ name: before?.type === "func" ? before.value.toUpperCase() : "", argument: 0 });
    } else if (isOperator(token, ")") || isOperator(token, "}")) calls.pop();
    else if (isOperator(token, ",") && call) call.argument += 1;
    else if (token.type === "range_named" && call && isFollowedByComma(tokens, at)) {
      if (call.name === "LAMBDA" || (call.name === "LET" && call.argument % 2 === 0))
        declared.add(token.value.toLowerCase());
    }
  });
  return declared;
};

const isFollowedByComma = (tokens: readonly Token[], at: number): boolean => {
  const next = tokens.slice(at + 1).find((token) => token.type !== "whitespace");
  return next !== undefined && isOperator(next, ",");
};
