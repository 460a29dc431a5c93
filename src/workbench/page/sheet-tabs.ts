import type { Worksheet } from "../../spreadsheet/workbook";
import { element } from "../element";

/** The sheets of the workbook as tabs below the grid: one tab stop, arrow keys choose. Hidden sheets stay hidden. */
export class SheetTabs {
  private shown: readonly string[] = [];

  /**
   * @param list - an element with role tablist
   * @param panel - id of the grid's region, which the tabs control
   */
  constructor(
    private readonly list: HTMLElement,
    private readonly panel: string,
    private readonly choose: (name: string) => void,
  ) {
    list.addEventListener("keydown", (event) => {
      const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      const tabs = [...this.list.querySelectorAll<HTMLElement>("[role=tab]")];
      const at = tabs.findIndex((tab) => tab === document.activeElement);
      const to =
        event.key === "Home"
          ? 0
          : event.key === "End"
            ? tabs.length - 1
            : step === undefined
              ? -1
              : (at + step + tabs.length) % tabs.length;
      const tab = tabs[to];
      if (tab === undefined) return;
      event.preventDefault();
      this.choose(tab.dataset["sheet"] ?? "");
      this.list.querySelector<HTMLElement>("[aria-selected=true]")?.focus();
    });
  }

  /** Shows the sheets that are not hidden, with the current one chosen. */
  show(sheets: readonly Worksheet[], current: string): void {
    const visible = sheets.filter(({ visibility }) => visibility === "visible");
    const names = visible.map(({ name }) => name);
    if (names.join("\n") !== this.shown.join("\n")) {
      this.shown = names;
      this.list.replaceChildren(...visible.map((sheet) => this.makeTab(sheet)));
    }
    for (const tab of this.list.querySelectorAll<HTMLElement>("[role=tab]")) {
      const chosen = tab.dataset["sheet"] === current;
      // Set anew, the same state would be spoken again.
      if (tab.getAttribute("aria-selected") === String(chosen)) continue;
      tab.setAttribute("aria-selected", String(chosen));
      tab.tabIndex = chosen ? 0 : -1;
      if (chosen) tab.scrollIntoView({ block: "nearest", inline: "nearest" });
    }
  }

  /** The visible sheet before or after one, or undefined at the ends. */
  beside(name: string, step: 1 | -1): string | undefined {
    return this.shown[this.shown.indexOf(name) + step];
  }

  private makeTab(sheet: Worksheet): HTMLElement {
    const tab = element("button", "sheet-tab", "tab");
    tab.type = "button";
    tab.textContent = sheet.name;
    tab.dataset["sheet"] = sheet.name;
    tab.setAttribute("aria-controls", this.panel);
    tab.addEventListener("click", () => {
      this.choose(sheet.name);
    });
    return tab;
  }
}
