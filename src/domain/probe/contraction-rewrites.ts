import type { Piece } from "../contraction/alignment";
import { CONTRACTIONS, type Contraction } from "../contraction/inventory";
import { letterCell } from "../contraction/letters";
import { isContraction } from "../contraction/sign";
import { EDIT, type Rewrite } from "./alignment";
import type { ExpectedCells } from "./expected-cells";

/** A run of cells that a contraction explains: it was spelled out, or it was written where it does not belong. */
export interface ContractionRewrite extends Rewrite {
  readonly kind: "contraction not used" | "contraction wrongly used";
  readonly contraction: Contraction;
}

/**
 * Every way in which contractions can come into or drop out of a text, one edit each:
 *
 * - not used: the cells of a contraction stand as its letters, or as its letters with smaller contractions among them
 *   (`through` as th-r-ou-gh)
 * - wrongly used: letters and smaller contractions that are to be spelled out stand as the contraction of that print
 *
 * Whether a contraction could stand there by the rules is not asked: what was written is named, not judged.
 */
export const listRewrites = ({ cells, pieces }: ExpectedCells): readonly ContractionRewrite[] => {
  const rewrites: ContractionRewrite[] = [];
  const add = (
    kind: ContractionRewrite["kind"],
    contraction: Contraction,
    [from, to]: readonly [number, number],
    written: string,
  ): void => {
    if (written !== cells.slice(from, to))
      rewrites.push({ kind, contraction, from, to, keys: [...written], weight: EDIT });
  };
  pieces.forEach((piece, place) => {
    if (isContraction(piece.sign)) {
      for (const spelling of spellingsOf(piece.sign))
        add("contraction not used", piece.sign, [piece.cellStart, piece.cellEnd], spelling);
    }
    let print = "";
    let [end, printEnd] = [piece.cellStart, piece.printStart];
    for (let at = place; print.length < LONGEST; at += 1) {
      const next = pieces[at];
      if (next?.cellStart !== end || next.printStart !== printEnd) break;
      const part = printOfPiece(next);
      if (part === "") break;
      print += part;
      ({ cellEnd: end, printEnd } = next);
      for (const contraction of contractionsByPrint.get(print) ?? [])
        if (at > place)
          add("contraction wrongly used", contraction, [piece.cellStart, end], contraction.cells);
    }
  });
  return rewrites;
};

/** The letters that a piece stands for; "" where it is neither a letter nor a contraction. */
const printOfPiece = ({ sign }: Piece): string => {
  if (isContraction(sign)) return sign.print;
  return sign.kind === "letter" ? sign.name : "";
};

/** `in` and `be` have two uses with the same cells; as a use wrongly made, the groupsign stands for both. */
const contractionsByPrint = new Map<string, readonly Contraction[]>();
for (const contraction of CONTRACTIONS) {
  const others = (contractionsByPrint.get(contraction.print) ?? []).filter(
    ({ cells }) => cells !== contraction.cells,
  );
  contractionsByPrint.set(contraction.print, [...others, contraction]);
}

const LONGEST = Math.max(...CONTRACTIONS.map(({ print }) => print.length));

/** Contractions that can be a part of a longer stretch of letters. */
const PARTS = CONTRACTIONS.filter(({ places }) => places.some((place) => place !== "whole"));

/** More spellings of a contraction are not looked for; the longest shortforms have about thirty. */
const MOST_SPELLINGS = 64;

const knownSpellings = new Map<Contraction, readonly string[]>();

/** Cells for the letters of a contraction, smaller contractions among them or not; its own cells are none of them. */
const spellingsOf = (contraction: Contraction): readonly string[] => {
  const known = knownSpellings.get(contraction);
  if (known !== undefined) return known;
  const spellings = new Set<string>();
  const { print } = contraction;
  const spell = (at: number, cells: string): void => {
    if (spellings.size >= MOST_SPELLINGS) return;
    if (at === print.length) {
      spellings.add(cells);
      return;
    }
    const letter = letterCell(print.charAt(at));
    if (letter !== undefined) spell(at + 1, cells + letter);
    for (const part of PARTS) {
      if (part.print.length < print.length && print.startsWith(part.print, at))
        spell(at + part.print.length, cells + part.cells);
    }
  };
  spell(0, "");
  spellings.delete(contraction.cells);
  knownSpellings.set(contraction, [...spellings]);
  return [...spellings];
};
