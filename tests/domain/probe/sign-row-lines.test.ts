import { expect, it } from "vitest";
import { parseSignItems } from "../../../src/domain/contraction/taught";
import { seededRandom } from "../../../src/domain/seeded-random";
import {
  cellsAlone,
  layOutSigns,
  mixSigns,
  otherNames,
  splitSignRow,
} from "../../../src/domain/probe/sign-row";

const signs = (text: string) => {
  const read = parseSignItems([text]);
  if (!read.ok) throw new Error(read.fault.message);
  return read.value;
};

it.each([
  ["a, b, c, ch", 7],
  ["7, the, ound, ence, b, 1, 2, still, child, in wordsign", 12],
  ["ound, ound, ound", 2],
])("parts %s into the lines that are laid out at %i cells", (text, most) => {
  const laid = layOutSigns(signs(text), most);
  const lines = splitSignRow(signs(text), most);
  expect(laid.ok && laid.value.length).toBe(lines.length);
  expect(lines.flat().map(({ name }) => name)).toEqual(signs(text).map(({ name }) => name));
});

it.each([
  { asked: "ch", others: "a, b, c, d, e", mixed: 4 },
  { asked: "ch, sh", others: "a, b, c, d, e", mixed: 4 },
  { asked: "ch, sh, th", others: "a, b, c, d, e", mixed: 6 },
  // child has the cells of ch, you those of y.
  { asked: "ch", others: "child, y, you", mixed: 2 },
])("mixes $asked with signs out of $others to $mixed in all", ({ asked, others, mixed }) => {
  const mix = mixSigns(signs(asked), signs(others), seededRandom(3));
  expect(mix.slice(0, signs(asked).length)).toEqual(signs(asked));
  expect(new Set(mix.map(cellsAlone)).size).toBe(mixed);
  expect(mix).toHaveLength(mixed);
});

// UEB 2013, sections 10.2, 10.4 and 10.1: one cell, read by where it stands.
it.each([
  ["child", ["ch"]],
  ["ch", ["child"]],
  ["y", ["you"]],
  ["ing", []],
])("names what the cells of %s alone can be as well", (text, others) => {
  expect(signs(text).flatMap(otherNames)).toEqual(others);
});
