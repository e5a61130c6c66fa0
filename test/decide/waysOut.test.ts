import { expect, test } from "vitest";
import { type Alternative, offBy, sceneOf } from "../../src/decide/index.ts";
import type { Farm } from "../../src/farm/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { planAll, week } from "../week.ts";
import { bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const [a, b] = [tunnel("A", 12), tunnel("B", 12)];
const arugula = bed("arugula", a, { market: "friday" });
const spinach = bed("spinach", b, { market: "friday" });
const { products } = exampleFarm();

const farm = (lengths: readonly [number, number], more: Partial<Farm> = {}) => ({
  tunnels: [a, b],
  successions: [arugula, spinach],
  pieces: [piece("light", "row-cover-19", 15), piece("dark", "shade-40", 15)],
  notes: [leaf(arugula, lengths[0]), leaf(spinach, lengths[1])],
  ...more,
});

const cool = clear([2, 12], [1, 13], [3, 14], [2, 12], [4, 15]);
const warm = clear([12, 27], [13, 28], [13, 29], [12, 27], [11, 26]);

const farms: readonly (readonly [string, WeekInput])[] = [
  ["beds too large", input(farm([11, 9.5]), warm)],
  ["beds too small", input(farm([4, 3]), cool)],
  ["one of each", input(farm([12, 3]), cool)],
  ["orders", input(farm([11, 9.5], { products }), warm)],
];

const differsBy = (
  asked: WeekInput,
  { kept }: Alternative,
): { readonly worth: number; readonly off: number } => {
  const plans = [asked, { ...asked, keep: [kept] }].map((each) => planAll(sceneOf(each).scene!).joint);
  return { worth: plans[1]!.worth - plans[0]!.worth, off: offBy(plans[1]!, plans[0]!) };
};

test.each(farms)("every way out is worth what keeping it comes to: %s", (_name, asked) => {
  const misses = week(asked).successions.flatMap(({ miss }) => (miss === null ? [] : [miss]));
  expect(misses.length).toBeGreaterThan(0);
  for (const { alternatives } of misses)
    for (const way of alternatives) {
      const kept = differsBy(asked, way);
      const within = Math.max(1e-6 * Math.max(1, Math.abs(kept.worth)), kept.off + way.off);
      expect(Math.abs(way.worth - kept.worth), JSON.stringify(way.kept)).toBeLessThanOrEqual(within);
    }
});
