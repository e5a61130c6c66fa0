import { describe, expect, test } from "vitest";
import { daysBetween, type LocalDate } from "../../src/quantity/index.ts";
import { shortDays } from "../../src/weather/index.ts";
import { dateOf } from "../published/dateOf.ts";
import published from "../published/days-under-ten-hours.json" with { type: "json" };

describe("days under ten hours against the derived table of sunrise and sunset", () => {
  test.each(published.rows)("at $latitude° begin and end within two days", ({ latitude, riseSet }) => {
    const found = shortDays(latitude, "2025-12-21" as LocalDate, "2025-12-21" as LocalDate)!;
    expect(Math.abs(daysBetween(dateOf(riseSet[0]!, 2025), found.from))).toBeLessThanOrEqual(2);
    expect(Math.abs(daysBetween(dateOf(riseSet[1]!, 2026), found.to))).toBeLessThanOrEqual(2);
  });
});

test("a stretch is whole whichever of its days is looked at, and none is found outside it", () => {
  const whole = shortDays(44, "2025-12-21" as LocalDate, "2025-12-21" as LocalDate)!;
  expect(shortDays(44, "2025-10-20" as LocalDate, whole.from)).toEqual(whole);
  expect(shortDays(44, whole.to, "2026-03-20" as LocalDate)).toEqual(whole);
  expect(shortDays(44, "2026-04-20" as LocalDate, "2026-05-11" as LocalDate)).toBeNull();
});

test("near the equator there are none, and near a pole they last from autumn to spring", () => {
  expect(shortDays(10, "2025-01-01" as LocalDate, "2025-12-31" as LocalDate)).toBeNull();
  const polar = shortDays(89, "2025-12-21" as LocalDate, "2025-12-21" as LocalDate)!;
  expect(daysBetween(polar.from, polar.to)).toBeGreaterThan(150);
  expect(daysBetween(polar.from, polar.to)).toBeLessThan(190);
});

test("in the south they lie around June", () => {
  const found = shortDays(-44, "2025-06-01" as LocalDate, "2025-06-30" as LocalDate)!;
  expect([found.from.slice(5, 7), found.to.slice(5, 7)]).toEqual(["05", "08"]);
});
