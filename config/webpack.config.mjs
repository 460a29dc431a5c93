// One configuration a bundle: the sheet functions (one file, for every host), the two pages, the command line.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import HtmlPlugin from "html-webpack-plugin";
import { AcceptErrorArguments } from "./accept-error-arguments.mjs";
import { quietEngine } from "./engine-file.mjs";

const path = (relative) => fileURLToPath(new URL(`../${relative}`, import.meta.url));
const dist = path("dist");
const engine = (file) => `${path("node_modules/liblouis-build")}/${file}`;

/** What the cache must not outlive: this configuration and the installed packages. */
const cacheVersion = createHash("sha256")
  .update(readFileSync(fileURLToPath(import.meta.url)))
  .update(readFileSync(path("package-lock.json")))
  .digest("hex");

const base = (name, target) => ({
  name,
  mode: "production",
  context: path("."),
  target,
  devtool: "source-map",
  cache: { type: "filesystem", cacheDirectory: path("node_modules/.cache/webpack"), version: cacheVersion },
  resolve: { extensions: [".ts", ".js", ".mjs"] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        loader: "swc-loader",
        options: { jsc: { parser: { syntax: "typescript" }, target: "es2022" } },
      },
    ],
  },
  performance: { hints: false },
  stats: "errors-warnings",
});

/** dist/functions.js and functions.json: no lazy chunk, because the same file runs in Node. */
const functions = {
  ...base("functions", ["web", "es2022"]),
  entry: { functions: path("functions/functions.ts") },
  output: { path: dist, filename: "functions.js", publicPath: "" },
  plugins: [
    new CustomFunctionsMetadataPlugin({ input: path("functions/functions.ts"), output: "functions.json" }),
    new AcceptErrorArguments("functions.json"),
    new CopyPlugin({
      patterns: [
        // The engine and its tables stay separate, replaceable files (LGPL-2.1 section 6).
        ...["liblouis.js", "liblouis.cjs"].map((file) => ({
          from: engine("build-no-tables-utf16.js"),
          to: `liblouis/${file}`,
          info: { minimized: true },
          transform: quietEngine,
        })),
        { from: engine("tables"), to: "liblouis/tables", info: { minimized: true } },
        { from: path("src/adapters/liblouis/NOTICE.txt"), to: "liblouis/NOTICE.txt" },
        { from: path("src/assets/*.png"), to: "assets/[name][ext]" },
      ],
    }),
  ],
};

const page = (name, folder) => ({
  ...base(name, ["web", "es2022"]),
  entry: { [name]: path(`${folder}/${name}.ts`) },
  output: { path: dist, filename: "[name].js", chunkFilename: `${name}-[name].js` },
  plugins: [
    new HtmlPlugin({
      template: path(`${folder}/${name}.html`),
      filename: `${name}.html`,
      scriptLoading: "defer",
      minify: false,
    }),
    new CopyPlugin({
      patterns: [{ from: "*.css", context: path(folder), noErrorOnMissing: true }],
    }),
  ],
});

const taskpane = page("taskpane", "taskpane");

const workbench = page("workbench", "src/workbench");
workbench.plugins.push(
  new CopyPlugin({
    patterns: [
      { from: path("src/examples/*.xlsx"), to: "examples/[name][ext]", noErrorOnMissing: true },
      {
        from: `${path("node_modules/@fontsource/noto-sans-symbols-2")}/files/noto-sans-symbols-2-braille-400-normal.woff2`,
        to: "fonts/braille.woff2",
        noErrorOnMissing: true,
      },
      {
        from: `${path("node_modules/@fontsource/noto-sans-symbols-2")}/LICENSE`,
        to: "fonts/LICENSE.txt",
        noErrorOnMissing: true,
      },
    ],
  }),
);

/** The engine is a file beside the program, loaded by a require made at run time: webpack must leave that alone. */
const withNodeRequire = (configuration) => ({
  ...configuration,
  module: { ...configuration.module, parser: { javascript: { createRequire: false } } },
});

/** A program for Node: everything but Node's own modules inside. */
const program = (name, entry, folder) => ({
  ...withNodeRequire(base(name, "node20")),
  entry: { [name]: entry },
  experiments: { outputModule: true },
  output: {
    path: folder,
    filename: "[name].mjs",
    chunkFilename: `${name}-[name].mjs`,
    module: true,
    library: { type: "module" },
  },
});

const cli = program("cellwright", path("src/cli/cellwright.ts"), dist);

/** Scripts of the project written in TypeScript, bundled to a cache to be run by Node 20. */
export const script = (name, entry) => ({
  ...program(name, path(entry), path("node_modules/.cache/cellwright")),
  // playwright-core looks for files beside its own.
  externals: { "playwright-core": "module playwright-core" },
});

export default [functions, taskpane, workbench, cli];
