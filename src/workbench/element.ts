/** A new element with its class and role. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className: string,
  role?: string,
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (className !== "") made.className = className;
  if (role !== undefined) made.setAttribute("role", role);
  return made;
}

/**
 * The element of the page with this id, of the expected kind.
 *
 * @throws {TypeError} where the page lacks it: page and script do not belong together
 */
export function requireElement<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new TypeError(`the page has no ${kind.name} with id ${id}`);
  return found;
}
