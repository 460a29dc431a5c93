import type { LouisModule } from "./louis-module";

/** A table list that is compiled in an engine: the address of its name, a C string allocated once. */
export type CompiledTable = number & { readonly unit: "table list" };

/** Output of one call: dot patterns, one a cell, bit n−1 for dot n; bits above 8 are virtual dots. */
export interface EngineOutput {
  readonly patterns: Uint16Array;
  /** Index of the print character that each cell comes from; only where asked for. */
  readonly origins: Int32Array | undefined;
}

/** The output as dot patterns instead of display characters (`dotsIO` of liblouis). */
const DOTS_OUTPUT = 4;
const TABLE_DIRECTORY = "/tables";
const FIRST_CAPACITY = 4096;
/** How much output is offered for each input character before asking again with more. */
const CELLS_PER_CHARACTER = 4;
const SPARE_CELLS = 64;
/** No rule of any table in the build gives so much for so little; a bound so that a faulty table ends. */
const MOST_CELLS_PER_CHARACTER = 256;

/**
 * One liblouis module with its own buffers, reused from call to call.
 *
 * Traps: a failed compilation leaks heap and is not remembered, so a table list is handed to the engine for
 * translation only after {@link Engine.compile} has succeeded; the engine clears work space in proportion to the
 * output length that it is offered, so a short text must offer a short one; there is one log callback slot.
 */
export class Engine {
  readonly #module: LouisModule;
  readonly #lengths: number;
  #capacity = 0;
  #input = 0;
  #output = 0;
  #origins = 0;
  #log: string[] = [];

  constructor(module: LouisModule) {
    this.#module = module;
    module.print = (line) => this.#log.push(line);
    module.printErr = (line) => this.#log.push(line);
    module._lou_registerLogCallback(
      module.Runtime.addFunction((_level, message) => this.#log.push(module.Pointer_stringify(message))),
    );
    module.FS.mkdir(TABLE_DIRECTORY);
    this.#lengths = module._malloc(8);
    this.#reserve(FIRST_CAPACITY);
  }

  /** Puts a table file into the engine's file system. */
  mount(name: string, content: Uint8Array | string): void {
    if (typeof content === "string") this.#module.FS.writeFile(`${TABLE_DIRECTORY}/${name}`, content);
    else this.#module.FS.writeFile(`${TABLE_DIRECTORY}/${name}`, content, { encoding: "binary" });
  }

  /**
   * Compiles mounted tables as one list.
   *
   * @param names - file names in the order of the list
   * @returns the compiled table, or what the engine said about it; after a refusal the engine is not to be used
   *   again, because its heap may be full or half-written
   */
  compile(names: readonly string[]): CompiledTable | readonly string[] {
    const list = names.map((name) => `${TABLE_DIRECTORY}/${name}`).join(",");
    this.#log = [];
    try {
      const pointer = this.#allocateText(list);
      if (this.#module._lou_getTable(pointer) !== 0) return pointer as CompiledTable;
    } catch (thrown) {
      // The module throws a string when its heap is full; the log holds the readable sentence.
      if (this.#log.length === 0) this.#log.push(String(thrown));
    }
    return this.#log;
  }

  /**
   * The dot patterns of a text. The arrays returned are views that the next call overwrites.
   *
   * @param table - compiled by this engine
   * @param text - print without line breaks
   * @param withOrigins - whether the origin of each cell is wanted
   * @throws {RangeError} where the text needs more heap or stack than there is; a shorter text may go
   */
  translate(table: CompiledTable, text: string, withOrigins: boolean): EngineOutput {
    const length = text.length;
    let offered = length * CELLS_PER_CHARACTER + SPARE_CELLS;
    for (;;) {
      this.#reserve(offered);
      const { HEAPU16, HEAP32 } = this.#module;
      const start = this.#input >> 1;
      for (let index = 0; index < length; index += 1) HEAPU16[start + index] = text.charCodeAt(index);
      const inputLength = this.#lengths >> 2;
      HEAP32[inputLength] = length;
      HEAP32[inputLength + 1] = offered;
      const done = this.#call(table, withOrigins ? this.#origins : 0);
      const taken = HEAP32[inputLength] ?? 0;
      const given = HEAP32[inputLength + 1] ?? 0;
      if (done && taken >= length && given < offered) {
        const from = this.#output >> 1;
        const origin = this.#origins >> 2;
        return {
          patterns: HEAPU16.subarray(from, from + given),
          origins: withOrigins ? HEAP32.subarray(origin, origin + given) : undefined,
        };
      }
      // Output longer than what was offered is cut off without an error: ask again with twice the room.
      if (offered > length * MOST_CELLS_PER_CHARACTER + SPARE_CELLS) {
        throw new RangeError(`the braille table gives no end of cells for "${text.slice(0, 40)}"`);
      }
      offered *= 2;
    }
  }

  #call(table: CompiledTable, origins: number): boolean {
    const stack = this.#module.Runtime.stackSave();
    try {
      return (
        this.#module._lou_translate(
          table,
          this.#input,
          this.#lengths,
          this.#output,
          this.#lengths + 4,
          0,
          0,
          0,
          origins,
          0,
          DOTS_OUTPUT,
        ) !== 0
      );
    } catch (thrown) {
      // Rules such as that for straight quotation marks call themselves for each character that they look at.
      this.#module.Runtime.stackRestore(stack);
      throw new RangeError(
        `the braille engine has no room for this text: ${this.#log.at(-1) ?? String(thrown)}`,
      );
    }
  }

  #reserve(cells: number): void {
    if (cells <= this.#capacity) return;
    const { _malloc, _free } = this.#module;
    for (const pointer of [this.#input, this.#output, this.#origins]) if (pointer !== 0) _free(pointer);
    let capacity = Math.max(this.#capacity, FIRST_CAPACITY);
    while (capacity < cells) capacity *= 2;
    this.#input = _malloc(capacity * 2);
    this.#output = _malloc(capacity * 2);
    this.#origins = _malloc(capacity * 4);
    this.#capacity = capacity;
  }

  #allocateText(text: string): number {
    const bytes = new TextEncoder().encode(text);
    const pointer = this.#module._malloc(bytes.length + 1);
    this.#module.HEAPU8.set(bytes, pointer);
    this.#module.HEAPU8[pointer + bytes.length] = 0;
    return pointer;
  }
}
