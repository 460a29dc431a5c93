import { describe, expect, it } from "vitest";
import { plainKnown, plainMastered, plainTrajectory } from "../../src/charts/plain-chart";
import { MASTERIES } from "./masteries";
import { TRAJECTORIES } from "./trajectories";

const of = <T>(all: Readonly<Record<string, T>>, name: string): T =>
  all[name] ?? expect.fail(`There is no ${name}.`);

describe("what ear and hand are not given", () => {
  it("is said where the picture has a trend, and not where it has none", () => {
    expect(plainTrajectory(of(TRAJECTORIES, "one-phase")).leftOut).toMatch(/^The trend .* left out/);
    expect(plainTrajectory(of(TRAJECTORIES, "few-points")).leftOut).toBeUndefined();
  });

  it("is said of the band of a share, and not of a count", () => {
    expect(plainKnown(of(MASTERIES, "a-kind")).leftOut).toMatch(/^The intervals are left out/);
    expect(plainKnown(of(MASTERIES, "nothing")).leftOut).toBeUndefined();
    expect(plainMastered(of(MASTERIES, "a-kind")).leftOut).toBeUndefined();
  });
});
