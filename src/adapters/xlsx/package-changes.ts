import { childrenOf, parseXml } from "./xml-source";
import { escapeAttribute } from "./xml-splice";
import { XmlPatch } from "./xml-patch";
import { CONTENT_TYPES, isUtf8, relationshipsPart, type WorkbookPackage } from "./workbook-package";
import { XlsxRefusal } from "./xlsx-refusal";
import { writeZip, type EntryToWrite } from "./zip-writer";

const RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/relationships";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** What a save changes in a package: parts with new text, new parts, parts that go. All else is copied as packed. */
export class PackageChanges {
  private readonly texts = new Map<string, string>();
  private readonly added = new Map<string, string>();
  private readonly removed = new Set<string>();

  constructor(readonly parts: WorkbookPackage) {}

  has(name: string): boolean {
    return (this.parts.has(name) && !this.removed.has(name.toLowerCase())) || this.added.has(name);
  }

  /** The text of a part as it will be written. */
  text(name: string): string {
    return this.added.get(name) ?? this.texts.get(name.toLowerCase()) ?? this.parts.text(name);
  }

  /** Gives a part another text; the same text leaves it untouched. */
  setText(name: string, text: string): void {
    if (this.added.has(name)) {
      this.added.set(name, text);
      return;
    }
    if (text === this.text(name)) return;
    if (!isUtf8(this.parts.bytes(name))) {
      throw new XlsxRefusal(
        "other-encoding",
        `The part ${name} is written in an encoding that cannot be saved here. Save the workbook as .xlsx in your spreadsheet program and open that copy.`,
      );
    }
    this.texts.set(name.toLowerCase(), text);
  }

  /** Adds a part with its content type. */
  addPart(name: string, text: string, contentType: string): void {
    this.added.set(name, text);
    const patch = new XmlPatch(parseXml(this.text(CONTENT_TYPES)));
    const q = patch.document.scope.fileQualifier("") ?? "";
    patch.append(
      patch.root,
      `<${q}Override PartName="/${escapeAttribute(name)}" ContentType="${contentType}"/>`,
    );
    this.setText(CONTENT_TYPES, patch.apply());
  }

  /** Takes a part out, with its content type and the relationship from `owner`. */
  removePart(name: string, owner: string): void {
    this.removed.add(name.toLowerCase());
    const types = new XmlPatch(parseXml(this.text(CONTENT_TYPES)));
    for (const element of types.root.children) {
      if (element.attributes["PartName"]?.toLowerCase() === `/${name.toLowerCase()}`) types.remove(element);
    }
    this.setText(CONTENT_TYPES, types.apply());
    const id = this.parts
      .relationships(owner)
      .find((one) => one.target.toLowerCase() === name.toLowerCase())?.id;
    const rels = new XmlPatch(parseXml(this.text(relationshipsPart(owner))));
    for (const element of rels.root.children) if (element.attributes["Id"] === id) rels.remove(element);
    this.setText(relationshipsPart(owner), rels.apply());
  }

  /**
   * Adds a relationship and answers its id.
   *
   * @param owner - the part that it belongs to, of the file or new
   * @param type - last step of its type, such as `chart`
   * @param target - name of the other part
   */
  addRelationship(owner: string, type: string, target: string): string {
    const name = relationshipsPart(owner);
    const known = this.parts.entryName(name) ?? name;
    if (!this.has(known)) {
      this.added.set(
        known,
        `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${RELATIONSHIPS}"></Relationships>`,
      );
      this.ensureDefault("rels", "application/vnd.openxmlformats-package.relationships+xml");
    }
    const patch = new XmlPatch(parseXml(this.text(known)));
    const ids = new Set(childrenOf(patch.root, "Relationship").map((one) => one.attributes["Id"]));
    let number = ids.size + 1;
    while (ids.has(`rId${number}`)) number += 1;
    const q = patch.document.scope.fileQualifier("") ?? "";
    const address = type.includes(":") ? type : `${OFFICE}/${type}`;
    patch.append(
      patch.root,
      `<${q}Relationship Id="rId${number}" Type="${address}" Target="/${escapeAttribute(encodeURI(target))}"/>`,
    );
    this.setText(known, patch.apply());
    return `rId${number}`;
  }

  private ensureDefault(extension: string, contentType: string): void {
    if (this.parts.defaultType(extension) !== undefined) return;
    const patch = new XmlPatch(parseXml(this.text(CONTENT_TYPES)));
    const first = patch.root.children[0];
    const element = `<Default Extension="${extension}" ContentType="${contentType}"/>`;
    if (first) patch.insertBefore(first, element);
    else patch.append(patch.root, element);
    this.setText(CONTENT_TYPES, patch.apply());
  }

  /** The first of `name(1)`, `name(2)`, … that no part has. */
  freeName(name: (number: number) => string): string {
    let number = 1;
    while (this.parts.has(name(number)) || this.added.has(name(number))) number += 1;
    return name(number);
  }

  /** The whole file: entries in their order, new parts behind them. */
  write(): Uint8Array {
    const entries: EntryToWrite[] = [];
    for (const entry of this.parts.entries) {
      const key = entry.name.toLowerCase();
      if (this.removed.has(key)) continue;
      const text = this.texts.get(key);
      entries.push(
        text === undefined ? entry : { name: entry.name, content: new TextEncoder().encode(text) },
      );
    }
    for (const [name, text] of this.added) entries.push({ name, content: new TextEncoder().encode(text) });
    return writeZip(entries);
  }
}
