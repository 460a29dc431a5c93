/** A call that writes the text of a translation down in hexadecimal, for a log level at which nothing is kept. */
const LOG_CALL = /^\s*__lou_logWidecharBuf\(0,\d+,\$\d+,\$\d+\);$/gm;
const CALLS = 2;
// LGPL-2.1, section 2a: a changed file says so, with the date.
const NOTE =
  "/* Changed for Cellwright on 2026-11-25: the two calls that write every text down for the log are left out. */\n";

/**
 * The engine's file as it is shipped: without two log calls at each translation, which took about 40 % of its time.
 *
 * @param {Buffer | string} contents - of the package's file
 * @returns {string}
 * @throws {Error} where the file is another than the one that this was written for
 */
export function quietEngine(contents) {
  const text = contents.toString();
  const found = text.match(LOG_CALL)?.length ?? 0;
  if (found !== CALLS)
    throw new Error(
      `The braille engine has ${String(found)} such log calls, not ${String(CALLS)}: look at config/engine-file.mjs.`,
    );
  return NOTE + text.replace(LOG_CALL, "");
}
