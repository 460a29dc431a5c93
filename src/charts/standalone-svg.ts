import { drawElement } from "./svg-element";

/** Ink and paper of a picture that stands on no page. */
const INK = "#000000";
const PAPER = "#ffffff";

/**
 * A picture as a file of its own: black ink on white paper instead of the page's colours.
 *
 * @param svg - as the charts draw it, with width and height in pixels
 */
export const standaloneSvg = (svg: string): string => {
  const [, width = "0", height = "0"] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg) ?? [];
  const paper = drawElement("rect", { width: Number(width), height: Number(height), fill: PAPER });
  const inked = svg.replaceAll("currentColor", INK);
  const head = /<\/desc>/.exec(inked);
  const at = head === null ? inked.indexOf(">") + 1 : head.index + head[0].length;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${inked.slice(0, at)}\n${paper}${inked.slice(at)}\n`;
};
