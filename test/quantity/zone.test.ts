import { differenceInCalendarDays, getDay, getDayOfYear, parseISO } from "date-fns";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addDays,
  calendar,
  dayOfYear,
  daysBetween,
  instant,
  instantAt,
  localDate,
  localHour,
  localMinute,
  utcHour,
  weekday,
} from "../../src/quantity/index.ts";

describe("the farm's calendar, whatever the machine's clock", () => {
  it("counts days over month ends, leap days and changes of clocks", () => {
    expect(addDays("2026-02-27", 2)).toBe("2026-03-01");
    expect(addDays("2024-02-28", 1)).toBe("2024-02-29");
    expect(addDays("2026-03-07", 1)).toBe("2026-03-08");
    expect(daysBetween("2026-03-07", "2026-03-09")).toBe(2);
    expect(daysBetween("2026-11-02", "2026-10-31")).toBe(-2);
  });

  it("knows weekdays and days of the year", () => {
    expect(weekday("2026-04-20")).toBe(1);
    // FAO-56 example 8: 3 September is day 246.
    expect(dayOfYear("2026-09-03")).toBe(246);
    expect(dayOfYear("2024-12-31")).toBe(366);
  });

  it("counts as an independent calendar does (date-fns), over four centuries", () => {
    const dates = fc
      .date({ min: new Date("1800-01-01"), max: new Date("2199-12-31"), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10));
    fc.assert(
      fc.property(dates, dates, (one, other) => {
        const days = differenceInCalendarDays(parseISO(other), parseISO(one));
        expect(daysBetween(one, other)).toBe(days);
        expect(addDays(one, days)).toBe(other);
        expect(weekday(one)).toBe(getDay(parseISO(one)));
        expect(dayOfYear(one)).toBe(getDayOfYear(parseISO(one)));
      }),
      { seed: 1 },
    );
  });

  it("finds the instant of a wall clock, just after a jump forward, the first of two after a jump back", () => {
    const utc = (zone: string, date: string, hour: number): string =>
      new Date(instantAt(zone, date, hour)).toISOString();
    expect(utc("America/New_York", "2026-04-20", 7)).toBe("2026-04-20T11:00:00.000Z");
    expect(utc("America/New_York", "2026-03-08", 2.5)).toBe("2026-03-08T07:30:00.000Z");
    expect(utc("America/New_York", "2026-11-01", 1.5)).toBe("2026-11-01T05:30:00.000Z");
    expect(utc("Asia/Kolkata", "2026-04-20", 7)).toBe("2026-04-20T01:30:00.000Z");
  });

  it("reads date and hour from an instant", () => {
    const at = instant(Date.parse("2026-04-20T02:30:00Z"));
    expect([localDate("America/New_York", at), localHour("America/New_York", at)]).toEqual([
      "2026-04-19",
      22.5,
    ]);
    expect([localDate("Asia/Kolkata", at), localHour("Asia/Kolkata", at)]).toEqual(["2026-04-20", 8]);
    expect([localMinute("America/New_York", at), localMinute("Asia/Kathmandu", at)]).toEqual([
      "2026-04-19 22:30",
      "2026-04-20 08:15",
    ]);
  });

  it("lays hours on days of 23, 24 and 25 hours", () => {
    const hours = (from: string): readonly number[] => {
      const first = utcHour(Math.floor(instantAt("America/New_York", from, 0) / 3_600_000));
      const { day } = calendar("America/New_York", first, 96);
      return [0, 1, 2].map((index) => [...day].filter((each) => each === index).length);
    };
    expect(hours("2026-03-07")).toEqual([24, 23, 24]);
    expect(hours("2026-10-31")).toEqual([24, 25, 24]);
  });
});
