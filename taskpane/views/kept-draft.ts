import type { PaneContext } from "./pane-context";

type Kept = Pick<PaneContext, "drafts" | "say">;

/** What outlives a reload or a closed pane: kept at every change, offered again, left only when asked twice. */
export class KeptDraft {
  #saidNothingKept = false;

  /**
   * @param key - under which it is kept
   * @param what - as she reads it, such as `probe`
   */
  constructor(
    private readonly key: string,
    private readonly what: string,
  ) {}

  read({ drafts }: Kept): string | undefined {
    return drafts.read(this.key);
  }

  /** Keeps it; once it says where the browser keeps nothing. */
  keep({ drafts, say }: Kept, text: string): void {
    if (drafts.keep(this.key, text) || this.#saidNothingKept) return;
    this.#saidNothingKept = true;
    say(`This browser keeps nothing: if the pane is closed now, this ${this.what} is lost.`);
  }

  forget({ drafts }: Kept): void {
    drafts.forget(this.key);
  }

  /** @param wasRunning - its clock ran when the pane was closed */
  sayTakenUp({ say }: Kept, pupil: string, wasRunning: boolean): void {
    say(
      `A ${this.what} of ${pupil} that was not written is here again${wasRunning ? "; its clock stopped when the pane was last open" : ""}.`,
    );
  }

  sayAsked({ say }: Kept): void {
    say(`Press again to leave this ${this.what}. Its marks and time will be lost.`);
  }
}
