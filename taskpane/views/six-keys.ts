import { BLANK_CELL, cellOf } from "../../src/domain/braille/cell";

/** The dot of each key, by its place on the keyboard whatever its letter: three under each hand, as on a braillewriter. */
const DOT_OF_KEY: Readonly<Record<string, number>> = {
  KeyF: 1,
  KeyD: 2,
  KeyS: 3,
  KeyJ: 4,
  KeyK: 5,
  KeyL: 6,
};
const SPACE = "Space";

/**
 * Cells from keys pressed together. A cell is complete when all its keys are up, or when a key goes down again after
 * another went up: fast writers begin the next cell before the last finger has left. The space bar is a blank cell.
 */
export class SixKeys {
  readonly #down = new Set<string>();
  #chord = new Set<string>();
  /** whether a key of the chord went up already */
  #isEnding = false;

  /** Whether a key takes part. */
  static has(code: string): boolean {
    return code === SPACE || DOT_OF_KEY[code] !== undefined;
  }

  /** A key goes down. @returns a cell that this completes, or undefined */
  press(code: string): string | undefined {
    if (!SixKeys.has(code) || this.#down.has(code)) return undefined;
    const done = this.#isEnding ? this.#take() : undefined;
    this.#down.add(code);
    this.#chord.add(code);
    return done;
  }

  /** A key goes up. @returns the cell that this completes, or undefined */
  release(code: string): string | undefined {
    if (!this.#down.delete(code)) return undefined;
    this.#isEnding = this.#chord.has(code) || this.#isEnding;
    const isHeld = [...this.#chord].some((key) => this.#down.has(key));
    return isHeld ? undefined : this.#take();
  }

  /** Forgets keys that are down: where the focus goes away nothing tells of their going up. */
  drop(): void {
    this.#down.clear();
    this.#chord = new Set();
    this.#isEnding = false;
  }

  #take(): string | undefined {
    const keys = this.#chord;
    this.#chord = new Set();
    this.#isEnding = false;
    if (keys.size === 0) return undefined;
    const dots = [...keys].flatMap((key) => DOT_OF_KEY[key] ?? []);
    return dots.length === 0 ? BLANK_CELL : cellOf(dots);
  }
}
