import type { CaseloadOptions } from "../../src/domain/caseload/caseload";
import type { DueSign } from "../../src/domain/caseload/written-checks";
import { normaliseName } from "../../src/domain/progress/series";
import type { PaneContext } from "./pane-context";

type Asked = Pick<PaneContext, "records" | "today" | "pupils" | "cells" | "translators" | "scheduler">;

const isSame = (one: Asked, other: Asked): boolean =>
  one.records === other.records && one.today === other.today && one.cells === other.cells;

/** Leaves the page its turn: to draw, and to take a key. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * Which signs of each pupil are due for a check. What a pupil knows takes long to work out for a whole caseload, so it is
 * done pupil by pupil after the lines are drawn, once the braille engine is there.
 */
export class CaseloadChecks {
  #asked: Asked | undefined;
  #known: CaseloadOptions["checksOf"];
  #isRunning = false;

  /** @param done - called when they are known for every pupil */
  constructor(private readonly done: () => void) {}

  /** true while they are being worked out */
  get isRunning(): boolean {
    return this.#isRunning;
  }

  /** What is known of a reading; where nothing is yet, the work is begun, and that of an older reading dropped. */
  of(context: Asked): CaseloadOptions["checksOf"] {
    if (this.#asked !== undefined && isSame(this.#asked, context)) return this.#known;
    this.#asked = context;
    this.#known = undefined;
    this.#isRunning = context.cells !== undefined && context.records.taught.length > 0;
    if (this.#isRunning) void this.#work(context);
    return undefined;
  }

  async #work(context: Asked): Promise<void> {
    const { records, today, pupils } = context;
    const [{ signsOf }, { findChecksDue }] = await Promise.all([
      import(/* webpackChunkName: "standings" */ "./sign-standings"),
      import(/* webpackChunkName: "standings" */ "../../src/domain/caseload/checks-due"),
    ]);
    const known = new Map<string, readonly DueSign[]>();
    for (const pupil of pupils) {
      await nextTurn();
      if (this.#asked !== context) return;
      const name = normaliseName(pupil);
      const taught = records.taught.filter((row) => normaliseName(row.pupil) === name);
      known.set(name, findChecksDue(signsOf(context, pupil).standings, taught, today));
    }
    this.#known = (pupil) => known.get(normaliseName(pupil));
    this.#isRunning = false;
    this.done();
  }
}
