import { make } from "./markup";
import { setText } from "./select-filling";

const NO_SPEECH =
  "This browser has no voice of its own for English. Read the words aloud yourself; they stand here one by one.";
const RATES = [
  [0.6, "slow"],
  [0.85, "unhurried"],
  [1, "usual"],
] as const;

/** A voice that speaks on this computer and sends nothing anywhere; undefined where there is none. */
const findVoice = (): SpeechSynthesisVoice | undefined => {
  if (!("speechSynthesis" in globalThis)) return undefined;
  const local = speechSynthesis.getVoices().filter(({ localService }) => localService);
  return local.find(({ lang }) => /^en\b/i.test(lang));
};

/** Dictation word by word at her pace: shown, and spoken where this computer has a voice. */
export class Dictation {
  readonly element = make("section", { "aria-label": "Dictation" });
  readonly #word = make("p", { class: "word-in-turn", "aria-live": "off" });
  readonly #voiceless = make("p", { class: "quiet" }, NO_SPEECH);
  readonly #rate = make(
    "select",
    {},
    ...RATES.map(([rate, label]) => make("option", { value: String(rate) }, label)),
  );
  readonly #rateField = make("label", { class: "choice" }, "Speaking rate", this.#rate);
  #words: readonly string[] = [];
  #place = -1;

  /** @param say - for the live region: where there is no voice, a screen reader says the word */
  constructor(private readonly say: (word: string) => void) {
    const button = (label: string, act: () => void): HTMLButtonElement => {
      const made = make("button", { type: "button" }, label);
      made.addEventListener("click", act);
      return made;
    };
    this.#rate.value = "0.85";
    this.element.append(
      this.#word,
      make(
        "div",
        { class: "buttons" },
        button("Next word", () => {
          this.next();
        }),
        button("Say it again", () => {
          this.again();
        }),
        button("One word back", () => {
          this.#go(this.#place - 1);
        }),
        this.#rateField,
      ),
      this.#voiceless,
    );
    this.#noticeVoice();
    if ("speechSynthesis" in globalThis)
      speechSynthesis.addEventListener("voiceschanged", () => {
        this.#noticeVoice();
      });
  }

  /** Begins before the first word. */
  show(words: readonly string[]): void {
    this.stop();
    this.#words = words;
    this.#place = -1;
    setText(this.#word, `${String(words.length)} words. None is said yet.`);
  }

  next(): void {
    this.#go(this.#place + 1);
  }

  again(): void {
    this.#go(Math.max(0, this.#place));
  }

  stop(): void {
    if ("speechSynthesis" in globalThis) speechSynthesis.cancel();
  }

  #go(place: number): void {
    this.#place = Math.max(0, Math.min(place, this.#words.length));
    const word = this.#words[this.#place];
    if (word === undefined) {
      setText(this.#word, "All words are said.");
      return;
    }
    setText(this.#word, `${String(this.#place + 1)} of ${String(this.#words.length)}: ${word}`);
    this.#speak(word);
  }

  #speak(word: string): void {
    const voice = findVoice();
    if (voice === undefined) {
      this.say(word);
      return;
    }
    this.stop();
    const utterance = new SpeechSynthesisUtterance(word);
    utterance.voice = voice;
    utterance.lang = voice.lang;
    utterance.rate = Number(this.#rate.value);
    speechSynthesis.speak(utterance);
  }

  #noticeVoice(): void {
    const hasVoice = findVoice() !== undefined;
    this.#voiceless.hidden = hasVoice;
    this.#rateField.hidden = !hasVoice;
  }
}
