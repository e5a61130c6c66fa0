import { describe, expect, test } from "vitest";
import { type Outcome, type SuccessionOutlook, sceneOf, type WeekInput } from "../../src/decide/index.ts";
import type { Settings } from "../../src/farm/index.ts";
import { leafLength, thermalTimeAt } from "../../src/growth/index.ts";
import { normalBelow } from "../../src/learn/index.ts";
import { centimetre, type LocalDate } from "../../src/quantity/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";

const farm = exampleFarm();
/** Covers stay as they lie: what is looked at here is what the members make of them. */
const unchanging = { ...farm, limits: { ...farm.limits, changesPerWeek: 0 } };
const monday = mondayInput(unchanging, "New York", "2013-04-22" as LocalDate);
const given = (changed: Partial<Settings>, input: WeekInput = monday): Outcome =>
  week({ ...input, settings: { ...input.settings, ...changed } });

/** Nothing uncertain but requirements. */
const CERTAIN: Partial<Settings> = {
  forecastSpread: 0,
  forecastSpreadPerDay: 0,
  forecastSpreadMost: 0,
  carriedLevel: 0,
  warmthSpread: 0,
  shadeSpread: 0,
};

const picks = (outcome: Outcome) =>
  outcome.successions.flatMap((outlook) => outlook.atPicks.map((at) => ({ outlook, at })));

describe("what the members come to", () => {
  test("is what the requirement's normal alone gives when weather and covers are certain", () => {
    let compared = 0;
    for (const { outlook, at } of picks(given(CERTAIN))) {
      const { curve, shift } = outlook.basis!;
      const { crop, spread } = outlook;
      const time = thermalTimeAt(curve, at.unchanged.middle) * Math.exp(shift);
      const z = (length: number): number =>
        (Math.log(time / thermalTimeAt(curve, centimetre(length))) - shift) / spread;
      // A leaf hardly longer than at emergence says nothing of thermal time.
      if (at.unchanged.middle < 2) continue;
      const odds = normalBelow(z(crop.smallest)) - normalBelow(z(crop.largest));
      expect(Math.abs(at.oddsUnchanged - odds)).toBeLessThan(0.012);
      const low = leafLength(curve, time * Math.exp(-shift - 1.2816 * spread));
      expect(Math.abs(at.unchanged.low - low)).toBeLessThan(0.12);
      expect(at.medianUnchanged).toBeCloseTo(at.unchanged.middle, 1);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(40);
  });

  test("is the same for the same seed", () => {
    expect(picks(given({})).map(({ at }) => [at.odds, at.planned.low])).toEqual(
      picks(given({})).map(({ at }) => [at.odds, at.planned.low]),
    );
  });

  test("holds wider ranges the less is known of the weather, most of all with neither forecast nor past years", () => {
    const widths = (outcome: Outcome): number => {
      const all = picks(outcome).map(
        ({ at }) => (at.unchanged.high - at.unchanged.low) / at.unchanged.middle,
      );
      return all.reduce((a, b) => a + b, 0) / all.length;
    };
    // Requirements all but certain, so that the weather is what is seen.
    const crops = new Map(
      [...monday.farm.crops].map(([id, crop]) => [id, { ...crop, requirementSpread: 0.02 }]),
    );
    const known = { ...monday, farm: { ...monday.farm, crops } };
    const exact = { spreadFloor: 0.02, usualSpread: 0, carriedSpread: 0 };
    const [certain, foretold, blind] = [
      given({ ...exact, ...CERTAIN }, known),
      given(exact, known),
      given(exact, { ...known, forecast: null }),
    ].map(widths);
    expect(foretold!).toBeGreaterThan(certain! * 1.5);
    expect(blind!).toBeGreaterThan(foretold! * 1.2);
  });

  test("learns from kept forecasts that were always too cold: the same forecast is taken to be warmer", () => {
    const cold = Array.from({ length: 60 }, (_, i) => {
      const issued = monday.on - (70 - i) * 86_400_000;
      const days = monday.sensors[0]!.hours.length > 0 ? loggedFrom(issued) : [];
      return { issued: issued as typeof monday.on, days };
    });
    const plain = sceneOf(monday).scene!;
    const learned = sceneOf({ ...monday, earlier: cold });
    expect(learned.madeFrom.learnedFrom).toBe(60);
    const highOf = (scene: typeof plain): number => scene.weather.days.find(({ lead }) => lead === 2)!.high;
    expect(highOf(learned.scene!)).toBeGreaterThan(highOf(plain) + 1);
    expect(highOf(learned.scene!)).toBeLessThan(highOf(plain) + 3);
  });

  test("dates, sizes and odds keep their order", () => {
    for (const outlook of given({}, { ...monday, farm }).successions) {
      for (const at of outlook.atPicks)
        for (const { low, middle, high } of [at.planned, at.unchanged]) {
          expect(low).toBeLessThanOrEqual(high);
          expect(middle).toBeGreaterThan(0);
        }
      for (const { early, late } of Object.values(outlook.reach.spread))
        if (early !== null && late !== null) expect(early <= late).toBe(true);
      expect(ranges(outlook).every(Number.isFinite)).toBe(true);
    }
  });
});

const ranges = ({ atPicks, atFate }: SuccessionOutlook): readonly number[] => [
  ...atPicks.flatMap(({ planned, odds, oddsUnchanged, weight, median }) => [
    planned.low,
    planned.high,
    odds,
    oddsUnchanged,
    weight,
    median,
  ]),
  ...(atFate === null ? [] : [atFate.odds, atFate.weight, atFate.inSize]),
];

/** What was logged on the three days from a moment on, 3 °C too cold. */
function loggedFrom(at: number) {
  const day = (offset: number) => {
    const { hours } = monday.sensors[0]!;
    const date = new Date(at + offset * 86_400_000 - 5 * 3_600_000).toISOString().slice(0, 10) as LocalDate;
    const own = hours.filter(
      ({ hour }) =>
        new Date(hour * 3_600_000 - 4 * 3_600_000).toISOString().slice(0, 10) === (date as string),
    );
    const [low, high] = [
      Math.min(...own.map(({ lowest }) => lowest)),
      Math.max(...own.map(({ highest }) => highest)),
    ];
    return { date, low: (low - 3) as never, high: (high - 3) as never, wind: null, sky: null };
  };
  return [0, 1, 2].map(day).filter(({ low }) => Number.isFinite(low));
}
