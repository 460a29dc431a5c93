import { dayOf } from "../../src/domain/calendar";
import { refusal, success, type Result } from "../../src/domain/result";
import type { Day } from "../../src/domain/units";
import { formatIsoDay } from "../../src/records/day-style";
import { make } from "./markup";

/** The day on which signs were introduced: today unless she sets another. */
export class TaughtDay {
  #today: Day | undefined;
  readonly #input = make("input", { type: "date" });
  readonly element = make("label", { class: "field" }, "Taught on", this.#input);

  /** A new day is shown where she has not set another. */
  set today(today: Day) {
    const shown = this.#today === undefined ? "" : formatIsoDay(this.#today);
    if (this.#input.value === shown) this.#input.value = formatIsoDay(today);
    this.#today = today;
  }

  read(): Result<Day> {
    const parts = this.#input.value.split("-").map(Number);
    const [year = 0, month = 0, date = 0] = parts;
    const day = parts.length === 3 ? dayOf({ year, month, date }) : undefined;
    return day === undefined
      ? refusal("no-day", "Type the day on which the signs were taught: day, month and year.")
      : success(day);
  }

  focus(): void {
    this.#input.focus();
  }
}
