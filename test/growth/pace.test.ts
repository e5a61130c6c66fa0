import { describe, expect, test } from "vitest";
import { lightShare } from "../../src/growth/index.ts";
import published from "../published/effective-day-degrees.json" with { type: "json" };

/** Effective day-degrees of one day. [°C·d] */
const effective = (warmth: number, radiation: number, f: number): number =>
  warmth * lightShare(warmth, radiation, f);

describe("a day's thermal time corrected for light", () => {
  test.each(published.days)("of $D °C·d in $R MJ/m² with f $f is the derived $E", ({ D, R, f, E }) => {
    expect(effective(D, R, f)).toBeCloseTo(E, 6);
  });

  test("is summed day by day; the totals alone give more", () => {
    const { days, f, daily, fromTotals } = published.summed;
    const sum = days.reduce((total, [warmth, radiation]) => total + effective(warmth!, radiation!, f), 0);
    const [warmth, radiation] = [0, 1].map((i) => days.reduce((total, day) => total + day[i]!, 0));
    expect(sum).toBeCloseTo(daily, 6);
    expect(effective(warmth!, radiation!, f)).toBeCloseTo(fromTotals, 6);
  });

  test("is all of it where light does not matter to the crop, and on a day without thermal time", () => {
    expect(lightShare(12, 0, 0)).toBe(1);
    expect(lightShare(0, 5, 0.5)).toBe(1);
  });

  test("is nothing in the dark", () => {
    expect(lightShare(12, 0, 0.05)).toBe(0);
  });

  test("grows with light and never passes the thermal time", () => {
    let last = 0;
    for (let radiation = 1; radiation <= 40; radiation++) {
      const share = lightShare(15, radiation, 0.05);
      expect(share).toBeGreaterThan(last);
      expect(share).toBeLessThan(1);
      last = share;
    }
  });
});
