import { expect, test } from "vitest";
import { HOUR, type Instant, instant } from "../../src/quantity/index.ts";
import { doubtfulText } from "../../src/sheet/doubtful.ts";
import { madeFrom } from "../../src/sheet/madeFrom.ts";
import type { Doubtful } from "../../src/weather/index.ts";
import { sample } from "./sample.ts";

const { farm, madeFrom: from, on } = sample();
const at = (day: number, hour: number): Instant => instant(Date.UTC(2026, 3, day, hour + 4));

const some = (
  flag: Doubtful["flag"],
  day: number,
  hours: number,
  changed: Partial<Doubtful> = {},
): Doubtful => ({
  sensor: "outside",
  flag,
  from: at(day, 2),
  to: instant(at(day, 2) + hours * HOUR),
  hours,
  low: 5,
  high: 5,
  used: 0,
  ...changed,
});

const told = (...all: readonly Doubtful[]): readonly string[] =>
  doubtfulText({ ...farm, place: { ...farm.place, zone: "America/New_York" } }, all).map((line) =>
    line.replaceAll("\u00A0", " "),
  );
const KEEP = "Where outside is right after all, write into farm.yaml: keep flagged: [outside]";

test("stuck hours are told with their day and temperature, and how to keep them", () => {
  expect(told(some("stuck", 3, 13))).toEqual([
    "Outside: 13 hours of Fri Apr 3 look stuck at 41 °F and are left out.",
    KEEP,
  ]);
});

test("hours of several days are one sentence for each reason", () => {
  expect(
    told(
      some("spike", 3, 1),
      some("stuck", 3, 13),
      some("stuck", 6, 14, { low: 8, high: 8 }),
      some("range", 7, 1, { low: 60, high: 60 }),
      some("inconsistent", 7, 2),
    ),
  ).toEqual([
    "Outside: 1 hour of Fri Apr 3 jumps up or down and back and is left out.",
    "Outside: 27 hours from Fri Apr 3 to Mon Apr 6 look stuck at 41 °F to 46 °F and are left out.",
    "Outside: 1 hour of Tue Apr 7 is 140 °F, which no air on a farm is, and is left out.",
    "Outside: 2 hours of Tue Apr 7 have a mean outside their own low and high and are left out.",
    KEEP,
  ]);
});

test("hours in the sun count where nothing better is known, and the grower hears where to hang the sensor", () => {
  const sun = (used: number) => some("sun", 3, 12, { low: 10, high: 40, used });
  expect(told(sun(12))).toEqual([
    "Outside: 12 hours of Fri Apr 3 look as if the sun shone on the sensor and count all the same, since nothing better is known: hang it in the shade.",
  ]);
  expect(told(sun(12), { ...sun(0), from: at(4, 8) })).toEqual([
    "Outside: 24 hours from Fri Apr 3 to Sat Apr 4 look as if the sun shone on the sensor and count only where nothing better is known: hang it in the shade.",
    KEEP,
  ]);
});

test("hours the grower keeps are told as kept", () => {
  const kept = { ...farm, keepFlagged: new Set(["outside"]) };
  const [line, ...rest] = doubtfulText(kept, [some("stuck", 3, 13, { used: 13 })]);
  expect([line!.endsWith("and count all the same, as farm.yaml says."), rest]).toEqual([true, []]);
});

test("several sensors: the sheet says how they are taken together", () => {
  expect(madeFrom(farm, { ...from, sensors: ["north", "south"] }, on)).toContain(
    "Where several sensors hang outside, the median of them counts for every hour.",
  );
});
