/** A source of numbers evenly spread over [0, 1), the same ones for the same seed. */
export type RandomSource = () => number;

/**
 * A small generator with 32 bits of state (mulberry32): good enough for examples, drills and simulations, never for
 * secrets.
 *
 * Source: T. Ettinger, mulberry32, public domain (from memory).
 *
 * @param seed - any integer
 * @returns numbers from 0 up to, not including, 1
 */
export function seededRandom(seed: number): RandomSource {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A number from the standard normal distribution.
 *
 * Source: Box & Muller 1958, Annals of Mathematical Statistics 29(2).
 */
export function normalDeviate(random: RandomSource): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}
