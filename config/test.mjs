// npm test: installs, brings a browser where none is found, builds, and runs every check.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

ensureInstalled();
const { ensureBrowser } = await import("./browser.mjs");
process.env.CELLWRIGHT_BROWSER = ensureBrowser();

process.stdout.write("Building …\n");
const { build } = await import("./build.mjs");
await build();

const root = fileURLToPath(new URL("..", import.meta.url));
const bin = (name) => fileURLToPath(new URL(`../node_modules/${name}`, import.meta.url));
const CHECKS = [
  ["types", "typescript/bin/tsc", ["--noEmit"]],
  ["types of the domain", "typescript/bin/tsc", ["--noEmit", "-p", "config/tsconfig.domain.json"]],
  ["lint", "eslint/bin/eslint.js", ["."]],
  [
    "layers",
    "dependency-cruiser/bin/dependency-cruise.mjs",
    ["--config", "config/dependency-cruiser.cjs", "src", "functions", "taskpane"],
  ],
  ["unused code", "knip/bin/knip.js", ["--config", "config/knip.json"]],
  ["tests", "vitest/vitest.mjs", ["run", "--config", "config/vitest.config.ts"]],
];

const failed = CHECKS.filter(([name, program, args]) => {
  process.stdout.write(`\n— ${name}\n`);
  return spawnSync(process.execPath, [bin(program), ...args], { cwd: root, stdio: "inherit" }).status !== 0;
});
process.stdout.write(
  failed.length === 0 ? "\nAll checks passed.\n" : `\nFailed: ${failed.map(([name]) => name).join(", ")}.\n`,
);
process.exit(failed.length === 0 ? 0 : 1);
