import { cellOf } from "../domain/braille/cell";

/** A place on the canvas: column and row of dots from the upper left, from 0. */
type DotSpot = readonly [column: number, row: number];

/** How a line of dots is drawn. */
interface DotLine {
  /** one dot of so many; 1 by default */
  readonly every?: number;
  /** dots are left out that would stand this near, in columns and rows, to those that were there before */
  readonly clear?: number;
}

/** The dot numbers of a cell by column and row. */
const DOTS = [
  [1, 2, 3],
  [4, 5, 6],
] as const;

/** A drawing in braille dots: two columns and three rows of them to a cell. */
export class DotCanvas {
  readonly width: number;
  readonly height: number;
  readonly #dots: Uint8Array;

  /** @param cells - cells a line @param lines - lines of cells */
  constructor(cells: number, lines: number) {
    this.width = 2 * cells;
    this.height = 3 * lines;
    this.#dots = new Uint8Array(this.width * this.height);
  }

  #has(column: number, row: number): boolean {
    return (
      column >= 0 &&
      row >= 0 &&
      column < this.width &&
      row < this.height &&
      this.#dots[row * this.width + column] === 1
    );
  }

  #raise(column: number, row: number): void {
    if (column < 0 || row < 0 || column >= this.width || row >= this.height) return;
    this.#dots[row * this.width + column] = 1;
  }

  /** A straight line of dots from one place to another, both among them. */
  drawLine([x1, y1]: DotSpot, [x2, y2]: DotSpot, { every = 1, clear = 0 }: DotLine = {}): void {
    const steps = Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1), 1);
    const spots = Array.from({ length: steps + 1 }, (_, i): DotSpot => [
      Math.round(x1 + ((x2 - x1) * i) / steps),
      Math.round(y1 + ((y2 - y1) * i) / steps),
    ]).filter((_, i) => i % every === 0);
    const free = spots.filter(([column, row]) => !this.#isNear(column, row, clear));
    for (const [column, row] of free) this.#raise(column, row);
  }

  /** Two by two dots, their upper left one at the place. */
  drawBlock([column, row]: DotSpot): void {
    for (const [dx, dy] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ] as const)
      this.#raise(column + dx, row + dy);
  }

  #isNear(column: number, row: number, clear: number): boolean {
    if (clear === 0) return false;
    for (let dy = -clear; dy <= clear; dy++)
      for (let dx = -clear; dx <= clear; dx++) if (this.#has(column + dx, row + dy)) return true;
    return false;
  }

  /** Lines of Unicode braille, each as long as the canvas is wide. */
  toLines(): readonly string[] {
    return Array.from({ length: this.height / 3 }, (_, line) =>
      Array.from({ length: this.width / 2 }, (_, cell) =>
        cellOf(
          DOTS.flatMap((column, dx) => column.filter((_, dy) => this.#has(2 * cell + dx, 3 * line + dy))),
        ),
      ).join(""),
    );
  }
}
