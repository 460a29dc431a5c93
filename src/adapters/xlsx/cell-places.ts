import type { Area } from "../../domain/area";
import { MAX_COLUMNS, MAX_ROWS, parseArea } from "../../spreadsheet/address";
import { cellKey } from "../../spreadsheet/workbook";

/** The key of a cell's address in a file, such as `AB12`; -1 where it is none. Written for speed: half a million a file. */
export const keyOfAddress = (address: string): number => {
  let column = 0;
  let row = 0;
  let at = 0;
  for (; at < address.length; at++) {
    const code = address.charCodeAt(at) & 0xdf;
    if (code < 65 || code > 90) break;
    column = column * 26 + code - 64;
  }
  const letters = at;
  for (; at < address.length; at++) {
    const digit = address.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return -1;
    row = row * 10 + digit;
  }
  if (letters === 0 || letters === at || row < 1 || row > MAX_ROWS || column > MAX_COLUMNS) return -1;
  return cellKey(row - 1, column - 1);
};

/** Areas of a list such as `A1:A9 C3`; what is no area is left out. */
export const parseAreas = (list: string): Area[] =>
  list
    .trim()
    .split(/\s+/)
    .flatMap((text) => parseArea(text) ?? []);
