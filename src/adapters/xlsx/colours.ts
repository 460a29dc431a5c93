import { childOf, descendants, type XmlElement } from "./xml-source";

/**
 * The palette of indexed colours, 0 to 63; 64 and 65 are the system's text and background.
 *
 * Source: ECMA-376 part 1, 18.8.27 (indexedColors).
 */
const INDEXED =
  "000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff 000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff 800000 008000 000080 808000 800080 008080 c0c0c0 808080 9999ff 993366 ffffcc ccffff 660066 ff8080 0066cc ccccff 000080 ff00ff ffff00 00ffff 800080 800000 008080 0000ff 00ccff ccffff ccffcc ffff99 99ccff ff99cc cc99ff ffcc99 3366ff 33cccc 99cc00 ffcc00 ff9900 ff6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333".split(
    " ",
  );

/** The theme's colours by the index that cells use: light and dark of the first two pairs change places (18.8.3). */
const THEME_ORDER = ["lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"];

/** Colours of a workbook, resolved to `#rrggbb`. */
export class ColourTable {
  private readonly theme: readonly (string | undefined)[];
  private readonly indexed: readonly string[];

  /**
   * @param theme - root of the theme part, if the file has one
   * @param styleSheet - root of the styles part, which may bring a palette of its own
   */
  constructor(theme: XmlElement | undefined, styleSheet: XmlElement | undefined) {
    const scheme = theme && [...descendants(theme)].find((element) => element.name === "a:clrScheme");
    this.theme = THEME_ORDER.map((name) => {
      const colour = childOf(scheme, `a:${name}`)?.children[0];
      return colour?.name === "a:sysClr" ? colour.attributes["lastClr"] : colour?.attributes["val"];
    });
    const own = childOf(childOf(styleSheet, "colors"), "indexedColors")?.children.map(
      (colour) => colour.attributes["rgb"]?.slice(-6) ?? "000000",
    );
    this.indexed = own && own.length > 0 ? own : INDEXED;
  }

  /** The colour of an element such as `<color theme="4" tint="0.4"/>`; undefined for automatic. */
  resolve(element: XmlElement | undefined): string | undefined {
    if (!element || element.attributes["auto"] === "1") return undefined;
    const { rgb, theme, indexed, tint } = element.attributes;
    const base = rgb?.slice(-6) ?? (theme === undefined ? this.fromPalette(indexed) : this.theme[Number(theme)]);
    if (base === undefined || !/^[0-9A-Fa-f]{6}$/.test(base)) return undefined;
    return `#${tinted(base.toLowerCase(), Number(tint ?? 0))}`;
  }

  private fromPalette(indexed: string | undefined): string | undefined {
    if (indexed === "65") return "ffffff";
    return indexed === undefined || indexed === "64" ? undefined : this.indexed[Number(indexed)];
  }
}

/** ECMA-376 part 1, 18.8.19: the tint moves the luminance towards black (below 0) or white (above 0). */
const tinted = (rgb: string, tint: number): string => {
  if (!tint || !Number.isFinite(tint)) return rgb;
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => parseInt(rgb.slice(at, at + 2), 16) / 255);
  const most = Math.max(red, green, blue);
  const least = Math.min(red, green, blue);
  const range = most - least;
  const lightness = (most + least) / 2;
  const changed = tint < 0 ? lightness * (1 + tint) : lightness * (1 - tint) + tint;
  if (range === 0) return channel(changed).repeat(3);
  const saturation = range / (1 - Math.abs(2 * lightness - 1));
  const sixth =
    most === red ? ((green - blue) / range + 6) % 6 : most === green ? (blue - red) / range + 2 : (red - green) / range + 4;
  const chroma = (1 - Math.abs(2 * changed - 1)) * saturation;
  const second = chroma * (1 - Math.abs((sixth % 2) - 1));
  const lowest = changed - chroma / 2;
  const order: Record<number, [number, number, number]> = {
    0: [chroma, second, 0],
    1: [second, chroma, 0],
    2: [0, chroma, second],
    3: [0, second, chroma],
    4: [second, 0, chroma],
    5: [chroma, 0, second],
  };
  return (order[Math.floor(sixth)] ?? [0, 0, 0]).map((part) => channel(part + lowest)).join("");
};

const channel = (share: number): string =>
  Math.round(Math.min(1, Math.max(0, share)) * 255)
    .toString(16)
    .padStart(2, "0");
