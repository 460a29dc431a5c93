const TABLE = /* @__PURE__ */ (() => {
  const table = new Uint32Array(256);
  for (let byte = 0; byte < 256; byte++) {
    let remainder = byte;
    for (let bit = 0; bit < 8; bit++)
      remainder = remainder & 1 ? 0xedb88320 ^ (remainder >>> 1) : remainder >>> 1;
    table[byte] = remainder >>> 0;
  }
  return table;
})();

/**
 * The check sum that a zip keeps of each entry.
 *
 * Source: ISO 3309 CRC-32, reflected polynomial 0xEDB88320, as in APPNOTE 4.4.7.
 *
 * @param bytes - uncompressed content
 * @returns the sum as an unsigned 32-bit number
 */
export const crc32 = (bytes: Uint8Array): number => {
  let sum = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) {
    sum = (sum >>> 8) ^ (TABLE[(sum ^ (bytes[at] as number)) & 0xff] as number);
  }
  return (sum ^ 0xffffffff) >>> 0;
};
