/** The time of a probe: nothing before the clock starts. */
export interface ProbeTime {
  /** when the clock was started, in milliseconds of the system's clock; absent before */
  readonly started?: number;
  /** the last moment that the running clock was seen, so that a crash does not add to the time */
  readonly seen?: number;
  /** the time taken, once stopped */
  readonly seconds?: number;
}

/** Where a probe stands. */
export type ProbeStage = "ready" | "running" | "stopped";

/** How far a probe is. */
export const stageOf = (time: ProbeTime): ProbeStage =>
  time.seconds !== undefined ? "stopped" : time.started !== undefined ? "running" : "ready";

/** The clock starts: at the first word or sign, not while the line is being found. */
export const startClock = <T extends ProbeTime>(draft: T, now: number): T => {
  const fresh = { ...draft, started: now, seen: now };
  Reflect.deleteProperty(fresh, "seconds");
  return fresh;
};

/** Seconds on the running clock, or the time taken. */
export const secondsOf = (time: ProbeTime, now: number): number =>
  time.seconds ?? (time.started === undefined ? 0 : Math.max(0, now - time.started) / 1000);

/** Stops the clock, at a tenth of a second. */
export const stopClock = <T extends ProbeTime>(draft: T, now: number): T => ({
  ...draft,
  seconds: Math.round(secondsOf(draft, now) * 10) / 10,
});

/** A probe found again after a reload: a running clock stopped when it was last seen. */
export const takeUpAgain = <T extends ProbeTime>(draft: T): T =>
  stageOf(draft) === "running" ? stopClock(draft, draft.seen ?? draft.started ?? 0) : draft;

const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);

/** The time of a kept probe; what is no number is left out. */
export const readTime = ({ started, seen, seconds }: Readonly<Record<string, unknown>>): ProbeTime => ({
  ...(isNumber(started) ? { started } : {}),
  ...(isNumber(seen) ? { seen } : {}),
  ...(isNumber(seconds) ? { seconds } : {}),
});
