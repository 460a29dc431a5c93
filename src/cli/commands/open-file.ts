import { refusal, type Result } from "../../domain/result";
import type { CommandFiles } from "./opened-workbook";

/** Files, and what makes something of their bytes. */
export interface FileOpener<T> {
  readonly files: Pick<CommandFiles, "read">;
  open(bytes: Uint8Array): Promise<Result<T>>;
}

/** Reads and opens a workbook file; a path that cannot be read is refused in words, without the path. */
export async function openFile<T>(path: string, { files, open }: FileOpener<T>): Promise<Result<T>> {
  let bytes: Uint8Array;
  try {
    bytes = await files.read(path);
  } catch (thrown) {
    return refusal(
      "unreadable-file",
      `The workbook was not opened. ${whyUnreadable(thrown)}: check the path.`,
    );
  }
  return open(bytes);
}

function whyUnreadable(thrown: unknown): string {
  const code = thrown instanceof Error && "code" in thrown ? thrown.code : "";
  if (code === "ENOENT") return "There is no such file";
  return code === "EISDIR" ? "This is a folder" : "It cannot be read";
}
