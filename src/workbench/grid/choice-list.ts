import { element } from "../element";

/** The list that a cell's validation offers: arrow keys or letters, Enter takes, Escape leaves. */
export class ChoiceList {
  private readonly list = element("ul", "grid-choices", "listbox");
  private at = 0;
  private taken: ((text: string | undefined) => void) | undefined;

  constructor(layer: HTMLElement) {
    this.list.hidden = true;
    this.list.tabIndex = -1;
    layer.append(this.list);
    this.list.addEventListener("keydown", (event) => {
      this.press(event);
    });
    this.list.addEventListener("click", (event) => {
      const option = event.target instanceof Element ? event.target.closest("[role=option]") : null;
      if (option !== null) this.close(option.textContent);
    });
    this.list.addEventListener("blur", () => {
      this.close(undefined);
    });
  }

  /**
   * Opens the list and takes the focus.
   *
   * @param taken - called once with the choice, or undefined where she left without one
   */
  open(
    choices: readonly string[],
    current: string,
    label: string,
    box: { readonly left: number; readonly top: number; readonly width: number },
    taken: (text: string | undefined) => void,
  ): void {
    this.taken = taken;
    this.list.replaceChildren(
      ...choices.map((choice, index) => {
        const option = element("li", "grid-choice", "option");
        option.id = `grid-choice-${String(index)}`;
        option.textContent = choice;
        return option;
      }),
    );
    this.list.setAttribute("aria-label", label);
    this.list.style.left = `${String(box.left)}px`;
    this.list.style.top = `${String(box.top)}px`;
    this.list.style.minWidth = `${String(box.width)}px`;
    this.list.hidden = false;
    this.go(Math.max(0, choices.indexOf(current)));
    this.list.focus({ preventScroll: true });
  }

  private press(event: KeyboardEvent): void {
    event.stopPropagation();
    const last = this.list.children.length - 1;
    const moves: Readonly<Record<string, number>> = {
      ArrowDown: Math.min(last, this.at + 1),
      ArrowUp: Math.max(0, this.at - 1),
      Home: 0,
      End: last,
    };
    const move = moves[event.key];
    if (move !== undefined) this.go(move);
    else if (event.key === "Enter" || event.key === " ")
      this.close(this.list.children[this.at]?.textContent ?? undefined);
    else if (event.key === "Escape" || event.key === "Tab") this.close(undefined);
    else if (event.key.length === 1) this.goToLetter(event.key);
    event.preventDefault();
  }

  private goToLetter(letter: string): void {
    const options = [...this.list.children];
    const order = [...options.slice(this.at + 1), ...options.slice(0, this.at + 1)];
    const found = order.find((option) => option.textContent.toLowerCase().startsWith(letter.toLowerCase()));
    if (found !== undefined) this.go(options.indexOf(found));
  }

  private go(at: number): void {
    this.at = at;
    for (const [index, option] of [...this.list.children].entries()) {
      option.setAttribute("aria-selected", String(index === at));
      if (index === at) {
        this.list.setAttribute("aria-activedescendant", option.id);
        option.scrollIntoView({ block: "nearest" });
      }
    }
  }

  private close(text: string | undefined): void {
    if (this.list.hidden) return;
    const taken = this.taken;
    this.taken = undefined;
    this.list.hidden = true;
    taken?.(text);
  }
}
