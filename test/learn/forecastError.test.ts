import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { followed, learnedError, unbiased } from "../../src/learn/index.ts";
import { addDays, celsius, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, type Forecast, usualError } from "../../src/weather/index.ts";
import { gauss } from "../real/foretold.ts";

const { settings } = catalogue();
const zone = "America/New_York";
const day = (date: LocalDate, low: number, high: number): DailyRecord => ({
  date,
  low: celsius(low),
  high: celsius(high),
  wind: null,
  sky: null,
});
const first = "2026-03-01" as LocalDate;
const observed = Array.from({ length: 420 }, (_, i) => day(addDays(first, i), 5, 15));

/** A forecast a day, each of three days, off by bias and chance. */
const kept = (count: number, bias: number, size: number): readonly Forecast[] => {
  const numbers = gauss(5);
  return Array.from({ length: count }, (_, i) => ({
    issued: instantAt(zone, addDays(first, i), 5),
    days: [0, 1, 2].map((lead) => {
      const spread = size * usualError(lead, settings).spread.low;
      const off = (): number => spread * numbers.next().value;
      return day(addDays(first, i + lead), 5 - bias + off(), 15 - bias + off());
    }),
  }));
};
const learn = (forecasts: readonly Forecast[]) => learnedError(followed(forecasts, observed, zone), settings);

describe("the error of forecasts", () => {
  test("is observed less foretold, by days from the issue, where both are known", () => {
    const forecast: Forecast = {
      issued: instantAt(zone, "2026-04-01", 5),
      days: [day("2026-04-01" as LocalDate, 4, 17), day("2026-04-03" as LocalDate, 6, 14)],
    };
    const seen = [day("2026-04-03" as LocalDate, 5, 15.5)];
    expect(followed([forecast], seen, zone)).toEqual([
      { issued: "2026-04-01", lead: 2, error: { low: -1, high: 1.5 } },
    ]);
  });

  test("counts the last of several forecasts issued on one day", () => {
    const morning = { issued: instantAt(zone, first, 5), days: [day(first, 0, 10)] };
    const noon = { issued: instantAt(zone, first, 12), days: [day(first, 4, 16)] };
    expect(followed([noon, morning], observed, zone).map(({ error }) => error)).toEqual([
      { low: 1, high: -1 },
    ]);
  });

  test("is the stated one where nothing was kept, and where a lead was never seen", () => {
    expect(learn([]).forecasts).toBe(0);
    for (const lead of [0, 4, 12]) expect(learn([]).at(lead)).toEqual(usualError(lead, settings));
    expect(learn(kept(200, 1, 2)).at(7)).toEqual(usualError(7, settings));
  });

  test("moves from the stated to what followed as forecasts are kept", () => {
    const biases = [5, 40, 400].map((count) => learn(kept(count, 2, 1.5)).at(1).bias.high);
    expect(biases[0]!).toBeLessThan(biases[1]!);
    expect(biases[1]!).toBeLessThan(biases[2]!);
    expect(biases[2]!).toBeGreaterThan(1.7);
    expect(biases[2]!).toBeLessThan(2.2);
    const stated = usualError(1, settings).spread.low;
    const sizes = [5, 40, 400].map((count) => learn(kept(count, 0, 1.5)).at(1).spread.low / stated);
    expect(sizes[0]!).toBeLessThan(1.35);
    expect(sizes[2]!).toBeGreaterThan(1.4);
    expect(sizes[2]!).toBeLessThan(1.6);
  });

  test("one far miss moves little", () => {
    const { bias, spread } = learn(kept(1, 8, 0)).at(0);
    expect(bias.low).toBeGreaterThan(0);
    expect(bias.low).toBeLessThan(0.5);
    expect(spread.low).toBeLessThan(2 * usualError(0, settings).spread.low);
  });

  test("its bias is taken out of the next forecast", () => {
    const error = learn(kept(400, 2, 0));
    const next: Forecast = {
      issued: instantAt(zone, "2027-05-01", 5),
      days: [day("2027-05-01" as LocalDate, 4, 14), day("2027-05-20" as LocalDate, 4, 14)],
    };
    const [today, later] = unbiased(next, error, zone).days;
    expect(today!.low).toBeCloseTo(4 + error.at(0).bias.low, 9);
    expect(today!.high).toBeGreaterThan(15.7);
    expect(later).toMatchObject({ low: 4, high: 14 });
  });
});
