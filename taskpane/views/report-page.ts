import { drawTrajectory } from "../../src/charts/trajectory";
import { formatDay } from "../../src/domain/calendar";
import type { Report } from "../../src/domain/progress/report";
import { escapeText } from "../../src/domain/markup";
import type { DocumentPicture } from "../../src/ports/document";
import { makePngFile } from "./chart-files";
import { make } from "./markup";

/** How wide the chart is drawn, in pixels; on paper it is as wide as the text. */
const CHART_WIDTH = 640;

/** Paper is white whatever the page looks like; lengths are those of paper. */
const SHEET_STYLES = `
:host { display: block; background: #fff; color: #000; }
.sheet { padding: 14mm 18mm; font-family: system-ui, "Segoe UI", "Noto Sans", sans-serif; font-size: var(--size, 11.5pt); line-height: 1.35; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
h1 { font-size: 1.5em; margin: 0; }
h2 { font-size: 1.1em; margin: 0.75em 0 0.15em; break-after: avoid; }
p { margin: 0.15em 0; }
p.period { font-size: 1.05em; }
svg { display: block; inline-size: 100%; block-size: auto; max-block-size: 75mm; margin-block: 0.5em; break-inside: avoid; --accent: #1f4e79; }
.last { font-size: 0.85em; }
`;

/** Sizes of type that are tried, in points, until a report stands on one page; the last is small but readable. */
const SIZES = [11.5, 11, 10.5, 10, 9.5, 9] as const;

/** Of a picture in a report: the sentences of the teacher's chart speak of intervals, the family's own stand beside it. */
const describeChart = ({ chart, period }: Report): string => {
  const [first, last] = [chart?.series.points[0], chart?.series.points.at(-1)];
  const days =
    first === undefined || last === undefined
      ? period
      : `${formatDay(first.probe.day)} to ${formatDay(last.probe.day)}`;
  return `Results from ${days}, with the line to the goal.`;
};

/** The chart of a report as a picture for a document; undefined where there is nothing to draw. */
export const makeReportPicture = async (report: Report): Promise<DocumentPicture | undefined> => {
  if (report.chart === undefined) return undefined;
  const { svg } = drawTrajectory(report.chart, { width: CHART_WIDTH });
  const [, width, height] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg) ?? [];
  const file = await makePngFile(svg);
  return {
    png: new Uint8Array(await file.arrayBuffer()),
    width: Number(width),
    height: Number(height),
    description: describeChart(report),
  };
};

/** The chart of a report with a name for it in plain words; undefined where there is nothing to draw. */
export const drawReportChart = (report: Report, idPrefix: string): Element | undefined => {
  const { chart } = report;
  if (chart === undefined) return undefined;
  const { svg } = drawTrajectory(chart, { width: CHART_WIDTH, idPrefix });
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const picture = document.importNode(parsed, true);
  const description = picture.querySelector("desc");
  if (description !== null) description.textContent = describeChart(report);
  return picture;
};

/** A report as elements: for the pane with its headings beneath the view's, for paper from the first on. */
export const layOutReport = (report: Report, place: "pane" | "paper"): readonly Element[] => {
  const [title, heading] = place === "paper" ? (["h1", "h2"] as const) : (["h3", "h4"] as const);
  const chart = drawReportChart(report, `report-${place}`);
  const last = report.sections.length - 1;
  return [
    make(title, {}, report.title),
    make("p", { class: "period" }, report.period),
    ...report.sections.flatMap((section, index) => [
      make(heading, {}, section.heading),
      ...section.sentences.map((sentence) => make("p", index === last ? { class: "last" } : {}, sentence)),
      // The picture stands after what the pupil can do.
      ...(index === 0 && chart !== undefined ? [chart] : []),
    ]),
  ];
};

/**
 * A report as one sheet of paper, in the largest type in which it fits.
 *
 * @param measure - where the sheet may stand for a moment to be measured: an element of the page
 * @returns the sheet, and whether it stands on one page
 */
export const makeReportSheet = (
  report: Report,
  paper: { readonly width: number; readonly height: number },
  measure: Element,
): { readonly sheet: HTMLElement; readonly fits: boolean } => {
  const sheet = make("div", { lang: "en" });
  const root = sheet.attachShadow({ mode: "open" });
  const styles = new CSSStyleSheet();
  styles.replaceSync(SHEET_STYLES);
  root.adoptedStyleSheets = [styles];
  root.append(make("div", { class: "sheet" }, ...layOutReport(report, "paper")));
  sheet.style.inlineSize = `${paper.width}mm`;
  const ruler = make("div", { "aria-hidden": "true" });
  ruler.style.cssText = `position: absolute; visibility: hidden; inline-size: 10mm; block-size: ${paper.height}mm`;
  sheet.style.position = "absolute";
  sheet.style.visibility = "hidden";
  measure.append(ruler, sheet);
  const room = ruler.getBoundingClientRect().height;
  const fits = SIZES.some((size) => {
    sheet.style.setProperty("--size", `${size}pt`);
    return sheet.getBoundingClientRect().height <= room;
  });
  ruler.remove();
  sheet.remove();
  sheet.style.position = "";
  sheet.style.visibility = "";
  if (!fits) sheet.style.setProperty("--size", `${SIZES[2]}pt`);
  return { sheet, fits };
};

/** A report as HTML for the clipboard, without its chart: headings and paragraphs. */
export const formatReportHtml = ({ title, period, sections }: Report): string =>
  [
    `<h1>${escapeText(title)}</h1>`,
    `<p>${escapeText(period)}</p>`,
    ...sections.flatMap(({ heading, sentences }) => [
      `<h2>${escapeText(heading)}</h2>`,
      ...sentences.map((sentence) => `<p>${escapeText(sentence)}</p>`),
    ]),
  ].join("\n");
