import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import type { Celsius, LocalDate } from "../../src/quantity/index.ts";
import {
  asHardened,
  frostWarning,
  hardening,
  killingTemperature,
  livedBefore,
} from "../../src/watch/index.ts";

const { crops, settings } = catalogue();

/** Nine days that fall to one temperature at night and rise by eight degrees, the last of them to `last`. */
function days(low: number, last = low + 8): Float64Array {
  return Float64Array.from({ length: 9 * 24 }, (_, hour) => {
    const high = hour >= 8 * 24 ? last : low + 8;
    return low + ((high - low) * (1 - Math.cos((hour * Math.PI) / 12))) / 2;
  });
}

const killing = (id: string, temperature: Float64Array): number =>
  killingTemperature(crops.get(id)!, livedBefore(temperature, temperature.length), settings);

describe("what kills a plant after the week it has had", () => {
  // Plant Physiol. 2004, table I: soft leaves of winter canola die at −3 °C; growers' winter-kill lists: hardened red Russian kale at −9.5.
  it("differs for red Russian kale by the 6.5 °C between soft and hardened after a week of 10 °C and one of 0 °C nights", () => {
    expect(killing("red-russian-kale", days(10))).toBe(-3);
    expect(killing("red-russian-kale", days(0))).toBe(-9.5);
  });

  // Rapid cold acclimation of spinach, abstract: 3 to 5 °C lost within a day at 20/17 °C.
  it("differs for spinach by the middle of the 3 to 5 °C that a warm day is known to take", () => {
    expect(killing("spinach", days(10)) - killing("spinach", days(0))).toBeCloseTo(4, 9);
  });

  // Tamura 2002: slight from 8 down to 2 °C, strong below 2 °C.
  it("hardens little while the week's nights are between 8 and 2 °C, and strongly below", () => {
    const hardened = [9, 8, 5, 2, 1, 0].map((lows) => hardening({ lows, lastDay: 5 }, settings));
    expect(hardened).toEqual([0, 0, 0.125, 0.25, 0.625, 1]);
  });

  it("is soft again after one day of 18.5 °C under the cover at the end of a cold week", () => {
    const cold = days(0);
    const warm = cold.slice();
    warm.fill(18.5, 8 * 24);
    expect(killing("spinach", cold)).toBe(-13);
    expect(killing("spinach", warm)).toBe(-9);
  });

  it("is never outside soft and hardened, and never lower after warmer nights or a warmer day", () => {
    const felt = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...crops.values()), felt, felt, felt, (crop, lows, lastDay, warmer) => {
        const here = killingTemperature(crop, { lows, lastDay }, settings);
        expect(here).toBeGreaterThanOrEqual(crop.kill);
        expect(here).toBeLessThanOrEqual(crop.killSoft);
        const more = Math.abs(warmer);
        for (const lived of [
          { lows: lows + more, lastDay },
          { lows, lastDay: lastDay + more },
        ])
          expect(killingTemperature(crop, lived, settings)).toBeGreaterThanOrEqual(here - 1e-12);
      }),
    );
  });

  it("is judged by the hours there are when there is less than a week of them", () => {
    expect(livedBefore(Float64Array.of(4, 2, 6), 3)).toEqual({ lows: 2, lastDay: 4 });
  });
});

describe("leaves", () => {
  const unfit = (id: string, lows: number): number =>
    asHardened(crops.get(id)!, { lows, lastDay: 5 }, settings).unfit;

  it("are unfit no later than the plant dies: soft red Russian kale at −3 °C, hardened at its own −5 °C", () => {
    expect([10, 0].map((lows) => unfit("red-russian-kale", lows))).toEqual([-3, -5]);
  });

  it("of lettuce are unfit at −2.2 °C, soft or hardened, because its plants bear more", () => {
    expect([10, 0].map((lows) => unfit("lettuce-mix", lows))).toEqual([-2.2, -2.2]);
  });
});

describe("the same night of −7 °C over red Russian kale", () => {
  const night = {
    date: "2026-04-20" as LocalDate,
    bare: -7 as Celsius,
    expected: -7 as Celsius,
    promised: -7 as Celsius,
    windy: false,
  };
  const crop = crops.get("red-russian-kale")!;
  const judged = (lows: number) => {
    const kill = killingTemperature(crop, { lows, lastDay: lows + 4 }, settings);
    return frostWarning(
      "T1",
      night,
      [{ id: "S1", crop, of: "leaves", kill, risk: 0.5, cutSoon: false }],
      settings,
    );
  };

  it("marks leaves after a week of 0 °C nights and loses the planting after a week of 10 °C nights", () => {
    expect(judged(0)).toMatchObject({ severity: "care", kill: -9.5, unfit: -5 });
    expect(judged(10)).toMatchObject({ severity: "danger", kill: -3, unfit: -3 });
  });
});
