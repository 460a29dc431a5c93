import { drawBraillePages } from "../../charts/braille-page";
import { formatBrf } from "../../domain/drill/brf";
import { layOutPages } from "../../domain/drill/embosser-page";
import { makeHandout, type Handout } from "../../domain/drill/handout";
import { readEntry, type HandoutEntry } from "../../domain/drill/handout-draft";
import { formatHandoutPage } from "../../domain/drill/handout-table";
import { formatPef } from "../../domain/drill/pef";
import { printSignLine } from "../../domain/drill/sign-print";
import { success, type Result } from "../../domain/result";
import type { DocumentWriter } from "../../ports/document";
import { refuseUntranslatable } from "../../ports/refused-text";
import { UnknownCodeError, type Translator, type TranslatorLibrary } from "../../ports/translator";
import { HANDOUT_USAGE, parseHandoutArguments, type HandoutRequest } from "./handout-arguments";
import { EXIT, type CommandFiles, type CommandStreams } from "./opened-workbook";

/** What `handout` works with; handed in by the entry point. */
export interface HandoutHost {
  readonly streams: CommandStreams;
  readonly files: Pick<CommandFiles, "replace">;
  readonly translators: TranslatorLibrary;
  readonly documents: DocumentWriter;
  /** A name that no other file has, such as `urn:uuid:…`. */
  newIdentifier(): string;
  /** The lines of a file, or of standard input for `-`. */
  readLines(path: string): AsyncIterable<string>;
}

/**
 * `handout`: writes words, sentences, passages and lines of signs in print and braille, as a braille file, a file for
 * embossers, a document, a web page, or drawn pages in true size (of several pages, a file each).
 *
 * @returns 0; 1 where it cannot be made or written; 2 for wrong usage
 */
export async function runHandout(args: readonly string[], host: HandoutHost): Promise<number> {
  const { out, err } = host.streams;
  const request = parseHandoutArguments(args);
  if (!request.ok) {
    err(`${request.fault.message}\nUsage: ${HANDOUT_USAGE}\n`);
    return EXIT.usage;
  }
  const refuse = (message: string): number => {
    err(`${message}\n`);
    return EXIT.refused;
  };
  try {
    const translator = await host.translators.translator(request.value.options.code);
    const handout = await makeRequested(request.value, translator, host);
    if (!handout.ok) return refuse(handout.fault.message);
    const files = await writeRequested(handout.value, request.value, host);
    if (!files.ok) return refuse(files.fault.message);
    for (const { path, bytes } of files.value) await host.files.replace(path, bytes);
    out(tellWritten(handout.value, request.value, files.value.length));
    return EXIT.done;
  } catch (thrown) {
    if (thrown instanceof UnknownCodeError) return refuse(thrown.message);
    if (thrown instanceof Error && "syscall" in thrown)
      return refuse("A file cannot be read or written: check the paths of --from and --to.");
    throw thrown;
  }
}

const makeRequested = async (
  request: HandoutRequest,
  translator: Translator,
  host: HandoutHost,
): Promise<Result<Handout>> => {
  const lines: string[] = request.words?.split(/[,;\n]/) ?? [];
  if (request.from !== undefined) for await (const line of host.readLines(request.from)) lines.push(line);
  // A file written elsewhere may begin with a byte order mark.
  const texts = lines.map((line, index) => (index === 0 ? line.replace(/^\uFEFF/, "") : line));
  const entries: HandoutEntry[] = request.passage
    ? [{ kind: "passage", text: texts.join("\n") }]
    : texts.map(readEntry).map(withPrint);
  const { title, date, options } = request;
  return makeHandout(
    { title, date, entries },
    options,
    refuseUntranslatable((text) => translator.transcribe(text)),
  );
};

/** The names of a line's signs, as far as the cells alone tell. */
const withPrint = (entry: HandoutEntry): HandoutEntry =>
  entry.kind === "signs" ? { ...entry, print: printSignLine(entry.text) } : entry;

interface WrittenFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

const writeRequested = async (
  handout: Handout,
  { ending, to, look, options, duplex }: HandoutRequest,
  host: HandoutHost,
): Promise<Result<readonly WrittenFile[]>> => {
  const one = (text: string): Result<readonly WrittenFile[]> =>
    success([{ path: to, bytes: new TextEncoder().encode(text) }]);
  switch (ending) {
    case "brf": {
      const brf = formatBrf(layOutPages(handout));
      return brf.ok ? one(brf.value) : brf;
    }
    case "pef": {
      const description = { identifier: host.newIdentifier(), title: "Handout", duplex };
      return one(formatPef(layOutPages(handout), options, description));
    }
    case "html":
      return one(formatHandoutPage(handout, look.largePrint));
    case "docx":
      return success([{ path: to, bytes: await host.documents.write(handout, look) }]);
    case "svg": {
      const pages = drawBraillePages(layOutPages(handout), options, look);
      if (!pages.ok) return pages;
      const single = pages.value.length === 1;
      return success(
        pages.value.map(({ svg }, index) => ({
          path: single ? to : to.replace(/(?=\.svg$)/i, `-${index + 1}`),
          bytes: new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`),
        })),
      );
    }
  }
};

const count = (number: number, one: string): string => `${number} ${number === 1 ? one : `${one}s`}`;

const tellWritten = (handout: Handout, { ending }: HandoutRequest, files: number): string => {
  const { cellsPerLine, linesPerPage } = handout.options;
  const items = count(handout.items.length, "item");
  if (ending === "docx" || ending === "html")
    return `Wrote ${items}, lines of at most ${cellsPerLine} cells.\n`;
  const pages = count(layOutPages(handout).length, "page");
  const numbered = files > 1 ? `, a file each, -1 to -${files}` : "";
  return `Wrote ${items} on ${pages} of ${linesPerPage} lines of ${cellsPerLine} cells${numbered}.\n`;
};
