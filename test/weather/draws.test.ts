import { expect, test } from "vitest";
import { draws } from "../../src/weather/index.ts";

const SEEDS = Array.from({ length: 40 }, (_, i) => i * 7919 + 1);

const parts = (draw: (i: number) => number, from: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => Math.floor(draw(from + i) * count)).sort((a, b) => a - b);

test("of any run of 2, 4, 8 … 512 draws that begins at a multiple of its length each part as many holds one", () => {
  for (const seed of SEEDS)
    for (const count of [2, 4, 8, 64, 512])
      for (const run of [0, 1, 5])
        expect(parts(draws(seed, "low"), run * count, count)).toEqual(
          Array.from({ length: count }, (_, i) => i),
        );
});

test("the same seed and name draw the same, others do not", () => {
  const first = (seed: number, name: string): readonly number[] =>
    Array.from({ length: 16 }, (_, i) => draws(seed, name)(i));
  expect(first(1, "low")).toEqual(first(1, "low"));
  expect(first(1, "low")).not.toEqual(first(2, "low"));
  expect(first(1, "low")).not.toEqual(first(1, "high"));
  // Written down once: a change of the generator moves every sheet.
  expect(
    first(1, "low")
      .slice(0, 3)
      .map((u) => u.toFixed(6)),
  ).toMatchInlineSnapshot(`
    [
      "0.085074",
      "0.707443",
      "0.969104",
    ]
  `);
});

test("names pair at random: over many seeds the 64 draws of two names are not correlated", () => {
  const correlation = (seed: number): number => {
    const [a, b] = [draws(seed, "day 3 low"), draws(seed, "day 4 low")];
    let sum = 0;
    for (let i = 0; i < 64; i++) sum += (a(i) - 0.5) * (b(i) - 0.5);
    return (sum / 64) * 12;
  };
  const all = Array.from({ length: 400 }, (_, i) => correlation(i * 104_729 + 3));
  const mean = all.reduce((a, b) => a + b, 0) / all.length;
  const spread = Math.sqrt(all.reduce((a, b) => a + b * b, 0) / all.length);
  // Of independent draws: mean 0 ± 0.006, spread 1/√64 = 0.125.
  expect(Math.abs(mean)).toBeLessThan(0.02);
  expect(spread).toBeGreaterThan(0.09);
  expect(spread).toBeLessThan(0.16);
});
