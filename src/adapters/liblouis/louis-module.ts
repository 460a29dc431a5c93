/**
 * The part of the raw `liblouis-build` module that the binding uses: an Emscripten module with its own 16 MB
 * heap. Pointers are byte offsets into that heap. Source: liblouis documentation 3.2, "Programming with liblouis".
 */
export interface LouisModule {
  readonly HEAPU8: Uint8Array;
  readonly HEAPU16: Uint16Array;
  readonly HEAP32: Int32Array;
  readonly FS: {
    mkdir(path: string): unknown;
    writeFile(
      path: string,
      content: Uint8Array | string,
      options?: { readonly encoding: "binary" | "utf8" },
    ): void;
    unlink(path: string): void;
  };
  readonly Runtime: {
    addFunction(listener: (level: number, message: number) => void): number;
    stackSave(): number;
    stackRestore(pointer: number): void;
  };
  /** Where the module prints; replaceable at run time. */
  print: (line: string) => void;
  printErr: (line: string) => void;
  Pointer_stringify(pointer: number): string;
  _malloc(bytes: number): number;
  _free(pointer: number): void;
  _lou_registerLogCallback(functionPointer: number): void;
  /** Compiles a list of tables, or finds it compiled; 0 where it cannot. */
  _lou_getTable(tableList: number): number;
  /** Returns 0 on failure; both lengths are read and written back. */
  _lou_translate(
    tableList: number,
    input: number,
    inputLength: number,
    output: number,
    outputLength: number,
    typeform: number,
    spacing: number,
    outputPositions: number,
    inputPositions: number,
    cursorPosition: number,
    mode: number,
  ): number;
}

/** Where the engine and its tables come from; the one thing in which Node and a page differ. */
export interface EngineSource {
  /** A module with a heap of its own: a second call gives a second engine. */
  loadEngine(): Promise<LouisModule>;
  /** The bytes or the text of one table file; rejects where there is none of that name. */
  loadTable(name: string): Promise<Uint8Array | string>;
}
