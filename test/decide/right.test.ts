import { describe, expect, test } from "vitest";
import {
  type PaceBounds,
  rightAt,
  type SuccessionResult,
  type SuccessionTable,
} from "../../src/decide/index.ts";
import type { LeafCurve } from "../../src/growth/index.ts";

/**
 * Worked by hand. Leaves by 1 cm + 11 cm / (1 + e^(−0.02·(E − 150))): E = 100 makes 1 + 11/(1 + e) = 3.96 cm, 150 makes 6.5 cm,
 * 200 makes 9.04 cm, 250 makes 10.69 cm. Salad size is 6 to 10 cm. 100 °C·d now; two intervals, then up to the pick half of a third; in
 * each of them bare brings 20, 20 and 10, cloth 50, 50 and 25.
 */
const curve = { start: 1, end: 12, rate: 0.02, middle: 150 } as unknown as LeafCurve;
const [BARE, CLOTH] = [0, 1];

const table = (thermalTime: number): SuccessionTable =>
  ({
    standing: { crop: { smallest: 6, largest: 10 } },
    growing: { curve, belief: { shift: 0 } },
    thermalTime,
    pace: Float64Array.of(20, 50, 20, 50, 20, 50),
  }) as unknown as SuccessionTable;

/** At the pick with nothing changed. */
const unchanged = (thermalTime: number): SuccessionResult =>
  ({ thermalTime, outlet: { interval: 2, pace: Float64Array.of(10, 25) } }) as unknown as SuccessionResult;

const both: PaceBounds = { fastest: () => CLOTH, slowest: () => BARE };

describe("at a pick a succession is", () => {
  test.each([
    // Bare 100 + 20 + 20 + 10 = 150: 6.5 cm.
    ["in salad size as it is", 100, 150, both, "asItIs"],
    // Bare 60 + 50 = 110: 4.4 cm; with cloth 60 + 125 = 185: 8.4 cm.
    ["too small as it is, and large enough under cloth", 60, 110, both, "withCovers"],
    // As it is, under cloth, 185 + 125 = 310: 11.6 cm; bare 185 + 50 = 235: 10.3 cm.
    ["too large whatever lies on it", 185, 310, both, "no"],
    // Under cloth 160 + 125 = 285: 11.3 cm; bare 160 + 50 = 210: 9.5 cm.
    ["too large as it is, and held back bare", 160, 285, both, "withCovers"],
    // With cloth 10 + 125 = 135: 5.7 cm.
    ["too small whatever lies on it", 10, 60, both, "no"],
    // Nothing may go on: 60 + 50 = 110.
    ["too small where cloth may not go on", 60, 110, { fastest: () => BARE, slowest: () => BARE }, "no"],
  ] as const)("%s", (_, now, asItIs, bounds, right) => {
    expect(rightAt(table(now), unchanged(asItIs), 3, bounds)).toBe(right);
  });

  test("judged under what lies on it in the last interval, where the pick lies beyond them", () => {
    // Two intervals bring 40, what lies from the last on 10: 60 + 50; cloth in the second and after: 20 + 50 + 25.
    const later: PaceBounds = { fastest: (i) => (i === 1 ? CLOTH : BARE), slowest: () => BARE };
    expect(rightAt(table(60), unchanged(110), 2, later)).toBe("withCovers");
    expect(rightAt(table(60), unchanged(110), 2, { ...later, fastest: () => BARE })).toBe("no");
  });
});
