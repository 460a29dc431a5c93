/**
 * F6 and Shift+F6 go round the regions of the page, each by the element that takes the focus there.
 *
 * @param regions - in order; `focus` returns false where the region cannot take the focus now
 */
export function listenToRegionKeys(
  regions: readonly { readonly region: HTMLElement; focus(): boolean }[],
): void {
  document.addEventListener("keydown", (event) => {
    if (event.key !== "F6" || event.ctrlKey || event.altKey) return;
    event.preventDefault();
    const step = event.shiftKey ? -1 : 1;
    const here = regions.findIndex(({ region }) => region.contains(document.activeElement));
    for (let tries = 1; tries <= regions.length; tries += 1) {
      const at = (Math.max(0, here) + step * tries + regions.length * 2) % regions.length;
      if (regions[at]?.focus() === true) return;
    }
  });
}
