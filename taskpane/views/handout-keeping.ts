import { HANDOUT_KINDS, type HandoutDraft, type HandoutEntry } from "../../src/domain/drill/handout-draft";

/** A handout in progress as text for the draft store. */
export const formatHandoutDraft = (draft: HandoutDraft): string => JSON.stringify(draft);

/** The draft of such a text; undefined where there is none or it is of another make. */
export const parseHandoutDraft = (text: string | undefined): HandoutDraft | undefined => {
  if (text === undefined) return undefined;
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(read) || !Array.isArray(read["entries"])) return undefined;
  const { title, date } = read;
  if (typeof title !== "string" || typeof date !== "string") return undefined;
  return { title, date, entries: (read["entries"] as unknown[]).flatMap(readKeptEntry) };
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const readKeptEntry = (value: unknown): HandoutEntry[] => {
  if (!isRecord(value)) return [];
  const { text, print } = value;
  const kind = HANDOUT_KINDS.find((each) => each === value["kind"]);
  if (kind === undefined || typeof text !== "string") return [];
  return [{ kind, text, ...(typeof print === "string" ? { print } : {}) }];
};
