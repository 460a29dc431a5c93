import { parseSigns } from "../../src/domain/contraction/taught";
import type { Sign } from "../../src/domain/contraction/sign";
import { drawSignRow, LONGEST_ROW, mixSigns } from "../../src/domain/probe/sign-row";
import type { PupilSigns } from "../../src/domain/progress/pupil-signs";
import { seededRandom } from "../../src/domain/seeded-random";
import { countInWords } from "./count-words";
import { make } from "./markup";
import { NAMING_TASKS } from "./naming-draft";
import type { NamingTask, NamingTaskName } from "./naming-draft";
import { listPools } from "./naming-pools";
import { fillSelect } from "./select-filling";

const BY_HAND = "by hand";
const USUAL_LENGTH = 20;
const LONGEST_SEED = 1_000_000;
const TASK_LABELS: Readonly<Record<NamingTaskName, string>> = {
  "signs named": "names them",
  copied: "copies them",
};
const MEDIA: Readonly<Record<NamingTaskName, readonly string[]>> = {
  "signs named": ["braille", "display", "print"],
  copied: ["braillewriter", "slate", "display"],
};
/** One minute is common practice for timed naming, no source; the others are our choice. */
const LIMITS = [
  [0, "at the end of the row"],
  [30, "after 30 seconds"],
  [60, "after one minute"],
  [120, "after two minutes"],
] as const;

