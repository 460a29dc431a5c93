import { randomUUID } from "node:crypto";
import { open, readFile, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { CommandFiles } from "./opened-workbook";

/**
 * Files of the disk. A file is replaced by writing another beside it and renaming that, so that a crash leaves either
 * the old file or the new one.
 *
 * @throws the error of the file system, with its `syscall`
 */
export const DISK_FILES: CommandFiles = {
  read: (path) => readFile(path),
  replace: async (path, bytes) => {
    const beside = join(dirname(path), `.${basename(path)}.${randomUUID().slice(0, 8)}.tmp`);
    const mode = await stat(path).then(
      (found) => found.mode & 0o777,
      () => 0o666,
    );
    try {
      const file = await open(beside, "wx", mode);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(beside, path);
    } catch (error) {
      await unlink(beside).catch(() => undefined);
      throw error;
    }
  },
};
