import { element } from "../element";

/** One answer to choose: what the button says, and what it means. */
export interface Answer<T> {
  readonly label: string;
  readonly value: T;
}

/**
 * Asks a question in a dialog over the page.
 *
 * @param answers - the first is the safe one: it has the focus
 * @returns the answer, or undefined where she left by Escape
 */
export function ask<T>(title: string, text: string, answers: readonly Answer<T>[]): Promise<T | undefined> {
  const dialog = element("dialog", "question");
  const heading = element("h2", "");
  const words = element("p", "");
  const buttons = element("div", "question-answers");
  heading.textContent = title;
  heading.id = "question-title";
  words.textContent = text;
  words.id = "question-text";
  dialog.setAttribute("aria-labelledby", heading.id);
  dialog.setAttribute("aria-describedby", words.id);
  const asker = document.activeElement;
  return new Promise((resolve) => {
    let chosen: T | undefined;
    for (const answer of answers) {
      const button = element("button", "button");
      button.type = "button";
      button.textContent = answer.label;
      button.addEventListener("click", () => {
        chosen = answer.value;
        dialog.close();
      });
      buttons.append(button);
    }
    dialog.append(heading, words, buttons);
    dialog.addEventListener("close", () => {
      dialog.remove();
      if (asker instanceof HTMLElement) asker.focus();
      resolve(chosen);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
