// npm run heard [NAME…] [-- --accept]: runs tests/heard/*.run.mjs with a real screen reader and compares what is spoken
// with the reviewed text beside each. --accept keeps what was spoken now: read it before you commit it.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { ensureInstalled } from "./installation.mjs";

ensureInstalled();
const { hear, missingPrograms } = await import("./hear.mjs");
const { serve } = await import("./serve.mjs");

/** The day on which the page believes it is: nine days after the example's last probes. */
const START = "2026-11-25T10:00:00Z";
const folder = new URL("../tests/heard/", import.meta.url);
const wishes = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const accepts = process.argv.includes("--accept");
const say = (text) => process.stdout.write(`${text}\n`);

const lacking = missingPrograms();
if (lacking.length > 0) {
  say(`Not heard: ${lacking.join(", ")} missing. On Debian:`);
  say("apt-get install orca xvfb at-spi2-core dbus speech-dispatcher xdotool openbox chromium");
  process.exit(0);
}

const formatTranscript = (title, heard) =>
  [
    `# ${title}`,
    ...heard.flatMap(({ step, spoken }) => [`> ${step}`, ...spoken.map((line) => `    ${line}`.trimEnd())]),
    "",
  ].join("\n");

/** What differs from run to run and is no word of the page: the port, and the name of a download. */
const normalise = (text) =>
  text
    .replaceAll(/localhost:\d+/g, "localhost")
    .replaceAll(/[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}/g, "FILE");

/** The words alone: a slow machine speaks some of them a key later. */
const wordsOf = (text) =>
  (text ?? "")
    .split("\n")
    .filter((line) => !line.startsWith("> "))
    .join("\n");

const server = await serve();
const names = readdirSync(folder)
  .flatMap((file) => /^(.+)\.run\.mjs$/.exec(file)?.[1] ?? [])
  .filter((name) => wishes.length === 0 || wishes.includes(name));
let differing = 0;
try {
  for (const name of names) {
    const { title, path, steps } = await import(new URL(`${name}.run.mjs`, folder).href);
    const heard = normalise(formatTranscript(title, await hear(server.address + path, steps, START)));
    const file = fileURLToPath(new URL(`${name}.txt`, folder));
    const reviewed = existsSync(file) ? readFileSync(file, "utf8") : undefined;
    if (accepts) writeFileSync(file, heard);
    if (heard === reviewed) say(`${name}: as reviewed`);
    else if (!accepts && wordsOf(heard) === wordsOf(reviewed))
      say(`${name}: as reviewed, some of it a key later`);
    else if (accepts) say(`${name}: kept; read it`);
    else {
      differing += 1;
      say(`${name}: ${reviewed === undefined ? "not reviewed yet" : "spoken otherwise"}`);
      const before = (reviewed ?? "").split("\n");
      const now = heard.split("\n");
      const first = now.findIndex((line, place) => line !== before[place]);
      say(`  line ${String(first + 1)}, reviewed: ${before[first] ?? ""}`);
      say(`  line ${String(first + 1)}, spoken:   ${now[first] ?? ""}`);
    }
  }
} finally {
  await server.close();
}
process.exit(differing === 0 ? 0 : 1);
