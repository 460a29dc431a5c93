import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { docxWriter } from "../../../src/adapters/docx/docx-writer";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { runHandout } from "../../../src/cli/commands/handout";

const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);

/** Runs `handout` with files in memory; a file without lines cannot be read. */
async function handout(args: readonly string[], lines?: readonly string[]) {
  const run = { out: "", err: "" };
  const written = new Map<string, Uint8Array>();
  const code = await runHandout(args, {
    streams: { out: (text) => void (run.out += text), err: (text) => void (run.err += text) },
    files: {
      replace: async (path, bytes) => {
        if (path.startsWith("nowhere/")) throw Object.assign(new Error(path), { syscall: "open" });
        written.set(path, bytes);
      },
    },
    translators,
    documents: docxWriter,
    newIdentifier: () => "urn:uuid:1",
    readLines: async function* () {
      if (lines === undefined) throw Object.assign(new Error("no"), { syscall: "open" });
      yield* lines;
    },
  });
  const texts = new Map([...written].map(([path, bytes]) => [path, strFromU8(bytes)] as const));
  return { code, ...run, texts, written };
}

describe("handout writes", () => {
  it("a braille file", async () => {
    const args = ["--words", "children, knowledge", "--to", "out.brf", "--title", "Words", "--lines", "8"];
    const { code, out, err, texts } = await handout(args);
    expect([code, err, out]).toEqual([0, "", "Wrote 2 items on 1 page of 8 lines of 40 cells.\n"]);
    // lou_translate 3.24, en-ueb-g2.ctb.
    const rows = [
      `${" ".repeat(18)},^WS`,
      "",
      "*N",
      "K",
      "",
      ",MA*9E TRANSLAT$1 N PRO(R1D4",
      "",
      "#A".padStart(40),
    ];
    expect(texts.get("out.brf")).toBe(`${rows.join("\r\n")}\r\n\f`);
  });

  it("a file for embossers, of the size asked for", async () => {
    const { texts } = await handout([
      "--words",
      "egg",
      "--to",
      "o.PEF",
      "--cells",
      "28",
      "--lines",
      "29",
      "--duplex",
    ]);
    expect(texts.get("o.PEF")).toContain('<volume cols="28" rows="29" rowgap="0" duplex="true">');
    expect(texts.get("o.PEF")).toContain("<dc:identifier>urn:uuid:1</dc:identifier>");
  });

  it("a document, from a file of items", async () => {
    const { out, written } = await handout(
      ["--from", "f.txt", "--to", "out.docx"],
      ["\uFEFFegg", "", "⠡⠀⠩", "The egg fell."],
    );
    expect(out).toBe("Wrote 3 items, lines of at most 40 cells.\n");
    const document = strFromU8(
      unzipSync(written.get("out.docx") ?? new Uint8Array())["word/document.xml"] ?? new Uint8Array(),
    );
    for (const text of ["egg", "⠑⠛⠛", "⠡⠀⠩", "ch, sh", "The egg fell."])
      expect(document).toContain(`>${text}</w:t>`);
  });

  it("a web page, uncontracted, with the print beneath", async () => {
    const { texts } = await handout([
      "--words",
      "child",
      "--to",
      "a.html",
      "--code",
      "uncontracted",
      "--print",
      "beneath",
    ]);
    expect(texts.get("a.html")).toContain('>⠉⠓⠊⠇⠙</font><br><font size="3">child<');
  });

  it("a passage, whose lines are paragraphs", async () => {
    const { texts } = await handout(["--from", "-", "--passage", "--to", "p.brf"], ["An egg", "A nest"]);
    expect(texts.get("p.brf")).toContain("\r\n  ,AN EGG\r\n  ,A NE/\r\n");
  });

  it("drawn pages, as full as the paper, a file each", async () => {
    const words = Array.from({ length: 30 }, (_, index) => `word${index}`).join(",");
    const { out, texts } = await handout([
      "--words",
      words,
      "--to",
      "p.svg",
      "--paper",
      "a4",
      "--guide-dots",
    ]);
    expect([...texts.keys()]).toEqual(["p-1.svg", "p-2.svg"]);
    expect(out).toBe("Wrote 30 items on 2 pages of 27 lines of 30 cells, a file each, -1 to -2.\n");
    expect(texts.get("p-1.svg")).toContain('width="210mm" height="297mm"');
    expect(texts.get("p-1.svg")).toContain("fill-opacity");
  });

  it("large print in its empty lines, and no print where none is wanted", async () => {
    const large = await handout(["--words", "egg", "--to", "p.svg", "--large-print"]);
    expect(large.texts.get("p.svg")).toContain('font-size="6.35">egg<');
    const none = await handout(["--words", "egg", "--to", "p.svg", "--print", "none"]);
    expect(none.texts.get("p.svg")).not.toContain("<text");
  });
});

describe("handout refuses", () => {
  it.each([
    ["nothing to put on it", ["--to", "o.brf"], 2, "either by --from"],
    ["both", ["--to", "o.brf", "--from", "f", "--words", "w"], 2, "either by --from"],
    ["no file to write", ["--words", "egg"], 2, "brf, pef, docx, html, svg"],
    ["an ending that it cannot write", ["--words", "egg", "--to", "o.pdf"], 2, "brf, pef, docx, html, svg"],
    ["an unknown option", ["--words", "Heron", "--to", "o.brf", "--frob=Heron"], 2, "An option is unknown"],
    [
      "an unknown place of print",
      ["--words", "egg", "--to", "o.brf", "--print", "above"],
      2,
      "beside, beneath, none",
    ],
    ["unknown paper", ["--words", "egg", "--to", "o.svg", "--paper", "a3"], 2, "a4, letter, braille"],
    [
      "a margin that is no length",
      ["--words", "egg", "--to", "o.svg", "--margin", "wide"],
      2,
      "in millimetres",
    ],
    ["half a cell", ["--words", "egg", "--to", "o.brf", "--cells", "9.5"], 2, "whole numbers"],
    ["too few cells", ["--words", "egg", "--to", "o.brf", "--cells", "2"], 1, "8 to 100 cells"],
    ["an unknown code", ["--words", "egg", "--to", "o.brf", "--code", "klingon"], 1, "klingon"],
    ["blanks only", ["--words", " , ", "--to", "o.brf"], 1, "The handout is empty"],
    ["a character without cells", ["--words", "egg,\u{1F986}", "--to", "o.brf"], 1, "Item 2:"],
    [
      "lines too long for the paper",
      ["--words", "egg", "--to", "o.svg", "--cells", "40", "--paper", "a4"],
      1,
      "room for 30 cells",
    ],
    ["a file that is not there", ["--from", "f.txt", "--to", "o.brf"], 1, "cannot be read or written"],
    [
      "a folder that is not there",
      ["--words", "egg", "--to", "nowhere/o.brf"],
      1,
      "cannot be read or written",
    ],
  ])("%s", async (_what, args, code, message) => {
    const run = await handout(args);
    expect([run.code, run.out, run.written.size]).toEqual([code, "", 0]);
    expect(run.err).toContain(message);
    expect(run.err).not.toContain("Heron");
  });
});
