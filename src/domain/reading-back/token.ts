import type { Lexicon } from "./lexicon";
import { DIGIT_OF, INDICATOR, type Unit } from "./unit";

/** How capitals stand at a place: none, the next letter, the rest of the word, a passage. */
type Capitals = "none" | "letter" | "word" | "passage";

/**
 * What may follow: anything (`open`, no letter before), a letter or the end of the word (`inside`), a letter only
 * (`begun`), no letter (`ended`).
 */
type Place = "open" | "inside" | "begun" | "ended";

interface State {
  readonly capitals: Capitals;
  readonly place: Place;
  readonly numeric: boolean;
  readonly literal: boolean;
}

/** One way to read a token. */
export interface TokenReading {
  readonly print: string;
  /** less is likelier */
  readonly cost: number;
  /** a capitals passage goes on behind the token */
  readonly passage: boolean;
}

/** What tokens are read with. */
export interface TokenReader {
  readonly units: ReadonlyMap<string, readonly Unit[]>;
  readonly lexicon: Lexicon;
}

/** Readings kept at each place. */
const KEPT = 12;
const COST = {
  word: 1,
  rarer: 0.2,
  letter: 1.3,
  contraction: 1.2,
  mark: 1,
  unlikely: 3,
  indicator: 0.2,
  unread: 20,
};

/**
 * The ways to read cells without blanks, likeliest first.
 *
 * @param cells - Unicode braille
 * @param passage - whether the token stands in a capitals passage
 */
export const readToken = (cells: string, passage: boolean, reader: TokenReader): readonly TokenReading[] => {
  const reach = reader.lexicon.longest;
  /** Readings of the rest by place and state. */
  const rests: Map<string, readonly TokenReading[]>[] = [];
  const rest = (place: number, state: State): readonly TokenReading[] => {
    if (place === cells.length) {
      if (state.place === "begun") return [];
      return [{ print: "", cost: 0, passage: state.capitals === "passage" }];
    }
    const known = (rests[place] ??= new Map<string, readonly TokenReading[]>());
    const key = `${state.capitals} ${state.place} ${state.numeric} ${state.literal}`;
    let readings = known.get(key);
    if (readings === undefined) {
      readings = readFrom(place, state);
      known.set(key, readings);
    }
    return readings;
  };
  const readFrom = (place: number, state: State): readonly TokenReading[] => {
    const found: TokenReading[] = [];
    const add = (print: string, cost: number, length: number, next: State): void => {
      for (const later of rest(place + length, next))
        found.push({ print: print + later.print, cost: cost + later.cost, passage: later.passage });
    };
    const startsWith = (sign: string): boolean => cells.startsWith(sign, place);
    addIndicators(state, startsWith, add);
    if (state.numeric) addNumeric(cells, place, add, state);
    if (!state.numeric || !DIGIT_OF.has(cells.charAt(place))) {
      if (state.place === "open" && !state.literal) addWords(cells, place, reach, reader.lexicon, state, add);
      for (const unit of reader.units.get(cells.charAt(place)) ?? [])
        if (startsWith(unit.cells))
          addUnit(unit, placeOf(place, unit.cells.length, cells.length), state, add);
    }
    if (found.length === 0)
      add(cells.charAt(place), COST.unread, 1, { ...state, place: "ended", numeric: false });
    return keepBest(found);
  };
  return rest(0, { capitals: passage ? "passage" : "none", place: "open", numeric: false, literal: false });
};

type Add = (print: string, cost: number, length: number, next: State) => void;

const addIndicators = (state: State, startsWith: (sign: string) => boolean, add: Add): void => {
  const { capitals, place } = state;
  if (place === "begun") {
    if (startsWith(INDICATOR.capital) && capitals === "none")
      add("", COST.indicator, 1, { ...state, capitals: "letter" });
    return;
  }
  if (startsWith(INDICATOR.number)) add("", COST.indicator, 1, { ...state, numeric: true, place: "ended" });
  if (startsWith(INDICATOR.capitalPassage))
    add("", COST.indicator, 3, { ...state, capitals: "passage", numeric: false });
  else if (startsWith(INDICATOR.capitalWord) && capitals === "none")
    add("", COST.indicator, 2, { ...state, capitals: "word", numeric: false });
  if (startsWith(INDICATOR.capital) && capitals === "none")
    add("", COST.indicator, 1, {
      ...state,
      capitals: "letter",
      numeric: false,
      place: state.numeric ? "inside" : place,
    });
  if (startsWith(INDICATOR.capitalEnd) && (capitals === "word" || capitals === "passage"))
    add("", COST.indicator, 2, { ...state, capitals: "none" });
  if (startsWith(INDICATOR.grade1Word))
    add("", COST.indicator, 2, { ...state, literal: true, numeric: false });
  else if (startsWith(INDICATOR.grade1))
    add("", COST.indicator, 1, { ...state, literal: true, numeric: false, place: "open" });
};

