// The add-in's manifest for an address: a copy of manifest.xml in dist/, checked offline.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import officeAddinManifest from "office-addin-manifest";
import { checkManifest } from "./manifest-gate.mjs";

const { OfficeAddinManifest } = officeAddinManifest;

const DEVELOPMENT_ORIGIN = "https://localhost:3000";

/** A release is another add-in to Excel than the one under development: both can be there at once. */
const RELEASE = { id: "3e94c1a8-07d5-4b6f-8a2e-d15f60b7c923", name: "Cellwright" };

const root = new URL("../", import.meta.url);
const dist = new URL("dist/", root);

/** The origin of an address, which must be one that Excel takes: HTTPS, no path. */
export function parseOrigin(text) {
  let url;
  try {
    url = new URL(text);
  } catch {
    throw new Error(`"${text}" is not an address. Give one such as https://cellwright.example.org`);
  }
  if (url.protocol !== "https:") throw new Error(`Excel takes add-ins from https:// only, not from ${text}`);
  if (url.pathname !== "/" || url.search || url.hash || url.username) {
    throw new Error(`Give the address without path, such as ${url.origin} instead of ${text}`);
  }
  return url.origin;
}

/** The manifest's text with every address at another origin. `https://localhost:3000/…` and the bare origin of AppDomain both move. */
export const moveOrigin = (xml, origin) => xml.replaceAll(/https:\/\/localhost:3000(?=[/<"])/g, origin);

/** What the gate asks about the files of dist/: whether one is there, and its text. */
export const builtFiles = {
  has: (path) => existsSync(new URL(`./${path}`, dist)),
  text: (path) => readFileSync(new URL(`./${path}`, dist), "utf8"),
};

/**
 * Writes dist/manifest.xml for an origin, with the release's Id and name on request, and checks it.
 *
 * @param {{ origin?: string, release?: boolean, to?: URL, files?: object }} [options] - `to` and `files` for
 *   another folder than dist/
 * @returns {Promise<{ path: string, id: string, name: string }>}
 */
export async function writeManifest({
  origin = DEVELOPMENT_ORIGIN,
  release = false,
  to = dist,
  files = builtFiles,
} = {}) {
  const xml = moveOrigin(readFileSync(new URL("manifest.xml", root), "utf8"), parseOrigin(origin));
  mkdirSync(to, { recursive: true });
  const path = fileURLToPath(new URL("manifest.xml", to));
  writeFileSync(path, xml);
  if (release) await OfficeAddinManifest.modifyManifestFile(path, RELEASE.id, RELEASE.name);
  const faults = checkManifest(readFileSync(path, "utf8"), files);
  if (faults.length > 0) throw new Error(`dist/manifest.xml cannot be used:\n${faults.join("\n")}`);
  const { id, displayName } = await OfficeAddinManifest.readManifestFile(path);
  return { path, id, name: displayName };
}
