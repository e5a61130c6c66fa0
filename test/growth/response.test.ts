import { expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { response } from "../../src/growth/index.ts";
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
