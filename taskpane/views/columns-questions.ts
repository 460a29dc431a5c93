import type { ColumnChoices } from "../../src/records/column-choices";
import type { ClockMeaning } from "../../src/records/duration";
import type { DayOrder } from "../../src/records/day-text";
import type { FoundBlock, Question } from "../../src/records/found-block";
import { make } from "./markup";

interface Option {
  readonly value: string;
  readonly label: string;
}

type Answered = (change: Pick<ColumnChoices, "dayOrder" | "clock">) => void;

function makeGroup(
  kind: Question["kind"],
  legend: string,
  explanation: string,
  options: readonly Option[],
  answer: string | undefined,
  answered: (value: string) => void,
): HTMLFieldSetElement {
  const name = kind.replace(" ", "-");
  const radios = options.map(({ value, label }) => {
    const radio = make("input", { type: "radio", name, value, "data-focus": `question:${kind}:${value}` });
    radio.checked = value === answer;
    radio.addEventListener("change", () => answered(value));
    return make("label", { class: "option" }, radio, label);
  });
  return make(
    "fieldset",
    { "data-question": kind },
    make("legend", {}, legend),
    make("p", {}, explanation),
    ...radios,
  );
}

const placesOf = (asked: readonly { block: FoundBlock; question: Question }[]): string =>
  asked.map(({ block, question }) => `${block.sheet} ${question.cell}`).join(", ");

function makeDayOrder(
  asked: readonly { block: FoundBlock; question: Question }[],
  answer: DayOrder | undefined,
  answered: Answered,
): HTMLFieldSetElement {
  const example = asked[0]?.question.example;
  const shown = example?.shown ?? "7/10/2026";
  return makeGroup(
    "day order",
    "Does the day or the month come first?",
    asked.length > 0
      ? `Nothing in these dates tells: ${placesOf(asked)}. Until you answer, their rows are not counted.`
      : "You answered this. Change it here if it was wrong.",
    [
      { value: "dmy", label: `Day first: ${shown} is ${example?.dmy ?? "7 Oct 2026"}` },
      { value: "mdy", label: `Month first: ${shown} is ${example?.mdy ?? "10 Jul 2026"}` },
    ],
    answer,
    (value) => answered({ dayOrder: value === "dmy" ? "dmy" : "mdy" }),
  );
}

function makeClock(
  asked: readonly { block: FoundBlock; question: Question }[],
  answer: ClockMeaning | undefined,
  answered: Answered,
): HTMLFieldSetElement {
  const example = asked[0]?.question.example;
  const shown = example?.shown ?? "1:30";
  return makeGroup(
    "clock",
    "Are the times minutes and seconds?",
    asked.length > 0
      ? `They are stored as times of the clock: ${placesOf(asked)}. They are read as minutes and seconds until you say otherwise. Please confirm once.`
      : "You answered this. Change it here if it was wrong.",
    [
      { value: "m:ss", label: `Minutes and seconds: ${shown} is ${example?.mss ?? "1 minute 30 seconds"}` },
      { value: "h:mm", label: `Hours and minutes: ${shown} is ${example?.hmm ?? "1 hour 30 minutes"}` },
    ],
    answer,
    (value) => answered({ clock: value === "m:ss" ? "m:ss" : "h:mm" }),
  );
}

/** The questions that the data cannot settle, each once for the whole workbook; answered ones stay to be changed. */
export function makeQuestions(
  blocks: readonly FoundBlock[],
  choices: ColumnChoices,
  answered: Answered,
): HTMLFieldSetElement[] {
  const asked = (kind: Question["kind"]): { block: FoundBlock; question: Question }[] =>
    blocks
      .filter(({ leftOut }) => !leftOut)
      .flatMap((block) =>
        block.questions.filter((question) => question.kind === kind).map((question) => ({ block, question })),
      );
  const days = asked("day order");
  const clocks = asked("clock");
  return [
    ...(days.length > 0 || choices.dayOrder ? [makeDayOrder(days, choices.dayOrder, answered)] : []),
    ...(clocks.length > 0 || choices.clock ? [makeClock(clocks, choices.clock, answered)] : []),
  ];
}
