import { parseHeld } from "../domain/caseload/lesson";
import type { Lesson } from "../domain/caseload/lesson";
import type { Pupil } from "../domain/caseload/pupil";
import { parseExceptions } from "../domain/contraction/exceptions";
import type { KeptException } from "../domain/contraction/kept-exception";
import type { KeptWord } from "../domain/drill/kept-word";
import type { NotedMiscue } from "../domain/probe/noted-miscue";
import type { AnyKind } from "./column-kind";
import type { KeptPassage, ListName, ListRecords } from "./found-block";
import type { ListCells } from "./list-cells";

/** The cells of these columns that hold a text, under the names of the record. */
const textsOf = <N extends string>(
  cells: ListCells,
  names: Readonly<Record<N, AnyKind>>,
): Partial<Record<N, string>> => {
  const texts: Partial<Record<N, string>> = {};
  for (const name of Object.keys(names) as N[]) {
    const text = cells.text(names[name]);
    if (text !== undefined) texts[name] = text;
  }
  return texts;
};

function readPupil(cells: ListCells): Pupil | undefined {
  const pupil = cells.pupil();
  const cellsPerLine = cells.count("cellsPerLine", "cells of a line");
  const minutesPlanned = cells.minutes("minutesPlanned");
  return pupil === undefined
    ? undefined
    : {
        pupil,
        ...textsOf(cells, { code: "code", teacher: "teacher", note: "note" }),
        ...(cellsPerLine === undefined ? {} : { cellsPerLine }),
        ...(minutesPlanned === undefined ? {} : { minutesPlanned }),
        source: cells.source,
      };
}

/** Words beside a lesson that was not held may stand in any of its columns; blank with minutes it was. */
function readLesson(cells: ListCells): Lesson | undefined {
  const pupil = cells.pupil();
  const day = cells.day("date");
  if (day === undefined && !cells.waits && cells.faults.length === 0)
    cells.complain("date", "no-date", "The date of the lesson is missing. Type it, such as 2026-10-07.");
  const said = cells.text("held");
  const held = said === undefined ? "yes" : parseHeld(said);
  if (held === undefined) {
    cells.complain(
      "held",
      "held-unclear",
      "It does not say whether the lesson was held. Type yes, pupil absent, teacher absent or school closed.",
    );
    return undefined;
  }
  const minutes = cells.minutes("minutes");
  if (minutes === undefined && held === "yes" && cells.faults.length === 0)
    cells.complain("minutes", "no-minutes", "The minutes of this lesson are missing. Type them as a number.");
  if (pupil === undefined || day === undefined || (minutes === undefined && held === "yes")) return undefined;
  return {
    day,
    pupil,
    minutes: minutes ?? 0,
    held,
    ...textsOf(cells, { workedOn: "workedOn", note: "note" }),
    source: cells.source,
  };
}

function readMiscue(cells: ListCells): NotedMiscue | undefined {
  const pupil = cells.pupil();
  const day = cells.day("date");
  const position = cells.count("position", "place of the word");
  const expected = cells.text("expected") ?? "";
  const response = cells.text("response") ?? "";
  if (expected === "" && response === "" && cells.faults.length === 0)
    cells.complain("expected", "no-word", "Neither the word expected nor what was said is there. Type one.");
  return pupil === undefined
    ? undefined
    : {
        pupil,
        ...(day === undefined ? {} : { day }),
        ...textsOf(cells, { task: "task", kind: "error kind" }),
        ...(position === undefined ? {} : { position }),
        expected,
        response,
        source: cells.source,
      };
}

function readWord(cells: ListCells): KeptWord | undefined {
  const word = cells.required("word", "no-word", "The word is missing. Type it, or delete the row.");
  return word === undefined
    ? undefined
    : {
        word,
        ...textsOf(cells, { list: "list", pupil: "pupil", origin: "origin" }),
        source: cells.source,
      };
}

function readPassage(cells: ListCells): KeptPassage | undefined {
  const title = cells.required("title", "no-title", "The title of this passage is missing. Type one.");
  const text = cells.required(
    "passageText",
    "no-text",
    "The text of this passage is missing. Type or paste it.",
  );
  return title === undefined || text === undefined ? undefined : { title, text, source: cells.source };
}

function readException(cells: ListCells): KeptException | undefined {
  const word = cells.required("word", "no-word", "The word is missing. Type it, or delete the row.");
  const braille = cells.required(
    "braille",
    "no-braille",
    "The braille for this word is missing. Type it as braille, in ASCII braille or as dot numbers.",
  );
  if (word === undefined || braille === undefined) return undefined;
  const checked = parseExceptions([[word, braille]]);
  if (!checked.ok) {
    cells.complain(
      "braille",
      checked.fault.code,
      "This is not braille. Type it as braille, in ASCII braille or as dot numbers such as 125-15.",
    );
  }
  return { word, braille, source: cells.source };
}

/** How a row of each list becomes a record; undefined where the row's faults forbid one. */
export const LIST_READERS: { readonly [K in ListName]: (cells: ListCells) => ListRecords[K] | undefined } = {
  pupils: readPupil,
  lessons: readLesson,
  miscues: readMiscue,
  words: readWord,
  passages: readPassage,
  exceptions: readException,
};
