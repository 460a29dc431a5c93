import type { CellStyle } from "../../spreadsheet/workbook";
import { childOf, childrenOf, parseXml } from "./xml-source";
import { escapeAttribute, setAttribute } from "./xml-splice";
import { XmlPatch } from "./xml-patch";

/** The numbers from which a file may count number formats of its own. */
const FIRST_OWN_FORMAT = 164;

/**
 * Styles that the model made because the file had none of the kind (a date typed into a cell of plain numbers): each
 * is a copy of the file's style that differs by its number format alone.
 */
export class StyleNumbers {
  private readonly made = new Map<number, number>();
  private readonly wanted: { readonly base: number; readonly numberFormat: string }[] = [];

  /**
   * @param ofFile - styles as the file has them
   * @param ofModel - the same, and those that the model added
   */
  constructor(
    private readonly ofFile: readonly CellStyle[],
    private readonly ofModel: readonly CellStyle[],
  ) {}

  /** The style number of the file for one of the model. */
  numberFor(style: number): number {
    if (style < this.ofFile.length) return style;
    const known = this.made.get(style);
    if (known !== undefined) return known;
    const model = this.ofModel[style];
    if (!model) return 0;
    const same = JSON.stringify(model);
    const existing = this.ofFile.findIndex((candidate) => JSON.stringify(candidate) === same);
    if (existing >= 0) return existing;
    const look = JSON.stringify({ ...model, numberFormat: "" });
    const base = this.ofFile.findIndex(
      (candidate) => JSON.stringify({ ...candidate, numberFormat: "" }) === look,
    );
    const number = this.ofFile.length + this.wanted.length;
    this.wanted.push({ base: Math.max(base, 0), numberFormat: model.numberFormat });
    this.made.set(style, number);
    return number;
  }

  get isEmpty(): boolean {
    return this.wanted.length === 0;
  }

  /** The styles part with the new styles at its end. */
  patch(text: string): string {
    const patch = new XmlPatch(parseXml(text));
    const { root } = patch;
    const q = patch.document.scope.fileQualifier("") ?? "";
    const styles = childOf(root, "cellXfs");
    const formats = childOf(root, "numFmts");
    if (!styles) return text;
    const own = new Map(
      childrenOf(formats, "numFmt").map(({ attributes }) => [
        attributes["formatCode"] ?? "",
        attributes["numFmtId"] ?? "",
      ]),
    );
    let next = Math.max(FIRST_OWN_FORMAT - 1, ...[...own.values()].map(Number)) + 1;
    const fresh: string[] = [];
    const copies = this.wanted.map(({ base, numberFormat }) => {
      let id = numberFormat === "General" ? "0" : own.get(numberFormat);
      if (id === undefined) {
        id = String(next++);
        own.set(numberFormat, id);
        fresh.push(`<${q}numFmt numFmtId="${id}" formatCode="${escapeAttribute(numberFormat)}"/>`);
      }
      const xf = styles.children[base];
      if (!xf)
        return `<${q}xf numFmtId="${id}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>`;
      const tag = setAttribute(
        setAttribute(text.slice(xf.start, xf.openEnd), "numFmtId", id),
        "applyNumberFormat",
        "1",
      );
      return tag + text.slice(xf.openEnd, xf.end);
    });
    patch.append(styles, copies.join(""));
    if (styles.attributes["count"] !== undefined)
      patch.setAttribute(styles, "count", String(styles.children.length + copies.length));
    if (fresh.length > 0 && formats) {
      patch.append(formats, fresh.join(""));
      if (formats.attributes["count"] !== undefined)
        patch.setAttribute(formats, "count", String(formats.children.length + fresh.length));
    } else if (fresh.length > 0) {
      const first = root.children[0] ?? styles;
      patch.insertBefore(first, `<${q}numFmts count="${fresh.length}">${fresh.join("")}</${q}numFmts>`);
    }
    return patch.apply();
  }
}
