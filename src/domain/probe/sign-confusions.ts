import { CONTRACTIONS } from "../contraction/inventory";
import { LETTERS } from "../contraction/sign";
import { parseSignItems } from "../contraction/taught";
import type { Transcribe } from "../contraction/passage";
import { readPieces } from "../contraction/usage";
import type { SignEvidence, TranscribeIn } from "../progress/sign-evidence";
import { WAYS, wayOf, type Way } from "../progress/way";
import { summariseConfusions, chancesOfWriting, type Chance, type Confusion } from "./confusion";
import { dropBlanks, expectSigns, expectText, parseWritten } from "./expected-cells";
import type { NotedMiscue } from "./noted-miscue";
import type { Probe } from "./probe";
import { scoreReading } from "./reading";
import { isSupported } from "./support";
import { scoreWriting } from "./writing";

/** Signs read or written for others, by name, reading and writing apart. */
export type SignConfusions = Readonly<Record<Way, readonly Confusion[]>>;

/** Two signs confused with each other, in either direction. */
export interface ConfusedPair {
  readonly signs: readonly [string, string];
  readonly times: number;
}

/**
 * Which signs one pupil reads or writes for which. Of a word misread for another it can be told where the two differ in
 * one sign; of writing where the cells given are those of a sign. Probes with support or in print are left out; a text
 * whose miscues are noted is told by these.
 *
 * Source: our choice, no source.
 *
 * @param evidence - of the same records: how often each sign was met
 */
export const findConfusions = (
  probes: readonly Probe[],
  miscues: readonly NotedMiscue[],
  evidence: SignEvidence,
  transcribeIn: TranscribeIn,
): SignConfusions => {
  const mistaken: Record<Way, Chance[]> = { reading: [], writing: [] };
  for (const { expected, response, ...miscue } of miscues)
    mistaken[wayOf(miscue)].push(...compareTexts(expected, response, transcribeIn(undefined)));
  const noted = new Set(miscues.map(keyOf));
  for (const probe of probes) {
    if (isSupported(probe.support) || /print/i.test(probe.medium ?? "") || noted.has(keyOf(probe))) continue;
    const [expected, response] = [(probe.expected ?? "").trim(), (probe.response ?? "").trim()];
    const transcribe = transcribeIn(probe.code);
    if (expected === "" || response === "" || transcribe === undefined) continue;
    const way = wayOf(probe);
    if (way === "writing") mistaken.writing.push(...compareWriting(probe, expected, response, transcribe));
    else
      for (const miscue of scoreReading(expected, response).miscues)
        mistaken.reading.push(...compareTexts(miscue.expected, miscue.heard, transcribe));
  }
  return {
    reading: summarise(mistaken.reading, evidence.reading),
    writing: summarise(mistaken.writing, evidence.writing),
  };
};

/** Both directions of each pair added up over both ways, most often first. */
export const pairConfusions = (confusions: SignConfusions): readonly ConfusedPair[] => {
  const pairs = new Map<string, { signs: readonly [string, string]; times: number }>();
  for (const { expected, given, times } of WAYS.flatMap((way) => confusions[way])) {
    const [one, other] = expected < given ? [expected, given] : [given, expected];
    const key = `${one}\n${other}`;
    const known = pairs.get(key);
    pairs.set(key, { signs: [one, other], times: times + (known?.times ?? 0) });
  }
  return [...pairs.values()].sort((one, other) => other.times - one.times);
};

const keyOf = ({ day, task }: { readonly day?: number; readonly task?: string }): string =>
  `${Math.floor(day ?? Number.NaN)} ${(task ?? "").trim().toLowerCase()}`;

/** The one sign in which two texts differ, each a sign or a word; nothing where they differ in more. */
const compareTexts = (
  expected: string,
  given: string,
  transcribe: Transcribe | undefined,
): readonly Chance[] => {
  const [wanted, came] = [signsIn(expected, transcribe), signsIn(given, transcribe)];
  if (wanted.length === 0 || wanted.length !== came.length) return [];
  const differing = wanted.flatMap((name, place) => {
    const other = came[place] ?? "";
    return other === name ? [] : [{ expected: name, given: other }];
  });
  return differing.length === 1 ? differing : [];
};

const signsIn = (text: string, transcribe: Transcribe | undefined): readonly string[] => {
  const items = parseSignItems([text]);
  if (items.ok && items.value.length === 1) return items.value.map(({ name }) => name);
  return transcribe === undefined ? [] : readPieces(transcribe(text.trim())).map(({ sign }) => sign.name);
};

const namesOfCells = new Map([...CONTRACTIONS, ...LETTERS].map(({ cells, name }) => [cells, name] as const));

const compareWriting = (
  { unit }: Probe,
  expected: string,
  response: string,
  transcribe: Transcribe,
): readonly Chance[] => {
  const written = parseWritten(response);
  if (!written.ok) return [];
  const items = /sign/i.test(`${unit ?? ""}`) ? parseSignItems([expected]) : undefined;
  if (items?.ok === false) return [];
  const cells =
    items === undefined ? expectText(expected.normalize("NFC"), transcribe, true) : expectSigns(items.value);
  const score = scoreWriting(cells, items === undefined ? written.value : dropBlanks(written.value));
  return chancesOfWriting(cells, score).flatMap((chance) => {
    const [wanted, came] = [namesOfCells.get(chance.expected), namesOfCells.get(chance.given)];
    return wanted === undefined || came === undefined || wanted === came
      ? []
      : [{ expected: wanted, given: came }];
  });
};

/** Times met without being mistaken for another sign fill up what the share is of. */
const summarise = (
  mistaken: readonly Chance[],
  { words, direct }: SignEvidence[Way],
): readonly Confusion[] => {
  const rest = new Map<string, number>();
  const add = (sign: string, times: number): void => {
    rest.set(sign, (rest.get(sign) ?? 0) + times);
  };
  for (const { signs } of words) for (const sign of signs) add(sign, 1);
  for (const { sign, opportunities } of direct) add(sign, opportunities);
  for (const { expected } of mistaken) add(expected, -1);
  const others = [...new Set(mistaken.map(({ expected }) => expected))].flatMap((sign) =>
    Array.from({ length: Math.max(0, rest.get(sign) ?? 0) }, () => ({ expected: sign, given: sign })),
  );
  return summariseConfusions([...mistaken, ...others]);
};
