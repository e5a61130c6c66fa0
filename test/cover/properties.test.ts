import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { climate, type Lying } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import type { Weather } from "../../src/weather/index.ts";
import {
  cropHeightDrop,
  gain,
  growingPoint,
  type Hour,
  leaf,
  lightThrough,
  promisedGain,
  seedbedCooling,
} from "./oneHour.ts";
import { plainClimate } from "./plain.ts";

const { covers, settings } = catalogue();

const airs: fc.Arbitrary<Hour> = fc.record({
  temperature: fc.double({ min: -60, max: 60, noNaN: true }),
  radiation: fc.double({ min: 0, max: 1200, noNaN: true }),
  wind: fc.double({ min: 0, max: 40, noNaN: true }),
  cloud: fc.double({ min: 0, max: 1, noNaN: true }),
});
const lyings: fc.Arbitrary<readonly Lying[]> = fc
  .subarray([...covers.values()], { maxLength: 3 })
  .chain((lain) =>
    fc
      .array(fc.boolean(), { minLength: lain.length, maxLength: lain.length })
      .map((vented) => lain.map((cover, i) => ({ cover, vented: vented[i]! }))),
  );
const under = (id: string): readonly Lying[] => [{ cover: covers.get(id)!, vented: false }];

/** Everything said of one hour. */
const said = (lying: readonly Lying[], air: Hour): readonly number[] => [
  gain(lying, air, settings),
  promisedGain(lying, air, settings),
  growingPoint(lying, air, settings),
  leaf(lying, air, settings),
  seedbedCooling(lying, air.radiation, settings),
  cropHeightDrop(air, settings),
  lightThrough(lying, settings),
];

/** A weather of these hours, and nothing else of a weather that a climate looks at. */
const weatherOf = (hours: readonly Hour[]): Weather =>
  ({
    temperature: Float64Array.from(hours, ({ temperature }) => temperature),
    radiation: Float64Array.from(hours, ({ radiation }) => radiation),
    wind: Float64Array.from(hours, ({ wind }) => wind),
    cloud: Float64Array.from(hours, ({ cloud }) => cloud),
  }) as Weather;

const series = fc.array(airs, { minLength: 1, maxLength: 60 });