const addNumeric = (cells: string, place: number, add: Add, state: State): void => {
  const cell = cells.charAt(place);
  const digit = DIGIT_OF.get(cell);
  const next = DIGIT_OF.has(cells.charAt(place + 1));
  if (digit !== undefined) add(digit, 0.5, 1, state);
  if (cell === INDICATOR.decimalPoint && next) add(".", 0.5, 1, state);
  if (cell === INDICATOR.numericComma && next) add(",", 0.5, 1, state);
  if (cell === INDICATOR.numericSpace && next) add(" ", 0.5, 1, state);
};

const addWords = (
  cells: string,
  place: number,
  reach: number,
  lexicon: Lexicon,
  state: State,
  add: Add,
): void => {
  const most = Math.min(reach, cells.length - place);
  for (let length = most; length > 0; length -= 1) {
    for (const [rank, word] of lexicon
      .wordsOf(cells.slice(place, place + length))
      .slice(0, 3)
      .entries())
      add(capitalise(word, state.capitals), COST.word + rank * COST.rarer, length, {
        ...state,
        place: "ended",
        numeric: false,
        capitals: afterLetters(state.capitals),
      });
  }
};

/** Where in its token a unit stands. */
type TokenPlace = "start" | "middle" | "end";

const placeOf = (place: number, length: number, whole: number): TokenPlace => {
  if (place === 0) return "start";
  return place + length === whole ? "end" : "middle";
};

/** One cell without dots 1 and 4, such as a comma, is a lower contraction more often than a mark between letters. */
const isLower = (cells: string): boolean =>
  cells.length === 1 && (cells.charCodeAt(0) & 0b1001) === 0 && cells !== "\u2804" && cells !== "\u2824";

/** Where each kind of unit may begin, and what may follow it. */
const STEPS: Readonly<Record<Exclude<Unit["kind"], "opening" | "mark">, Partial<Record<Place, Place>>>> = {
  letter: { open: "inside", inside: "inside", begun: "inside" },
  shortform: { open: "inside", inside: "inside", begun: "inside" },
  any: { open: "inside", inside: "inside", begun: "inside" },
  whole: { open: "ended" },
  start: { open: "begun" },
  middle: { inside: "begun", begun: "begun" },
  end: { inside: "ended", begun: "ended" },
};

const addUnit = (unit: Unit, at: TokenPlace, state: State, add: Add): void => {
  const { length } = unit.cells;
  if (unit.kind === "opening" || unit.kind === "mark") {
    if (state.place === "begun") return;
    const likely =
      unit.kind === "opening" ? at === "start" : at === "end" || (at === "middle" && !isLower(unit.cells));
    const capitals = state.capitals === "passage" ? "passage" : "none";
    add(unit.print, likely ? COST.mark : COST.unlikely, length, {
      capitals,
      place: "open",
      numeric: false,
      literal: false,
    });
    return;
  }
  if (state.literal && unit.kind !== "letter") return;
  // Behind a number letters follow at once; k to z need no grade 1 sign.
  const next = STEPS[unit.kind][state.numeric ? "inside" : state.place];
  if (next === undefined) return;
  const cost = costOf(unit, state.place);
  add(capitalise(unit.print, state.capitals), cost, length, {
    ...state,
    numeric: false,
    place: next,
    capitals: afterLetters(state.capitals),
  });
};

/** Inside a word the letters of a shortform are mostly letters: aft in craft is no after. */
const costOf = ({ kind }: Unit, place: Place): number => {
  if (kind === "letter") return COST.letter;
  return kind === "shortform" && place !== "open" ? COST.unlikely : COST.contraction;
};

const capitalise = (print: string, capitals: Capitals): string => {
  if (capitals === "none") return print;
  return capitals === "letter" ? print.charAt(0).toUpperCase() + print.slice(1) : print.toUpperCase();
};

const afterLetters = (capitals: Capitals): Capitals => (capitals === "letter" ? "none" : capitals);

const keepBest = (readings: readonly TokenReading[]): readonly TokenReading[] => {
  const seen = new Set<string>();
  return [...readings]
    .sort((one, other) => one.cost - other.cost)
    .filter(({ print }) => !seen.has(print) && seen.add(print))
    .slice(0, KEPT);
};
