import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Usual } from "../../src/farm/index.ts";
import { addDays, celsius, daysBetween, type LocalDate } from "../../src/quantity/index.ts";
import { usualOn } from "../../src/weather/index.ts";

const two = (value: number): string => String(value).padStart(2, "0");
const middle = (year: number, month: number): LocalDate => `${year}-${two(month)}-15` as LocalDate;

/** A year of months whose lows and highs are anything, to a tenth of a degree. */
const year = fc
  .array(fc.tuple(fc.integer({ min: -200, max: 250 }), fc.integer({ min: 0, max: 150 })), {
    minLength: 12,
    maxLength: 12,
  })
  .map((months) =>
    months.map(
      ([low, range], i): Usual => ({
        month: i + 1,
        low: celsius(low / 10),
        high: celsius((low + range) / 10),
      }),
    ),
  );
const someYear = fc.integer({ min: 1999, max: 2101 });

describe("usual weather", () => {
  test("is what was given at the middle of a month, in leap years and others", () => {
    fc.assert(
      fc.property(year, someYear, fc.integer({ min: 1, max: 12 }), (months, at, month) => {
        const { low, high } = months[month - 1]!;
        expect(usualOn(months, middle(at, month))).toEqual({ low, high });
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  test("goes from day to day in equal steps between two middles, over the ends of months, of February and of the year", () => {
    fc.assert(
      fc.property(year, someYear, fc.integer({ min: 1, max: 12 }), (months, at, month) => {
        const from = middle(at, month);
        const to = month === 12 ? middle(at + 1, 1) : middle(at, month + 1);
        const span = daysBetween(from, to);
        const step = (months[month % 12]!.low - months[month - 1]!.low) / span;
        for (let day = 0; day < span; day++) {
          const [a, b] = [addDays(from, day), addDays(from, day + 1)].map((date) => usualOn(months, date)!);
          expect(b!.low - a!.low).toBeCloseTo(step, 9);
          expect(a!.low).toBeLessThanOrEqual(a!.high);
        }
      }),
      { numRuns: 30, seed: 7 },
    );
  });

  test("knows no north: a year turned by six months gives the same half a year later", () => {
    const north = [-6, -5, 0, 6, 12, 17, 20, 19, 14, 8, 2, -3].map(
      (low, i): Usual => ({ month: i + 1, low: celsius(low), high: celsius(low + 10) }),
    );
    const south = north.map((each): Usual => ({ ...each, month: ((each.month + 5) % 12) + 1 }));
    for (let month = 1; month <= 12; month++)
      expect(usualOn(south, middle(2026, month))).toEqual(
        usualOn(north, middle(2026, ((month + 5) % 12) + 1)),
      );
    // Midway between the middles of December and January, 31 days apart.
    expect(usualOn(south, "2026-12-30" as LocalDate)!.low).toBeCloseTo(17 + (20 - 17) * (15 / 31), 9);
  });

  test("draws lines over two months left out, and no further", () => {
    const months = [
      { month: 4, low: celsius(3), high: celsius(15) },
      { month: 7, low: celsius(12), high: celsius(24) },
    ];
    // 15 April to 15 July are 91 days.
    expect(usualOn(months, "2026-05-15" as LocalDate)!.low).toBeCloseTo(3 + (9 * 30) / 91, 9);
    expect(usualOn(months, "2026-08-15" as LocalDate)).toEqual({ low: 12, high: 24 });
    expect(usualOn(months, "2026-08-16" as LocalDate)).toBeNull();
  });

  test("lets one month alone count for a month before and after its middle", () => {
    const april = [{ month: 4, low: celsius(3), high: celsius(15) }];
    const said = (date: string): boolean => usualOn(april, date as LocalDate) !== null;
    expect(["2026-03-14", "2026-03-15", "2026-04-30", "2026-05-16", "2026-05-17"].map(said)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(usualOn([], "2026-04-15" as LocalDate)).toBeNull();
  });
});
