import type { DocumentWriter } from "../../ports/document";

/** Writes word-processor documents (.docx); the library for it is loaded when a document is first written. */
export const docxWriter: DocumentWriter = {
  write: async (handout, look) => {
    const { writeHandoutDocument } = await import("./handout-document");
    return writeHandoutDocument(handout, look);
  },
  writeReport: async (report, paper, picture) => {
    const { writeReportDocument } = await import("./report-document");
    return writeReportDocument(report, paper, picture);
  },
};
