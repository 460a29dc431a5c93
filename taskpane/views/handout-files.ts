import { drawBraillePages } from "../../src/charts/braille-page";
import { formatBrf } from "../../src/domain/drill/brf";
import { layOutPages } from "../../src/domain/drill/embosser-page";
import type { Handout } from "../../src/domain/drill/handout";
import { HANDOUT_MEDIA } from "../../src/domain/drill/handout-file";
import { formatPef } from "../../src/domain/drill/pef";
import { success, type Result } from "../../src/domain/result";
import type { DocumentWriter } from "../../src/ports/document";
import { pageLook, type HandoutSettings } from "./handout-settings";

/** A handout as a file for embossers and displays, or why its cells cannot be written so. */
export const makeBrf = (handout: Handout): Result<Blob> => {
  const text = formatBrf(layOutPages(handout));
  return text.ok ? success(new Blob([text.value], { type: HANDOUT_MEDIA.brf })) : text;
};

/** A handout in the Portable Embosser Format. @param identifier - that no other file has, such as `urn:uuid:…` */
export const makePef = (handout: Handout, identifier: string): Blob =>
  new Blob(
    [formatPef(layOutPages(handout), handout.options, { identifier, title: "Handout", duplex: false })],
    { type: HANDOUT_MEDIA.pef },
  );

/** A handout as a document for word processors. */
export const makeDocx = async (
  handout: Handout,
  { paper, largePrint }: HandoutSettings,
  documents: DocumentWriter,
): Promise<Blob> => {
  const bytes = await documents.write(handout, { paper, largePrint });
  return new Blob([new Uint8Array(bytes)], { type: HANDOUT_MEDIA.docx });
};

/** Pages with true-size braille as SVG texts. @param handout - made with the options of the paper */
export const drawPages = (handout: Handout, settings: HandoutSettings): Result<readonly string[]> => {
  const drawn = drawBraillePages(layOutPages(handout), handout.options, pageLook(settings), "handout");
  return drawn.ok ? success(drawn.value.map(({ svg }) => svg)) : drawn;
};
