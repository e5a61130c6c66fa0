import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { leafCurve, leafLength, response, thermalTimeAt } from "../../src/growth/index.ts";
import { centimetre, degreeDays } from "../../src/quantity/index.ts";

const { crops, settings } = catalogue();

describe.each([...crops.values()])("the leaf of $id", (crop) => {
  const curve = leafCurve(crop, crop.requirement, settings);

  test("has the smallest salad size at the requirement, also at one a farm has learned", () => {
    for (const factor of [0.6, 1, 1.3]) {
      const requirement = degreeDays(crop.requirement * factor);
      expect(leafLength(leafCurve(crop, requirement, settings), requirement)).toBeCloseTo(crop.smallest, 10);
    }
  });

  test("stays in its window for 4.5 days at 16 °C", () => {
    const window = thermalTimeAt(curve, crop.largest) - thermalTimeAt(curve, crop.smallest);
    expect(window / response(16, crop.growth)).toBeCloseTo(4.5, 10);
  });

  test("lengthens all the way and ends at twice the largest salad size", () => {
    let last = 0;
    for (let thermalTime = 0; thermalTime <= 2 * crop.requirement; thermalTime += 5) {
      const length = leafLength(curve, thermalTime);
      expect(length).toBeGreaterThan(last);
      last = length;
    }
    expect(leafLength(curve, 1e6)).toBeCloseTo(2 * crop.largest, 10);
  });

  test("is little more than a cotyledon at emergence", () => {
    expect(leafLength(curve, 0)).toBeGreaterThanOrEqual(1);
    expect(leafLength(curve, 0)).toBeLessThan(crop.smallest / 3);
  });

  test("gives back the thermal time of every length it passes", () => {
    for (let length = crop.smallest / 2; length < 1.8 * crop.largest; length += 0.7) {
      expect(leafLength(curve, thermalTimeAt(curve, centimetre(length)))).toBeCloseTo(length, 10);
    }
  });
});

test("length and thermal time are each other's inverse at any length between the ends, whatever the crop and requirement", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...crops.values()),
      fc.double({ min: 80, max: 900, noNaN: true }),
      fc.double({ min: 0.001, max: 0.998, noNaN: true }),
      (crop, requirement, share) => {
        const curve = leafCurve(crop, degreeDays(requirement), settings);
        const length = centimetre(curve.start + share * (curve.end - curve.start));
        const thermalTime = thermalTimeAt(curve, length);
        fc.pre(thermalTime > 0);
        expect(leafLength(curve, thermalTime)).toBeCloseTo(length, 9);
      },
    ),
    { seed: 1, numRuns: 1000 },
  );
});

test("a length the curve cannot have is kept to its ends", () => {
  const crop = crops.get("lettuce-mix")!;
  const curve = leafCurve(crop, crop.requirement, settings);
  expect(thermalTimeAt(curve, centimetre(0))).toBe(0);
  expect(Number.isFinite(thermalTimeAt(curve, centimetre(500)))).toBe(true);
});
