import { isBraille } from "../braille/cell";

/** A word or phrase, a line of signs in their own cells, a sentence, or a passage of one or more paragraphs. */
export const HANDOUT_KINDS = ["word", "signs", "sentence", "passage"] as const;
export type HandoutKind = (typeof HANDOUT_KINDS)[number];

/** What the teacher puts on a handout. */
export interface HandoutEntry {
  readonly kind: HandoutKind;
  /** print, or Unicode braille that is taken as it stands */
  readonly text: string;
  /** what to print with braille that is taken as it stands */
  readonly print?: string;
}

/** A handout before its braille is made. */
export interface HandoutDraft {
  readonly title: string;
  /** the day as the teacher writes it; "" for none */
  readonly date: string;
  readonly entries: readonly HandoutEntry[];
}

/**
 * What an entry is, told from its text: braille is a line of signs, a text with several paragraphs a passage, one that
 * ends like a sentence a sentence, all else a word or phrase.
 */
export const readEntry = (text: string): HandoutEntry => {
  if (isBraille(text)) return { kind: "signs", text };
  const trimmed = text.trim();
  if (/\n/.test(trimmed)) return { kind: "passage", text };
  return { kind: /\s/.test(trimmed) && /[.!?…]["”’')\]]*$/.test(trimmed) ? "sentence" : "word", text };
};

/** White space made single, none at the ends. */
export const tidy = (text: string): string => text.replace(/\s+/g, " ").trim();

/** An entry without white space that says nothing; a passage keeps its paragraphs, empty ones left out. */
export const tidyEntry = (entry: HandoutEntry): HandoutEntry => {
  if (isBraille(entry.text)) return { ...entry, text: entry.text.replace(/^[\s\u2800]+|[\s\u2800]+$/g, "") };
  if (entry.kind !== "passage") return { ...entry, text: tidy(entry.text) };
  const paragraphs = entry.text.split(/\r\n?|\n/).map(tidy);
  return { ...entry, text: paragraphs.filter((paragraph) => paragraph !== "").join("\n") };
};
