import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import type { Celsius, LocalDate } from "../../src/quantity/index.ts";
import {
  boltingWarning,
  byUrgency,
  damageOdds,
  type Exposed,
  frostWarning,
  heatWarning,
  predicted,
  seedbedWarning,
  snowWarning,
} from "../../src/watch/index.ts";
import type { DayWeather } from "../../src/weather/index.ts";

const { crops, settings } = catalogue();
const spinach = crops.get("spinach")!;
const lettuce = crops.get("lettuce-mix")!;
const date = "2026-05-01" as LocalDate;
const exposed = (crop = lettuce, kill = crop.kill): readonly Exposed[] => [
  { id: "S1", crop, of: "leaves", kill, risk: 0.2, cutSoon: true },
];
const night = (bare: number, promised = bare) => ({
  date,
  bare: bare as Celsius,
  expected: promised as Celsius,
  promised: promised as Celsius,
  windy: false,
});
const day = (dayLength: number, light = 40): DayWeather => ({ date, dayLength, light }) as DayWeather;

describe("frost", () => {
  it("is told from a degree above what the leaves of a crop bear, and not before", () => {
    expect(frostWarning("T1", night(lettuce.unfit + 1.01), exposed(), settings)).toBeNull();
    expect(frostWarning("T1", night(lettuce.unfit + 1), exposed(), settings)).toMatchObject({
      kind: "frost",
    });
  });

  it("is danger where leaves soon cut are not promised to stay fit, and else only where plants die", () => {
    const severity = (promised: number, cutSoon: boolean) =>
      frostWarning("T1", night(promised), [{ ...exposed()[0]!, cutSoon }], settings)?.severity;
    expect(severity(-3, true)).toBe("danger");
    expect(severity(-3, false)).toBe("care");
    expect(severity(-6.1, false)).toBe("danger");
  });
});

describe("snow", () => {
  const on = (snowfall: number, tunnels: readonly string[]) => snowWarning(date, snowfall, tunnels, settings);

  // Judgement: 1 mm of water is about 1 cm of new snow.
  it("is told from a centimetre on, with its rough depth, where something lies on hoops", () => {
    expect(on(8, ["T1"])).toEqual({
      kind: "snow",
      severity: "care",
      date,
      water: 8,
      depth: 8,
      tunnels: ["T1"],
    });
    expect([on(0.9, ["T1"]), on(8, [])]).toEqual([null, null]);
  });
});

describe("heat", () => {
  const at = (ifLeft: number, planned: number) =>
    heatWarning("T1", date, ifLeft as Celsius, planned as Celsius, exposed(), settings);

  // Common practice, no source: lettuce and spinach are warned of at 27 °C (80 °F).
  it("is told from a degree above the crop's quality limit, as it lies or as planned", () => {
    expect(at(28, 28)).toBeNull();
    expect(at(28.1, 20)).toMatchObject({ severity: "care", limit: 27 });
  });

  it("is danger only where the plan lets it reach the ceiling", () => {
    expect(at(40, 34.9)?.severity).toBe("care");
    expect(at(40, 35)?.severity).toBe("danger");
  });
});

describe("bolting", () => {
  // Utah State University: spinach is a long-day plant, 12 to 15 h by cultivar.
  it("is told of spinach that is past its size from 13 h of day on", () => {
    expect(boltingWarning("S1", spinach, true, day(12.9))).toBeNull();
    expect(boltingWarning("S1", spinach, true, day(13))).toMatchObject({ kind: "bolting" });
    expect(boltingWarning("S1", spinach, false, day(16))).toBeNull();
  });

  it("does not depend on light: shade never takes a warning away", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 8, max: 18, noNaN: true }),
        (light, hours) => {
          expect(boltingWarning("S1", spinach, true, day(hours, light))).toEqual(
            boltingWarning("S1", spinach, true, day(hours)),
          );
        },
      ),
    );
  });
});

// Harrington: 52 % normal seedlings of spinach at 20 °C, 28 % at 25 °C; of lettuce 99 % at 25 °C, 12 % at 30 °C.
it("a seedbed is too warm for spinach above 20 °C, and for lettuce above 25.7 °C", () => {
  const warned = (crop: typeof spinach, seedbed: number) =>
    seedbedWarning("S1", crop, date, seedbed as Celsius) !== null;
  expect([20, 20.1].map((seedbed) => warned(spinach, seedbed))).toEqual([false, true]);
  expect([25.7, 25.8].map((seedbed) => warned(lettuce, seedbed))).toEqual([false, true]);
});

describe("the odds of damage", () => {
  const temperature = fc.double({ min: -60, max: 60, noNaN: true });
  const any = fc.constantFrom(...crops.values());

  it("are a number, and grow with cold, with heat and in no case fall below nothing", () => {
    fc.assert(
      fc.property(any, temperature, temperature, fc.integer({ min: 0, max: 21 }), (crop, a, b, lead) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const odds = damageOdds(crop, low, high, lead, settings);
        expect(Number.isFinite(odds)).toBe(true);
        expect(odds).toBeGreaterThanOrEqual(0);
        expect(damageOdds(crop, low - 1, high, lead, settings)).toBeGreaterThanOrEqual(odds);
        expect(damageOdds(crop, low, high + 1, lead, settings)).toBeGreaterThanOrEqual(odds);
      }),
    );
  });

  it("are even at the temperature from which leaves are unfit", () => {
    expect(damageOdds(lettuce, lettuce.unfit, -60, 0, settings)).toBeCloseTo(1, 9);
    expect(predicted(damageOdds(lettuce, lettuce.unfit - 0.01, -60, 3, settings))).toBe(true);
  });
});

it("danger comes before care, frost before heat, and then the earlier day", () => {
  const heat = heatWarning("T1", date, 50 as Celsius, 50 as Celsius, exposed(), settings)!;
  const frost = frostWarning("T1", night(-9), exposed(), settings)!;
  const bolting = boltingWarning("S1", spinach, true, day(15))!;
  const later = { ...frost, date: "2026-05-02" as LocalDate };
  expect(byUrgency([bolting, later, heat, frost])).toEqual([frost, later, heat, bolting]);
});
