import { expect, it } from "vitest";
import { parseSignItems } from "../../../src/domain/contraction/taught";
import { layOutSigns, otherNames, splitSignRow } from "../../../src/domain/probe/sign-row";

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

// UEB 2013, sections 10.2, 10.4 and 10.1: one cell, read by where it stands.
it.each([
  ["child", ["ch"]],
  ["ch", ["child"]],
  ["y", ["you"]],
  ["ing", []],
])("names what the cells of %s alone can be as well", (text, others) => {
  expect(signs(text).flatMap(otherNames)).toEqual(others);
});
