import { describe, expect, it } from "vitest";
import { SixKeys } from "../../../taskpane/views/six-keys";

/** Plays keys: `+F` down, `-F` up, `!` the focus is lost. */
const play = (keys: string): string => {
  const chords = new SixKeys();
  return keys
    .split(" ")
    .map((key) => {
      if (key === "!") return void chords.drop();
      const code = key.slice(1) === "_" ? "Space" : `Key${key.slice(1)}`;
      return key.startsWith("+") ? chords.press(code) : chords.release(code);
    })
    .filter((cell) => cell !== undefined)
    .join("");
};

describe("six keys", () => {
  it.each([
    ["one key is one dot", "+F -F", "⠁"],
    ["three under each hand", "+F -F +D -D +S -S +J -J +K -K +L -L", "⠁⠂⠄⠈⠐⠠"],
    ["keys together are one cell when all are up", "+F +J +K -F -K -J", "⠙"],
    ["in whatever order they go down", "+L +S +D +F -D -F -S -L", "⠧"],
    ["the space bar is a blank", "+F -F +_ -_ +D -D", "⠁⠀⠂"],
    ["a key held repeats nothing", "+F +F +F -F", "⠁"],
    ["the next cell begins before the last key is up", "+F +D -F +J -D -J", "⠃⠈"],
    ["a key held on into the next cell is no part of it", "+F +D -F +J +K -J -K -D", "⠃⠘"],
    ["keys down when the focus goes are dropped", "+F +D ! -F -D +K -K", "⠐"],
    ["other keys take no part", "+G -G +A -A", ""],
    ["a key that went down elsewhere gives nothing", "-F +D -D", "⠂"],
  ])("%s", (_, keys, cells) => {
    expect(play(keys)).toBe(cells);
  });
});
