import { expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const FULL = `name: Hollow Creek Greens
units: US                # US or metric
currency: $
place: { latitude: 44.12, longitude: -72.84, elevation: 620 ft, zone: America/New_York, setting: coast }
walks: { morning: "6:30", evening: "7:15 pm" }
markets:
  - { id: friday, name: Friday market, day: Friday, picks: [ { days before: 1, time: "6:00" } ] }
products:
  - id: salad-mix
    name: Salad mix
    parts: { lettuce-mix: 50 %, arugula: 25 %, mizuna: 25 % }
    price: 12 per lb
    orders: [ { market: friday, weight: 30 lb } ]
tunnels:
  - { id: T1, name: Creek 1, length: 50 ft, hoops: wire, beds: 1 }
  - { id: T2, length: 50 ft, hoops: none, beds: 2 }
labour: { wage: 18, pace: 1.5 }
limits: { changes per week: 4, wind: 10 mph, dim days: 1, caution: 2 }
sensors: { outside: outside, probe: T1 }
keep flagged: [outside]
crops: { lettuce-mix: { smallest: 3 in, growth.base: 38 F, boltingDay: none } }
covers: { row-cover-19: { light: 0.83, night.clear: 4 F } }
`;

test("a full farm is read with every quantity in its base unit", () => {
  const farm = farmOf({ farm: FULL });
  expect(farm.place).toEqual({
    latitude: 44.12,
    longitude: -72.84,
    elevation: 620 * 0.3048,
    zone: "America/New_York",
    setting: "coast",
    curve: "goudriaan-van-laar",
  });
  expect(farm.walks).toEqual({ morning: 6.5, evening: 19.25 });
  expect(farm.markets).toEqual([
    { id: "friday", name: "Friday market", weekday: 5, picks: [{ daysBefore: 1, hour: 6 }] },
  ]);
  expect(farm.products[0]!.price).toBeCloseTo(26.4555, 4);
  expect(farm.products[0]!.orders[0]!.weight).toBeCloseTo(13.6078, 4);
  expect(farm.tunnels[1]).toEqual({ id: "T2", name: "T2", length: 15.24, hoops: null, beds: 2 });
  expect(farm.labour).toEqual({ wage: 18, pace: 1.5, cutting: 2, walk: null, picking: null });
  expect(farm.limits).toEqual({ changesPerWeek: 4, layers: 1, wind: 4.4704, dimDays: 1, caution: 2 });
  expect([...farm.sensors]).toEqual([
    ["outside", "outside"],
    ["probe", "T1"],
  ]);
  expect([...farm.keepFlagged]).toEqual(["outside"]);
});

test("a farm's own crop and cover values stand over the catalogue's, and nothing else changes", () => {
  const farm = farmOf({ farm: FULL });
  const known = catalogue();
  const lettuce = farm.crops.get("lettuce-mix")!;
  expect(lettuce.smallest).toBeCloseTo(7.62, 9);
  expect(lettuce.growth.base).toBeCloseTo(3.3333, 4);
  expect(lettuce.growth.ceiling).toBe(known.crops.get("lettuce-mix")!.growth.ceiling);
  expect(lettuce.boltingDay).toBeNull();
  expect(farm.covers.get("row-cover-19")!.light).toBe(0.83);
  expect(farm.covers.get("row-cover-19")!.night.clear).toBeCloseTo(2.2222, 4);
  expect(farm.crops.get("spinach")).toEqual(known.crops.get("spinach"));
});

test("a crop the catalogue does not hold begins from the one it is like", () => {
  const farm = farmOf({ farm: `${MINIMAL}crops: { red-frill: { like: mustard, smallest: 6 cm } }\n` });
  const frill = farm.crops.get("red-frill")!;
  expect(frill.smallest).toBe(6);
  expect(frill.name).toBe("red-frill");
  expect(frill.growth).toEqual(catalogue().crops.get("mustard")!.growth);
});

test("a minimal farm takes the rest from the settings", () => {
  const { settings } = catalogue();
  const farm = farmOf({});
  expect(farm.walks).toEqual({ morning: settings.morningWalk, evening: settings.eveningWalk });
  expect(farm.limits.wind).toBe(settings.windLimit);
  expect(farm.limits.changesPerWeek).toBe(settings.changesPerWeek);
  expect(farm.currency).toBeNull();
  expect([...farm.sensors]).toEqual([["outside", "outside"]]);
});

test("all problems of a settings file are told at once, in words, each with its line", () => {
  const broken = `nmae: Little Field
units: metrc
place: { latitude: 144, longitude: -72.84, elevation: 190, zone: America/New_Yrok }
walks: { morning: 25 }
markets:
  - { id: friday, day: Freitag, picks: [ { time: "6:00" } ] }
tunnels:
  - { id: T1, length: 15 kg, hoops: wood }
  - { id: T1, length: 15 m, hoops: wire, beds: 1.5 }
products:
  - { id: mix, parts: { lettuce-mix: 50 %, spinnach: 50 } }
limits: { wind: 15 }
sensors: { outside: T9 }
crops: { lettuce-mixx: { smallest: 3 in }, spinach: { smalest: 3 in } }
`;
  expect(problemsOf({ farm: broken })).toEqual([
    'farm.yaml:1 "nmae": expected a known setting, received "nmae". Did you mean "name"?',
    'farm.yaml:1 "name": expected the farm\'s name, received nothing. Add a line "name: ...".',
    'farm.yaml:2 "units": expected one of US, metric, received "metrc". Did you mean "metric"?',
    'farm.yaml:3 "place.latitude": expected degrees, north positive, from -90 to 90, received "144". Write a plain number.',
    'farm.yaml:3 "place.elevation": expected a length like 50 ft or 15 m, received "190". Write the unit behind the number.',
    'farm.yaml:3 "place.zone": expected a time zone like America/New_York, received "America/New_Yrok". Did you mean "America/New_York"?',
    'farm.yaml:4 "walks.morning": expected a time like "7:00" or "6:30 pm", received "25". Use the farm\'s clock.',
    'farm.yaml:6 "markets[1].day": expected one of Sunday, Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, received "Freitag". Known: Sunday, Monday, Tuesday, Wednesday, Thursday, Friday, Saturday.',
    'farm.yaml:8 "tunnels[1].length": expected a length like 50 ft or 15 m, received "15 kg". This unit measures something else; the field holds a length.',
    'farm.yaml:8 "tunnels[1].hoops": expected one of wire, conduit, pvc, none, received "wood". Known: wire, conduit, pvc, none.',
    'farm.yaml:9 "tunnels[2].id": expected a name no other tunnel has, received "T1". Call one of the two differently.',
    'farm.yaml:9 "tunnels[2].beds": expected a number of beds from 1 to 20, received "1.5". Write a whole number.',
    'farm.yaml:11 "products[1].parts.spinnach": expected a crop, received "spinnach". Did you mean "spinach"?',
    'farm.yaml:11 "products[1].parts.spinnach": expected a share like 60 % or 0.6, received "50". Write the % sign behind it, or a number from 0 to 1.',
    'farm.yaml:12 "limits.wind": expected a wind speed like 15 mph or 7 m/s, received "15". Write the unit behind the number.',
    'farm.yaml:13 "sensors.outside": expected outside or a tunnel, received "T9". Known: outside, T1.',
    expect.stringMatching(
      /^farm\.yaml:14 "crops\.lettuce-mixx": expected a crop, received "lettuce-mixx"\. Did you mean "lettuce-mix"\?/u,
    ),
    expect.stringMatching(
      /^farm\.yaml:14 "crops\.spinach\.smalest": expected a known setting, received "smalest"\. Did you mean "smallest"\?/u,
    ),
  ]);
});

test("text that is no settings file is a problem with line and column, not the parser's words", () => {
  expect(problemsOf({ farm: "name: Little Field\n\tunits: US\n" })[0]).toMatch(
    /^farm\.yaml:2 column \d+: expected .+, received .+\. Indent with blanks/u,
  );
  expect(problemsOf({ farm: "name: a\nname: b\n" })).toEqual([
    "farm.yaml:2 column 1: expected each setting once, received the same setting again. Indent with blanks, and put a text that holds a colon, a # or a bracket in quotes.",
  ]);
  expect(problemsOf({ farm: "just words" })).toEqual([
    'farm.yaml:1: expected a group of settings, received "just words". Write each as name, colon, blank, value.',
  ]);
  expect(problemsOf({ farm: "" })).toEqual([
    'farm.yaml: expected the farm\'s settings, received an empty file. Delete it; then "leafpace start" writes one to fill in.',
  ]);
});

test("of a text that is no settings file only the first fault is told", () => {
  const told = problemsOf({ farm: "name: a\n  b: [ c\n\td: } e\n: : :\n" });
  expect(told).toHaveLength(1);
  expect(told[0]).toMatch(/^farm\.yaml:[12] column \d+: /u);
});

test("a zone far from the longitude is worth a look, also when two are swapped", () => {
  const farm = (longitude: number, zone: string): string =>
    MINIMAL.replace("-72.84", String(longitude)).replace("America/New_York", zone);
  expect(problemsOf({ farm: farm(44.12, "America/New_York") })).toEqual([
    'farm.yaml:3 "place.zone": expected a time zone near longitude 44.12, about 3 hours ahead of universal time, received America/New_York, 5 hours behind universal time. Check latitude, longitude and zone; are two swapped?',
  ]);
  expect(problemsOf({ farm: farm(75, "Asia/Shanghai") })).toEqual([]);
  expect(problemsOf({ farm: farm(-157.4, "Pacific/Kiritimati") })).toEqual([]);
  expect(problemsOf({ farm: farm(14.5, "Europe/Ljubljana") })).toEqual([]);
});

test("shares of a mix come to a hundred percent", () => {
  const farm = `${MINIMAL}products: [ { id: mix, parts: { spinach: 50 %, kale: 40 % } } ]\n`;
  expect(problemsOf({ farm })).toEqual([
    'farm.yaml:8 "products[1].parts": expected shares that come to 100 % together, received 90 %. Raise or lower a share.',
  ]);
});

test("a farm without a tunnel or a market cannot be planned", () => {
  const farm = MINIMAL.replace(/tunnels:\n.*\n/u, "tunnels: []\n");
  expect(problemsOf({ farm })).toEqual([
    'farm.yaml:6 "tunnels": expected at least one tunnel, received a list. Add a tunnel.',
  ]);
});

test("a temperature range that is out of order is told", () => {
  const farm = `${MINIMAL}crops: { spinach: { growth.base: 20 C } }\n`;
  expect(problemsOf({ farm })).toEqual([
    'farm.yaml:8 "crops.spinach": expected growth.base below optimumLow, not above optimumHigh, below ceiling, received a group of settings. Correct the temperature that stands out.',
  ]);
});

test("a difference in the place of a temperature is told, and a temperature in that of a difference", () => {
  const farm = `${MINIMAL}crops: { spinach: { qualityLimit: 4 F, growth.base: 4 F deg, kill: 8 } }
covers: { row-cover-19: { night.clear: 36 F, frostCredit: 2 F deg, night.cloudy: 3 } }
`;
  expect(problemsOf({ farm })).toEqual([
    'farm.yaml:8 "crops.spinach.qualityLimit": expected a temperature from 50 F to 113 F (10 C to 45 C), received "4 F". Write how warm it is, not how much warmer.',
    'farm.yaml:8 "crops.spinach.growth.base": expected a temperature like 85 F or 29 C, received "4 F deg". That is a difference; write how warm it is, not how much warmer.',
    'farm.yaml:8 "crops.spinach.kill": expected a temperature like 85 F or 29 C, received "8". Write the unit behind the number.',
    'farm.yaml:9 "covers.row-cover-19.night.clear": expected a difference of at most 22 F or 12 C, received "36 F". Write how much warmer it is under the cover, not how warm.',
    'farm.yaml:9 "covers.row-cover-19.night.cloudy": expected a difference of temperatures like 4 F or 2 C, received "3". Write the unit behind the number.',
  ]);
});
