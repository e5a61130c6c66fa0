import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue, RESPONSES } from "../../src/farm/index.ts";
import { response, wangEngel, yin } from "../../src/growth/index.ts";
import { celsius } from "../../src/quantity/index.ts";
import published from "../published/responses.json" with { type: "json" };

const { base, optimumLow, optimumHigh, ceiling } = published.trapezoid;
const cardinal = {
  base: celsius(base),
  optimumLow: celsius(optimumLow),
  optimumHigh: celsius(optimumHigh),
  ceiling: celsius(ceiling),
};

test.each(published.rows)(
  "at $temperature °C the trapezoid is the derived $trapezoid of its most",
  ({ temperature, trapezoid }) => {
    expect(response(temperature, cardinal) / (optimumLow - base)).toBeCloseTo(trapezoid, 6);
  },
);

test("nothing grows at or below the base, or at or above the ceiling", () => {
  for (const temperature of [-20, base, ceiling, 50]) expect(response(temperature, cardinal)).toBe(0);
});

test("every crop of the catalogue responds without a step, never below nothing and never above its flat top", () => {
  for (const { id, growth } of catalogue().crops.values()) {
    const most = growth.optimumLow - growth.base;
    const steepest = Math.max(1, most / (growth.ceiling - growth.optimumHigh));
    for (let temperature = -5; temperature < 45; temperature += 0.1) {
      const here = response(temperature, growth);
      expect(here, id).toBeGreaterThanOrEqual(0);
      expect(here, id).toBeLessThanOrEqual(most);
      expect(Math.abs(response(temperature + 0.1, growth) - here), id).toBeLessThanOrEqual(
        0.1 * steepest + 1e-9,
      );
    }
  }
});

const smooth = { base: 4, optimum: 22, ceiling: 33 };

test.each(published.rows)(
  "at $temperature °C the smooth responses are the derived vectors of Yin, Wang and Engel, and Yan and Hunt",
  ({ temperature, ...row }) => {
    const half = 0.5e-6 + 1e-12;
    expect(Math.abs(yin(temperature, smooth, 1) - row.yin)).toBeLessThanOrEqual(half);
    expect(Math.abs(wangEngel(temperature, smooth) - row.wangEngel)).toBeLessThanOrEqual(half);
    // Yan and Hunt's is Yin's with base 0 and this power.
    const yanHunt = yin(temperature, { ...smooth, base: 0 }, 22 / (33 - 22));
    expect(Math.abs(yanHunt - row.yanHunt)).toBeLessThanOrEqual(half);
  },
);

describe.each(RESPONSES)("the form %s", (form) => {
  const growths = fc
    .tuple(
      fc.double({ min: -2, max: 12, noNaN: true }),
      fc.double({ min: 5, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 5, max: 20, noNaN: true }),
    )
    .map(([low, rise, flat, fall]) => ({
      base: celsius(low),
      optimumLow: celsius(low + rise),
      optimumHigh: celsius(low + rise + flat),
      ceiling: celsius(low + rise + flat + fall),
      form,
    }));
  const temperature = fc.double({ min: -60, max: 60, noNaN: true });

  test("is a number from nothing to its most at every temperature", () => {
    fc.assert(
      fc.property(growths, temperature, (growth, at) => {
        const found = response(at, growth);
        expect(found).toBeGreaterThanOrEqual(0);
        expect(found).toBeLessThanOrEqual(growth.optimumLow - growth.base + 1e-9);
      }),
      { seed: 1 },
    );
  });

  test("never falls up to the optimum and never rises beyond it", () => {
    fc.assert(
      fc.property(growths, temperature, temperature, (growth, a, b) => {
        const [cool, warm] = [Math.min(a, b), Math.max(a, b)];
        const rise = response(warm, growth) - response(cool, growth);
        const [first, last] =
          form === "trapezoid"
            ? [growth.optimumLow, growth.optimumHigh]
            : [(growth.optimumLow + growth.optimumHigh) / 2, (growth.optimumLow + growth.optimumHigh) / 2];
        if (warm <= first) expect(rise).toBeGreaterThanOrEqual(-1e-9);
        if (cool >= last) expect(rise).toBeLessThanOrEqual(1e-9);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  test("passes its cardinal temperatures without a step", () => {
    fc.assert(
      fc.property(growths, (growth) => {
        for (const at of [growth.base, growth.optimumLow, growth.optimumHigh, growth.ceiling]) {
          // The smooth forms leave base and ceiling as a root of the way, steeply.
          expect(Math.abs(response(at + 1e-9, growth) - response(at - 1e-9, growth))).toBeLessThan(0.2);
        }
      }),
      { seed: 1 },
    );
  });
});
