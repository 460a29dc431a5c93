/** The settings that Cellwright keeps in a workbook stand in a part of this namespace. */
export const SETTINGS_NAMESPACE = "urn:cellwright:settings:1";

/** The namespaces that this adapter reads, under the prefix by which its code names them whatever the file calls them. */
const PREFIXES: ReadonlyMap<string, string> = new Map([
  ["http://schemas.openxmlformats.org/spreadsheetml/2006/main", ""],
  ["http://schemas.openxmlformats.org/package/2006/content-types", ""],
  ["http://schemas.openxmlformats.org/package/2006/relationships", ""],
  ["http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments", ""],
  [SETTINGS_NAMESPACE, ""],
  ["http://schemas.openxmlformats.org/officeDocument/2006/relationships", "r"],
  ["http://schemas.openxmlformats.org/markup-compatibility/2006", "mc"],
  ["http://schemas.openxmlformats.org/drawingml/2006/main", "a"],
  ["http://schemas.openxmlformats.org/drawingml/2006/chart", "c"],
  ["http://schemas.openxmlformats.org/drawingml/2006/chartDrawing", "cdr"],
  ["http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing", "xdr"],
  ["http://schemas.microsoft.com/office/drawing/2014/chartex", "cx"],
  ["http://schemas.microsoft.com/office/spreadsheetml/2009/9/main", "x14"],
  ["http://schemas.microsoft.com/office/excel/2006/main", "xm"],
  ["http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray", "xda"],
]);

/** Prefixes in force at an element, as the file declares them, turned into those of this adapter. */
export class NamespaceScope {
  /** Prefix of the file (`""` is the default namespace) to prefix of this adapter. */
  private readonly renamed: ReadonlyMap<string, string>;

  private constructor(
    renamed: ReadonlyMap<string, string>,
    readonly uris: ReadonlyMap<string, string>,
  ) {
    this.renamed = renamed;
  }

  static readonly empty = new NamespaceScope(new Map(), new Map());

  /** The scope inside an element with these attributes; the same object where it declares nothing. */
  within(attributes: Readonly<Record<string, string>>): NamespaceScope {
    let uris: Map<string, string> | undefined;
    for (const name in attributes) {
      if (!name.startsWith("xmlns")) continue;
      const prefix = name === "xmlns" ? "" : name.startsWith("xmlns:") ? name.slice(6) : undefined;
      if (prefix === undefined) continue;
      uris ??= new Map(this.uris);
      uris.set(prefix, attributes[name] ?? "");
    }
    if (!uris) return this;
    const renamed = new Map<string, string>();
    for (const [prefix, uri] of uris) {
      const own = PREFIXES.get(uri);
      if (own !== undefined && own !== prefix) renamed.set(prefix, own);
      // A foreign namespace must not pass for ours because it took the same prefix.
      else if (own === undefined && [...PREFIXES.values()].includes(prefix))
        renamed.set(prefix, `other-${prefix}`);
    }
    return new NamespaceScope(renamed, uris);
  }

  /** The name of an element by this adapter's prefixes. */
  elementName(raw: string): string {
    if (this.renamed.size === 0) return raw;
    const colon = raw.indexOf(":");
    const own = this.renamed.get(colon < 0 ? "" : raw.slice(0, colon));
    if (own === undefined) return raw;
    const local = raw.slice(colon + 1);
    return own === "" ? local : `${own}:${local}`;
  }

  /** Attributes by this adapter's prefixes; the same object where nothing differs. */
  attributes(raw: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
    if (this.renamed.size === 0) return raw;
    let own: Record<string, string> | undefined;
    for (const name in raw) {
      const colon = name.indexOf(":");
      if (colon < 0) continue;
      const prefix = this.renamed.get(name.slice(0, colon));
      if (prefix === undefined) continue;
      own ??= { ...raw };
      own[`${prefix}:${name.slice(colon + 1)}`] = raw[name] ?? "";
    }
    return own ?? raw;
  }

  /** The prefix with its colon that the file uses for a namespace of ours, `""` for the default one. */
  fileQualifier(ownPrefix: string): string | undefined {
    for (const [prefix, uri] of this.uris) {
      if (PREFIXES.get(uri) === ownPrefix) return prefix === "" ? "" : `${prefix}:`;
    }
    return undefined;
  }
}
