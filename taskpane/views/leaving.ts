/**
 * Milliseconds that a part with the focus, out of sight already, stays for screen readers after the focus has gone on. With
 * it gone first, Orca puts itself on the next thing; where that is what gets the focus it says nothing, and takes the keys
 * that are typed there for its own. Found by trying, no source.
 */
const LEAVING = 500;

const timers = new WeakMap<HTMLElement, ReturnType<typeof setTimeout>>();

/** Shows a part, or takes it away: at once, or where it has the focus as soon as that has gone on. */
export const setGone = (part: HTMLElement, isGone: boolean): void => {
  if (!isGone) {
    clearTimeout(timers.get(part));
    timers.delete(part);
    part.hidden = false;
    part.classList.remove("spoken");
    return;
  }
  if (part.hidden || timers.has(part)) return;
  const { activeElement } = part.getRootNode() as ShadowRoot;
  if (activeElement === null || !part.contains(activeElement)) {
    part.hidden = true;
    return;
  }
  part.classList.add("spoken");
  timers.set(
    part,
    setTimeout(() => {
      timers.delete(part);
      part.hidden = true;
      part.classList.remove("spoken");
    }, LEAVING),
  );
};
