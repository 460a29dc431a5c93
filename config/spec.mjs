// npm run spec -- FILE [--failures N] [--only NAME]: pass rates of the translator on a file of specification cases.
import { parseArgs } from "node:util";
import { ensureInstalled } from "./installation.mjs";

const USAGE = "npm run spec -- FILE.jsonl [--failures N] [--only PART-OF-A-FILE-NAME]\n";

const { values, positionals } = parseArgs({
  options: { failures: { type: "string", default: "0" }, only: { type: "string" } },
  allowPositionals: true,
});
const failures = Number(values.failures);
if (positionals.length !== 1 || !Number.isInteger(failures) || failures < 0) {
  process.stderr.write(USAGE);
  process.exit(2);
}
ensureInstalled();
const { bundle } = await import("./bundling.mjs");
const { script } = await import("./webpack.config.mjs");
await bundle([script("run-specification", "tests/specification/run-specification.ts")]);
const { default: run } = await import(
  new URL("../node_modules/.cache/cellwright/run-specification.mjs", import.meta.url).href
);
const reached = await run(positionals[0], { failures, only: values.only }, (line) =>
  process.stdout.write(`${line}\n`),
);
process.exitCode = reached ? 0 : 1;
