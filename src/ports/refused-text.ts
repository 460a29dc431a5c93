import type { Transcription } from "../domain/braille/transcription";
import { refusal, success, type Result } from "../domain/result";

/**
 * A transcriber that gives back a character without cells as a refusal in place of an exception.
 *
 * @param transcribe - a translator's, with or without the teacher's exceptions
 * @returns the transcription, or `untranslatable`; any other failure is thrown on
 */
export const refuseUntranslatable =
  (transcribe: (text: string) => Transcription) =>
  (text: string): Result<Transcription> => {
    try {
      return success(transcribe(text));
    } catch (failure) {
      // By name: a bundle that shares its engine with another has its own copy of the class.
      if (failure instanceof Error && failure.name === "UntranslatableError")
        return refusal("untranslatable", failure.message);
      throw failure;
    }
  };
