import { parseArgs } from "node:util";
import { fitPaper, USUAL_LOOK, type BraillePageLook } from "../../charts/braille-page";
import { PRINT_PLACES, USUAL_HANDOUT, type HandoutOptions } from "../../domain/drill/handout";
import { HANDOUT_ENDINGS, type HandoutEnding } from "../../domain/drill/handout-file";
import { PAPER_KEYS } from "../../domain/paper";
import { refusal, success, type Result } from "../../domain/result";

export const HANDOUT_USAGE =
  "cellwright handout --from FILE|- or --words 'egg, nest' --to out.brf|out.pef|out.docx|out.html|out.svg [--passage] [--title T] [--date D] [--code C] [--cells 40] [--lines 25] [--double] [--print beside|beneath|none] [--large-print] [--paper a4|letter|braille] [--margin MM] [--guide-dots] [--duplex]";

/** What `handout` is asked for. */
export interface HandoutRequest {
  /** a file of one item a line */
  readonly from: string | undefined;
  readonly words: string | undefined;
  /** all lines of the file are one passage */
  readonly passage: boolean;
  readonly to: string;
  readonly ending: HandoutEnding;
  readonly title: string;
  readonly date: string;
  readonly duplex: boolean;
  readonly options: HandoutOptions;
  readonly look: BraillePageLook;
}

const OPTIONS = {
  from: { type: "string" },
  words: { type: "string" },
  passage: { type: "boolean" },
  to: { type: "string" },
  title: { type: "string" },
  date: { type: "string" },
  code: { type: "string" },
  cells: { type: "string" },
  lines: { type: "string" },
  double: { type: "boolean" },
  print: { type: "string" },
  "large-print": { type: "boolean" },
  paper: { type: "string" },
  margin: { type: "string" },
  "guide-dots": { type: "boolean" },
  duplex: { type: "boolean" },
} as const;

type Values = ReturnType<typeof readValues>;
const readValues = (args: readonly string[]) => parseArgs({ args: [...args], options: OPTIONS }).values;

/**
 * Reads the arguments of `handout`.
 *
 * @returns the request, or `usage` saying what is wrong
 */
export const parseHandoutArguments = (args: readonly string[]): Result<HandoutRequest> => {
  let values: Values;
  try {
    values = readValues(args);
  } catch {
    // parseArgs repeats the argument in its message; a title may hold a pupil's name.
    return wrong("An option is unknown or has no value.");
  }
  const { from, words, to } = values;
  if ((from === undefined) === (words === undefined))
    return wrong("Give what stands on the handout, either by --from FILE or by --words 'egg, nest'.");
  const ending = HANDOUT_ENDINGS.find((kind) => to?.toLowerCase().endsWith(`.${kind}`));
  if (to === undefined || ending === undefined)
    return wrong(`Say by --to where to write; the name's ending is one of ${HANDOUT_ENDINGS.join(", ")}.`);
  const look = readLook(values);
  if (!look.ok) return look;
  const options = readOptions(values, ending, look.value);
  if (!options.ok) return options;
  return success({
    from,
    words,
    passage: values.passage ?? false,
    to,
    ending,
    title: values.title ?? "",
    date: values.date ?? "",
    duplex: values.duplex ?? false,
    options: options.value,
    look: look.value,
  });
};

const wrong = (message: string) => refusal("usage", message);

const readLook = ({ paper, margin, print, ...values }: Values): Result<BraillePageLook> => {
  const sheet = PAPER_KEYS.find((key) => key === (paper ?? USUAL_LOOK.paper));
  if (sheet === undefined) return wrong(`--paper is one of ${PAPER_KEYS.join(", ")}.`);
  const millimetres = Number(margin ?? USUAL_LOOK.margin);
  if (!(millimetres >= 0)) return wrong("--margin is a length in millimetres, such as 12.7.");
  return success({
    paper: sheet,
    margin: millimetres,
    guideDots: values["guide-dots"] ?? false,
    printBetween: print !== "none",
    largePrint: values["large-print"] ?? false,
  });
};

/** Drawn pages are as full as the paper allows unless said otherwise, and large print gets its empty lines. */
const readOptions = (
  values: Values,
  ending: HandoutEnding,
  look: BraillePageLook,
): Result<HandoutOptions> => {
  const print = PRINT_PLACES.find((place) => place === (values.print ?? USUAL_HANDOUT.print));
  if (print === undefined) return wrong(`--print is one of ${PRINT_PLACES.join(", ")}.`);
  const drawn = ending === "svg";
  const usual = drawn ? fitPaper(look) : USUAL_HANDOUT;
  const [cells, lines] = [values.cells, values.lines].map((text) =>
    text === undefined ? undefined : Number(text),
  );
  if (![cells ?? 1, lines ?? 1].every(Number.isInteger))
    return wrong("--cells and --lines are whole numbers, such as 40 and 25.");
  const needsRoom = drawn && look.printBetween && look.largePrint;
  return success({
    cellsPerLine: cells ?? Math.min(usual.cellsPerLine, USUAL_HANDOUT.cellsPerLine),
    linesPerPage: lines ?? usual.linesPerPage,
    lineSpacing: values.double === true || needsRoom ? 2 : 1,
    print,
    code: values.code ?? USUAL_HANDOUT.code,
  });
};
