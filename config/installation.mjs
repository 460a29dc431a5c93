import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

const root = new URL("../", import.meta.url);
const file = (name) => new URL(name, root);

/** Whether every package of the lockfile that this platform needs is installed in the locked version. */
function isInstalled() {
  const installed = file("node_modules/.package-lock.json");
  if (!existsSync(installed)) return false;
  const wanted = JSON.parse(readFileSync(file("package-lock.json"), "utf8")).packages;
  const present = JSON.parse(readFileSync(installed, "utf8")).packages;
  return Object.entries(wanted).every(
    ([name, entry]) => name === "" || entry.optional || present[name]?.version === entry.version,
  );
}

/** Installs the locked packages where they are missing; ends the process with npm's exit code if that fails. */
export function ensureInstalled() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    process.stderr.write(`Cellwright needs Node 20.19 or later; this is ${process.versions.node}.\n`);
    process.exit(1);
  }
  if (isInstalled()) return;
  process.stdout.write("Installing packages (npm ci) …\n");
  const npm = process.env.npm_execpath;
  const [command, args] = npm === undefined ? ["npm", []] : [process.execPath, [npm]];
  const { status } = spawnSync(command, [...args, "ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: "inherit",
    shell: npm === undefined && process.platform === "win32",
  });
  if (status !== 0) process.exit(status ?? 1);
}
