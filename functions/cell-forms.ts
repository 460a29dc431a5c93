/** What the sheet functions show of braille: ASCII braille, dot numbers, a count of cells, lines. */
import { formatDots, toAscii } from "../src/domain/braille/cell";
import { USUAL_LINE, wrapCells } from "../src/domain/braille/page";
import type { Fault } from "../src/domain/result";
import { numberOf } from "./cell-reading";
import { answerOf, isBlank, type Answer } from "./shape";

/** North American ASCII braille of Unicode braille. */
export const asciiOfCells = (cells: string): Answer => answerOf(toAscii(cells));

/** Dot numbers of Unicode braille, cells joined by `-`. */
export const dotsOfCells = (cells: string): string => formatDots(cells);

/** How many cells Unicode braille has; line breaks are none. */
export const countCells = (cells: string): number => cells.replaceAll("\n", "").length;

/**
 * Lines of at most so many cells, a row each.
 * @param most - as the host hands it over: null where it is missing
 */
export const linesOfCells = (cells: string, most: unknown): Fault | readonly (readonly Answer[])[] => {
  const width = isBlank(most) ? { ok: true as const, value: USUAL_LINE } : numberOf(most, "cells");
  if (!width.ok) return width.fault;
  const lines = wrapCells(cells, width.value);
  return lines.ok ? lines.value.map((line) => [line]) : lines.fault;
};
