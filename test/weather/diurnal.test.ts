import { describe, expect, test } from "vitest";
import { goudriaanVanLaar as diurnal, type Turning } from "../../src/weather/index.ts";
import published from "../published/diurnal.json" with { type: "json" };

const { rise, length, low, high, mean, points } = published.goudriaanVanLaar;
const day = (number: number): Turning => ({ rise: rise + 24 * number, length, low, high });

/** One day repeated, by the clock: before sunrise it is still the night of the day before. */
const at = (hour: number): number =>
  hour < rise ? diurnal(day(-1), day(0), hour) : diurnal(day(0), day(1), hour);

describe("temperature through the day", () => {
  test.each(points)(
    "at %d h is the %d °C of the derived vector of Goudriaan and van Laar's curve",
    (hour, temperature) => {
      expect(Math.abs(at(hour!) - temperature!)).toBeLessThanOrEqual(0.5e-6 + 1e-12);
    },
  );

  test("has the derived mean over the day", () => {
    const steps = 24_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += at(((i + 0.5) * 24) / steps);
    expect(Number((sum / steps).toFixed(3))).toBe(mean);
  });

  test("meets the next minimum exactly, whatever it is", () => {
    for (const nextLow of [-12, 4, 10, 17, 25]) {
      for (const nextRise of [28.5, 30, 31.2]) {
        const next = { rise: nextRise, length: 11, low: nextLow, high: 30 };
        expect(diurnal(day(0), next, nextRise)).toBeCloseTo(nextLow, 12);
      }
    }
  });

  test("begins at its own low and reaches its high an hour and a half after solar noon", () => {
    expect(diurnal(day(0), day(1), rise)).toBe(low);
    expect(diurnal(day(0), day(1), rise + length / 2 + 1.5)).toBe(high);
  });

  test("passes sunset without a step", () => {
    const set = rise + length;
    expect(diurnal(day(0), day(1), set + 1e-9)).toBeCloseTo(diurnal(day(0), day(1), set), 6);
  });

  test("never leaves the range of the day's low and high and the next low", () => {
    const next = { rise: 30, length: 12, low: 3, high: 20 };
    for (let hour = 6; hour <= 30; hour += 0.25) {
      expect(diurnal(day(0), next, hour)).toBeGreaterThanOrEqual(3 - 1e-12);
      expect(diurnal(day(0), next, hour)).toBeLessThanOrEqual(high);
    }
  });
});
