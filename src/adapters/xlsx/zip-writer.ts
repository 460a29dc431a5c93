import { deflateSync } from "fflate";
import { crc32 } from "./crc32";
import type { ZipEntry } from "./zip-archive";

/** An entry to write: one of the opened file, packed as it was, or new content. */
export type EntryToWrite = ZipEntry | { readonly name: string; readonly content: Uint8Array };

/** 1 January 1980, the earliest date that a zip can hold: new parts carry no clock. */
const EARLIEST_DATE = 0x21;
const UTF8_NAMES = 0x800;

/**
 * A zip file of these entries, in this order. Entries of the opened file are copied as they were packed.
 *
 * Source: APPNOTE 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16.
 *
 * @param entries - no two of the same name
 * @returns the whole file
 */
export const writeZip = (entries: readonly EntryToWrite[]): Uint8Array => {
  const packed = entries.map(pack);
  const size = packed.reduce(
    (sum, entry) => sum + 30 + 46 + 2 * entry.rawName.length + entry.data.length,
    22,
  );
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  const offsets: number[] = [];
  let at = 0;
  for (const entry of packed) {
    offsets.push(at);
    view.setUint32(at, 0x04034b50, true);
    writeCommonHeader(view, at + 4, entry);
    bytes.set(entry.rawName, at + 30);
    bytes.set(entry.data, at + 30 + entry.rawName.length);
    at += 30 + entry.rawName.length + entry.data.length;
  }
  const directory = at;
  packed.forEach((entry, index) => {
    view.setUint32(at, 0x02014b50, true);
    view.setUint16(at + 4, 20, true);
    writeCommonHeader(view, at + 6, entry);
    view.setUint32(at + 42, offsets[index] ?? 0, true);
    bytes.set(entry.rawName, at + 46);
    at += 46 + entry.rawName.length;
  });
  view.setUint32(at, 0x06054b50, true);
  view.setUint16(at + 8, packed.length, true);
  view.setUint16(at + 10, packed.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return bytes;
};

/** The fields that local header and directory entry have alike, from "version needed" to the extra length. */
const writeCommonHeader = (view: DataView, at: number, entry: Omit<ZipEntry, "name">): void => {
  view.setUint16(at, 20, true);
  view.setUint16(at + 2, UTF8_NAMES, true);
  view.setUint16(at + 4, entry.method, true);
  view.setUint16(at + 6, entry.time, true);
  view.setUint16(at + 8, entry.date, true);
  view.setUint32(at + 10, entry.crc, true);
  view.setUint32(at + 14, entry.data.length, true);
  view.setUint32(at + 18, entry.size, true);
  view.setUint16(at + 22, entry.rawName.length, true);
};

const pack = (entry: EntryToWrite): Omit<ZipEntry, "name"> => {
  if ("data" in entry) return entry;
  return {
    rawName: new TextEncoder().encode(entry.name),
    method: 8,
    crc: crc32(entry.content),
    size: entry.content.length,
    time: 0,
    date: EARLIEST_DATE,
    data: deflateSync(entry.content),
  };
};
