import { element } from "../element";

/** A line of the menu; its keys are shown beside it. */
export interface MenuItem {
  readonly label: string;
  readonly keys?: string;
  run(): void;
}

/** The menu of commands at a cell: opened by Shift+F10, the menu key or the right button. */
export class CellMenu {
  private readonly menu = element("div", "cell-menu", "menu");
  private left: (() => void) | undefined;

  constructor(page: HTMLElement) {
    this.menu.hidden = true;
    this.menu.setAttribute("aria-label", "Commands for the selected cells");
    page.append(this.menu);
    this.menu.addEventListener("keydown", (event) => {
      this.press(event);
    });
    this.menu.addEventListener("focusout", (event) => {
      if (!(event.relatedTarget instanceof Node) || !this.menu.contains(event.relatedTarget))
        this.menu.hidden = true;
    });
  }

  /**
   * Opens the menu at a place of the window, with its first line focused.
   *
   * @param left - called when it closes without a command, to give the focus back
   */
  open(items: readonly MenuItem[], x: number, y: number, left: () => void): void {
    this.left = left;
    this.menu.replaceChildren(
      ...items.map((item) => {
        const line = element("button", "cell-menu-item", "menuitem");
        line.type = "button";
        line.tabIndex = -1;
        const label = element("span", "");
        label.textContent = item.label;
        line.append(label);
        if (item.keys !== undefined) {
          const keys = element("kbd", "");
          keys.textContent = item.keys;
          line.append(keys);
        }
        line.addEventListener("click", () => {
          this.close(true);
          item.run();
        });
        return line;
      }),
    );
    this.menu.hidden = false;
    const { offsetWidth, offsetHeight } = this.menu;
    this.menu.style.left = `${String(Math.max(4, Math.min(x, innerWidth - offsetWidth - 4)))}px`;
    this.menu.style.top = `${String(Math.max(4, Math.min(y, innerHeight - offsetHeight - 4)))}px`;
    this.lines()[0]?.focus();
  }

  private lines(): HTMLElement[] {
    return [...this.menu.querySelectorAll<HTMLElement>("[role=menuitem]")];
  }

  private press(event: KeyboardEvent): void {
    const lines = this.lines();
    const at = lines.findIndex((line) => line === document.activeElement);
    const to: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % lines.length,
      ArrowUp: (at - 1 + lines.length) % lines.length,
      Home: 0,
      End: lines.length - 1,
    };
    if (event.key === "Escape" || event.key === "Tab") this.close(true);
    else {
      const line = lines[to[event.key] ?? -1];
      if (line === undefined) return;
      line.focus();
    }
    event.preventDefault();
    event.stopPropagation();
  }

  private close(giveBack: boolean): void {
    this.menu.hidden = true;
    if (giveBack) this.left?.();
  }
}
