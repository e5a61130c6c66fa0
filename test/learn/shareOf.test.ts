import { describe, expect, test } from "vitest";
import { shareLimits } from "../../src/learn/index.ts";

describe("what so few leave open of a share", () => {
  test("is 0.7077 to 0.7654 for 682 of 925 at 95 %, as R's binom.test prints it (Clopper and Pearson 1934)", () => {
    const { low, high } = shareLimits(682, 925, 0.95);
    expect([low.toFixed(7), high.toFixed(7)]).toEqual(["0.7076683", "0.7654066"]);
  });

  test("begins at 0.2486046 for 3 of 4 at 90 %: R's binom.test of one side at 95 %, as printed", () => {
    expect(shareLimits(3, 4, 0.9).low.toFixed(7)).toBe("0.2486046");
  });

  test("ends at 0 and 1 - (0.025)^(1/n) for none, and the other way round for all, by hand", () => {
    for (const count of [1, 2, 8, 30]) {
      const none = shareLimits(0, count, 0.95);
      expect(none.low).toBe(0);
      expect(none.high).toBeCloseTo(1 - 0.025 ** (1 / count), 12);
      const all = shareLimits(count, count, 0.95);
      expect(all.high).toBe(1);
      expect(all.low).toBeCloseTo(0.025 ** (1 / count), 12);
    }
  });

  test("turns round when hits and misses change places", () => {
    for (const hits of [1, 3, 6]) {
      const [here, there] = [shareLimits(hits, 9, 0.95), shareLimits(9 - hits, 9, 0.95)];
      expect(here.low).toBeCloseTo(1 - there.high, 12);
      expect(here.high).toBeCloseTo(1 - there.low, 12);
    }
  });

  test("holds the true chance in 95 % of cases or more, whatever it is", () => {
    const count = 12;
    for (const chance of [0.05, 0.3, 0.5, 0.8, 0.97]) {
      let holds = 0;
      let ways = 1;
      for (let hits = 0; hits <= count; hits++) {
        if (hits > 0) ways = (ways * (count - hits + 1)) / hits;
        const { low, high } = shareLimits(hits, count, 0.95);
        if (low <= chance && chance <= high) holds += ways * chance ** hits * (1 - chance) ** (count - hits);
      }
      expect(holds).toBeGreaterThanOrEqual(0.95);
    }
  });
});
