import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { layOutPages } from "../../../src/domain/drill/embosser-page";
import { formatPef } from "../../../src/domain/drill/pef";
import { handoutOf, wordsOf } from "./handouts";

interface Element {
  readonly name: string;
  readonly uri: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** Reads well-formed XML with namespaces, or throws. */
const readXml = (xml: string): Element => {
  const root: Element = { name: "", uri: "", attributes: {}, children: [], text: "" };
  const open = [root];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ local, uri, attributes }) => {
    const element: Element = {
      name: local,
      uri,
      attributes: Object.fromEntries(Object.values(attributes).map(({ name, value }) => [name, value])),
      children: [],
      text: "",
    };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (text) => {
    const top = open.at(-1);
    if (top !== undefined) top.text += text;
  });
  parser.on("closetag", () => void open.pop());
  parser.write(xml).close();
  const top = root.children[0];
  if (top === undefined) throw new Error("no element");
  return top;
};

const named = ({ children }: Element, name: string): Element[] =>
  children.filter((child) => child.name === name);

/** What a PEF 1.0 file must be, as far as one volume goes (public draft, from memory; written for this test). */
const checkPef = (xml: string): { readonly pages: string[][] } => {
  const pef = readXml(xml);
  const everything = (element: Element): Element[] => [element, ...element.children.flatMap(everything)];
  for (const { name, uri } of everything(pef))
    expect(uri).toBe(
      ["format", "identifier", "title"].includes(name)
        ? "http://purl.org/dc/elements/1.1/"
        : "http://www.daisy.org/ns/2008/pef",
    );
  expect([pef.name, pef.attributes["version"]]).toEqual(["pef", "2008-1"]);
  expect(pef.children.map(({ name }) => name)).toEqual(["head", "body"]);
  const [head, body] = pef.children;
  const meta = head?.children[0];
  if (meta === undefined || body === undefined) throw new Error("no meta or body");
  expect(meta.name).toBe("meta");
  expect(named(meta, "format").map(({ text }) => text)).toEqual(["application/x-pef+xml"]);
  expect(named(meta, "identifier").map(({ text }) => text)).toEqual([expect.stringMatching(/\S/)]);
  const pages: string[][] = [];
  for (const volume of body.children) {
    expect(Object.keys(volume.attributes).sort()).toEqual(["cols", "duplex", "rowgap", "rows"]);
    const [cols, rows, gap] = ["cols", "rows", "rowgap"].map((key) => Number(volume.attributes[key]));
    expect([cols, rows].every((size) => Number.isInteger(size) && Number(size) > 0)).toBe(true);
    expect(gap).toBe(0);
    expect(volume.attributes["duplex"]).toMatch(/^(true|false)$/);
    for (const section of volume.children) {
      expect([volume.name, section.name]).toEqual(["volume", "section"]);
      for (const page of section.children) {
        expect(page.name).toBe("page");
        expect(page.children.length).toBeLessThanOrEqual(rows ?? 0);
        for (const row of page.children) {
          expect([row.name, row.children.length]).toEqual(["row", 0]);
          expect(row.text).toMatch(/^[\u2800-\u28ff]*$/);
          expect(row.text.length).toBeLessThanOrEqual(cols ?? 0);
        }
        pages.push(page.children.map(({ text }) => text));
      }
    }
  }
  return { pages };
};

describe("a file in the Portable Embosser Format", () => {
  const description = {
    identifier: "urn:uuid:00000000-0000-4000-8000-000000000000",
    title: "Handout",
    duplex: false,
  };

  it.each([
    { cellsPerLine: 40, linesPerPage: 25 },
    { cellsPerLine: 8, linesPerPage: 4 },
    { cellsPerLine: 28, linesPerPage: 29 },
  ])("keeps the format's rules and holds every page: $cellsPerLine × $linesPerPage", (size) => {
    const pages = layOutPages(handoutOf(wordsOf("egg", "nest", "chick", "heron", "ibis", "rail"), size));
    const { pages: read } = checkPef(formatPef(pages, size, description));
    expect(read).toEqual(pages.map(({ rows }) => rows.map(({ cells }) => cells)));
  });

  it("escapes what it is told of itself", () => {
    const pages = layOutPages(handoutOf(wordsOf("egg")));
    const xml = formatPef(
      pages,
      { cellsPerLine: 40, linesPerPage: 25 },
      { ...description, title: '<a & "b"\u0001' },
    );
    checkPef(xml);
    expect(xml).toContain("<dc:title>&lt;a &amp; &quot;b&quot; </dc:title>");
  });

  it("says whether both sides are embossed", () => {
    const pages = layOutPages(handoutOf(wordsOf("egg")));
    const xml = formatPef(pages, { cellsPerLine: 40, linesPerPage: 25 }, { ...description, duplex: true });
    expect(xml).toContain('duplex="true"');
  });
});