/** The form before a row of signs: which signs, how many, named or copied, and when the clock stops. */
export class NamingChoice {
  readonly element = make("form", { novalidate: true });
  #signs: PupilSigns | undefined;
  readonly #task = make(
    "select",
    {},
    ...NAMING_TASKS.map((task) => make("option", { value: task }, TASK_LABELS[task])),
  );
  readonly #pool = make("select");
  readonly #named = make("input", { type: "text", autocomplete: "off", spellcheck: "false" });
  readonly #namedField = make(
    "label",
    { class: "field wide" },
    "Signs, such as ch, ea, in wordsign",
    this.#named,
  );
  readonly #isMixed = make("input", { type: "checkbox" });
  readonly #mixedField = make(
    "label",
    { class: "choice" },
    this.#isMixed,
    "Mix with other signs taught, so that the next one is not known before",
  );
  readonly #length = make("input", {
    type: "number",
    min: "1",
    max: String(LONGEST_ROW),
    value: String(USUAL_LENGTH),
  });
  readonly #seed = make("input", { type: "number", min: "1", max: String(LONGEST_SEED), value: "1" });
  readonly #medium = make("select");
  readonly #limit = make(
    "select",
    {},
    ...LIMITS.map(([seconds, label]) => make("option", { value: String(seconds) }, label)),
  );
  readonly #problem = make("p", { role: "alert", class: "notice" });

  /** @param begin - called with the task once it is complete, but for the pupil */
  constructor(begin: (task: Omit<NamingTask, "pupil">) => void) {
    this.#problem.hidden = true;
    this.element.append(
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "The pupil", this.#task),
        make("label", { class: "field" }, "Medium", this.#medium),
        make("label", { class: "field wide" }, "Signs from", this.#pool),
        this.#namedField,
        this.#mixedField,
        make("label", { class: "field" }, "How many in the row", this.#length),
        make("label", { class: "field" }, "Order (another number, another order)", this.#seed),
        make("label", { class: "field wide" }, "The clock stops", this.#limit),
      ),
      this.#problem,
      make("div", { class: "buttons" }, make("button", { type: "submit", class: "main" }, "Show the row")),
    );
    this.#task.addEventListener("change", () => {
      this.#offer();
    });
    this.#pool.addEventListener("change", () => {
      this.#showNamed();
    });
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      const task = this.#read();
      if (task !== undefined) begin(task);
    });
    this.#offer();
  }

  /** Offers the signs of a pupil; what she has chosen stays. @param isOther - the pupil is another one */
  offer(signs: PupilSigns | undefined, isOther: boolean): void {
    this.#signs = signs;
    if (isOther) this.#pool.value = "";
    this.#offer();
  }

  /** Takes signs up as if she had named them; one or two are mixed with others. */
  name(signs: readonly string[]): void {
    this.#pool.value = BY_HAND;
    this.#named.value = signs.join(", ");
    this.#isMixed.checked = signs.length <= 2;
    this.#showNamed();
  }

  /** Sets what the pupil does, where it is one of the tasks. */
  setTask(task: string): void {
    const known = NAMING_TASKS.find((each) => each === task);
    if (known !== undefined) this.#task.value = known;
    this.#offer();
  }

  /** Another order than the last one. */
  turn(): void {
    this.#seed.value = String((Number(this.#seed.value) % LONGEST_SEED) + 1);
  }

  focus(): void {
    this.#task.focus();
  }

  get #taskName(): NamingTaskName {
    return NAMING_TASKS.find((each) => each === this.#task.value) ?? "signs named";
  }

  #pools() {
    return this.#signs === undefined
      ? []
      : listPools(this.#signs, this.#taskName === "copied" ? "writing" : "reading");
  }

  get #taught(): readonly Sign[] {
    return this.#pools().find(({ name }) => name === "taught")?.signs ?? [];
  }

  #offer(): void {
    const pools = this.#pools().filter(({ signs }) => signs.length > 0);
    const names: readonly string[] = [...pools.map(({ name }) => name), BY_HAND];
    fillSelect(
      this.#pool,
      [
        ...pools.map(({ name, label, signs }) => ({
          value: name,
          label: `${label} (${countInWords(signs.length, "sign")})`,
        })),
        { value: BY_HAND, label: "Signs that I name" },
      ],
      names.includes(this.#pool.value) ? this.#pool.value : (names[0] ?? BY_HAND),
    );
    const media = MEDIA[this.#taskName];
    fillSelect(
      this.#medium,
      media.map((medium) => ({ value: medium, label: medium })),
      media.includes(this.#medium.value) ? this.#medium.value : (media[0] ?? ""),
    );
    this.#showNamed();
  }

  #showNamed(): void {
    this.#namedField.hidden = this.#pool.value !== BY_HAND;
    this.#mixedField.hidden = this.#pool.value === "taught" || this.#taught.length === 0;
  }

  #read(): Omit<NamingTask, "pupil"> | undefined {
    const pool = this.#drawFrom();
    if (pool === undefined) return undefined;
    const length = Number(this.#length.value);
    if (!(Number.isInteger(length) && length >= 1 && length <= LONGEST_ROW))
      return this.#refuse(`A row has 1 to ${String(LONGEST_ROW)} signs.`, this.#length);
    const seed = Number(this.#seed.value);
    if (!(Number.isInteger(seed) && seed >= 1 && seed <= LONGEST_SEED))
      return this.#refuse("The number for the order is a whole one from 1 up.", this.#seed);
    this.#problem.hidden = true;
    const random = seededRandom(seed);
    const isMixed = this.#isMixed.checked && !this.#mixedField.hidden;
    const drawn = isMixed ? mixSigns(pool, this.#taught, random) : pool;
    return {
      task: this.#taskName,
      medium: this.#medium.value,
      signs: drawSignRow(drawn, length, random).map(({ name }) => name),
      seed,
      limit: Number(this.#limit.value),
    };
  }

  #drawFrom(): readonly Sign[] | undefined {
    if (this.#pool.value !== BY_HAND)
      return this.#pools().find(({ name }) => name === this.#pool.value)?.signs ?? [];
    const named = parseSigns([this.#named.value]);
    if (!named.ok) return this.#refuse(named.fault.message, this.#named);
    if (named.value.length === 0)
      return this.#refuse("No sign is named. Type the signs of the row, parted by commas.", this.#named);
    return named.value;
  }

  #refuse(problem: string, field: HTMLElement): undefined {
    this.#problem.textContent = problem;
    this.#problem.hidden = false;
    field.focus();
    return undefined;
  }
}
