import { describe, expect, test } from "vitest";
import { COUNTINGS, type Counted, catalogue } from "../../src/farm/index.ts";
import {
  between,
  countedSums,
  emergence,
  leafCurve,
  ownRequirementAt,
  ownRequirementFrom,
  thermalTimeAt,
} from "../../src/growth/index.ts";
import { celsius, centimetre, degreeDays } from "../../src/quantity/index.ts";
import { groundIn, sumsIn } from "../proof/sowings.ts";

const { crops, settings } = catalogue();
const lettuce = crops.get("lettuce-mix")!;

test("every requirement of the catalogue that was counted another way is what the same count gives at its steady temperature", () => {
  const brought = [...crops.values()].filter(({ counted }) => counted !== undefined);
  expect(brought.length).toBeGreaterThan(5);
  for (const crop of brought) {
    const { at } = crop.counted!;
    const own = ownRequirementAt(crop, crop.counted!, celsius(at as number), settings)!;
    expect(Math.round(own), crop.id).toBe(crop.requirement);
  }
});

test("a sum counted from emergence to a longer leaf leaves out what lies beyond the smallest salad size", () => {
  const curve = leafCurve(lettuce, degreeDays(500), settings);
  const beyond = thermalTimeAt(curve, centimetre(10)) - 500;
  const counted: Counted = {
    sum: degreeDays(300),
    method: "simple average",
    base: lettuce.growth.base,
    upper: null,
    cutOff: "none",
    from: "emergence",
    to: centimetre(10),
    at: "here",
  };
  expect(ownRequirementAt(lettuce, counted, celsius(14), settings)).toBeCloseTo(300 - beyond, 9);
});

test("nothing comes of a temperature at which nothing grows, or of a sum reached before anything is up", () => {
  const counted = lettuce.counted!;
  expect(ownRequirementAt(lettuce, counted, celsius(2), settings)).toBeNull();
  expect(ownRequirementAt(lettuce, { ...counted, sum: degreeDays(20) }, celsius(15), settings)).toBeNull();
});

describe("over the spring and summer of 2014 in Seattle", () => {
  const city = groundIn("Seattle", [], ["2014"]);
  const { weather, under: open } = city;
  const sums = sumsIn(city, lettuce);
  const sown = 24 * 120;

  test.each(COUNTINGS)(
    "the hour at which a %s from sowing reaches its sum is the hour the own requirement does",
    (method) => {
      const counted: Counted = { ...lettuce.counted!, method, to: lettuce.smallest, at: "here" };
      const running = countedSums(weather, counted);
      const own = ownRequirementFrom(lettuce, counted, { weather, open, sums }, running, sown, settings)!;
      const up = sown + emergence(open.seedbed.subarray(sown), lettuce.emergence)!;
      let hour = up;
      while (between(sums.pace, sums.from, up, hour) < own - 1e-9) hour++;
      expect(running[hour]! - running[sown]!).toBeGreaterThanOrEqual(counted.sum);
      expect(running[hour - 2]! - running[sown]!).toBeLessThan(counted.sum);
    },
  );

  test("a sum gathers evenly within its day and a whole day holds the day's own", () => {
    const running = countedSums(weather, lettuce.counted!);
    const day = weather.calendar.day[sown]!;
    const first = weather.calendar.day.indexOf(day);
    const next = weather.calendar.day.indexOf(day + 1);
    const { low, high } = weather.days[day]!;
    expect(running[next]! - running[first]!).toBeCloseTo(
      Math.max(0, (low + high) / 2 - lettuce.counted!.base),
      9,
    );
  });

  test("weather that ends before the sum is reached gives nothing", () => {
    const counted: Counted = { ...lettuce.counted!, sum: degreeDays(99_999) };
    const running = countedSums(weather, counted);
    expect(ownRequirementFrom(lettuce, counted, { weather, open, sums }, running, sown, settings)).toBeNull();
  });
});
