import { describe, expect, test } from "vitest";
import { comesThrough, sceneOf } from "../../src/decide/index.ts";
import type { Settings } from "../../src/farm/index.ts";
import { damageOddsWithin } from "../../src/watch/index.ts";
import { planAll } from "../../src/week.ts";
import { bed, clear, input, leaf, tunnel } from "./smallFarm.ts";

const creek = tunnel("Creek", 15);
const arugula = bed("arugula", creek);

/** The chance to come through to hours of the weather, of every member, on a bare tunnel with a bed near its size. */
function through(
  days: readonly (readonly [low: number, high: number])[],
  changed: Partial<Settings>,
  cuts: readonly number[],
) {
  const plain = input(
    { tunnels: [creek], successions: [arugula], pieces: [], notes: [leaf(arugula, 8)] },
    clear(...days),
  );
  const scene = sceneOf({ ...plain, settings: { ...plain.settings, ...changed } }).scene!;
  const [planned] = planAll(scene);
  const [table] = planned!.problem.successions;
  return {
    scene,
    planned: planned!,
    crop: table!.standing.crop,
    chances: cuts.map((hours) => comesThrough(scene, planned!, table!, scene.horizon.now + hours)),
  };
}

const CERTAIN: Partial<Settings> = {
  forecastSpread: 0,
  forecastSpreadPerDay: 0,
  forecastSpreadMost: 0,
  carriedLevel: 0,
  warmthSpread: 0,
  shadeSpread: 0,
};

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const MILD = [
  [6, 15],
  [6, 15],
  [6, 15],
  [6, 15],
] as const;
const FROST = [
  [4, 13],
  [-1, 12],
  [4, 15],
  [5, 15],
] as const;

describe("the chance to come through", () => {
  test("is all but certain in mild weather", () => {
    const { chances } = through(MILD, {}, [72]);
    expect(mean(chances[0]!)).toBeGreaterThan(0.999);
  });

  test("counts the nights before the cut and none after it", () => {
    const { chances } = through(FROST, {}, [12, 48, 72]);
    const [before, after, later] = chances.map(mean);
    expect(before!).toBeGreaterThan(0.999);
    expect(after!).toBeLessThan(0.6);
    expect(later!).toBeLessThanOrEqual(after!);
  });

  test("differs from member to member with its night, and is nearly sure in each where the weather is in doubt", () => {
    const [doubtful] = through(FROST, {}, [48]).chances;
    const [certain] = through(FROST, CERTAIN, [48]).chances;
    expect(new Set(certain!).size).toBe(1);
    expect(Math.max(...doubtful!) - Math.min(...doubtful!)).toBeGreaterThan(0.8);
  });

  test("is what the odds of every interval give where the weather is certain", () => {
    const { scene, planned, crop, chances } = through(FROST, CERTAIN, [48]);
    const { problem, choice } = planned;
    const { starts, now } = scene.horizon;
    const ends = starts.filter((start) => start <= now + 48);
    const expected = ends.slice(1).reduce((safe, _, i) => {
      const k = i * problem.settings.length + choice[i]!;
      const odds = damageOddsWithin(crop, problem.lowest[k]!, problem.highest[k]!, 0, scene.settings);
      return safe / (1 + odds);
    }, 1);
    expect(chances[0]![0]).toBeCloseTo(expected, 6);
  });
});
