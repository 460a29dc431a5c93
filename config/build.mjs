// npm run build [-- --origin https://…]: everything in dist/, and the manifest for that origin.
import { parseArgs } from "node:util";
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

/** Builds dist/. @param {{ origin?: string }} [options] */
export async function build({ origin } = {}) {
  const { bundle } = await import("./bundling.mjs");
  const { default: configurations } = await import("./webpack.config.mjs");
  const { wordBankScripts, writeWordBank } = await import("./word-bank.mjs");
  await bundle([...configurations, ...wordBankScripts]);
  await writeWordBank();
  const { writeManifest } = await import("./manifest.mjs");
  await writeManifest(origin === undefined ? {} : { origin, release: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({ options: { origin: { type: "string" } } });
  ensureInstalled();
  await build(values);
}
