import { describe, expect, it } from "vitest";
import { climate, type Lying } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import type { Weather } from "../../src/weather/index.ts";

const { covers, settings } = catalogue();
const HOURS = 72;

/** Three days of sun from six to six, mild and calm. */
const weather = {
  temperature: Float64Array.from({ length: HOURS }, (_, i) => 10 + 5 * Math.sin(((i - 9) * Math.PI) / 12)),
  radiation: Float64Array.from({ length: HOURS }, (_, i) =>
    Math.max(0, 600 * Math.sin(((i - 6) * Math.PI) / 12)),
  ),
  wind: new Float64Array(HOURS).fill(2),
  cloud: new Float64Array(HOURS).fill(0.3),
} as Weather;
const cloth: readonly Lying[] = [{ cover: covers.get("row-cover-19")!, vented: false }];
const under = (lying: readonly Lying[], logged: Float64Array | null = null) =>
  climate(weather, [{ from: 0, to: HOURS, lying }], settings, logged);

describe("a logger under the cover", () => {
  const modelled = under(cloth);
  const logged = new Float64Array(HOURS).fill(Number.NaN);
  for (let i = 20; i < 50; i++) logged[i] = modelled.growing[i]! + 2;
  const recorded = under(cloth, logged);

  it("is what the growing point, the leaf and the crop felt in the hours it recorded", () => {
    for (let i = 20; i < 50; i++)
      for (const felt of [recorded.growing, recorded.heat, recorded.frost, recorded.frostPromised])
        expect(felt[i]).toBe(logged[i]);
  });

  it("changes nothing of the other hours, and no light", () => {
    for (const key of ["growing", "heat", "frost", "frostPromised"] as const)
      for (const i of [...Array(20).keys(), ...Array.from({ length: 22 }, (_, k) => 50 + k)])
        expect(recorded[key][i]).toBe(modelled[key][i]);
    expect(recorded.radiation).toEqual(modelled.radiation);
  });

  it("moves the seedbed by as much as the air it recorded differs, once it has a day of it", () => {
    for (let i = 43; i < 50; i++) expect(recorded.seedbed[i]! - modelled.seedbed[i]!).toBeCloseTo(2, 9);
    expect(recorded.seedbed[19]).toBe(modelled.seedbed[19]);
  });

  it("moves it under shade cloth too, and leaves the soil's own cooling in", () => {
    const shade: readonly Lying[] = [{ cover: covers.get("shade-50")!, vented: false }];
    const computed = under(shade);
    const same = under(shade, computed.growing.slice());
    for (let i = 0; i < HOURS; i++) expect(same.seedbed[i]!).toBeCloseTo(computed.seedbed[i]!, 9);
  });
});

describe("shade cloth over row cover", () => {
  it("leaves the row cover only the sun it lets through", () => {
    const shade: Lying = { cover: covers.get("shade-50")!, vented: false };
    const noon = 12;
    const air = weather.temperature[noon]!;
    const cooling = settings.shadeOnPace * 0.5 * weather.radiation[noon]!;
    const gained = under(cloth).growing[noon]! - air;
    expect(under([shade, ...cloth]).growing[noon]! - air + cooling).toBeCloseTo(gained / 2, 9);
  });
});

it("stretches that leave a hole are a programmer's mistake", () => {
  const hole = [
    { from: 0, to: 5, lying: [] },
    { from: 6, to: 9, lying: [] },
  ];
  expect(() => climate(weather, hole, settings)).toThrow("stretch begins at hour 6, expected 5");
});
