import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "microsoft-edge",
  "chrome",
];
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ...["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].flatMap((variable) => {
    const folder = process.env[variable];
    return folder === undefined
      ? []
      : [
          join(folder, "Google/Chrome/Application/chrome.exe"),
          join(folder, "Microsoft/Edge/Application/msedge.exe"),
        ];
  }),
];

/** Flags under which a headless browser makes no request of its own. */
export const QUIET_FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** The path of a Chrome, Edge or Chromium on this machine, or undefined. CELLWRIGHT_BROWSER comes first. */
export function findBrowser() {
  const folders = (process.env.PATH ?? "").split(delimiter);
  const candidates = [
    ...(process.env.CELLWRIGHT_BROWSER ? [process.env.CELLWRIGHT_BROWSER] : []),
    ...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))),
    ...PLACES,
  ];
  return candidates.find((candidate) => existsSync(candidate));
}

/** Finds a browser, or brings Debian's where this is Debian and we may; otherwise says what to install and exits 1. */
export function ensureBrowser() {
  const found = findBrowser();
  if (found !== undefined) return found;
  if (process.platform === "linux" && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    process.stdout.write("No browser found: installing Debian's chromium …\n");
    const run = (...args) =>
      spawnSync("apt-get", args, { stdio: ["ignore", "ignore", "inherit"] }).status === 0;
    const options = ["-y", "-qq", "--no-install-recommends"];
    if (run("update", "-qq") && run("install", ...options, "chromium")) {
      const installed = findBrowser();
      if (installed !== undefined) return installed;
    }
  }
  process.stderr.write(
    "The tests need Chrome, Edge or Chromium: install one (Debian: apt-get install chromium).\n",
  );
  process.exit(1);
}
