import { expect, test } from "vitest";
import { offBy, sceneOf } from "../../src/decide/index.ts";
import type { Farm } from "../../src/farm/index.ts";
import type { LocalDate } from "../../src/quantity/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { exampleInput } from "../sheet/exampleWeek.ts";
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

/** Every way out of a plan's misses beside what keeping it comes to. */
function expectAsKept(asked: WeekInput): void {
  const plain = planAll(sceneOf(asked).scene!).joint;
  const misses = week(asked).successions.flatMap(({ miss }) => (miss === null ? [] : [miss]));
  expect(misses.length).toBeGreaterThan(0);
  for (const { alternatives } of misses)
    for (const { kept, worth, off } of alternatives) {
      const settled = planAll(sceneOf({ ...asked, keep: [kept] }).scene!).joint;
      const asKept = settled.worth - plain.worth;
      const within = Math.max(1e-6 * Math.max(1, Math.abs(asKept)), offBy(settled, plain) + off);
      expect(Math.abs(worth - asKept), JSON.stringify(kept)).toBeLessThanOrEqual(within);
    }
}

test("the plan's own way is told first, and no other is worth more", () => {
  const misses = week(farms[0]![1]).successions.flatMap(({ miss }) => (miss === null ? [] : [miss]));
  for (const { alternatives } of misses) {
    expect(alternatives[0]).toMatchObject({ planned: true, worth: 0, off: 0 });
    expect(alternatives.length).toBeLessThanOrEqual(4);
    for (const { worth } of alternatives.slice(1)) expect(worth).toBeLessThanOrEqual(1e-6);
  }
});

test("what the grower has settled has no other way", () => {
  const [, asked] = farms[0]!;
  const kept = {
    kind: "cut",
    succession: arugula.id,
    date: "2026-04-24" as LocalDate,
    part: "morning",
  } as const;
  const { miss } = week({ ...asked, keep: [kept] }).successions.find(
    ({ succession }) => succession.id === arugula.id,
  )!;
  expect(miss?.alternatives).toMatchObject([{ kept, planned: true, worth: 0, off: 0, freed: null }]);
});

test("a bed cleared is free as many days as its cut lies ahead, each a bed-day of what it lacks of a whole harvest", () => {
  const [, asked] = farms[1]!;
  const { plans } = planAll(sceneOf(asked).scene!);
  const cleared = week(asked).successions.flatMap(({ succession, miss }) =>
    (miss?.alternatives ?? []).flatMap(({ freed }) => (freed === null ? [] : [{ succession, freed }])),
  );
  expect(cleared.length).toBeGreaterThan(0);
  for (const { succession, freed } of cleared) {
    const own = plans
      .flatMap(({ chosen }) => chosen.successions)
      .find(({ table }) => table.standing.succession.id === succession.id)!;
    const days = (own.outlet!.at - asked.on) / 86_400_000;
    const lacking = own.table.mass * own.table.price - Math.max(0, own.worth);
    expect(freed.days).toBeCloseTo(days, 9);
    expect(freed.worth).toBeCloseTo(0.01 * days * lacking, 9);
  }
});

test.each(farms)("every way out is worth what keeping it comes to: %s", (_name, asked) => {
  expectAsKept(asked);
});

test("every way out is worth what keeping it comes to: three days of the example farm", async () => {
  expectAsKept(await exampleInput("3"));
}, 600_000);
