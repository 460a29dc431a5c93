type Child = Node | string;

/** Makes an element with attributes (`true` for a bare one) and children. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string | boolean>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== false) element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children);
  return element;
}
