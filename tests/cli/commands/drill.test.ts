import { describe, expect, it } from "vitest";
import { runDrill } from "../../../src/cli/commands/drill";
import { WorkbookFiles } from "../../../src/cli/workbook-files";
import { success } from "../../../src/domain/result";
import type { FunctionAnswer } from "../../../src/spreadsheet/function-library";

/** Runs `drill` over a desk that writes down the formula and gives a fixed answer. */
async function drill(
  args: readonly string[],
  { answer = [["chick"], ["⠡⠀⠩"]] as FunctionAnswer, file = undefined as readonly string[] | undefined } = {},
) {
  const run = { out: "", err: "", formula: "" };
  const code = await runDrill(args, {
    streams: { out: (text) => void (run.out += text), err: (text) => void (run.err += text) },
    files: { read: () => Promise.reject(new TypeError()), replace: () => Promise.reject(new TypeError()) },
    openDesk: async () =>
      success({
        evaluate: async (formula: string) => {
          run.formula = formula;
          return answer;
        },
      }),
    readLines: async function* () {
      if (file === undefined) throw Object.assign(new Error("no"), { syscall: "open" });
      yield* file;
    },
  });
  return { code, ...run };
}

describe("drill asks the sheet function DRILL", () => {
  it.each([
    ["signs alone", ["--signs", "ch"], 'BRAILLE.DRILL("ch","",,,,,)'],
    [
      "everything",
      [
        "--signs",
        "ch, sh",
        "--taught",
        "the",
        "--n",
        "5",
        "--max-cells",
        "6",
        "--seed",
        "7",
        "--code",
        "contracted",
      ],
      'BRAILLE.DRILL("ch, sh","the",5,6,,7,"contracted")',
    ],
    ["quotation marks doubled", ["--signs", 'a"&B1&"'], 'BRAILLE.DRILL("a""&B1&""","",,,,,)'],
  ])("%s", async (_what, args, formula) => {
    expect(await drill(args)).toEqual({ code: 0, out: "chick\n⠡⠀⠩\n", err: "", formula });
  });

  it("with the words of a file", async () => {
    const { formula } = await drill(["--signs", "ch", "--words", "w.txt"], { file: ["much", 'such "x"'] });
    expect(formula).toBe('BRAILLE.DRILL("ch","",,,"much such ""x"" ",,)');
  });

  it.each([
    ["no signs", [], {}, 2, "--signs"],
    ["an unknown option", ["--signs", "ch", "--frob"], {}, 2, "unknown"],
    ["half an item", ["--signs", "ch", "--n", "1.5"], {}, 2, "--n is to be a whole number"],
    ["no such file", ["--signs", "ch", "--words", "w.txt"], {}, 1, "cannot be read"],
    ["an empty file", ["--signs", "ch", "--words", "w.txt"], { file: [" "] }, 1, "is empty"],
    [
      "no word",
      ["--signs", "ch"],
      { answer: { error: "#N/A", message: "No word fits." } as const },
      1,
      "No word fits.",
    ],
  ] as const)("refuses: %s", async (_what, args, host, code, message) => {
    const run = await drill(args, host);
    expect([run.code, run.out]).toEqual([code, ""]);
    expect(run.err).toContain(message);
  });
});

it("gives words of the built-in bank that have the sign and use only taught ones", async () => {
  const workbooks = new WorkbookFiles("dist");
  let out = "";
  const code = await runDrill(["--signs", "ch", "--taught", "the", "--n", "4"], {
    streams: { out: (text) => void (out += text), err: (text) => void (out += text) },
    files: { read: () => Promise.reject(new TypeError()), replace: () => Promise.reject(new TypeError()) },
    openDesk: workbooks.openDesk,
    readLines: async function* () {},
  });
  expect(code).toBe(0);
  expect(out).toMatch(/^([a-z]*ch[a-z]*\n){4}$/);
});
