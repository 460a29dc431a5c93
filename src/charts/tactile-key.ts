import type { Paper } from "../domain/paper";
import { success, type Result } from "../domain/result";
import {
  checkTactileLayout,
  LEAST_SIDE,
  PAPER_MARGIN,
  refuseLayout,
  TACTILE_GAPS,
  type TactileElement,
  type TactileFault,
  type TactilePage,
  type TactileProcess,
} from "./tactile-check";
import { layOutLabel, placeLabel, type ToCells } from "./tactile-label";
import { POINT_RADIUS } from "./tactile-paths";
import type { TactileShape } from "./tactile-shape";

/** One line of the key: what is felt, and what it means. */
export interface KeyRow {
  readonly text: string;
  readonly sample?: {
    readonly width?: number;
    readonly dash?: number;
    readonly symbol?: "disc" | "block";
  };
}

/** Length of a sample of a line: two of the longest dashes and their gap fit. */
const SAMPLE = 3.5 * LEAST_SIDE;

const drawSample = (
  { width, dash, symbol }: NonNullable<KeyRow["sample"]>,
  left: number,
  y: number,
  gap: number,
): readonly TactileShape[] => {
  const shapes: TactileShape[] = [];
  if (width !== undefined) {
    const many = dash === undefined ? 1 : Math.floor((SAMPLE + gap) / (dash + gap));
    const each = (SAMPLE + gap) / many - gap;
    for (let i = 0; i < many; i++) {
      const from = left + i * (each + gap);
      shapes.push({
        kind: "line",
        width,
        spots: [
          { x: from, y },
          { x: from + each, y },
        ],
      });
    }
  }
  const x = left + SAMPLE / 2;
  if (symbol === "disc") shapes.push({ kind: "disc", at: { x, y }, radius: POINT_RADIUS });
  if (symbol === "block")
    shapes.push({
      kind: "block",
      left: x - POINT_RADIUS,
      right: x + POINT_RADIUS,
      top: y - POINT_RADIUS,
      bottom: y + POINT_RADIUS,
    });
  return shapes;
};

/**
 * The key on a sheet of its own, or on several: under a braille title each line style and symbol with its meaning.
 *
 * @returns the sheets, checked; or `no-room` where one entry alone is longer than a sheet
 */
export const layOutKey = (
  title: string,
  rows: readonly KeyRow[],
  request: {
    readonly paper: Paper;
    readonly landscape: boolean;
    readonly process: TactileProcess;
    readonly toCells: ToCells;
  },
): Result<readonly TactilePage[], TactileFault> => {
  const { paper, landscape, process, toCells } = request;
  const [width, height] = landscape ? [paper.height, paper.width] : [paper.width, paper.height];
  const gap = TACTILE_GAPS[process];
  const usable = width - 2 * PAPER_MARGIN;
  const head = layOutLabel(`Key: ${title}`, toCells, usable);
  const start = (): TactileElement[] => [placeLabel(head, { x: PAPER_MARGIN, y: PAPER_MARGIN }, "title")];
  const pages: TactileElement[][] = [];
  let elements = start();
  let top = PAPER_MARGIN + head.height + gap;
  rows.forEach((row, i) => {
    const left = PAPER_MARGIN + (row.sample === undefined ? 0 : SAMPLE + 1 + gap + POINT_RADIUS);
    const label = layOutLabel(row.text, toCells, width - PAPER_MARGIN - left);
    const tall = Math.max(label.height, row.sample === undefined ? 0 : 2 * POINT_RADIUS);
    if (top + tall > height - PAPER_MARGIN) {
      pages.push(elements);
      elements = start();
      top = PAPER_MARGIN + head.height + gap;
    }
    if (row.sample !== undefined) {
      const { width: lineWidth, symbol } = row.sample;
      const shapes = drawSample(row.sample, PAPER_MARGIN + 1, top + POINT_RADIUS, gap);
      elements.push({
        name: `sample of ${row.text}`,
        group: `sample ${i}`,
        shapes,
        ...(lineWidth === undefined && symbol !== undefined && { style: { of: "symbol", name: symbol } }),
      });
    }
    elements.push(placeLabel(label, { x: left, y: top }, "key"));
    top += tall + gap;
  });
  pages.push(elements);
  const made: TactilePage[] = [];
  for (const page of pages) {
    const checked = checkTactileLayout({
      title: `Key: ${title}`,
      summary: `Key of the tactile graphic: ${rows.map(({ text }) => text).join("; ")}.`,
      width,
      height,
      process,
      elements: page,
    });
    if (!checked.ok)
      return checked.fault.code === "off-paper"
        ? refuseLayout(
            "no-room",
            `An entry of the key is too long for ${paper.name}: choose a larger paper, or shorter names of phases.`,
          )
        : checked;
    made.push(checked.value);
  }
  return success(made);
};
