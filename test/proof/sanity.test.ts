import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { measuredDays } from "../real/cities.ts";
import { type Ground, groundIn, type Sowing, sowing, sowingDates, sumsIn } from "./sowings.ts";
import { STATED, TUNNEL_MIX } from "./statedDays.ts";

const { crops } = catalogue();

/** All of one crop's sowings of one year. */
function grown(ground: Ground, id: string, year: number): readonly Sowing[] {
  const crop = crops.get(id)!;
  const sums = sumsIn(ground, crop);
  return sowingDates(year).map((sown) => sowing(ground, crop, sums, sown));
}

describe("lettuce on bare ground in the Seattle weather of 2013", () => {
  const city = groundIn("Seattle", [], ["2013"]);
  const lettuce = grown(city, "lettuce-mix", 2013);
  const days = lettuce.map(({ days: took }) => took ?? Number.POSITIVE_INFINITY);

  test("comes up within three to twenty-five days", () => {
    for (const { sown, daysToEmergence } of lettuce) {
      expect(daysToEmergence, sown).toBeGreaterThanOrEqual(3);
      expect(daysToEmergence, sown).toBeLessThanOrEqual(25);
    }
  });

  test("reaches salad size from every sowing, in three to eleven weeks", () => {
    expect(Math.min(...days)).toBeGreaterThanOrEqual(21);
    expect(Math.max(...days)).toBeLessThanOrEqual(77);
  });

  test("takes longest from the first sowing of March and falls week by week to midsummer", () => {
    const toJuly = days.slice(0, 8);
    expect(toJuly).toEqual([...toJuly].sort((a, b) => b - a));
    expect(days[0]).toBe(Math.max(...days));
  });

  test("is within three days of the 28 to 35 stated from sowings of the middle of May and the first of September", () => {
    const { from, to } = STATED.get("lettuce-mix")!;
    for (const { sown, days: took } of lettuce.filter((each) => /-(05-15|09-01)$/u.test(each.sown))) {
      expect(took, sown).toBeGreaterThanOrEqual(from - 3);
      expect(took, sown).toBeLessThanOrEqual(to + 3);
    }
  });

  test("is behind mizuna from every sowing, and ahead of mâche", () => {
    const mizuna = grown(city, "mizuna", 2013);
    const mache = grown(city, "mache", 2013);
    lettuce.forEach(({ sown, days: took }, i) => {
      expect(took, sown).toBeGreaterThan(mizuna[i]!.days!);
      expect(took, sown).toBeLessThan(mache[i]!.days!);
    });
  });

  test("grows by day in hours that stay within the measured low and high", () => {
    const { calendar, temperature } = city.weather;
    const recorded = new Map(measuredDays("Seattle").map((day) => [day.date, day]));
    const outside = [...temperature.keys()].filter((i) => {
      const { low, high } = recorded.get(calendar.dates[calendar.day[i]!]!) ?? {
        low: Number.NEGATIVE_INFINITY,
        high: Number.POSITIVE_INFINITY,
      };
      const byDay = calendar.clock[i]! > 9 && calendar.clock[i]! < 16;
      return byDay && (temperature[i]! < low || temperature[i]! > high);
    });
    expect(outside).toEqual([]);
  });
});

describe("19 g row cover by nights only, in the Seattle weather of 2013", () => {
  const bare = groundIn("Seattle", [], ["2013"]);
  const nights = groundIn("Seattle", [{ cover: "row-cover-19", state: "nights" }], ["2013"]);

  test.each([...crops.keys()])(
    "brings %s forward from every sowing of March and April, by no more than six days, and holds none back by more than a day",
    (id) => {
      const [open, under] = [grown(bare, id, 2013), grown(nights, id, 2013)];
      open.forEach(({ sown, days }, i) => {
        const earlier = days! - under[i]!.days!;
        if (sown < "2013-05") expect(earlier, sown).toBeGreaterThan(0.5);
        expect(earlier, sown).toBeLessThan(6);
        expect(earlier, sown).toBeGreaterThan(-1);
      });
    },
  );
});

test("every crop with stated days is in the catalogue, and every statement was found", () => {
  for (const [id, { from, to }] of STATED) {
    expect(crops.has(id), id).toBe(true);
    expect(from, id).toBeLessThanOrEqual(to);
    expect(Number.isFinite(from) && Number.isFinite(to), id).toBe(true);
  }
  expect(TUNNEL_MIX).toEqual({ from: 21, to: 28 });
});
