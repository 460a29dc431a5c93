import { randomUUID } from "node:crypto";
import path from "node:path";
import { docxWriter } from "../adapters/docx/docx-writer";
import { createFsrsScheduler } from "../adapters/fsrs/fsrs-scheduler";
import { nodeTranslatorLibrary } from "../adapters/liblouis/node-engine";
import { CALC_USAGE, runCalc, type CalcHost } from "./commands/calc";
import { CASELOAD_USAGE, runCaseload } from "./commands/caseload";
import { CHECK_USAGE, runCheck } from "./commands/check";
import { DRILL_USAGE, runDrill } from "./commands/drill";
import { runHandout } from "./commands/handout";
import { HANDOUT_USAGE } from "./commands/handout-arguments";
import { LOG_USAGE, runLog } from "./commands/log";
import { EXIT, type CommandStreams, type WorkbookHost } from "./commands/opened-workbook";
import { DISK_FILES } from "./commands/whole-file";
import type { Command } from "./command";
import { readLines } from "./text-lines";
import { programDirectory, WorkbookFiles } from "./workbook-files";

const streams: CommandStreams = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
};

const workbooks = new WorkbookFiles(programDirectory());
const desk: CalcHost = { streams, files: DISK_FILES, openDesk: workbooks.openDesk, readLines };
const host: WorkbookHost = { open: workbooks.open, files: DISK_FILES, streams };
const translators = nodeTranslatorLibrary({ directory: path.join(programDirectory(), "liblouis") });

/** All commands, in the order in which the help lists them. */
const COMMANDS: readonly Command[] = [
  {
    name: "calc",
    summary: "works a formula out",
    usage: CALC_USAGE,
    run: (args) => runCalc(args, desk),
  },
  {
    name: "check",
    summary: "says what was found in a workbook",
    usage: CHECK_USAGE,
    run: (args) => runCheck(args, host),
  },
  {
    name: "log",
    summary: "adds a probe to a workbook",
    usage: LOG_USAGE,
    run: (args) => runLog(args, host),
  },
  {
    name: "caseload",
    summary: "one line a pupil: latest value, trend, verdict",
    usage: CASELOAD_USAGE,
    run: (args) => runCaseload(args, { ...host, translators, scheduler: createFsrsScheduler() }),
  },
  {
    name: "drill",
    summary: "words that practise a sign and use only taught ones",
    usage: DRILL_USAGE,
    run: (args) => runDrill(args, desk),
  },
  {
    name: "handout",
    summary: "words, sentences or a passage in print and braille, as a file",
    usage: HANDOUT_USAGE,
    run: (args) =>
      runHandout(args, {
        streams,
        files: DISK_FILES,
        translators,
        documents: docxWriter,
        newIdentifier: () => `urn:uuid:${randomUUID()}`,
        readLines,
      }),
  },
];

const help = (): string => {
  const width = Math.max(...COMMANDS.map(({ name }) => name.length)) + 2;
  return COMMANDS.map(
    ({ name, summary, usage }) => `${name.padEnd(width)}${summary}\n${" ".repeat(width)}${usage}\n`,
  ).join("");
};

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "help") {
    (name === undefined ? streams.err : streams.out)(help());
    return name === undefined ? EXIT.usage : EXIT.done;
  }
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (!command) {
    streams.err(`There is no command ${name}.\n${help()}`);
    return EXIT.usage;
  }
  if (rest.includes("--help")) {
    streams.out(`${command.summary}\nUsage: ${command.usage}\n`);
    return EXIT.done;
  }
  return command.run(rest);
}

// Who reads our output may stop early, as `head` does.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(EXIT.done);
  throw error;
});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (thrown: unknown) => {
    // Never a message from inside: it could hold a pupil's name.
    const kind = thrown instanceof Error ? thrown.name : "unknown";
    const missing = thrown instanceof Error && "code" in thrown && thrown.code === "ENOENT";
    streams.err(
      missing
        ? "A file of the build is missing: run npm run build.\n"
        : `Cellwright stopped because of an error of its own (${kind}).\n`,
    );
    process.exitCode = EXIT.refused;
  },
);
