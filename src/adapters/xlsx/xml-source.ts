import { SaxesParser } from "saxes";
import { NamespaceScope } from "./namespaces";

export type XmlAttributes = Readonly<Record<string, string>>;

/** What a scan tells of; offsets are UTF-16 places in the text, ends are exclusive. */
export interface XmlHandler {
  /** `name` by the prefixes of namespaces.ts; `start` at `<`, `end` after `>`. */
  open(name: string, attributes: XmlAttributes, start: number, end: number, empty: boolean): void;
  /** For an empty element `start` and `end` are both the end of its tag. */
  close(name: string, start: number, end: number): void;
  text?(text: string): void;
  /** The scope of the root element, before its `open`. */
  root?(scope: NamespaceScope): void;
}

/**
 * Reads XML from its beginning to its end and tells of elements and text with their places.
 *
 * @param text - a whole document
 * @param handler - told in document order
 * @throws {Error} where the text is not well-formed; entities of a document type are refused the same way
 */
export const scanXml = (text: string, handler: XmlHandler): void => {
  const parser = new SaxesParser({ position: false });
  const outer: (NamespaceScope | undefined)[] = [];
  let scope = NamespaceScope.empty;
  let depth = 0;
  let nextDeclaration = text.indexOf("xmlns");
  parser.on("opentag", (tag) => {
    const end = parser.position;
    const attributes = tag.attributes as XmlAttributes;
    if (nextDeclaration >= 0 && nextDeclaration < end) {
      const inner = scope.within(attributes);
      if (inner !== scope) {
        outer[depth] = scope;
        scope = inner;
      }
      nextDeclaration = text.indexOf("xmlns", end);
    }
    if (depth === 0) handler.root?.(scope);
    depth += 1;
    // No value of an attribute may hold a `<` (XML 1.0, 3.1).
    const start = text.lastIndexOf("<", end - 1);
    handler.open(scope.elementName(tag.name), scope.attributes(attributes), start, end, tag.isSelfClosing);
  });
  parser.on("closetag", (tag) => {
    const end = parser.position;
    handler.close(scope.elementName(tag.name), tag.isSelfClosing ? end : text.lastIndexOf("<", end - 1), end);
    depth -= 1;
    const before = outer[depth];
    if (before) {
      scope = before;
      outer[depth] = undefined;
    }
  });
  const onText = handler.text?.bind(handler);
  if (onText) {
    parser.on("text", onText);
    parser.on("cdata", onText);
  }
  parser.write(text).close();
};

/** An element of a small part, with its places in the text. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: XmlAttributes;
  readonly children: XmlElement[];
  /** All text directly inside. */
  text: string;
  readonly start: number;
  /** After the `>` of the open tag. */
  readonly openEnd: number;
  /** At the `<` of the close tag; after the tag for an empty element. */
  closeStart: number;
  end: number;
  readonly empty: boolean;
}

/** A document: its root, and the prefixes that it declares there. */
export interface XmlDocument {
  readonly text: string;
  readonly root: XmlElement;
  readonly scope: NamespaceScope;
}

/** The tree of a part that is small enough to hold as one. @throws {Error} where it is not well-formed */
export const parseXml = (text: string): XmlDocument => {
  const stack: XmlElement[] = [];
  let root: XmlElement | undefined;
  let scope = NamespaceScope.empty;
  scanXml(text, {
    root: (declared) => (scope = declared),
    open(name, attributes, start, openEnd, empty) {
      const element = {
        name,
        attributes,
        children: [],
        text: "",
        start,
        openEnd,
        closeStart: openEnd,
        end: openEnd,
        empty,
      };
      stack.at(-1)?.children.push(element);
      root ??= element;
      stack.push(element);
    },
    text(piece) {
      const element = stack.at(-1);
      if (element) element.text += piece;
    },
    close(_name, start, end) {
      const element = stack.pop();
      if (element) Object.assign(element, { closeStart: start, end });
    },
  });
  if (!root) throw new Error("an XML part is empty");
  return { text, root, scope };
};

/** The first child of that name. */
export const childOf = (element: XmlElement | undefined, name: string): XmlElement | undefined =>
  element?.children.find((child) => child.name === name);

/** All children of that name. */
export const childrenOf = (element: XmlElement | undefined, name: string): XmlElement[] =>
  element?.children.filter((child) => child.name === name) ?? [];

/** The element and all beneath it, in document order. */
export function* descendants(element: XmlElement): Generator<XmlElement> {
  yield element;
  for (const child of element.children) yield* descendants(child);
}

/** Whether an attribute of the file says yes. */
export const isTrue = (value: string | undefined, otherwise = false): boolean =>
  value === undefined ? otherwise : value === "1" || value === "true" || value === "on";
