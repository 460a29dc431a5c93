import { childrenOf, parseXml, type XmlDocument } from "./xml-source";
import { XlsxRefusal } from "./xlsx-refusal";
import { listEntries, unpackEntry, type ZipEntry } from "./zip-archive";

/** A relationship of a part, its target as the name of a part (no leading slash), or as written where external. */
export interface Relationship {
  readonly id: string;
  /** The last step of its type: `worksheet`, `chart`, `sharedStrings`. */
  readonly type: string;
  readonly target: string;
  readonly external: boolean;
}

/**
 * The parts of an opened file. Names are compared without regard to case, as the Open Packaging Conventions
 * (ECMA-376 part 2, 6.2.2.3) say; nothing is found by a fixed path but `[Content_Types].xml` and `_rels/.rels`.
 */
export class WorkbookPackage {
  private readonly byName = new Map<string, ZipEntry>();
  private readonly defaults = new Map<string, string>();
  private readonly overrides = new Map<string, string>();
  private readonly texts = new Map<string, string>();
  readonly entries: readonly ZipEntry[];

  /** @throws {XlsxRefusal} where the bytes are no zip, are damaged or over the caps */
  constructor(bytes: Uint8Array) {
    this.entries = listEntries(bytes);
    for (const entry of this.entries) this.byName.set(entry.name.toLowerCase(), entry);
    if (!this.has(CONTENT_TYPES)) return;
    for (const element of this.document(CONTENT_TYPES).root.children) {
      const { Extension, PartName, ContentType = "" } = element.attributes;
      if (Extension !== undefined) this.defaults.set(Extension.toLowerCase(), ContentType);
      if (PartName !== undefined) this.overrides.set(PartName.replace(/^\//, "").toLowerCase(), ContentType);
    }
  }

  has(name: string): boolean {
    return this.byName.has(name.toLowerCase());
  }

  /** The name of a part as its entry spells it. */
  entryName(name: string): string | undefined {
    return this.byName.get(name.toLowerCase())?.name;
  }

  contentType(name: string): string {
    const key = name.toLowerCase();
    return this.overrides.get(key) ?? this.defaults.get(key.slice(key.lastIndexOf(".") + 1)) ?? "";
  }

  /** The extensions that have a content type of their own. */
  defaultType(extension: string): string | undefined {
    return this.defaults.get(extension.toLowerCase());
  }

  /** @throws {XlsxRefusal} where there is no such part or it is damaged */
  bytes(name: string): Uint8Array {
    const entry = this.byName.get(name.toLowerCase());
    if (!entry) {
      throw new XlsxRefusal(
        "damaged-file",
        `This workbook lacks its part ${name}. Open it in your spreadsheet program, let it repair the file, and save a copy.`,
      );
    }
    return unpackEntry(entry);
  }

  /** The text of a part, decoded; kept, since reading and saving ask for it several times. */
  text(name: string): string {
    const key = name.toLowerCase();
    const known = this.texts.get(key);
    if (known !== undefined) return known;
    const text = decode(this.bytes(name), name);
    if (text.length < 1 << 20) this.texts.set(key, text);
    return text;
  }

  document(name: string): XmlDocument {
    return parseXml(this.text(name));
  }

  /** The relationships of a part, or of the package itself for `""`. */
  relationships(part: string): Relationship[] {
    const rels = relationshipsPart(part);
    if (!this.has(rels)) return [];
    return childrenOf(this.document(rels).root, "Relationship").map(({ attributes }) => {
      const external = attributes["TargetMode"] === "External";
      const target = attributes["Target"] ?? "";
      return {
        id: attributes["Id"] ?? "",
        type: (attributes["Type"] ?? "").split("/").at(-1) ?? "",
        target: external ? target : resolveTarget(part, target),
        external,
      };
    });
  }

  /** The first internal target of that type. */
  related(part: string, type: string): string | undefined {
    return this.relationships(part).find((one) => one.type === type && !one.external && this.has(one.target))
      ?.target;
  }
}

export const CONTENT_TYPES = "[Content_Types].xml";

/** Where the relationships of a part stand: `xl/_rels/workbook.xml.rels`. */
export const relationshipsPart = (part: string): string => {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
};

const resolveTarget = (part: string, target: string): string => {
  const path = decodePercent(target.split("#")[0] ?? "").replaceAll("\\", "/");
  const steps = path.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of path.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "." && step !== "") steps.push(step);
  }
  return steps.join("/");
};

const decodePercent = (target: string): string => {
  try {
    return decodeURIComponent(target);
  } catch {
    return target;
  }
};

/** UTF-8 with its mark kept, so that encoding gives the same bytes; UTF-16 can be read, but not patched. */
const decode = (bytes: Uint8Array, name: string): string => {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : "utf-8";
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new XlsxRefusal(
      "damaged-file",
      `The part ${name} of this workbook is not readable text. Open the file in your spreadsheet program, let it repair the file, and save a copy.`,
    );
  }
};

/** Whether a part can be patched: its encoding is the one that we write. */
export const isUtf8 = (bytes: Uint8Array): boolean =>
  !(bytes[0] === 0xff && bytes[1] === 0xfe) && !(bytes[0] === 0xfe && bytes[1] === 0xff);
