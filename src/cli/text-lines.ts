import { createReadStream } from "node:fs";

/**
 * The lines of a file, or of standard input for `-`, as they come. Only line feeds, with or without a carriage
 * return before them, end a line: a formula's text may hold the other separators of Unicode.
 */
export async function* readLines(path: string): AsyncGenerator<string> {
  const source = path === "-" ? process.stdin : createReadStream(path);
  source.setEncoding("utf8");
  let rest = "";
  for await (const chunk of source) {
    const lines = (rest + String(chunk)).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) yield line.replace(/\r$/, "");
  }
  if (rest !== "") yield rest;
}
