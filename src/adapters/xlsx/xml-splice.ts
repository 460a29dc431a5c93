/** Changes to a text at places of the original; what no change names stays as it was, to the character. */
export class Splices {
  private readonly changes: { start: number; end: number; text: string; order: number }[] = [];

  constructor(readonly original: string) {}

  get size(): number {
    return this.changes.length;
  }

  /** Puts `text` where `start` to `end` was; two changes must not overlap. */
  replace(start: number, end: number, text: string): void {
    if (this.original.slice(start, end) !== text)
      this.changes.push({ start, end, text, order: this.changes.length });
  }

  /** Puts `text` in before the place; several at one place stand in the order of the calls. */
  insert(at: number, text: string): void {
    this.replace(at, at, text);
  }

  /** Takes out an element with the white space before it, so that no empty line is left. */
  remove(start: number, end: number): void {
    let from = start;
    while (from > 0 && /\s/.test(this.original.charAt(from - 1))) from -= 1;
    this.replace(from, end, "");
  }

  /** The text with all changes made. @throws {RangeError} where two changes overlap */
  apply(): string {
    if (this.changes.length === 0) return this.original;
    const sorted = this.changes.sort((a, b) => a.start - b.start || a.end - b.end || a.order - b.order);
    const pieces: string[] = [];
    let at = 0;
    for (const change of sorted) {
      if (change.start < at) throw new RangeError("two changes of one part overlap");
      pieces.push(this.original.slice(at, change.start), change.text);
      at = change.end;
    }
    pieces.push(this.original.slice(at));
    return pieces.join("");
  }
}

const ATTRIBUTE = /\s+([^\s=/>]+)\s*=\s*("[^"]*"|'[^']*')/y;

/** Text between tags. */
export const escapeText = (text: string): string =>
  text.replace(/[&<>\r]/g, (sign) =>
    sign === "&" ? "&amp;" : sign === "<" ? "&lt;" : sign === ">" ? "&gt;" : "&#13;",
  );

/** Text of an attribute in double quotes; white space that a reader would turn into blanks is kept. */
export const escapeAttribute = (text: string): string =>
  escapeText(text).replace(/["\n\t]/g, (sign) => (sign === '"' ? "&quot;" : `&#${sign.charCodeAt(0)};`));

/**
 * An open tag with one attribute set, added at its end, or taken out; all else of the tag stays as it is written.
 *
 * @param tag - from `<` to `>`
 * @param name - as the file writes it, with its prefix
 * @param value - not yet escaped; `undefined` takes the attribute out
 */
export const setAttribute = (tag: string, name: string, value: string | undefined): string => {
  let end = /^<[^\s/>]+/.exec(tag)?.[0].length ?? 0;
  for (;;) {
    ATTRIBUTE.lastIndex = end;
    const match = ATTRIBUTE.exec(tag);
    if (!match) break;
    const start = end;
    end = ATTRIBUTE.lastIndex;
    if (match[1] !== name) continue;
    if (value === undefined) return tag.slice(0, start) + tag.slice(end);
    const quoted = match[2] ?? "";
    return `${tag.slice(0, end - quoted.length)}"${escapeAttribute(value)}"${tag.slice(end)}`;
  }
  return value === undefined
    ? tag
    : `${tag.slice(0, end)} ${name}="${escapeAttribute(value)}"${tag.slice(end)}`;
};
