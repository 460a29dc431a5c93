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
const THEME_ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];

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
    const base =
      rgb?.slice(-6) ?? (theme === undefined ? this.fromPalette(indexed) : this.theme[Number(theme)]);
    if (base === undefined || !/^[0-9A-Fa-f]{6}$/.test(base)) return undefined;
    return `#${tinted(base.toLowerCase(), Number(tint ?? 0))}`;
  }

  private fromPalette(indexed: string | undefined): string | undefined {
    if (indexed === "65") return "ffffff";
    return indexed === undefined || indexed === "64" ? undefined : this.indexed[Number(indexed)];
  }
}

/**
 * ECMA-376 part 1, 18.8.19: the tint moves the luminance towards black (below 0) or white (above 0). Spreadsheet
 * programs reckon it in whole numbers of 240 steps, so this does too, lest shades differ by one.
 */
const STEPS = 240;

const tinted = (rgb: string, tint: number): string => {
  if (!tint || !Number.isFinite(tint)) return rgb;
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => parseInt(rgb.slice(at, at + 2), 16));
  const most = Math.max(red, green, blue);
  const least = Math.min(red, green, blue);
  const range = most - least;
  const luminance = Math.trunc(((most + least) * STEPS + 255) / 510);
  const moved = tint < 0 ? luminance * (1 + tint) : luminance * (1 - tint) + STEPS * tint;
  // A tint is kept as a fraction just short of a round one: 218.998 is meant to be 219.
  const light = Math.trunc(moved + 0.01);
  if (range === 0) return channel(light).repeat(3);
  const divisor = luminance <= STEPS / 2 ? most + least : 510 - most - least;
  const saturation = Math.trunc((range * STEPS + Math.trunc(divisor / 2)) / divisor);
  const distance = (colour: number): number =>
    Math.trunc(((most - colour) * 40 + Math.trunc(range / 2)) / range);
  const hue =
    most === red
      ? distance(blue) - distance(green)
      : most === green
        ? 80 + distance(red) - distance(blue)
        : 160 + distance(green) - distance(red);
  const upper =
    light <= STEPS / 2
      ? Math.trunc((light * (STEPS + saturation) + STEPS / 2) / STEPS)
      : light + saturation - Math.trunc((light * saturation + STEPS / 2) / STEPS);
  return [hue + 80, hue, hue - 80].map((third) => channel(fromHue(2 * light - upper, upper, third))).join("");
};

const fromHue = (lower: number, upper: number, hue: number): number => {
  const turned = (hue + STEPS) % STEPS;
  if (turned < 40) return lower + Math.trunc(((upper - lower) * turned + 20) / 40);
  if (turned < 120) return upper;
  return turned < 160 ? lower + Math.trunc(((upper - lower) * (160 - turned) + 20) / 40) : lower;
};

const channel = (steps: number): string =>
  Math.min(255, Math.max(0, Math.trunc((steps * 255 + STEPS / 2) / STEPS)))
    .toString(16)
    .padStart(2, "0");
