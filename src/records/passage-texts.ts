import type { Passage } from "../domain/drill/passages";
import type { Probe } from "../domain/probe/probe";
import { normaliseName } from "../domain/progress/series";

/**
 * Probes with the text that was read, where a probe names it only by the title of one of her passages. A text of the
 * probe's own stays. A title that stands over two different texts tells of none.
 *
 * @returns the same probes, in their order; the same array where none names a passage
 */
export function giveTexts(probes: readonly Probe[], passages: readonly Passage[]): readonly Probe[] {
  const texts = new Map<string, string | undefined>();
  for (const { title, text } of passages) {
    const name = normaliseName(title);
    texts.set(name, texts.has(name) && texts.get(name) !== text ? undefined : text);
  }
  if (texts.size === 0) return probes;
  return probes.map((probe) => {
    if ((probe.expected ?? "").trim() !== "" || probe.material === undefined) return probe;
    const text = texts.get(normaliseName(probe.material));
    return text === undefined ? probe : { ...probe, expected: text };
  });
}
