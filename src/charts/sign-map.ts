import { dotsOf } from "../domain/braille/cell";
import { SIGN_STATES, type SignStanding } from "../domain/progress/sign-states";
import { WAYS, type Way } from "../domain/progress/way";
import type { ChartPicture } from "./chart-picture";
import { summariseMap, tabulateMap, titleOfMap, type SignMap } from "./sign-map-text";
import { drawStateMark } from "./state-mark";
import { drawElement, escapeText } from "./svg-element";

export type { SignMap } from "./sign-map-text";

/** How a map is drawn; its height follows from its width and the number of signs. */
export interface SignMapLook {
  /** in pixels */
  readonly width: number;
  /** begins the ids of title and description: different for each picture of a page */
  readonly idPrefix?: string;
}

const INK = "currentColor";
/** Of a box; the widest word of a state stands in half of it. */
const BOX_WIDTH = 122;
const BOX_HEIGHT = 124;
const MARGIN = 10;
/** Between two dots of a cell, and from a cell to the next. */
const DOT_STEP = 10;
const CELL_STEP = 25;
const DOT_RADIUS = 3.8;
const GUIDE_RADIUS = 0.9;
const MARK_RADIUS = 5;
const FONT = 11;
const LINE = 13;
const TITLE_FONT = 15;
const KEY_WIDTH = 122;
/** In letters; a longer one is parted. */
const LONGEST_NAME = 12;

/**
 * A map of signs as a teacher lays cards out: a box a sign with its cells large, its print beneath, and how far it is in
 * reading (left) and in writing (right), each as a mark and in words. Nothing is told by colour.
 */
export const drawSignMap = (map: SignMap, look: SignMapLook = { width: 640 }): ChartPicture => {
  const { width } = look;
  const columns = Math.max(1, Math.floor((width - 2 * MARGIN) / BOX_WIDTH));
  const boxWidth = (width - 2 * MARGIN) / columns;
  const key = drawKey(width);
  const top = key.bottom + 8;
  const rows = Math.ceil(map.standings.length / columns);
  const height = Math.ceil(top + rows * BOX_HEIGHT + MARGIN);
  const title = titleOfMap(map);
  const summary = summariseMap(map);
  const [titleId, descId] = ["title", "desc"].map((part) => `${look.idPrefix ?? "signs"}-${part}`);
  const svg = drawElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-labelledby": `${titleId} ${descId}`,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      "font-family": "system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif",
      "font-size": FONT,
      fill: INK,
    },
    [
      drawElement("title", { id: titleId }, escapeText(title)),
      drawElement("desc", { id: descId }, escapeText(summary.join(" "))),
      ...key.markup,
      drawText(title, MARGIN, 20, { "font-size": TITLE_FONT, "font-weight": 600 }),
      ...map.standings.map((standing, place) =>
        drawBox(
          standing,
          MARGIN + (place % columns) * boxWidth,
          top + Math.floor(place / columns) * BOX_HEIGHT,
          boxWidth,
        ),
      ),
    ],
  );
  return { svg, title, summary, table: tabulateMap(map) };
};

/**
 * The same map as pages for paper, each with title and key.
 *
 * @param ratio - height of a page over its width
 * @returns one picture a page; one empty page where there is no sign
 */
export const drawSignMapPages = (map: SignMap, look: SignMapLook, ratio: number): readonly ChartPicture[] => {
  const columns = Math.max(1, Math.floor((look.width - 2 * MARGIN) / BOX_WIDTH));
  const free = ratio * look.width - drawKey(look.width).bottom - 8 - MARGIN;
  const most = columns * Math.max(1, Math.floor(free / BOX_HEIGHT));
  const count = Math.max(1, Math.ceil(map.standings.length / most));
  return Array.from({ length: count }, (_, page) =>
    drawSignMap(
      { ...map, standings: map.standings.slice(page * most, (page + 1) * most) },
      { ...look, idPrefix: `${look.idPrefix ?? "signs"}-page-${page + 1}` },
    ),
  );
};

const drawText = (
  text: string,
  x: number,
  y: number,
  more: Readonly<Record<string, string | number>> = {},
): string => drawElement("text", { x, y, ...more }, escapeText(text));

/** The marks with their words, and which half of a box is which. */
const drawKey = (width: number): { readonly markup: readonly string[]; readonly bottom: number } => {
  const perRow = Math.max(1, Math.floor((width - 2 * MARGIN) / KEY_WIDTH));
  const rows = Math.ceil(SIGN_STATES.length / perRow);
  const top = 38;
  const markup = SIGN_STATES.flatMap((state, place) => {
    const x = MARGIN + (place % perRow) * KEY_WIDTH;
    const y = top + LINE + 2 + Math.floor(place / perRow) * (LINE + 5);
    return [drawStateMark(state, x + 7, y - 4, MARK_RADIUS), drawText(state, x + 18, y)];
  });
  return {
    markup: [drawText("In each box: reading on the left, writing on the right.", MARGIN, top), ...markup],
    bottom: top + 2 + rows * (LINE + 5) + 4,
  };
};

const drawBox = (standing: SignStanding, x: number, y: number, width: number): string => {
  const { name, cells } = standing.sign;
  const middle = x + width / 2;
  const line = { stroke: INK, "stroke-width": 0.75 };
  const frame = drawElement("rect", {
    x: x + 2,
    y: y + 2,
    width: width - 4,
    height: BOX_HEIGHT - 4,
    rx: 3,
    fill: "none",
    ...line,
  });
  const parted = drawElement("line", { x1: middle, y1: y + 76, x2: middle, y2: y + BOX_HEIGHT - 8, ...line });
  return drawElement("g", {}, [
    frame,
    ...drawCells(cells, middle, y + 18),
    ...drawName(name, middle, y + 65),
    parted,
    ...WAYS.flatMap((way, half) => drawWay(standing, way, x + width * (0.25 + 0.5 * half), y + 82)),
  ]);
};

/** Long names, such as `opening single quotation mark`, in two lines of smaller type. */
const drawName = (name: string, x: number, y: number): readonly string[] => {
  const look = { "text-anchor": "middle", "font-weight": 600 };
  if (name.length <= LONGEST_NAME) return [drawText(name, x, y, { ...look, "font-size": 14 })];
  const words = name.split(" ");
  const half = Math.ceil(words.length / 2);
  return [words.slice(0, half), words.slice(half)].map((part, place) =>
    drawText(part.join(" "), x, y - 8 + place * 12, { ...look, "font-size": 11 }),
  );
};

const drawWay = (standing: SignStanding, way: Way, x: number, y: number): readonly string[] => {
  const { state } = standing[way];
  const words = state.split(" ");
  return [
    drawStateMark(state, x, y, MARK_RADIUS),
    ...words.map((word, place) =>
      drawText(word, x, y + 18 + place * 12, { "text-anchor": "middle", "font-size": 10.5 }),
    ),
  ];
};

/** Raised dots full, the places of the others as points, so that it is seen how high a sign stands. */
const drawCells = (cells: string, middle: number, y: number): readonly string[] => {
  const each = [...cells];
  const left = middle - ((each.length - 1) * CELL_STEP + DOT_STEP) / 2;
  return each.flatMap((cell, place) => {
    const raised = new Set(dotsOf(cell));
    return [1, 2, 3, 4, 5, 6].map((dot) =>
      drawElement("circle", {
        cx: left + place * CELL_STEP + (dot > 3 ? DOT_STEP : 0),
        cy: y + ((dot - 1) % 3) * DOT_STEP,
        r: raised.has(dot) ? DOT_RADIUS : GUIDE_RADIUS,
      }),
    );
  });
};
