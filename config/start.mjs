// npm start [-- --once] [-- --port N]: installs, builds, serves the workbench on the example workbook.
import { spawn, spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

const { values } = parseArgs({
  options: { once: { type: "boolean", default: false }, port: { type: "string", default: "3100" } },
});

ensureInstalled();
const { build } = await import("./build.mjs");
process.stdout.write("Building …\n");
await build();

const path = (name) => fileURLToPath(new URL(`../dist/${name}`, import.meta.url));

if (values.once) {
  const { status } = spawnSync(
    process.execPath,
    [path("cellwright.mjs"), "caseload", path("examples/example.xlsx")],
    { stdio: "inherit" },
  );
  process.exit(status ?? 1);
}

const { serve } = await import("./serve.mjs");
const { address } = await serve(Number(values.port));
const page = `${address}workbench.html?example=1`;
process.stdout.write(
  `\nThe workbench, on the example workbook: ${page}\nStop with Ctrl+C. Nothing leaves this computer.\n`,
);
openBrowser(page);

/** Opens the page where there is somebody to look at it and a program to show it. */
function openBrowser(url) {
  if (!process.stdout.isTTY || process.env.CI) return;
  if (process.platform === "linux" && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return;
  const [command, ...args] = { darwin: ["open", url], win32: ["cmd", "/c", "start", "", url] }[
    process.platform
  ] ?? ["xdg-open", url];
  spawn(command, args, { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}
