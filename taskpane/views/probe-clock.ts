import { make } from "./markup";

export const PROBE_CLOCK_STYLES = `
.clock { display: flex; flex-wrap: wrap; align-items: center; gap: 0.4rem 0.9rem; }
.clock output { font-size: 1.6em; font-variant-numeric: tabular-nums; min-inline-size: 3.2em; }
`;

/** Minutes and seconds as a clock shows them: 1:05. */
export const formatClock = (seconds: number): string => {
  const whole = Math.floor(seconds);
  return `${String(Math.floor(whole / 60))}:${String(whole % 60).padStart(2, "0")}`;
};

/** Marks of time that the clock can tell of, in seconds. */
const BELLS = [0, 60, 120, 180, 300] as const;

/**
 * The clock of a probe. It is seen, or hidden when it makes her nervous; it never speaks by itself but once, at the
 * time that she asked for.
 */
export class ProbeClock {
  readonly element = make("div", { class: "clock" });
  // No live region: a clock that chatters would talk over the pupil.
  readonly #shown = make("output", { "aria-live": "off", role: "timer", "aria-label": "Time" }, "0:00");
  readonly #isShown = make("input", { type: "checkbox", checked: true });
  readonly #bell = make(
    "select",
    {},
    ...BELLS.map((seconds) =>
      make(
        "option",
        { value: String(seconds) },
        seconds === 0 ? "never" : `after ${String(seconds / 60)} ${seconds === 60 ? "minute" : "minutes"}`,
      ),
    ),
  );
  #timer: ReturnType<typeof setInterval> | undefined;
  #rung = false;

  /**
   * @param elapsed - seconds on the clock now
   * @param tick - called every second while it runs, for what must be kept
   * @param ring - called once when the time that she chose is reached
   */
  constructor(
    private readonly elapsed: () => number,
    private readonly tick: () => void,
    private readonly ring: (words: string) => void,
  ) {
    this.#isShown.addEventListener("change", () => {
      this.#shown.hidden = !this.#isShown.checked;
    });
    this.element.append(
      this.#shown,
      make("label", { class: "choice" }, this.#isShown, "Show the clock"),
      make("label", { class: "choice" }, "Tell me", this.#bell),
    );
  }

  start(): void {
    this.stop();
    this.#rung = false;
    this.#timer = setInterval(() => {
      this.show();
      this.tick();
      const wanted = Number(this.#bell.value);
      if (this.#rung || wanted === 0 || this.elapsed() < wanted) return;
      this.#rung = true;
      this.ring(wanted === 60 ? "One minute." : `${String(wanted / 60)} minutes.`);
    }, 1000);
    this.show();
  }

  stop(): void {
    clearInterval(this.#timer);
    this.show();
  }

  show(): void {
    this.#shown.textContent = formatClock(this.elapsed());
  }
}
