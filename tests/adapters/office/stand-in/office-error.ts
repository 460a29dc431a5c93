/** What Office.js throws where Excel refuses: an error with one of Excel.ErrorCodes. */
export class OfficeError extends Error {
  override readonly name = "RichApi.Error";

  constructor(
    readonly code: string,
    message = code,
  ) {
    super(message);
  }
}

/** The adapter uses Office.js in a way that Excel would not forgive, or that the stand-in does not know. */
export class MisuseError extends Error {
  override readonly name = "MisuseError";
}
