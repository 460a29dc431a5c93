// node config/draw-icons.mjs: draws src/assets/icon-{16,32,64,80}.png, the project's own sign: the braille cell of
// the letter c, its six dots drawn as the cells of a small spreadsheet, the two raised ones filled.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { crc32, deflateSync } from "node:zlib";

const SIZES = [16, 32, 64, 80];
const INK = [31, 58, 104];
const PAPER = [255, 255, 255];

/** Row and column of each dot; dots 1 and 4 make the letter c. */
const CELLS = [0, 1, 2].flatMap((row) => [0, 1].map((column) => ({ row, column, raised: row === 0 })));

/** Whole pixels at every size, so that lines stay sharp: a cell, the gap between cells, the width of a line. */
function measures(size) {
  const cell = Math.floor((size * 5) / 16);
  const line = Math.max(1, Math.round(size / 20));
  const gap = Math.max(0, Math.floor((size - 3 * cell) / 3));
  return {
    cell,
    line,
    gap,
    left: Math.floor((size - 2 * cell - gap) / 2),
    top: Math.floor((size - 3 * cell - 2 * gap) / 2),
  };
}

/** Rows of RGBA bytes. */
function drawPixels(size) {
  const { cell, line, gap, left, top } = measures(size);
  const pixels = Buffer.alloc(size * size * 4);
  for (const { row, column, raised } of CELLS) {
    const [x0, y0] = [left + column * (cell + gap), top + row * (cell + gap)];
    for (let y = 0; y < cell; y += 1) {
      for (let x = 0; x < cell; x += 1) {
        const isLine = Math.min(x, y, cell - 1 - x, cell - 1 - y) < line;
        const at = ((y0 + y) * size + x0 + x) * 4;
        pixels.set([...(raised || isLine ? INK : PAPER), 255], at);
      }
    }
  }
  return pixels;
}

/** A chunk of a PNG. Source: W3C Portable Network Graphics, third edition, section 5.3. */
function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}

/** The icon of this size as a PNG file: 8 bits a channel, colour with alpha. */
export function drawIcon(size) {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const pixels = drawPixels(size);
  const rows = Array.from({ length: size }, (_, y) =>
    Buffer.concat([Buffer.from([0]), pixels.subarray(y * size * 4, (y + 1) * size * 4)]),
  );
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(Buffer.concat(rows), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = new URL("../src/assets/", import.meta.url);
  mkdirSync(folder, { recursive: true });
  for (const size of SIZES) writeFileSync(new URL(`icon-${size}.png`, folder), drawIcon(size));
}
