import { Inflate } from "fflate";
import { crc32 } from "./crc32";
import { XlsxRefusal } from "./xlsx-refusal";

/** What a workbook file may take at most; checked before anything is unpacked. */
export const SIZE_CAPS = {
  /** bytes of the file as it lies on disk */
  file: 100 * 1024 * 1024,
  /** bytes of all entries unpacked */
  unpacked: 768 * 1024 * 1024,
  /** bytes of one entry unpacked (a string of a browser holds about twice that) */
  entry: 256 * 1024 * 1024,
  /** entries in the archive */
  entries: 20_000,
  /** unpacked to packed size of one entry that unpacks to more than {@link SIZE_CAPS.smallEntry} */
  ratio: 400,
  /** bytes under which the ratio of an entry does not matter */
  smallEntry: 16 * 1024 * 1024,
} as const;

/** One entry as the central directory lists it; `data` are its packed bytes, a view into the file. */
export interface ZipEntry {
  readonly name: string;
  readonly rawName: Uint8Array;
  /** 0 stored, 8 deflated */
  readonly method: number;
  readonly crc: number;
  readonly size: number;
  readonly time: number;
  readonly date: number;
  readonly data: Uint8Array;
}

const END_OF_DIRECTORY = 0x06054b50;
const DIRECTORY_ENTRY = 0x02014b50;
const LOCAL_HEADER = 0x04034b50;
const ZIP64_LOCATOR = 0x07064b50;
const ZIP64_END = 0x06064b50;
const STEP = 1 << 16;

const damaged = (what: string): XlsxRefusal =>
  new XlsxRefusal(
    "damaged-file",
    `This file is damaged or was cut short: ${what}. Copy it again from where it came, or open it in your spreadsheet program, let it repair the file, and save a copy.`,
  );

const tooLarge = (what: string): XlsxRefusal =>
  new XlsxRefusal(
    "too-large",
    `This workbook is too large to open here: ${what}. Split it, or delete sheets, pictures and empty formatted rows in your spreadsheet program, and save a copy.`,
  );

/**
 * The entries of a zip file in the order of its directory, checked against {@link SIZE_CAPS} before anything is
 * unpacked.
 *
 * Source: APPNOTE 6.3.10, sections 4.3.7 to 4.3.16 and 4.5.3 (zip64).
 *
 * @param bytes - the whole file
 * @returns its entries
 * @throws {XlsxRefusal} `damaged-file`, `too-large` or `encrypted`
 */
