import { UnknownCodeError, type TranslatorLibrary } from "../../ports/translator";
import { Engine } from "./engine";
import { formatAccentRules } from "./letter-accents";
import type { EngineSource } from "./louis-module";
import { LouisTranslator } from "./louis-translator";
import type { Rendering } from "./rendering";
import { NUMERIC_SPACE_RULE } from "./numeric-spaces";
import { formatSymbolRules } from "./symbol-rules";
import { collectTableFiles, isTableName, MissingTableError, type TableFile } from "./table-files";
import { SEAM_RULES } from "./marked-piece";
import { WordMemo } from "./word-memo";

/** The tables of the two codes that have a name of their own. */
const NAMED_CODES: Readonly<Record<string, string>> = {
  contracted: "en-ueb-g2.ctb",
  uncontracted: "en-ueb-g1.ctb",
};
const UEB_TABLES = new Set(Object.values(NAMED_CODES));
const UEB_CHARACTERS = "en-ueb-chardefs.uti";
const DISPLAY_TABLE = "unicode.dis";
/** Gives every character that a table does not define the virtual dots 9 and A, which no real rule uses. */
const UNDEFINED_SUPPLEMENT: TableFile = {
  name: "cellwright-undefined.uti",
  content: "sign \\xF8FE 9A\nundefined 9A\n",
};
const SEAM_SUPPLEMENT: TableFile = { name: "cellwright-seams.uti", content: SEAM_RULES + NUMERIC_SPACE_RULE };
/**
 * Words that the engine contracts wrongly unless the text ends behind them; `dis` and `con` are groupsigns only
 * where more than these letters follow. Source: UEB 2013 section 10.6.1 (dish, disc: from memory).
 */
const WORD_SUPPLEMENT: TableFile = {
  name: "cellwright-words.uti",
  content: [
    "noback word dish 145-24-146",
    "noback word disc 145-24-234-14",
    "noback word conc 14-135-1345-14",
    "noback word bere 12-12456-15",
    "noback word bene 12-26-15",
    // 10.7.6: honest and monetary with their derivatives use one.
    "noback always honest 125-5-135-34",
    "noback always monetis 134-5-135-2345-24-234",
    "noback always monetiz 134-5-135-2345-24-1356",
    // 10.7.3: there with a second part.
    "noback sufword thereun 5-2346-136-1345",
    "noback sufword thereunder 5-2346-5-136",
    "noback sufword thereout 5-2346-1256-2345",
    "noback sufword therethrough 5-2346-5-1456",
    "noback sufword therewith 5-2346-23456",
    "noback sufword therean 5-2346-1-1345",
    "noback sufword thereat 5-2346-1-2345",
    "noback sufword therefor 5-2346-123456",
    // 10.9.3 (from memory): longer words that may use a shortform.
    "noback sufword nonesuch 1345-5-135-234-16",
    "",
  ].join("\n"),
};
const ADVICE =
  'Write "contracted", "uncontracted", or the file name of a liblouis table such as "en-us-g2.ctb" (shipped in the folder liblouis/tables).';

/** Settings of a library. */
export interface LouisLibraryOptions {
  /** entries of the word memo of each UEB code, 65,536 unless given; 0 for none: then each line goes to the engine whole */
  readonly memoCapacity?: number;
}

/**
 * The braille codes of one engine source.
 *
 * The UEB tables share an engine. Every other table gets one of its own: a table that does not compile, or is
 * too large for the heap of 16 MB, spoils the engine it was tried in, and so cannot harm the others.
 */
export class LouisLibrary implements TranslatorLibrary {
  readonly #source: EngineSource;
  readonly #memoCapacity: number | undefined;
  readonly #loaded = new Map<string, LouisTranslator>();
  readonly #loading = new Map<string, Promise<LouisTranslator>>();
  #uebEngine: Promise<Engine> | undefined;

  constructor(source: EngineSource, options: LouisLibraryOptions = {}) {
    this.#source = source;
    this.#memoCapacity = options.memoCapacity;
  }

  loaded(code: string): LouisTranslator | undefined {
    return this.#loaded.get(code);
  }

  translator(code: string): Promise<LouisTranslator> {
    let loading = this.#loading.get(code);
    if (loading === undefined) {
      loading = this.#load(code);
      this.#loading.set(code, loading);
      // A refusal is not kept: the table may be there next time, when a page is back on its network.
      loading.catch(() => this.#loading.delete(code));
    }
    return loading;
  }

  async #load(code: string): Promise<LouisTranslator> {
    const table = NAMED_CODES[code] ?? code;
    if (!isTableName(table)) throw new UnknownCodeError(`"${code}" is not a braille code. ${ADVICE}`);
    const files = await this.#collect(code, table);
    const ueb = UEB_TABLES.has(table);
    const contracted = table === NAMED_CODES.contracted;
    const engine = ueb ? await this.#sharedEngine() : await this.#newEngine();
    const supplements = [
      ...(ueb ? [characterSupplement(files)] : []),
      ...(ueb ? [SEAM_SUPPLEMENT] : []),
      ...(contracted ? [WORD_SUPPLEMENT] : []),
      UNDEFINED_SUPPLEMENT,
    ];
    for (const file of [...files, ...supplements]) engine.mount(file.name, file.content);
    const compiled = engine.compile([DISPLAY_TABLE, table, ...supplements.map(({ name }) => name)]);
    if (typeof compiled !== "number") throw new UnknownCodeError(explainRefusal(code, compiled));
    const memo = ueb && this.#memoCapacity !== 0 ? new WordMemo<Rendering>(this.#memoCapacity) : undefined;
    const translator = new LouisTranslator(engine, compiled, { code, ueb, contracted }, memo);
    this.#loaded.set(code, translator);
    return translator;
  }

  async #collect(code: string, table: string): Promise<TableFile[]> {
    try {
      const display = await collectTableFiles(this.#source, DISPLAY_TABLE);
      return [...display, ...(await collectTableFiles(this.#source, table))];
    } catch (cause) {
      if (!(cause instanceof MissingTableError)) throw cause;
      throw new UnknownCodeError(`The code "${code}" cannot be used: ${cause.message}. ${ADVICE}`, { cause });
    }
  }

  #sharedEngine(): Promise<Engine> {
    this.#uebEngine ??= this.#newEngine().catch((failure: unknown) => {
      this.#uebEngine = undefined;
      throw failure;
    });
    return this.#uebEngine;
  }

  async #newEngine(): Promise<Engine> {
    return new Engine(await this.#source.loadEngine());
  }
}

const characterSupplement = (files: readonly TableFile[]): TableFile => {
  const definitions = files.find(({ name }) => name === UEB_CHARACTERS)?.content ?? "";
  const text = typeof definitions === "string" ? definitions : new TextDecoder().decode(definitions);
  const accents = formatAccentRules(text);
  return { name: "cellwright-characters.uti", content: accents + formatSymbolRules(text + accents) };
};

const explainRefusal = (code: string, log: readonly string[]): string => {
  const tooLarge = log.some((line) => line.includes("Cannot enlarge memory"));
  const reason = tooLarge
    ? "it is too large for the braille engine"
    : `it does not compile: ${log.slice(0, 3).join("; ") || "the engine gave no reason"}`;
  return `The table "${code}" cannot be used, because ${reason}. ${ADVICE}`;
};
