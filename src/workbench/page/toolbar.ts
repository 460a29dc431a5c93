/**
 * Makes the buttons of a toolbar one tab stop: arrow keys, Home and End move between them.
 *
 * @param toolbar - an element with role toolbar that holds buttons
 */
export function makeToolbar(toolbar: HTMLElement): void {
  const buttons = (): HTMLButtonElement[] => [...toolbar.querySelectorAll("button")];
  const stop = (chosen: HTMLButtonElement | undefined): void => {
    for (const button of buttons()) button.tabIndex = button === chosen ? 0 : -1;
  };
  stop(buttons()[0]);
  toolbar.addEventListener("focusin", (event) => {
    if (event.target instanceof HTMLButtonElement) stop(event.target);
  });
  toolbar.addEventListener("keydown", (event) => {
    const all = buttons();
    const at = all.findIndex((button) => button === document.activeElement);
    const to: Readonly<Record<string, number>> = {
      ArrowRight: (at + 1) % all.length,
      ArrowLeft: (at - 1 + all.length) % all.length,
      Home: 0,
      End: all.length - 1,
    };
    const button = all[to[event.key] ?? -1];
    if (button === undefined) return;
    event.preventDefault();
    button.focus();
  });
}

/** Marks a command as not possible now; it stays reachable, so that a screen reader finds it. */
export function setAvailable(button: HTMLButtonElement, available: boolean): void {
  if (available) button.removeAttribute("aria-disabled");
  else button.setAttribute("aria-disabled", "true");
}
