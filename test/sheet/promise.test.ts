import { describe, expect, test } from "vitest";
import type { Promised } from "../../src/decide/index.ts";
import { type Instant, kilogram, pounds } from "../../src/quantity/index.ts";
import { promiseChanges, promiseText } from "../../src/sheet/index.ts";
import { metricSample, sample } from "./sample.ts";

const LETTERS = { unicode: true };
const [spicy, spinach] = sample().promises as [Promised, Promised];
const { farm } = sample();

/** The line that tells of one product. */
const told = (changed: Partial<Promised>): string => {
  const text = promiseText({ ...sample(), promises: [{ ...spicy, ...changed }] }, null, LETTERS);
  return text.split("\n- ")[1]!.split("\n\n")[0]!.replace("\n  ", " ");
};

describe("the list of what is safe to offer", () => {
  test("is a short message under the farm's name, in pounds", () => {
    expect(promiseText(sample(), null, LETTERS)).toBe(`Two Oaks
Greens to offer, as of Mon Apr 20, 2026

Saturday stall, Sat Apr 25
- Spicy mix: 24 lb safe, 40 lb ordered: 16 lb short. Up to
  39 lb may come.
- Spinach: nothing safe yet. Up to 11½ lb may come.

Safe: there in 4 of 5 cases. May come: only in 1 of 5.
With what is cut already, where its weight is noted.
No contract: weather and pests may still take some.
Greens cut early are kept cold, as local food rules say.
`);
  });

  test("is the same in kilograms", () => {
    expect(promiseText(metricSample(), null, LETTERS)).toBe(`Two Oaks
Greens to offer, as of Mon 20 Apr 2026

Saturday stall, Sat 25 Apr
- Spicy mix: 11 kg safe, 18.1 kg ordered: 7.1 kg short. Up
  to 17.5 kg may come.
- Spinach: nothing safe yet. Up to 5.25 kg may come.

Safe: there in 4 of 5 cases. May come: only in 1 of 5.
With what is cut already, where its weight is noted.
No contract: weather and pests may still take some.
Greens cut early are kept cold, as local food rules say.
`);
  });

  test("rounds what is safe down, to half a pound, and what may come to the nearest", () => {
    expect(told({ safe: pounds(5.99), mayCome: pounds(9.26), ordered: kilogram(0) })).toBe(
      "Spicy mix: 5½ lb safe. Up to 9½ lb may come.",
    );
    expect(told({ safe: pounds(6), mayCome: pounds(6.2), ordered: kilogram(0) })).toBe(
      "Spicy mix: 6 lb safe.",
    );
    expect(told({ safe: pounds(0.49), mayCome: pounds(0.2), ordered: pounds(3) })).toBe(
      "Spicy mix: none for the 3 lb ordered.",
    );
  });

  test("says what is safe beyond an order, and nothing beside one that is just met", () => {
    expect(told({ safe: pounds(12.2), mayCome: pounds(12.2), ordered: pounds(10) })).toBe(
      "Spicy mix: 12 lb safe, 10 lb ordered: 2 lb to spare.",
    );
    expect(told({ safe: pounds(10.3), mayCome: pounds(10.2), ordered: pounds(10) })).toBe(
      "Spicy mix: 10 lb safe, 10 lb ordered.",
    );
  });

  test("leaves out what is neither ordered nor to be expected, and says so of a whole day", () => {
    const none = { ...spinach, mayCome: kilogram(0) };
    expect(promiseText({ ...sample(), promises: [none] }, null, LETTERS)).toContain(
      "Saturday stall, Sat Apr 25\n- Nothing safe yet.\n",
    );
  });

  test.each([
    ["no weather", { walks: [] }, "No weather is known, so nothing can be promised."],
    [
      "no product",
      { farm: { ...farm, products: [] } },
      "No products are listed in farm.yaml, so nothing can be\npromised.",
    ],
    ["no selling day", {}, "Nothing is picked for a selling day in these days."],
  ])("says why there is nothing to tell: %s", (_, changed, why) => {
    expect(promiseText({ ...sample(), ...changed, promises: [] }, null, LETTERS)).toBe(
      `Two Oaks\nGreens to offer, as of Mon Apr 20, 2026\n\n${why}\n`,
    );
  });

  test("needs no letters beyond plain ones, and no line is wider than sixty", () => {
    const text = promiseText(sample(), null, { unicode: false });
    expect(text).toMatch(/^[\n -~]*$/u);
    expect(Math.max(...text.split("\n").map(({ length }) => length))).toBeLessThanOrEqual(60);
    expect(text).toContain("11.5 lb may come");
  });
});

describe("what has changed of a list given out before", () => {
  const was = (safe: number, of: Promised = spicy) => ({ ...of, safe: pounds(safe) });

  test("is told product by product, as both were shown", () => {
    expect(promiseChanges(farm, [was(30), was(2, spinach)], [spicy, spinach])).toEqual([
      "Sat\u00a0Apr\u00a025, Spicy mix: 24\u00a0lb safe, was 30\u00a0lb.",
      "Sat\u00a0Apr\u00a025, Spinach: nothing safe now, was 2\u00a0lb.",
    ]);
    expect(promiseChanges(farm, [was(0.3)], [spicy])).toEqual([
      "Sat\u00a0Apr\u00a025, Spicy mix: 24\u00a0lb safe, nothing was.",
    ]);
  });

  test("is nothing where both read the same, or only one knows of the selling day", () => {
    expect(promiseChanges(farm, [was(24.05)], [spicy])).toEqual([]);
    expect(promiseChanges(farm, [], [spicy])).toEqual([]);
    expect(promiseChanges(farm, [was(9)], [])).toEqual([]);
  });

  test("names the market where two sell on one day", () => {
    const box = { ...spicy, market: "box" };
    const other = { ...farm, markets: [...farm.markets, { ...farm.markets[0]!, id: "box", name: "Box" }] };
    expect(promiseChanges(other, [was(9, box)], [spicy, box])).toEqual([
      "Sat\u00a0Apr\u00a025 (Box), Spicy mix: 24\u00a0lb safe, was 9\u00a0lb.",
    ]);
  });

  test("stands on the list under the day that one was given out", () => {
    const on = (sample().on - 2 * 86_400_000) as Instant;
    expect(promiseText(sample(), { on, promises: [was(30)] }, LETTERS)).toContain(
      "Changed since Sat Apr 18\n- Sat Apr 25, Spicy mix: 24 lb safe, was 30 lb.\n\nSafe:",
    );
    expect(promiseText(sample(), { on, promises: [spicy] }, LETTERS)).not.toContain("Changed");
  });
});
