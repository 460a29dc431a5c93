import type { Transcribe } from "../contraction/passage";
import { parseSignItems, parseSigns } from "../contraction/taught";
import { readPieces } from "../contraction/usage";
import { dropBlanks, expectSigns, expectText, parseWritten } from "../probe/expected-cells";
import { readMarkedSigns } from "../probe/marked-signs";
import type { NotedMiscue } from "../probe/noted-miscue";
import type { Probe } from "../probe/probe";
import { scoreReading } from "../probe/reading";
import { countProbe } from "../probe/sign-trials";
import { isSupported } from "../probe/support";
import { listOutcomes, type ReadWord } from "../probe/word-outcomes";
import { scoreWriting } from "../probe/writing";
import type { Day } from "../units";
import type { DirectEvidence, Evidence, WordEvidence } from "./knowledge-evidence";
import { blameSigns, namesOf, weighReading } from "./reading-evidence";
import { wayOf, type Way } from "./way";
import { weighWriting } from "./writing-evidence";

/** What there is to go by in one way; trials of single signs, which alone can show mastery, stand among `direct` too. */
export interface WayEvidence extends Evidence {
  readonly trials: readonly DirectEvidence[];
}

/** What a pupil's records tell of signs, reading and writing apart. */
export type SignEvidence = Readonly<Record<Way, WayEvidence>>;

/**
 * The transcription of a code, by the word that a record has for it: undefined where it is no Unified English Braille,
 * so that its signs are not known.
 */
export type TranscribeIn = (code: string | undefined) => Transcribe | undefined;

interface Gathered {
  readonly words: WordEvidence[];
  readonly direct: DirectEvidence[];
  readonly trials: DirectEvidence[];
}

/**
 * What the records of one pupil tell of signs: trials of single signs, rows of signs with a mark for each, texts read or
 * written with what was noted as the response, and words in the list of miscues. A text without a response is read by the miscues of its day and task: the
 * words attempted that are not among them were right. A miscue that belongs to no such text is a missed word by itself.
 *
 * Left out: probes done with support or in print, self-corrections and words added or repeated, signs and codes that the
 * inventory does not have.
 *
 * Source: our choice, no source.
 */
export const collectEvidence = (
  probes: readonly Probe[],
  miscues: readonly NotedMiscue[],
  transcribeIn: TranscribeIn,
): SignEvidence => {
  const gathered: Record<Way, Gathered> = {
    reading: { words: [], direct: [], trials: [] },
    writing: { words: [], direct: [], trials: [] },
  };
  const open = new Set(miscues.filter(isMissed));
  const byDay = groupByDay(open);
  for (const probe of probes) {
    const own = (byDay.get(Math.floor(probe.day)) ?? []).filter(
      (miscue) => open.has(miscue) && isSameTask(miscue, probe),
    );
    // Noted twice, the response tells more; a supported or printed text tells nothing.
    const isMute = isSupported(probe.support) || /print/i.test(probe.medium ?? "");
    const isTold = (probe.response ?? "").trim() !== "" && (probe.expected ?? "").trim() !== "";
    if (isMute || isTold) own.forEach((miscue) => open.delete(miscue));
    if (isMute) continue;
    const into = gathered[wayOf(probe)];
    const before = into.direct.length;
    if (gatherTrials(probe, into) || gatherMarks(probe, into) || gatherWrittenSigns(probe, into)) {
      // What the trials count is not counted again from the list of miscues.
      if (into.direct.length > before) own.forEach((miscue) => open.delete(miscue));
      continue;
    }
    const transcribe = transcribeIn(probe.code);
    const text = (probe.expected ?? "").normalize("NFC");
    if (transcribe === undefined || text.trim() === "") continue;
    if (wayOf(probe) === "writing") into.direct.push(...writtenText(probe, text, transcribe));
    else {
      const outcomes = outcomesOf(probe, text, own, open);
      if (outcomes !== undefined) into.words.push(...weighReading(text, outcomes, probe.day, transcribe));
    }
  }
  for (const miscue of open) {
    const named = missedSign(miscue);
    if (named.length > 0) {
      gathered[wayOf(miscue)].direct.push(...named);
      continue;
    }
    const missed = missedWord(miscue, transcribeIn(undefined));
    if (missed !== undefined) gathered[wayOf(miscue)].words.push(missed);
  }
  return gathered;
};

/** Trials of the signs that a probe is of; a plain `in` or `be` stands for both of its uses. */
const gatherTrials = (probe: Probe, { direct, trials }: Gathered): boolean => {
  const signs = parseSigns([probe.sign ?? ""]);
  const counted = countProbe(probe);
  if (!signs.ok || signs.value.length === 0 || counted === undefined) return false;
  const { correct, opportunities } = counted;
  // Several signs counted together do not tell which of them was right.
  if (new Set(signs.value.map(({ cells }) => cells)).size > 1) return true;
  for (const { name } of signs.value) {
    const trial = { day: probe.day, sign: name, correct, opportunities };
    direct.push(trial);
    trials.push(trial);
  }
  return true;
};

