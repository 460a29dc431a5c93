/**
 * Relative luminance of a colour, 0 (black) to 1 (white).
 *
 * Source: WCAG 2.2, definition of relative luminance.
 *
 * @param color - `#rrggbb`
 */
export function luminance(color: string): number {
  const channel = (at: number): number => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

/**
 * Contrast of two colours, 1 to 21.
 *
 * Source: WCAG 2.2, definition of contrast ratio.
 */
export function contrastOf(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** WCAG 2.2, 1.4.3: the least contrast of text. */
export const LEAST_CONTRAST = 4.5;

/** The wanted ink where it can be read on the paper, else black or white, whichever reads better. */
export function readableInk(wanted: string, paper: string): string {
  if (contrastOf(wanted, paper) >= LEAST_CONTRAST) return wanted;
  return contrastOf("#000000", paper) >= contrastOf("#ffffff", paper) ? "#000000" : "#ffffff";
}
