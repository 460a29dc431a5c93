import type { CellStyle } from "../../spreadsheet/workbook";
import type { Paper } from "./cell-look";
import { formatLook } from "./cell-look";
import type { BandColors } from "./table-banding";

/**
 * Turns looks into class names of one constructed style sheet, so that drawing a cell is setting its class. (The
 * content policy forbids style elements; rules added by script are allowed.)
 */
export class LookSheet {
  private readonly rules = new CSSStyleSheet();
  private readonly classes = new Map<string, string>();

  constructor(public page: Paper) {
    document.adoptedStyleSheets.push(this.rules);
  }

  /** Forgets all looks: for other colours of the page or another workbook. */
  reset(page: Paper): void {
    this.page = page;
    this.classes.clear();
    this.rules.replaceSync("");
  }

  /**
   * The class for a style over its banding.
   *
   * @param index - of the style in the workbook: looks are remembered by it
   */
  classOf(index: number, style: CellStyle, band: BandColors, gridLines: boolean): string {
    const key = [index, band.fill, band.ink, band.bold, band.line, gridLines].join("/");
    const known = this.classes.get(key);
    if (known !== undefined) return known;
    const declarations = Object.entries(formatLook(style, band, this.page, gridLines))
      .map(([property, value]) => `${property}: ${value}`)
      .join("; ");
    const name = `look-${String(this.classes.size)}`;
    this.rules.insertRule(`.${name} { ${declarations} }`, this.rules.cssRules.length);
    this.classes.set(key, name);
    return name;
  }
}