const countsSigns = ({ unit }: Probe): boolean => /sign/i.test(unit ?? "");

/** Trials of a row of signs whose response has a mark for each. */
const gatherMarks = (probe: Probe, { direct, trials }: Gathered): boolean => {
  if (!countsSigns(probe)) return false;
  const { expected = "", response = "", day } = probe;
  const marked = readMarkedSigns(expected, response, wayOf(probe) === "writing");
  if (marked === undefined) return false;
  const counts = new Map<string, { correct: number; opportunities: number }>();
  for (const { sign, mark } of marked) {
    const count = counts.get(sign.name) ?? { correct: 0, opportunities: 0 };
    counts.set(sign.name, {
      correct: count.correct + (mark === "correct" ? 1 : 0),
      opportunities: count.opportunities + 1,
    });
  }
  for (const [sign, count] of counts) {
    direct.push({ day, sign, ...count });
    trials.push({ day, sign, ...count });
  }
  return true;
};

/** Items that are signs, written: no code is needed to know their cells. */
const gatherWrittenSigns = (probe: Probe, { direct }: Gathered): boolean => {
  if (!countsSigns(probe)) return false;
  if (wayOf(probe) !== "writing") return true;
  const items = parseSignItems([probe.expected ?? ""]);
  const written = parseWritten(probe.response ?? "");
  if (!items.ok || !written.ok || written.value === "") return true;
  const expected = expectSigns(items.value);
  direct.push(...weighWriting(expected, scoreWriting(expected, dropBlanks(written.value)), probe.day));
  return true;
};

const writtenText = (probe: Probe, text: string, transcribe: Transcribe): readonly DirectEvidence[] => {
  const written = parseWritten(probe.response ?? "");
  if (!written.ok || written.value === "") return [];
  const expected = expectText(text, transcribe, true);
  return weighWriting(expected, scoreWriting(expected, written.value), probe.day);
};

/** What became of each word of a text read; the miscues that told it are taken. Undefined where nothing tells it. */
const outcomesOf = (
  probe: Probe,
  text: string,
  own: readonly NotedMiscue[],
  open: Set<NotedMiscue>,
): readonly ReadWord[] | undefined => {
  const response = probe.response ?? "";
  if (response.trim() !== "") return listOutcomes(text, scoreReading(text, response));
  const unread = listOutcomes(text, scoreReading(text, text));
  const attempted = probe.words ?? unread.length;
  const outcomes = unread.map((read, place): ReadWord =>
    place < attempted ? read : { ...read, outcome: "not attempted" },
  );
  let isTold = probe.errors === 0;
  for (const miscue of own) {
    const at = (miscue.position ?? 0) - 1;
    const read = outcomes[at];
    if (read?.word.shown.toLowerCase() !== miscue.expected.trim().toLowerCase()) continue;
    open.delete(miscue);
    isTold = true;
    const outcome = miscue.kind?.trim().toLowerCase() === "swapped" ? "swapped" : outcomeOf(miscue);
    outcomes[at] = { ...read, outcome, heard: miscue.response };
  }
  return isTold ? outcomes : undefined;
};

const outcomeOf = ({ kind = "", response }: NotedMiscue): "told" | "misread" | "left out" => {
  if (/told/i.test(kind)) return "told";
  return response.trim() === "" ? "left out" : "misread";
};

const NO_MISS = /added|repeat|self|insert/i;

const isMissed = ({ expected, kind = "", day }: NotedMiscue): boolean =>
  day !== undefined && expected.trim() !== "" && !NO_MISS.test(kind);

const groupByDay = (miscues: Iterable<NotedMiscue>): ReadonlyMap<number, readonly NotedMiscue[]> => {
  const days = new Map<number, NotedMiscue[]>();
  for (const miscue of miscues) {
    const day = Math.floor(miscue.day ?? Number.NaN);
    const known = days.get(day);
    if (known === undefined) days.set(day, [miscue]);
    else known.push(miscue);
  }
  return days;
};

const isSameTask = (miscue: NotedMiscue, probe: Probe): boolean =>
  tidy(miscue.task) === "" || tidy(miscue.task) === tidy(probe.task);

const tidy = (text: string | undefined): string => (text ?? "").trim().toLowerCase();

/** A sign shown by itself and missed; `ch` of such a task is the sign, and not the letters c and h. */
const missedSign = ({ day, task = "", expected }: NotedMiscue): readonly DirectEvidence[] => {
  if (day === undefined || !/sign/i.test(task)) return [];
  const signs = parseSigns([expected]);
  return signs.ok ? signs.value.map(({ name }) => ({ day, sign: name, correct: 0, opportunities: 1 })) : [];
};

const missedWord = (
  { day, expected, response, kind = "" }: NotedMiscue,
  transcribe: Transcribe | undefined,
): WordEvidence | undefined => {
  if (day === undefined || transcribe === undefined || /swapped/i.test(kind)) return undefined;
  const signs = namesOf(readPieces(transcribe(expected.trim())));
  if (signs.length === 0) return undefined;
  return { day: day as Day, signs: blameSigns(signs, response, transcribe), isRight: false };
};
