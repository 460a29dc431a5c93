// npm run simulate:knowledge [-- PUPILS]: how right the model of knowledge is about simulated pupils, as Markdown.
import { ensureInstalled } from "./installation.mjs";

const pupils = Number(process.argv[2] ?? 50);
if (!Number.isInteger(pupils) || pupils < 1) {
  process.stderr.write("npm run simulate:knowledge [-- PUPILS]\n");
  process.exit(2);
}
ensureInstalled();
const { bundle } = await import("./bundling.mjs");
const { script } = await import("./webpack.config.mjs");
await bundle([script("run-knowledge", "tests/simulation/run-knowledge.ts")]);
const { default: run } = await import(
  new URL("../node_modules/.cache/cellwright/run-knowledge.mjs", import.meta.url).href
);
await run(pupils, (line) => process.stdout.write(`${line}\n`));
