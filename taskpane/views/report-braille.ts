import { formatBrf } from "../../src/domain/drill/brf";
import { layOutPages } from "../../src/domain/drill/embosser-page";
import { makeHandout, USUAL_HANDOUT } from "../../src/domain/drill/handout";
import type { Report } from "../../src/domain/progress/report";
import type { Result } from "../../src/domain/result";
import type { HandoutBraille } from "./handout-braille";

/**
 * A report as a braille file: title centred, headings and sentences in lines of the set length, page numbers, and the
 * note that no one has proofread it.
 *
 * @returns the file's text, or what the code has no cells for
 */
export const formatReportBrf = (
  { title, period, sections }: Report,
  { transcribe, code }: Pick<HandoutBraille, "transcribe" | "code">,
  cellsPerLine: number,
): Result<string> => {
  const handout = makeHandout(
    {
      title,
      date: period,
      entries: sections.flatMap(({ heading, sentences }) => [
        { kind: "word" as const, text: heading },
        { kind: "passage" as const, text: sentences.join("\n") },
      ]),
    },
    { ...USUAL_HANDOUT, cellsPerLine, code },
    transcribe,
  );
  return handout.ok ? formatBrf(layOutPages(handout.value)) : handout;
};
