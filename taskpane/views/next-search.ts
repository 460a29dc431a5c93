import type { PassageReader, WordSigns } from "../../src/domain/contraction/passage";
import { tabulateWords } from "../../src/domain/contraction/word-table";
import { rankPassages } from "../../src/domain/drill/passages";
import { normaliseName } from "../../src/domain/progress/series";
import type { WorkbookRecords } from "../../src/records/read-records";
import { HANDOUT_CODES, prepareBraille, type HandoutBraille, type HandoutCode } from "./handout-braille";
import { listPassages, listSignsToTeach, type NextItem } from "./next-list";
import type { PaneContext } from "./pane-context";

/** Where the words come from that new signs are to open. */
export type WordSource = "own" | "common";

/** What was found for a pupil beside the checks. */
export interface Found {
  readonly teach: readonly NextItem[];
  readonly read: readonly NextItem[];
  /** rows of her lists that could not be used, as sentences */
  readonly notes: readonly string[];
}

type Asked = Pick<PaneContext, "records" | "pupil" | "translators" | "wordBank">;

const found = new WeakMap<WorkbookRecords, Map<string, Found>>();
const readers = new WeakMap<WorkbookRecords, Map<HandoutCode, PassageReader>>();

/** Milliseconds of work before the page may draw again. */
const SLICE = 12;

/** The code that a pupil reads: as the table of pupils has it, else of the last probe that says it. */
export const codeOf = ({ records, pupil }: Pick<Asked, "records" | "pupil">): HandoutCode => {
  const isOwn = (row: { readonly pupil: string }): boolean =>
    normaliseName(row.pupil) === normaliseName(pupil);
  const code =
    records.pupils.find(isOwn)?.code ??
    records.probes.findLast((probe) => isOwn(probe) && probe.code !== undefined)?.code;
  return HANDOUT_CODES.find((each) => each === normaliseName(code)) ?? "contracted";
};

const keyOf = ({ pupil }: Asked, source: WordSource): string => `${source}\n${normaliseName(pupil)}`;

/** What was found before for the same reading, pupil and source. */
export const recallFound = (asked: Asked, source: WordSource): Found | undefined =>
  found.get(asked.records)?.get(keyOf(asked, source));

/**
 * Finds the signs that open most words and the passages that can be read, a slice of the work at a time.
 *
 * @returns undefined where it was ended
 * @throws where the engine or the words cannot be loaded
 */
export async function findNext(
  asked: Asked,
  source: WordSource,
  ending: AbortSignal,
): Promise<Found | undefined> {
  const { records, pupil, translators, wordBank } = asked;
  const code = codeOf(asked);
  const braille = await prepareBraille(translators, records, pupil, code);
  const { taught, notes } = braille;
  const reader = readerOf(records, braille);
  const own = records.words.filter(
    (word) => word.pupil === undefined || normaliseName(word.pupil) === normaliseName(pupil),
  );
  const texts = [...records.passages.map(({ text }) => text), ...own.map(({ word }) => word)];
  const words: WordSigns[] = [];
  const passages: WorkbookRecords["passages"][number][] = [];
  let since = performance.now();
  for (const [place, text] of texts.entries()) {
    if (performance.now() - since > SLICE) {
      await new Promise((resolve) => setTimeout(resolve));
      since = performance.now();
    }
    if (ending.aborted) return undefined;
    const read = readWords(reader, text);
    const passage = records.passages[place];
    if (passage !== undefined && read.length > 0) passages.push(passage);
    for (const word of read) words.push(word);
  }
  const bank = source === "common" ? await wordBank.load() : undefined;
  if (ending.aborted) return undefined;
  const result: Found = {
    teach:
      bank === undefined
        ? listSignsToTeach(tabulateWords(words), taught, "your passages and words")
        : listSignsToTeach(bank.table(code), taught, "common English text"),
    read: listPassages(rankPassages(passages, reader, taught)),
    notes,
  };
  const ofRecords = found.get(records) ?? new Map<string, Found>();
  found.set(records, ofRecords.set(keyOf(asked, source), result));
  return result;
}

/** The reader that has met the words of these records before. */
const readerOf = (records: WorkbookRecords, { code, reader }: HandoutBraille): PassageReader => {
  const ofRecords = readers.get(records) ?? new Map<HandoutCode, PassageReader>();
  readers.set(records, ofRecords);
  const known = ofRecords.get(code) ?? reader;
  ofRecords.set(code, known);
  return known;
};

/** A text with a character that the code has no cells for is passed over. */
const readWords = (reader: PassageReader, text: string): readonly WordSigns[] => {
  try {
    return reader.read(text);
  } catch {
    return [];
  }
};
