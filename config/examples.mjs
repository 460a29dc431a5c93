// npm run examples: makes the example workbooks under src/examples again, with the functions of dist/.
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

ensureInstalled();
const { bundle } = await import("./bundling.mjs");
const { script } = await import("./webpack.config.mjs");
await bundle([script("make-examples", "src/examples/make-examples.ts")]);
const { writeExamples } = await import(
  new URL("../node_modules/.cache/cellwright/make-examples.mjs", import.meta.url).href
);
const folder = (name) => fileURLToPath(new URL(`../${name}/`, import.meta.url));
await writeExamples(folder("dist"), folder("src/examples"));
