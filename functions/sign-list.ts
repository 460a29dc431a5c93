/** The inventory of signs as the sheet function SIGNS gives it. */
import { CONTRACTIONS, formatKind } from "../src/domain/contraction/inventory";
import { PLAIN_SIGNS, type Sign } from "../src/domain/contraction/sign";
import type { Fault } from "../src/domain/result";
import { textOf } from "./cell-reading";
import type { Answer } from "./shape";

const SIGNS: readonly Sign[] = [...CONTRACTIONS, ...PLAIN_SIGNS];
const KINDS = [...new Set(SIGNS.map(({ kind }) => formatKind(kind)))];

/**
 * Rows of sign, cells, dots, kind and rule section: contractions in the order of the rule book, then letters, digits,
 * punctuation and indicators.
 *
 * @param kind - one kind only: as results write it, or with spaces, or in the plural; all where it is blank
 */
export const signRows = (kind: unknown): Fault | readonly (readonly Answer[])[] => {
  const spelled = textOf(kind)
    .trim()
    .toLowerCase()
    .replace(/[\s\u2010-\u2015-]+/g, "-");
  const wanted = KINDS.find((known) => known === spelled || `${known}s` === spelled);
  if (spelled !== "" && wanted === undefined) {
    return {
      code: "unknown-kind",
      message: `“${textOf(kind).slice(0, 40)}” is no kind of sign: use ${KINDS.join(", ")}, or leave it out for all.`,
    };
  }
  return SIGNS.filter((sign) => wanted === undefined || formatKind(sign.kind) === wanted).map(
    ({ name, cells, dots, kind: own, section }) => [name, cells, dots, formatKind(own), section],
  );
};
