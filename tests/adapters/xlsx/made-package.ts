import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const TYPES = "application/vnd.openxmlformats-officedocument";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n';

/** A further part: its content, its content type, and the relationship by which another part knows it. */
export interface FurtherPart {
  readonly text: string;
  readonly type?: string;
  /** Owner, last step of the relationship's type, id. */
  readonly of?: readonly [owner: string, type: string, id: string];
}

/** What a small workbook, written by hand the way the format's standard says, is made of. */
export interface MadePackage {
  /** Content of each worksheet element, by sheet name. */
  readonly sheets: Readonly<Record<string, string>>;
  /** Elements of the workbook before and after its list of sheets. */
  readonly before?: string;
  readonly after?: string;
  readonly parts?: Readonly<Record<string, FurtherPart>>;
  /** Attributes of the worksheet elements. */
  readonly declarations?: string;
  readonly workbookType?: string;
  readonly namespace?: string;
}

/** The bytes of such a workbook; its parts do not lie where other programs put them. */
export const makePackage = (made: MadePackage): Uint8Array => {
  const names = Object.keys(made.sheets);
  const relationships = new Map<string, string[]>();
  const relate = (owner: string, id: string, type: string, target: string): void => {
    const list = relationships.get(owner) ?? [];
    list.push(`<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="/${target}"/>`);
    relationships.set(owner, list);
  };
  const files: Record<string, string> = {};
  const overrides: string[] = [];
  const add = (name: string, text: string, type: string | undefined): void => {
    files[name] = text;
    if (type !== undefined) overrides.push(`<Override PartName="/${name}" ContentType="${type}"/>`);
  };
  relate("", "main", "officeDocument", "book/main.xml");
  const listed = names.map((name, index) => {
    relate("book/main.xml", `sheet${index}`, "worksheet", `book/page-${index}.xml`);
    return `<sheet name="${name}" sheetId="${index + 5}" r:id="sheet${index}"/>`;
  });
  const namespace = made.namespace ?? MAIN;
  add(
    "book/main.xml",
    `${HEAD}<workbook xmlns="${namespace}" xmlns:r="${OFFICE}">${made.before ?? ""}<sheets>${listed.join("")}</sheets>${made.after ?? ""}</workbook>`,
    made.workbookType ?? `${TYPES}.spreadsheetml.sheet.main+xml`,
  );
  names.forEach((name, index) => {
    const text = `${HEAD}<worksheet xmlns="${namespace}" xmlns:r="${OFFICE}"${made.declarations ?? ""}>${made.sheets[name] ?? ""}</worksheet>`;
    add(`book/page-${index}.xml`, text, `${TYPES}.spreadsheetml.worksheet+xml`);
  });
  for (const [name, { text, type, of }] of Object.entries(made.parts ?? {})) {
    add(name, text, type);
    if (of) relate(of[0], of[2], of[1], name);
  }
  for (const [owner, list] of relationships) {
    const slash = owner.lastIndexOf("/") + 1;
    files[`${owner.slice(0, slash)}_rels/${owner.slice(slash)}.rels`] =
      `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${list.join("")}</Relationships>`;
  }
  const types = `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="vml" ContentType="${TYPES}.vmlDrawing"/>${overrides.join("")}</Types>`;
  return zipSync(
    Object.fromEntries(
      Object.entries({ "[Content_Types].xml": types, ...files }).map(([name, text]) => [name, strToU8(text)]),
    ),
  );
};
