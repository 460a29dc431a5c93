/** The files that a handout is written as, by the ending of their names. */
export const HANDOUT_ENDINGS = ["brf", "pef", "docx", "html", "svg"] as const;
export type HandoutEnding = (typeof HANDOUT_ENDINGS)[number];

/** Media types for downloads. A braille file is ASCII text, whose line ends and form feeds must not be touched. */
export const HANDOUT_MEDIA: Readonly<Record<HandoutEnding, string>> = {
  brf: "application/octet-stream",
  pef: "application/x-pef+xml",
  docx: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
  html: "text/html",
  svg: "image/svg+xml",
};

/**
 * A file's name, the same for every pupil: nothing of the handout stands in it.
 *
 * @param page - the number of a drawn page among several
 */
export const nameHandoutFile = (ending: HandoutEnding, page?: number): string =>
  `handout${page === undefined ? "" : `-${page}`}.${ending}`;