export const listEntries = (bytes: Uint8Array): ZipEntry[] => {
  if (bytes.length > SIZE_CAPS.file) {
    throw tooLarge(`it has ${megabytes(bytes.length)} MB, and ${megabytes(SIZE_CAPS.file)} MB is the limit`);
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const directory = findDirectory(view);
  if (directory.count > SIZE_CAPS.entries) {
    throw tooLarge(`it has ${directory.count} parts, and ${SIZE_CAPS.entries} is the limit`);
  }
  const entries: ZipEntry[] = [];
  const names = new Set<string>();
  let at = directory.offset;
  let unpacked = 0;
  for (let index = 0; index < directory.count; index++) {
    const { entry, next } = readDirectoryEntry(bytes, view, at);
    at = next;
    unpacked += entry.size;
    if (entry.size > SIZE_CAPS.entry || unpacked > SIZE_CAPS.unpacked) {
      throw tooLarge(
        `unpacked it takes more than ${megabytes(SIZE_CAPS.entry)} MB in one part or ${megabytes(SIZE_CAPS.unpacked)} MB in all`,
      );
    }
    if (entry.size > SIZE_CAPS.smallEntry && entry.size > entry.data.length * SIZE_CAPS.ratio) {
      throw tooLarge(`its part ${entry.name} unpacks to more than ${SIZE_CAPS.ratio} times its size`);
    }
    const key = entry.name.toLowerCase();
    if (names.has(key)) throw damaged(`it holds the part ${entry.name} twice`);
    names.add(key);
    entries.push(entry);
  }
  return entries;
};

const megabytes = (bytes: number): number => Math.ceil(bytes / 1024 / 1024);

const findDirectory = (view: DataView): { offset: number; count: number } => {
  const last = view.byteLength - 22;
  for (let at = last; at >= 0 && at >= last - 0xffff; at--) {
    if (view.getUint32(at, true) !== END_OF_DIRECTORY) continue;
    const count = view.getUint16(at + 10, true);
    const offset = view.getUint32(at + 16, true);
    if (count !== 0xffff && offset !== 0xffffffff) return { offset, count };
    return findZip64Directory(view, at);
  }
  throw damaged("the directory at its end is missing");
};

const findZip64Directory = (view: DataView, end: number): { offset: number; count: number } => {
  const locator = end - 20;
  if (locator < 0 || view.getUint32(locator, true) !== ZIP64_LOCATOR)
    throw damaged("its large directory is missing");
  const at = Number(view.getBigUint64(locator + 8, true));
  if (at + 56 > view.byteLength || view.getUint32(at, true) !== ZIP64_END) {
    throw damaged("its large directory is missing");
  }
  return {
    count: Number(view.getBigUint64(at + 32, true)),
    offset: Number(view.getBigUint64(at + 48, true)),
  };
};

const readDirectoryEntry = (
  bytes: Uint8Array,
  view: DataView,
  at: number,
): { entry: ZipEntry; next: number } => {
  if (at + 46 > bytes.length || view.getUint32(at, true) !== DIRECTORY_ENTRY)
    throw damaged("its directory breaks off");
  const flags = view.getUint16(at + 8, true);
  const nameLength = view.getUint16(at + 28, true);
  const extraLength = view.getUint16(at + 30, true);
  const next = at + 46 + nameLength + extraLength + view.getUint16(at + 32, true);
  if (next > bytes.length) throw damaged("its directory breaks off");
  const rawName = bytes.subarray(at + 46, at + 46 + nameLength);
  const name = new TextDecoder().decode(rawName).replaceAll("\\", "/");
  if (flags & 1) {
    throw new XlsxRefusal(
      "encrypted",
      "This file is an encrypted zip. Unpack it with its password, or open it in your spreadsheet program and save a copy without a password.",
    );
  }
  const method = view.getUint16(at + 10, true);
  if (method !== 0 && method !== 8) throw damaged(`its part ${name} is packed in an unusual way`);
  const sizes = readSizes(view, at, at + 46 + nameLength, extraLength);
  const data = packedData(bytes, view, sizes.header, sizes.packed, name);
  const entry = {
    name,
    rawName,
    method,
    crc: view.getUint32(at + 16, true),
    size: sizes.size,
    time: view.getUint16(at + 12, true),
    date: view.getUint16(at + 14, true),
    data,
  };
  return { entry, next };
};

/** APPNOTE 4.5.3: the zip64 field holds only those numbers that do not fit, in this order. */
const readSizes = (
  view: DataView,
  at: number,
  extra: number,
  extraLength: number,
): { size: number; packed: number; header: number } => {
  let packed = view.getUint32(at + 20, true);
  let size = view.getUint32(at + 24, true);
  let header = view.getUint32(at + 42, true);
  for (let field = extra; field + 4 <= extra + extraLength; field += 4 + view.getUint16(field + 2, true)) {
    if (view.getUint16(field, true) !== 1) continue;
    let number = field + 4;
    const take = (): number => {
      if (number + 8 > view.byteLength) throw damaged("its directory breaks off");
      number += 8;
      return Number(view.getBigUint64(number - 8, true));
    };
    if (size === 0xffffffff) size = take();
    if (packed === 0xffffffff) packed = take();
    if (header === 0xffffffff) header = take();
  }
  return { size, packed, header };
};

const packedData = (
  bytes: Uint8Array,
  view: DataView,
  header: number,
  packed: number,
  name: string,
): Uint8Array => {
  if (header + 30 > bytes.length || view.getUint32(header, true) !== LOCAL_HEADER) {
    throw damaged(`its part ${name} is not where it should be`);
  }
  const start = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  if (start + packed > bytes.length) throw damaged(`its part ${name} breaks off`);
  return bytes.subarray(start, start + packed);
};

/**
 * The content of an entry, unpacked and checked.
 *
 * @param entry - from {@link listEntries}
 * @returns its bytes, exactly as many as the directory says
 * @throws {XlsxRefusal} `damaged-file` where size or check sum differ
 */
export const unpackEntry = (entry: ZipEntry): Uint8Array => {
  const content = entry.method === 0 ? entry.data : inflate(entry);
  if (content.length !== entry.size || crc32(content) !== entry.crc) {
    throw damaged(`its part ${entry.name} does not unpack to what was packed`);
  }
  return content;
};

/** Unpacks in steps, so that an entry that lies about its size is caught before it fills the memory. */
const inflate = (entry: ZipEntry): Uint8Array => {
  const content = new Uint8Array(entry.size);
  let filled = 0;
  let ended = false;
  const stream = new Inflate((piece, final) => {
    if (filled + piece.length > entry.size) throw damaged(`its part ${entry.name} is larger than it says`);
    content.set(piece, filled);
    filled += piece.length;
    ended = final;
  });
  for (let at = 0; at < entry.data.length; at += STEP) {
    stream.push(entry.data.subarray(at, at + STEP), at + STEP >= entry.data.length);
  }
  if (!ended || filled !== entry.size) throw damaged(`its part ${entry.name} is shorter than it says`);
  return content;
};