describe("whatever the air and whatever lies", () => {
  it("every temperature and every share of light is a number", () => {
    fc.assert(
      fc.property(lyings, airs, (lying, air) => {
        expect(said(lying, air).every(Number.isFinite)).toBe(true);
      }),
    );
  });

  it("so is every hour of a climate, with a logger that recorded some of them", () => {
    fc.assert(
      fc.property(
        lyings,
        series,
        fc.array(fc.option(fc.double({ min: -60, max: 60, noNaN: true }))),
        (lying, hours, log) => {
          const logged = Float64Array.from(hours, (_, i) => log[i] ?? Number.NaN);
          const made = climate(weatherOf(hours), [{ from: 0, to: hours.length, lying }], settings, logged);
          const { growing, seedbed, radiation, frost, frostPromised, heat } = made;
          for (const values of [growing, seedbed, radiation, frost, frostPromised, heat])
            expect(values.every(Number.isFinite)).toBe(true);
        },
      ),
    );
  });

  it("no more is promised against frost than is expected, and the crop is never above the station at night for want of a cover", () => {
    fc.assert(
      fc.property(lyings, airs, (lying, air) => {
        expect(promisedGain(lying, air, settings)).toBeLessThanOrEqual(gain(lying, air, settings));
        expect(cropHeightDrop(air, settings)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("light cloth and dry film promise nothing", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("row-cover-10", "row-cover-19", "film", "film-perforated", "shade-50", "net"),
        airs,
        (id, air) => {
          expect(promisedGain(under(id), air, settings)).toBeLessThanOrEqual(0);
        },
      ),
    );
  });

  it("heavier cloth protects a night no less than lighter", () => {
    fc.assert(
      fc.property(airs, (air) => {
        const night = { ...air, radiation: 0 };
        const cloths = ["row-cover-10", "row-cover-19", "row-cover-30", "row-cover-50"];
        const [expected, promised] = [gain, promisedGain].map((of) =>
          cloths.map((id) => of(under(id), night, settings)),
        );
        for (const gains of [expected!, promised!]) expect(gains).toEqual([...gains].sort((a, b) => a - b));
        expect(gain(under("row-cover-19-double"), night, settings)).toBeGreaterThanOrEqual(expected![1]!);
      }),
    );
  });

  it("a layer more never takes warmth away, and never gives by day what it would give alone", () => {
    fc.assert(
      fc.property(airs, (air) => {
        const [film, cloth] = [under("film-perforated"), under("row-cover-19")];
        const [one, other] = [gain(film, air, settings), gain(cloth, air, settings)];
        const both = gain([...film, ...cloth], air, settings);
        expect(both).toBeGreaterThanOrEqual(Math.max(one, other) - 1e-9);
        expect(both).toBeLessThanOrEqual(one + other + 1e-9);
      }),
    );
  });
});

describe("nothing jumps", () => {
  /** The steepest there is under three layers: a loss of 6.5 W/m²/K, a dusk of 20 W/m², film's 3.6 °C of night. */
  const STEEPEST = { radiation: 1, wind: 200, cloud: 10 } as const;

  it.each(["radiation", "wind", "cloud"] as const)("with a little more %s", (key) => {
    fc.assert(
      fc.property(lyings, airs, (lying, air) => {
        const step = 1e-6;
        const next = said(lying, {
          ...air,
          [key]: air[key] + (key === "cloud" && air.cloud > 0.5 ? -step : step),
        });
        said(lying, air).forEach((value, i) => {
          expect(Math.abs(next[i]! - value)).toBeLessThan(STEEPEST[key] * step + 1e-12);
        });
      }),
    );
  });

  it("when day passes into night: two hours a watt apart differ by less than 0.6 °C, however little light is left", () => {
    fc.assert(
      fc.property(lyings, airs, fc.double({ min: 0, max: 40, noNaN: true }), (lying, air, radiation) => {
        const [dusk, darker] = [radiation, Math.max(0, radiation - 1)].map((left) =>
          growingPoint(lying, { ...air, radiation: left }, settings),
        );
        expect(Math.abs(dusk! - darker!)).toBeLessThan(0.6);
      }),
    );
  });
});

describe("the equations as they are written down (plain.ts)", () => {
  const ROWS = ["growing", "seedbed", "radiation", "frost", "frostPromised", "heat"] as const;
  /** Dawn and dusk too, and darkness as most hours of a night have it. */
  const hours = fc.array(
    fc.tuple(airs, fc.constantFrom(0, 5, 20, null)).map(([air, radiation]) => ({
      ...air,
      radiation: radiation ?? air.radiation,
    })),
    { minLength: 2, maxLength: 80 },
  );

  it("give every hour of a climate to a billionth, whatever follows what and whatever a logger recorded", () => {
    fc.assert(
      fc.property(
        hours,
        fc.array(lyings, { minLength: 1, maxLength: 4 }),
        fc.array(fc.option(fc.double({ min: -60, max: 60, noNaN: true }))),
        fc.nat({ max: 1 }),
        (air, lain, log, first) => {
          const edges = [
            first,
            ...lain
              .slice(1)
              .map((_, i) => first + Math.floor(((i + 1) * (air.length - first)) / lain.length)),
            air.length,
          ];
          const stretches = lain.map((lying, i) => ({ from: edges[i]!, to: edges[i + 1]!, lying }));
          const logged = Float64Array.from(air, (_, i) => log[i] ?? Number.NaN);
          const quick = climate(weatherOf(air), stretches, settings, logged);
          const plain = plainClimate(weatherOf(air), stretches, settings, logged);
          expect(quick.from).toBe(plain.from);
          for (const row of ROWS) {
            expect(quick[row]).toHaveLength(plain[row].length);
            quick[row].forEach((value, i) => {
              expect(Math.abs(value - plain[row][i]!)).toBeLessThan(1e-9);
            });
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
