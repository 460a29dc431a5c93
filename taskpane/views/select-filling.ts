import type { ChoiceOption } from "./trajectory-choice";

/** A live region speaks whenever it is written to: only when the text is another. */
export const setText = (element: HTMLElement, text: string): void => {
  if (element.textContent !== text) element.textContent = text;
};

/** Options are made anew only where they differ, so that an open list stays open. */
export const fillSelect = (
  select: HTMLSelectElement,
  options: readonly ChoiceOption[],
  value: string,
): void => {
  const same =
    select.options.length === options.length &&
    options.every(
      (option, i) => select.options[i]?.value === option.value && select.options[i].text === option.label,
    );
  if (!same) select.replaceChildren(...options.map(({ label, value: own }) => new Option(label, own)));
  if (select.value !== value) select.value = value;
};
