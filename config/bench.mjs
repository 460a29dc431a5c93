// npm run bench [-- --json] [-- NAME…]: every speed figure, beside its comparison, in one run.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { ensureInstalled } from "./installation.mjs";

const { values, positionals } = parseArgs({
  options: { json: { type: "boolean", default: false } },
  allowPositionals: true,
});
ensureInstalled();
const { bundle } = await import("./bundling.mjs");
const { default: configurations, script } = await import("./webpack.config.mjs");
const { wordBankScripts, writeWordBank } = await import("./word-bank.mjs");

const folder = fileURLToPath(new URL("../tests/bench/", import.meta.url));
const names = readdirSync(folder)
  .filter((file) => file.endsWith(".ts") && file !== "figure.ts")
  .map((file) => file.slice(0, -3))
  .filter((name) => positionals.length === 0 || positionals.includes(name));

await bundle([
  ...configurations,
  ...wordBankScripts,
  ...names.map((name) => script(`bench-${name}`, `tests/bench/${name}.ts`)),
]);
await writeWordBank();

let missed = 0;
for (const name of names) {
  const { default: run } = await import(
    new URL(`../node_modules/.cache/cellwright/bench-${name}.mjs`, import.meta.url).href
  );
  for (const figure of await run()) {
    if (figure.met === false) missed += 1;
    process.stdout.write(values.json ? `${JSON.stringify(figure)}\n` : `${sentence(figure)}\n`);
  }
}
process.exit(missed === 0 ? 0 : 1);

function sentence({ name, value, unit, against, ratio, goal, met }) {
  const number = (x) => (typeof x === "number" ? Number(x.toPrecision(4)).toLocaleString("en") : x);
  const beside =
    against === undefined
      ? ""
      : `; against ${against}${ratio === undefined ? "" : `: ratio ${number(ratio)}`}`;
  const reached = met === null ? "" : met ? " — met" : " — NOT met";
  return `${name}: ${number(value)} ${unit}${beside}${goal === null ? "" : `; goal ${goal}`}${reached}`;
}
