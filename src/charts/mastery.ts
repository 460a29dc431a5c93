import type { ChartPicture } from "./chart-picture";
import { linearScale } from "./axis-scale";
import { placeLabels } from "./label-placement";
import { drawEventKey, drawEvents, layOutLanes } from "./mastery-events";
import {
  coursesOf,
  countMastered,
  listEvents,
  poolKnown,
  spanOfMastery,
  WAYS,
  type Mastery,
} from "./mastery-course";
import {
  countPanel,
  drawIntroductions,
  drawKnown,
  drawMastered,
  drawPanel,
  sharePanel,
  type LabelledMark,
  type Panel,
} from "./mastery-panels";
import { isOfOneSign, summariseMastery, tabulateMastery, titleOfMastery } from "./mastery-text";
import { drawElement, escapeText } from "./svg-element";
import { drawDays, type PictureSize } from "./trajectory-frame";

/** How a picture of mastery is drawn; its height follows from its width. */
export interface MasteryLook extends Pick<PictureSize, "width"> {
  /** begins the ids of title and description: different for each picture of a page */
  readonly idPrefix?: string;
}

/** Heights of the two plots for one of their width. */
const SHARE_RATIO = 0.45;
const COUNT_RATIO = 0.32;

/**
 * Mastery over time. Of one sign: the share expected right by day with its interval, the day introduced, the day the
 * criterion was met, later lapses. Of several: the share of them expected to be known, and beneath it the number
 * mastered as a stepped line with the days on which signs were introduced. Reading is a full line with filled circles,
 * writing a dashed one with open squares; nothing is told by colour alone.
 *
 * @returns the picture; its plot stands empty where nothing is known of any sign
 */
export const drawMastery = (mastery: Mastery, look: MasteryLook = { width: 640 }): ChartPicture => {
  const one = isOfOneSign(mastery);
  const { width } = look;
  const fontSize = width < 420 ? 12 : 13;
  const left = 48;
  const right = width - 12;
  const span = spanOfMastery(mastery.courses);
  const [firstDay, lastDay] = span ?? [0, 1];
  const x = linearScale(firstDay, lastDay, left + 8, right - 8);
  const head = Math.round(2.2 * fontSize);
  const events = listEvents(mastery.courses);
  const lanes = layOutLanes(one ? events : [], Math.round(1.6 * fontSize));
  const plotTop = head + 18 * lanes.size;
  const shareBottom = plotTop + SHARE_RATIO * (right - left);
  const top = sharePanel({
    title: one ? "Share expected right" : "Share of these signs expected to be known",
    left,
    right,
    top: plotTop,
    titleAt: fontSize + 2,
    bottom: shareBottom,
    fontSize,
    x,
  });
  const countTop = shareBottom + 1.9 * head;
  const below = one
    ? undefined
    : countPanel(
        {
          title: "Signs mastered",
          left,
          right,
          top: countTop,
          titleAt: countTop - 0.8 * fontSize,
          bottom: countTop + COUNT_RATIO * (right - left),
          fontSize,
          x,
        },
        Math.max(
          0,
          ...WAYS.flatMap((way) => countMastered(coursesOf(mastery, way)).map(({ count }) => count)),
        ),
      );
  const { bottom } = below ?? top;
  const keyAt = bottom + 4.2 * fontSize;
  const height = Math.ceil(lanes.size > 0 ? keyAt + 8 : bottom + 3 * fontSize + 10);
  const title = titleOfMastery(mastery);
  const summary = summariseMastery(mastery);
  const [titleId, descId] = ["title", "desc"].map((part) => `${look.idPrefix ?? "mastery"}-${part}`);
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
      "font-size": fontSize,
      fill: "currentColor",
    },
    [
      drawElement("title", { id: titleId }, escapeText(title)),
      drawElement("desc", { id: descId }, escapeText(summary.join(" "))),
      ...fillPanel(top, [...(one ? [drawEvents(top, events, lanes)] : []), ...markShare(top, mastery)]),
      ...(below ? fillPanel(below, markCount(below, mastery)) : []),
      ...(span === undefined ? [] : drawDays({ width, left, right, bottom, fontSize }, x)),
      ...(lanes.size > 0 ? drawEventKey(top, events, keyAt) : []),
    ],
  );
  return { svg, title, summary, table: tabulateMastery(mastery) };
};

const fillPanel = (panel: Panel, marks: readonly LabelledMark[]): readonly string[] => {
  const { left, right, top, bottom, fontSize } = panel;
  const labels = placeLabels(
    marks.flatMap((mark) => mark.labels),
    marks.flatMap(({ boxes }) => boxes),
    { left: left + 2, right, top, bottom: bottom - 2 },
    fontSize,
  );
  return [
    ...drawPanel(panel),
    ...marks.map(({ markup }) => markup),
    ...labels.map(({ text, x, y, anchor }) =>
      drawElement("text", { x, y, "text-anchor": anchor }, escapeText(text)),
    ),
  ];
};

/** The ways that have courses, each with its values and whether its line ends above the other's. */
const linesOf = <V>(
  mastery: Mastery,
  valuesOf: (courses: ReturnType<typeof coursesOf>) => readonly V[],
  heightOf: (value: V) => number,
): readonly {
  readonly way: (typeof WAYS)[number];
  readonly values: readonly V[];
  readonly isUpper: boolean;
}[] => {
  const lines = WAYS.map((way) => {
    const values = valuesOf(coursesOf(mastery, way));
    const last = values.at(-1);
    return { way, values, end: last === undefined ? -1 : heightOf(last) };
  });
  const [reading, writing] = lines;
  const readingIsUpper = (reading?.end ?? 0) >= (writing?.end ?? 0);
  return lines
    .filter(({ way }) => coursesOf(mastery, way).length > 0)
    .map(({ way, values }) => ({ way, values, isUpper: (way === "reading") === readingIsUpper }));
};

const markShare = (panel: Panel, mastery: Mastery): readonly LabelledMark[] =>
  linesOf(mastery, poolKnown, ({ expected }) => expected).map(({ way, values, isUpper }) =>
    drawKnown(panel, values, way, isUpper),
  );

const markCount = (panel: Panel, mastery: Mastery): readonly LabelledMark[] => [
  { markup: drawIntroductions(panel, listEvents(mastery.courses)), boxes: [], labels: [] },
  ...linesOf(mastery, countMastered, ({ count }) => count).map(({ way, values, isUpper }) =>
    drawMastered(panel, values, way, isUpper),
  ),
];
