import { element } from "../element";
import type { UnsavedWork } from "../files/recovery-store";

/**
 * Lists work that was left unsaved, each with a button to bring it back and one to drop it.
 *
 * @param section - holds the list; hidden where there is none
 */
export function listRecovery(
  section: HTMLElement,
  list: HTMLElement,
  works: readonly UnsavedWork[],
  actions: { readonly recover: (work: UnsavedWork) => void; readonly drop: (work: UnsavedWork) => void },
): void {
  section.hidden = works.length === 0;
  list.replaceChildren(
    ...works.map((work) => {
      const line = element("li", "");
      const words = element("p", "");
      words.textContent = `${work.name}, last changed ${new Date(work.at).toLocaleString()}`;
      const button = (label: string, act: () => void): HTMLButtonElement => {
        const made = element("button", "button");
        made.type = "button";
        made.textContent = label;
        made.setAttribute("aria-label", `${label}: ${work.name}`);
        made.addEventListener("click", act);
        return made;
      };
      line.append(
        words,
        button("Bring it back", () => {
          actions.recover(work);
        }),
        button("Drop it", () => {
          line.remove();
          section.hidden = list.childElementCount === 0;
          actions.drop(work);
        }),
      );
      return line;
    }),
  );
}
