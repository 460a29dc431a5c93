import { parseExceptions, type Exceptions } from "../../src/domain/contraction/exceptions";
import { createPassageReader, type PassageReader } from "../../src/domain/contraction/passage";
import { parseTaught, type TaughtSigns } from "../../src/domain/contraction/taught";
import type { HandoutTranscriber } from "../../src/domain/drill/handout";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import { isBraille } from "../../src/domain/braille/cell";
import { normaliseName } from "../../src/domain/progress/series";
import { refuseUntranslatable } from "../../src/ports/refused-text";
import type { TranslatorLibrary } from "../../src/ports/translator";
import type { WorkbookRecords } from "../../src/records/read-records";

/** The codes whose signs are known. */
export const HANDOUT_CODES = ["contracted", "uncontracted"] as const;
export type HandoutCode = (typeof HANDOUT_CODES)[number];

/** How print becomes braille for one pupil: the code, her exceptions, the signs taught. */
export interface HandoutBraille {
  readonly code: HandoutCode;
  readonly transcribe: HandoutTranscriber;
  readonly reader: PassageReader;
  readonly taught: TaughtSigns;
  /** rows of her lists that could not be used, as sentences */
  readonly notes: readonly string[];
}

/**
 * Makes ready to write a pupil's braille; the engine is loaded where it is not yet. Rows of her lists that say nothing
 * usable are passed over and named.
 *
 * @throws where the engine cannot be loaded
 */
export const prepareBraille = async (
  translators: TranslatorLibrary,
  records: Pick<WorkbookRecords, "taught" | "exceptions">,
  pupil: string | undefined,
  code: HandoutCode,
): Promise<HandoutBraille> => {
  const translator = await translators.translator(code);
  const notes: string[] = [];
  const exceptions = readExceptions(records.exceptions, notes);
  const transcribe = (text: string): ReturnType<typeof translator.transcribe> =>
    exceptions.transcribe((part) => translator.transcribe(part), text);
  return {
    code,
    transcribe: refuseUntranslatable(transcribe),
    reader: createPassageReader(transcribe),
    taught: readTaughtOf(records.taught, pupil, notes),
    notes,
  };
};

const readExceptions = (rows: WorkbookRecords["exceptions"], notes: string[]): Exceptions => {
  const usable = rows
    .map(({ word, braille }) => [word, braille])
    .filter((row) => {
      const read = parseExceptions([row]);
      if (!read.ok) notes.push(`The exception for “${row[0] ?? ""}” is passed over: ${read.fault.message}`);
      return read.ok;
    });
  const read = parseExceptions(usable);
  if (!read.ok) throw new TypeError("Exceptions that are read one by one are read together.");
  return read.value;
};

const readTaughtOf = (
  rows: WorkbookRecords["taught"],
  pupil: string | undefined,
  notes: string[],
): TaughtSigns => {
  const own = rows.filter((row) => normaliseName(row.pupil) === normaliseName(pupil)).map(({ sign }) => sign);
  const unknown = own.filter((sign) => !parseTaught([sign]).ok);
  if (unknown.length > 0)
    notes.push(
      `Among the signs taught, ${unknown.map((sign) => `“${sign}”`).join(", ")} cannot be read: write each sign as it is printed, such as ch.`,
    );
  const read = parseTaught(own.filter((sign) => !unknown.includes(sign)));
  if (!read.ok) throw new TypeError("Signs that are read one by one are read together.");
  return read.value;
};

/** The signs of an entry that the pupil was not taught, by name; none for braille as it stands or what cannot be written. */
export const listUntaught = (
  { text }: HandoutEntry,
  { reader, taught }: HandoutBraille,
): readonly string[] => {
  if (isBraille(text)) return [];
  try {
    const signs = reader.read(text).flatMap((word) => word.signs);
    return [...new Set(signs.filter((sign) => !taught.knows(sign)).map(({ name }) => name))];
  } catch {
    // What the code has no cells for is told by the handout itself, with its place.
    return [];
  }
};
