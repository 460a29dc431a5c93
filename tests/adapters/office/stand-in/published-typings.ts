import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import ts from "typescript";

/** A member of an Excel class as the published typings declare it. */
export interface Member {
  readonly kind: "property" | "method";
  readonly readOnly: boolean;
  /** Name of the Excel class that it leads to; absent for a scalar. */
  readonly leadsTo?: string;
  /** The method gives a ClientResult, whose value is there after a sync. */
  readonly givesResult: boolean;
  /** The property has event handlers that can be added. */
  readonly isEvent: boolean;
  /** ExcelApi version that brought it, 109 for 1.9 (1.10 is 110); absent where the typings name none. */
  readonly since?: number;
}

export type ClassTypings = ReadonlyMap<string, Member>;

/** The text of the namespace Excel: parsing the other applications' typings too would take seconds. */
const excelNamespace = (): string => {
  const path = createRequire(import.meta.url).resolve("@types/office-js/index.d.ts");
  const text = readFileSync(path, "utf8");
  const start = text.indexOf("declare namespace Excel {");
  const end = text.indexOf("\ndeclare namespace ", start + 1);
  if (start < 0 || end < 0)
    throw new Error("The published typings have no namespace Excel where it is looked for.");
  return text.slice(start, end);
};

const sinceOf = (node: ts.Node, source: ts.SourceFile): number | undefined => {
  const comment = source.text.slice(node.getFullStart(), node.getStart(source));
  const named = /\[\s*Api set: ([^\]]*)\]/.exec(comment);
  if (!named) return undefined;
  const version = /^ExcelApi (\d+)\.(\d+)/.exec(named[1] ?? "");
  // Preview and online-only members are newer than every version.
  return version ? Number(version[1]) * 100 + Number(version[2]) : Number.POSITIVE_INFINITY;
};

const bare = (type: string): string => type.replace(/^Excel\./, "").replace(/\[\]$/, "");

function readMember(
  node: ts.ClassElement,
  source: ts.SourceFile,
  classNames: ReadonlySet<string>,
): Member | undefined {
  const isMethod = ts.isMethodDeclaration(node);
  if (!isMethod && !ts.isPropertyDeclaration(node)) return undefined;
  const type = node.type?.getText(source) ?? "any";
  const since = sinceOf(node, source);
  return {
    kind: isMethod ? "method" : "property",
    readOnly:
      !isMethod && (ts.getModifiers(node) ?? []).some((each) => each.kind === ts.SyntaxKind.ReadonlyKeyword),
    ...(classNames.has(bare(type)) && { leadsTo: bare(type) }),
    givesResult: type.startsWith("OfficeExtension.ClientResult<"),
    isEvent: type.startsWith("OfficeExtension.EventHandlers<"),
    ...(since !== undefined && { since }),
  };
}

/** Every class of the namespace Excel with its members, as the installed version of @types/office-js declares them. */
export function readPublishedTypings(): ReadonlyMap<string, ClassTypings> {
  const source = ts.createSourceFile("excel.d.ts", excelNamespace(), ts.ScriptTarget.ES2022, false);
  const classes: ts.ClassDeclaration[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isClassDeclaration(node)) classes.push(node);
    else ts.forEachChild(node, visit);
  };
  visit(source);
  const names = new Set(classes.flatMap((each) => (each.name ? [each.name.text] : [])));
  const typings = new Map<string, Map<string, Member>>();
  for (const each of classes) {
    // Of an overloaded method, the first declaration carries the requirement set that first had it.
    const members = new Map<string, Member>([
      ["isNullObject", { kind: "property", readOnly: true, givesResult: false, isEvent: false }],
    ]);
    for (const node of each.members) {
      const member = readMember(node, source, names);
      const name = node.name?.getText(source);
      if (member && name && !members.has(name)) members.set(name, member);
    }
    if (each.name) typings.set(each.name.text, members);
  }
  return typings;
}
