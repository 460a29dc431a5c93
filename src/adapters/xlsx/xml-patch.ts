import type { XmlDocument, XmlElement } from "./xml-source";
import { escapeText, setAttribute, Splices } from "./xml-splice";

/** Changes to a part by its elements; whatever is not named stays as it was, to the character. */
export class XmlPatch {
  private readonly tags = new Map<XmlElement, string>();

  /**
   * @param document - its tree
   * @param splices - where changes are collected: of the document's own text unless it is a piece of a larger one
   * @param place - from a place in the tree's text to one in the text that is changed
   */
  constructor(
    readonly document: XmlDocument,
    readonly splices: Splices = new Splices(document.text),
    private readonly place: (at: number) => number = (at) => at,
  ) {}

  get root(): XmlElement {
    return this.document.root;
  }

  /** @param value - `undefined` takes the attribute out */
  setAttribute(element: XmlElement, name: string, value: string | undefined): void {
    if (element.attributes[name] === value) return;
    const tag = this.tags.get(element) ?? this.document.text.slice(element.start, element.openEnd);
    this.tags.set(element, setAttribute(tag, name, value));
  }

  /** Puts other text into an element that holds text alone. */
  setText(element: XmlElement, text: string): void {
    if (element.text === text || element.empty) return;
    this.splices.replace(this.place(element.openEnd), this.place(element.closeStart), escapeText(text));
  }

  /** Takes an element out; none of its inside may be changed as well. */
  remove(element: XmlElement): void {
    this.tags.delete(element);
    this.splices.remove(this.place(element.start), this.place(element.end));
  }

  insertBefore(element: XmlElement, xml: string): void {
    this.splices.insert(this.place(element.start), xml);
  }

  /** Adds XML as an element's last child. */
  append(element: XmlElement, xml: string): void {
    if (!element.empty) {
      this.splices.insert(this.place(element.closeStart), xml);
      return;
    }
    const tag = this.tags.get(element) ?? this.document.text.slice(element.start, element.openEnd);
    const name = /^<([^\s/>]+)/.exec(tag)?.[1] ?? "";
    this.tags.delete(element);
    this.splices.replace(
      this.place(element.start),
      this.place(element.end),
      `${tag.replace(/\s*\/>$/, ">")}${xml}</${name}>`,
    );
  }

  /** Writes the changed tags; call once, after all changes. */
  finish(): void {
    for (const [element, tag] of this.tags)
      this.splices.replace(this.place(element.start), this.place(element.openEnd), tag);
    this.tags.clear();
  }

  /** The whole text with all changes. */
  apply(): string {
    this.finish();
    return this.splices.apply();
  }
}
