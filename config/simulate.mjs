// npm run simulate [-- PUPILS]: what decision rules and this project's verdict say of simulated pupils, as Markdown.
import { ensureInstalled } from "./installation.mjs";

const pupils = Number(process.argv[2] ?? 4000);
if (!Number.isInteger(pupils) || pupils < 1) {
  process.stderr.write("npm run simulate [-- PUPILS]\n");
  process.exit(2);
}
ensureInstalled();
const { bundle } = await import("./bundling.mjs");
const { script } = await import("./webpack.config.mjs");
await bundle([script("run-simulation", "tests/simulation/run-simulation.ts")]);
const { default: run } = await import(
  new URL("../node_modules/.cache/cellwright/run-simulation.mjs", import.meta.url).href
);
run(pupils, (line) => process.stdout.write(`${line}\n`));
