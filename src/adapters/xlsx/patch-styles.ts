import type { CellStyle } from "../../spreadsheet/workbook";
import { childOf, childrenOf, parseXml, type XmlElement } from "./xml-source";
import { escapeAttribute, setAttribute } from "./xml-splice";
import { XmlPatch } from "./xml-patch";

/** The numbers from which a file may count number formats of its own. */
const FIRST_OWN_FORMAT = 164;

/**
 * Styles that the model made because the file had none of the kind (a date typed into a cell of plain numbers): each
 * is a copy of the file's style that differs by its number format, or by the name of its font, alone.
 */
export class StyleNumbers {
  private readonly made = new Map<number, number>();
  private readonly wanted: {
    readonly base: number;
    readonly numberFormat: string;
    readonly font?: string | undefined;
  }[] = [];

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
    const baseBy = (lookOf: (candidate: CellStyle) => string): number =>
      this.ofFile.findIndex((candidate) => lookOf(candidate) === lookOf(model));
    const sameFont = baseBy((candidate) => JSON.stringify({ ...candidate, numberFormat: "" }));
    const base =
      sameFont >= 0
        ? sameFont
        : baseBy(({ font, ...candidate }) =>
            JSON.stringify({ ...candidate, numberFormat: "", font: { ...font, name: "" } }),
          );
    const number = this.ofFile.length + this.wanted.length;
    this.wanted.push({
      base: Math.max(base, 0),
      numberFormat: model.numberFormat,
      font: sameFont >= 0 ? undefined : model.font?.name,
    });
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
    const fonts = new FontCopies(text, childOf(root, "fonts"), q);
    const copies = this.wanted.map(({ base, numberFormat, font }) => {
      let id = numberFormat === "General" ? "0" : own.get(numberFormat);
      if (id === undefined) {
        id = String(next++);
        own.set(numberFormat, id);
        fresh.push(`<${q}numFmt numFmtId="${id}" formatCode="${escapeAttribute(numberFormat)}"/>`);
      }
      const xf = styles.children[base];
      if (!xf)
        return `<${q}xf numFmtId="${id}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>`;
      const plain = setAttribute(
        setAttribute(text.slice(xf.start, xf.openEnd), "numFmtId", id),
        "applyNumberFormat",
        "1",
      );
      const fontId = font === undefined ? undefined : fonts.named(Number(xf.attributes["fontId"] ?? 0), font);
      const tag =
        fontId === undefined
          ? plain
          : setAttribute(setAttribute(plain, "fontId", String(fontId)), "applyFont", "1");
      return tag + text.slice(xf.openEnd, xf.end);
    });
    patch.append(styles, copies.join(""));
    if (styles.attributes["count"] !== undefined)
      patch.setAttribute(styles, "count", String(styles.children.length + copies.length));
    fonts.write(patch);
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

/** Copies of the file's fonts under another name, each once. */
class FontCopies {
  private readonly copies = new Map<string, number>();
  private readonly made: string[] = [];

  constructor(
    private readonly text: string,
    private readonly fonts: XmlElement | undefined,
    private readonly q: string,
  ) {}

  /** The number of a font like the one of that number but for its name; undefined where the file lists none. */
  named(base: number, name: string): number | undefined {
    const font = this.fonts?.children[base];
    if (!this.fonts || !font) return undefined;
    const key = `${base} ${name}`;
    const known = this.copies.get(key);
    if (known !== undefined) return known;
    // A font of a theme would show the theme's own: its name counts, and no scheme.
    const kept = font.children
      .filter((child) => !["name", "family", "scheme", "charset"].includes(child.name))
      .map((child) => this.text.slice(child.start, child.end));
    const number = this.fonts.children.length + this.made.length;
    this.made.push(
      `<${this.q}font>${kept.join("")}<${this.q}name val="${escapeAttribute(name)}"/></${this.q}font>`,
    );
    this.copies.set(key, number);
    return number;
  }

  write(patch: XmlPatch): void {
    if (!this.fonts || this.made.length === 0) return;
    patch.append(this.fonts, this.made.join(""));
    if (this.fonts.attributes["count"] !== undefined)
      patch.setAttribute(this.fonts, "count", String(this.fonts.children.length + this.made.length));
  }
}
