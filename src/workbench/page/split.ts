/** Least and greatest share of the page that the pane may take, percent. */
const LEAST = 20;
const MOST = 70;
const STEP = 5;

/**
 * Lets the line between sheet and pane be moved by arrow keys, Home, End, or drawing.
 *
 * @param separator - the line, with role separator
 * @param container - holds both sides; gets the share as the property `--pane-share`
 */
export function makeSplit(separator: HTMLElement, container: HTMLElement): void {
  let share = 36;
  const set = (wanted: number): void => {
    share = Math.min(MOST, Math.max(LEAST, Math.round(wanted)));
    container.style.setProperty("--pane-share", `${String(share)}%`);
    separator.setAttribute("aria-valuenow", String(share));
    separator.setAttribute("aria-valuetext", `Pane takes ${String(share)} percent`);
  };
  separator.setAttribute("aria-valuemin", String(LEAST));
  separator.setAttribute("aria-valuemax", String(MOST));
  separator.tabIndex = 0;
  set(share);
  separator.addEventListener("keydown", (event) => {
    const wanted: Readonly<Record<string, number>> = {
      ArrowLeft: share + STEP,
      ArrowUp: share + STEP,
      ArrowRight: share - STEP,
      ArrowDown: share - STEP,
      Home: LEAST,
      End: MOST,
    };
    const value = wanted[event.key];
    if (value === undefined) return;
    set(value);
    event.preventDefault();
  });
  separator.addEventListener("pointerdown", (event) => {
    separator.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  separator.addEventListener("pointermove", (event) => {
    if (!separator.hasPointerCapture(event.pointerId)) return;
    const box = container.getBoundingClientRect();
    const stacked = getComputedStyle(container).flexDirection === "column";
    set(
      stacked
        ? (100 * (box.bottom - event.clientY)) / box.height
        : (100 * (box.right - event.clientX)) / box.width,
    );
  });
}
