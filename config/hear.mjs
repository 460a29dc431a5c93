// Runs a page under a real screen reader (Orca, on a virtual display) and collects what is spoken, step by step.
import { spawn, spawnSync } from "node:child_process";
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { chromium } from "playwright-core";
import { findBrowser, QUIET_FLAGS } from "./browser.mjs";

const PROGRAMS = ["orca", "Xvfb", "dbus-daemon", "xdotool", "openbox", "speech-dispatcher", "gsettings"];
const AT_SPI = "/usr/libexec/at-spi-bus-launcher";
/** No sound is wanted: the words are taken from the screen reader before they are spoken. */
const SPEECH_CONFIGURATION =
  'LogLevel 1\nAddModule "dummy" "sd_dummy" ""\nDefaultModule dummy\nDisableAutoSpawn\n';
/** The keys themselves are not echoed: only what the page brings about is heard. */
const READER_SETTINGS = JSON.stringify({
  general: { enableKeyEcho: false, startingProfile: ["Default", "default"] },
  profiles: { default: { profile: ["Default", "default"], enableKeyEcho: false } },
  pronunciations: {},
  keybindings: {},
});
/** The screen reader writes its log in blocks of 8 kB; line by line, what is spoken stands beside the key that brought it. */
const READER_CUSTOMIZATIONS = "from orca import debug\ndebug.debugFile.reconfigure(line_buffering=True)\n";
const SPOKEN = /^[\d:.]+ - SPEECH OUTPUT: '(.*?)'(?:\s*\{.*)?$/;

/** What has to be installed before anything can be heard; empty where all is there. */
export function missingPrograms() {
  const lacking = PROGRAMS.filter((name) => spawnSync("which", [name]).status !== 0);
  if (!existsSync(AT_SPI)) lacking.push("at-spi2-core");
  if (findBrowser() === undefined) lacking.push("chromium");
  return lacking;
}

/** The lines spoken so far. */
const spokenIn = (log) =>
  existsSync(log)
    ? readFileSync(log, "utf8")
        .split("\n")
        .flatMap((line) => SPOKEN.exec(line)?.[1] ?? [])
    : [];

/** Waits until the screen reader has nothing more to do; while a clock runs in the page it always has. */
async function untilSilent(log, atLeast) {
  await pause(atLeast);
  let before = -1;
  let quiet = 0;
  for (let turn = 0; turn < 20 && quiet < 3; turn += 1) {
    const { size } = statSync(log);
    quiet = size === before ? quiet + 1 : 0;
    before = size;
    await pause(400);
  }
}

/** A clock for the page that stands still until a step moves it, so that each run hears the same days and times. */
const standStill = (start) => {
  // A file dialog is the system's own; without one the page saves by a download.
  Reflect.deleteProperty(window, "showOpenFilePicker");
  Reflect.deleteProperty(window, "showSaveFilePicker");
  const Real = Date;
  const kept = Number(sessionStorage.getItem("heard-clock") ?? Real.parse(start));
  window.heardClock = kept;
  window.Date = class extends Real {
    constructor(...parts) {
      super(...(parts.length === 0 ? [window.heardClock] : parts));
    }
    static now() {
      return window.heardClock;
    }
  };
};

/**
 * Presses keys on a page and collects what is spoken after each.
 *
 * @param {string} address - the page
 * @param {readonly string[]} steps - each a key of xdotool (Tab, Return, ctrl+s), `type:TEXT`, `time:SECONDS` (the
 *   page's clock goes on by so much) or `wait:SECONDS`
 * @param {string} start - the time of the page's clock, ISO 8601
 * @returns {Promise<{ step: string, spoken: string[] }[]>} the first is the page opening
 */
export async function hear(address, steps, start) {
  const place = mkdtempSync(join(tmpdir(), "cellwright-heard-"));
  const log = join(place, "orca.log");
  const display = `:${String(100 + (process.pid % 800))}`;
  const env = {
    ...process.env,
    DISPLAY: display,
    HOME: place,
    XDG_CONFIG_HOME: join(place, "config"),
    XDG_RUNTIME_DIR: join(place, "run"),
    ACCESSIBILITY_ENABLED: "1",
    LANG: "C.UTF-8",
  };
  mkdirSync(join(place, "config", "speech-dispatcher"), { recursive: true });
  mkdirSync(env.XDG_RUNTIME_DIR);
  chmodSync(env.XDG_RUNTIME_DIR, 0o700);
  writeFileSync(join(place, "config", "speech-dispatcher", "speechd.conf"), SPEECH_CONFIGURATION);
  mkdirSync(join(place, ".local", "share", "orca"), { recursive: true });
  writeFileSync(join(place, ".local", "share", "orca", "user-settings.conf"), READER_SETTINGS);
  writeFileSync(join(place, ".local", "share", "orca", "orca-customizations.py"), READER_CUSTOMIZATIONS);
  const started = [];
  const begin = (program, ...args) => {
    const child = spawn(program, args, { env, detached: true, stdio: ["ignore", "pipe", "ignore"] });
    child.on("error", () => undefined);
    started.unshift(child);
    return child;
  };
  const call = (program, ...args) => spawnSync(program, args, { env, stdio: "ignore" });
  let browser;
  try {
    begin("Xvfb", display, "-screen", "0", "1280x1000x24");
    const bus = begin("dbus-daemon", "--session", "--nofork", "--print-address=1");
    env.DBUS_SESSION_BUS_ADDRESS = await new Promise((resolve) =>
      bus.stdout.once("data", (bytes) => resolve(String(bytes).trim())),
    );
    await pause(700);
    begin("openbox");
    begin(AT_SPI, "--launch-immediately");
    begin("speech-dispatcher", "--run-single", "--communication-method", "unix_socket");
    await pause(1000);
    call("gsettings", "set", "org.gnome.desktop.interface", "toolkit-accessibility", "true");
    call("gsettings", "set", "org.gnome.desktop.a11y.applications", "screen-reader-enabled", "true");
    begin("orca", "--replace", `--debug-file=${log}`);
    for (let turn = 0; turn < 40 && spokenIn(log).length === 0; turn += 1) await pause(500);
    if (!existsSync(log)) throw new Error("The screen reader did not start.");
    const port = 20_000 + (process.pid % 20_000);
    begin(
      findBrowser(),
      ...QUIET_FLAGS,
      "--force-renderer-accessibility",
      "--test-type",
      "--lang=en-GB",
      `--remote-debugging-port=${String(port)}`,
      `--user-data-dir=${join(place, "profile")}`,
      "--app=data:text/html,<title>Waiting</title>",
    );
    browser = await attach(`http://127.0.0.1:${String(port)}`);
    await untilSilent(log, 3000);
    const [page] = browser.contexts()[0].pages();
    await page.addInitScript(standStill, start);
    let heard = spokenIn(log).length;
    const result = [];
    const collect = (step) => {
      const all = spokenIn(log);
      result.push({ step, spoken: all.slice(heard) });
      heard = all.length;
    };
    await page.goto(address);
    await untilSilent(log, 4000);
    collect("(the page opens)");
    for (const step of steps) {
      const [, kind, rest] = /^(type|time|wait):(.*)$/s.exec(step) ?? [];
      if (kind === "type") call("xdotool", "type", "--delay", "120", rest);
      else if (kind === "time") {
        await page.evaluate((seconds) => {
          window.heardClock += seconds * 1000;
          sessionStorage.setItem("heard-clock", String(window.heardClock));
        }, Number(rest));
      } else if (kind === "wait") await pause(Number(rest) * 1000);
      else call("xdotool", "key", step);
      for (let turn = 0; turn < 12 && spokenIn(log).length === heard; turn += 1) await pause(250);
      await untilSilent(log, 300);
      collect(step);
      if (process.env.HEARD_PICTURES) {
        await page.screenshot({ path: join(process.env.HEARD_PICTURES, `${String(result.length)}.png`) });
      }
    }
    return result;
  } finally {
    await browser?.close().catch(() => undefined);
    for (const child of started) endGroup(child);
    await pause(500);
    if (process.env.HEARD_LOG) copyFileSync(log, process.env.HEARD_LOG);
    rmSync(place, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Ends a program that was started here with all that it started itself. */
function endGroup(child) {
  try {
    if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
  } catch {
    // It ended by itself.
  }
}

async function attach(address) {
  for (let turn = 0; ; turn += 1) {
    try {
      return await chromium.connectOverCDP(address);
    } catch (error) {
      if (turn >= 40) throw error;
      await pause(500);
    }
  }
}
