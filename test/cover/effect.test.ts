import { describe, expect, it } from "vitest";
import type { Lying } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { cropHeightDrop, gain, growingPoint, type Hour, leaf, lightThrough } from "./oneHour.ts";

const { covers, settings } = catalogue();
const under = (...ids: readonly string[]): readonly Lying[] =>
  ids.map((id) => ({ cover: covers.get(id)!, vented: false }));
const noon: Hour = { temperature: 15, radiation: 700, wind: 2.5, cloud: 0 };
const night: Hour = { temperature: 0, radiation: 0, wind: 0, cloud: 0 };

describe("the climate under a cover", () => {
  // Washington State University Extension FS089E and a Virginia extension note, as fitted: full sun 700 W/m², 2.5 m/s.
  it.each([
    ["row-cover-10", 5.3],
    ["row-cover-19", 7.6],
    ["row-cover-30", 7.7],
    ["row-cover-50", 6.9],
    ["film", 20.6],
    ["film-perforated", 8.4],
  ])("is warmer by the day gain of the fitted table under %s", (id, degrees) => {
    expect(gain(under(id), noon, settings)).toBeCloseTo(degrees, 0);
    expect(Math.abs(gain(under(id), noon, settings) - degrees)).toBeLessThan(0.15);
  });

  it("reaches 27 °C under 19 g at 64 °F (17.8 °C) outside in sun at 1.5 m/s, near the 60 °F at which a Virginia extension note uncovers", () => {
    const air = { temperature: (64 - 32) / 1.8, radiation: 700, wind: 1.5, cloud: 0 };
    expect(growingPoint(under("row-cover-19"), air, settings)).toBeCloseTo(27, 0);
  });

  it("gains as much on a clear night as on a cloudy one under fabric, and more with cloud under film", () => {
    const cloudy = { ...night, cloud: 1 };
    expect(gain(under("row-cover-19"), cloudy, settings)).toBeCloseTo(
      gain(under("row-cover-19"), night, settings),
      9,
    );
    expect(gain(under("film"), cloudy, settings)).toBeGreaterThan(gain(under("film"), night, settings));
  });

  it("promises less than it expects, and nothing under light cloth", () => {
    for (const { frostCredit, night: expected } of covers.values())
      expect(frostCredit).toBeLessThanOrEqual(Math.max(0, expected.clear));
    expect(covers.get("row-cover-19")!.frostCredit).toBe(0);
    expect(covers.get("film")!.frostCredit).toBe(0);
  });

  it("passes from day to night without a step", () => {
    const at = (radiation: number): number => gain(under("row-cover-19"), { ...night, radiation }, settings);
    for (let radiation = 0; radiation < 200; radiation += 0.5) {
      expect(Math.abs(at(radiation + 0.5) - at(radiation))).toBeLessThan(0.05);
    }
  });

  it("cools the leaf by 1.5 to 2.5 °C under 39 % shade at 800 W/m², as measured in Kansas tunnels", () => {
    const cloth = { ...covers.get("shade-40")!, light: 0.61 };
    const cooled =
      30 - leaf([{ cover: cloth, vented: false }], { ...noon, temperature: 30, radiation: 800 }, settings);
    expect(cooled).toBeGreaterThan(1.5);
    expect(cooled).toBeLessThan(2.5);
  });

  it("lets light through layer by layer", () => {
    expect(lightThrough(under("net", "row-cover-19"), settings)).toBeCloseTo(0.9 * 0.85, 9);
    expect(lightThrough([], settings)).toBe(1);
  });

  // Common practice, no source: light row cover lets about 85 % of the light through.
  it("lets 85 % of the light through 19 g row cover", () => {
    expect(lightThrough(under("row-cover-19"), settings)).toBe(0.85);
  });

  it("leaves a third of the day's gain and half of the night's with a side lifted", () => {
    const vented: readonly Lying[] = [{ cover: covers.get("row-cover-19")!, vented: true }];
    expect(gain(vented, noon, settings) / gain(under("row-cover-19"), noon, settings)).toBeCloseTo(1 / 3, 3);
    expect(gain(vented, night, settings) / gain(under("row-cover-19"), night, settings)).toBeCloseTo(
      1 / 2,
      9,
    );
  });

  it("puts the crop 3 °C below the station on a clear calm night, and not at all by day, in cloud or in wind", () => {
    expect(cropHeightDrop(night, settings)).toBeCloseTo(3, 9);
    for (const air of [noon, { ...night, cloud: 1 }, { ...night, wind: 3 }])
      expect(cropHeightDrop(air, settings)).toBe(0);
  });
});
