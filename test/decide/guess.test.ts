import { describe, expect, test } from "vitest";
import { guessOf } from "../../src/decide/guess.ts";
import { catalogue, type Farm, type Note, type Usual } from "../../src/farm/index.ts";
import { celsius, centimetre, instant, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { ORIGINS, type Origin, type Weather } from "../../src/weather/index.ts";
import { farmOf, MINIMAL } from "../folder/fixtures.ts";
import { week } from "../week.ts";

const { settings } = catalogue();

describe("how much of a thermal time is guessed", () => {
  const origins: readonly Origin[] = [
    "usual",
    "usual",
    "carried",
    "logger",
    "filled",
    "estimated",
    "logger",
    "forecast",
  ];
  const weather = {
    origin: Uint8Array.from(origins, (origin) => ORIGINS.indexOf(origin)),
  } as unknown as Weather;
  const { usualSpread, carriedSpread } = settings;

  test("each hour without a log counts by its share of all", () => {
    const all = guessOf(weather, 0, 0, 8, settings);
    expect(all.share).toBe(0.5);
    expect(all.spread).toBeCloseTo((2 * usualSpread + 2 * carriedSpread) / 8, 12);
    expect(guessOf(weather, 3, 3, 5, settings)).toEqual({ share: 0, spread: 0 });
  });

  test("what lies before a measured leaf is no longer guessed", () => {
    expect(guessOf(weather, 0, 2, 8, settings).spread).toBeCloseTo((2 * carriedSpread) / 8, 12);
    expect(guessOf(weather, 0, 8, 8, settings)).toEqual({ share: 0, spread: 0 });
  });

  test("a bed of this hour and one still to be sown have nothing to guess", () => {
    expect(guessOf(weather, 4, 4, 4, settings)).toEqual({ share: 0, spread: 0 });
    expect(guessOf(weather, 20, 20, 8, settings)).toEqual({ share: 0, spread: 0 });
  });
});

describe("a bed without a log", () => {
  const zone = "America/New_York";
  const on = instant(instantAt(zone, "2026-04-20" as LocalDate, 7) - 60_000);
  const farm = farmOf({
    farm: MINIMAL,
    successions: "id,crop,tunnel,from (m),to (m),sown\nS01,arugula,T1,0,15,2026-03-18\n",
  });
  const months = (warmer: number): readonly Usual[] =>
    [3, 4, 5].map((month) => ({ month, low: celsius(4 + warmer), high: celsius(17 + warmer) }));
  const leaf = (at: string, hour: number, ...lengths: readonly number[]): Note => ({
    at: instantAt(zone, at as LocalDate, hour),
    line: 2,
    remark: "",
    kind: "leaf",
    succession: "S01",
    lengths: lengths.map(centimetre),
  });
  const arugula = (changed: Partial<Farm>) =>
    week({
      farm: { ...farm, ...changed },
      settings,
      sensors: [],
      forecast: null,
      on,
      days: 7,
      problems: [],
    }).successions[0]!;

  test("spreads wider than the crop alone, and by the stated rule", () => {
    const { spread, guessed, measured } = arugula({ usual: months(0) });
    const alone = farm.crops.get("arugula")!.requirementSpread;
    expect([guessed, measured]).toEqual([1, 0]);
    expect(spread).toBeCloseTo(Math.hypot(alone, settings.usualSpread), 3);
  });

  test("has the size of the leaf measured, however cold or warm the days are taken to have been", () => {
    for (const warmer of [-8, -4, 0, 4]) {
      const { sizeNow, guessed, measured, spread } = arugula({
        usual: months(warmer),
        notes: [leaf("2026-04-20", 6.9, 6, 6.2, 5.8)],
      });
      expect(sizeNow!.middle).toBeCloseTo(6, 1);
      expect([measured, guessed]).toEqual([1, 0]);
      expect(spread).toBeLessThanOrEqual(farm.crops.get("arugula")!.requirementSpread);
    }
  });

  test("is up when a leaf was measured, also where cold usual weather would have it still in the ground", () => {
    const cold = months(-9);
    expect(arugula({ usual: cold }).sizeNow).toBeNull();
    const { sizeNow, stage, emergence } = arugula({ usual: cold, notes: [leaf("2026-04-10", 12, 3)] });
    expect(stage).toBe("growing");
    expect(sizeNow!.middle).toBeGreaterThanOrEqual(3);
    expect(emergence!.at).toBeLessThanOrEqual(instantAt(zone, "2026-04-10" as LocalDate, 12));
  });

  test("grows less sure again with the days since its leaf", () => {
    const spread = (at: string): number => arugula({ usual: months(0), notes: [leaf(at, 6, 5)] }).spread;
    expect(spread("2026-04-10")).toBeGreaterThan(spread("2026-04-15"));
    expect(spread("2026-04-15")).toBeGreaterThan(spread("2026-04-20"));
  });
});
