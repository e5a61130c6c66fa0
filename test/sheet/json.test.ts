import { describe, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { centimetre } from "../../src/quantity/index.ts";
import { bedsJson, weekJson } from "../../src/sheet/index.ts";
import { metricSample, plannedAround, sample } from "./sample.ts";

/** Every path of a parsed answer with its value. */
function* leaves(value: unknown, path: string): Generator<readonly [string, unknown]> {
  if (typeof value !== "object" || value === null) yield [path, value];
  else for (const [key, each] of Object.entries(value)) yield* leaves(each, `${path}.${key}`);
}

/** Where null may stand: something is absent, not unknown by accident. */
const ABSENT =
  /\.(market|rainMm|snowfallMm|wetBy|wet|hoops|sizeNow|emergence|miss|basis|atFate|windowD|limit|line|column|earliest|latest|early|late|unchanged|planned|boltingDayH|pricePerKg|forecastIssued|forecastEnds|forecastSource|usualBy|carriedFrom|usualFrom|counted|upperC|steadyC|sowings|shortDays|scarcest|unforeseenFrom|thaw|noClothLeft|strip|changedSince|helps|worst|rather|cut|freed|again|whatIf|currency|stallKg|shortPerKg|walkMin|pickingMin|washingKg|coolerKg)$/;

describe.each([
  ["US", sample],
  ["metric", metricSample],
  ["planned anew around misses", plannedAround],
])("the answer as data: %s", (_, outcome) => {
  const week = JSON.parse(weekJson(outcome()));

  test("names itself, its version and its units", () => {
    expect(week).toMatchObject({ leafpace: "week", version: 1 });
    expect(week.units.keysEndWith).toMatchObject({ C: "°C", cm: "cm", kg: "kg" });
    expect(week.units.worth).toBe(outcome().farm.currency ?? "kg");
  });

  test("has null only where something is absent", () => {
    for (const [path, value] of leaves(week, "week")) if (value === null) expect(path).toMatch(ABSENT);
  });

  test("gives every walk as an instant and by the farm's clock", () => {
    expect(week.walks).toHaveLength(10);
    expect(week.walks[0].at).toEqual({ instant: "2026-04-20T11:00:00.000Z", clock: "2026-04-20 07:00" });
    expect(week.walks[1].at).toEqual({ instant: "2026-04-20T22:00:00.000Z", clock: "2026-04-20 18:00" });
  });

  test("carries the ledger of every tunnel, walk and setting", () => {
    for (const tunnel of week.tunnels) {
      expect(tunnel.choice).toHaveLength(week.walks.length);
      expect(tunnel.ledger).toHaveLength(week.walks.length * tunnel.settings.length);
      const keys = new Set(tunnel.settings.map(({ key }: { key: string }) => key));
      for (const entry of tunnel.ledger) {
        expect(keys).toContain(entry.setting);
        for (const each of entry.successions)
          expect(Object.keys(each)).toEqual([
            "succession",
            "thermalTimeCd",
            "paceCd",
            "lightMol",
            "heatCh",
            "damage",
            "safe",
            "rooted",
          ]);
      }
    }
  });

  test("carries the parts of the worth and every crop used", () => {
    for (const { parts, partsUnchanged } of week.tunnels)
      for (const each of [parts, partsUnchanged])
        expect(Object.keys(each).sort()).toEqual(["again", "calm", "damage", "labour", "stress", "timing"]);
    const crops = new Set(week.crops.map(({ crop }: { crop: string }) => crop));
    for (const { crop } of week.successions) expect(crops).toContain(crop);
  });
});

test("a number that is none is a programmer's mistake and is named", () => {
  const outcome = sample();
  const [first, ...rest] = outcome.successions;
  const broken = { ...first!, sizeNow: { ...first!.sizeNow!, middle: centimetre(Number.NaN) } };
  expect(() => weekJson({ ...outcome, successions: [broken, ...rest] })).toThrow(
    new TypeError("week.successions[0].sizeNow.middleCm is NaN"),
  );
  expect(() =>
    bedsJson({
      ...outcome,
      successions: [{ ...first!, odds: 1, spread: Number.POSITIVE_INFINITY } as never],
    }),
  ).toThrow(new TypeError("beds.successions[0].spread is Infinity"));
});

test("a missing value is a programmer's mistake and is named", () => {
  const outcome = sample();
  const broken = { ...outcome.products[0]!, expected: undefined } as never;
  expect(() => weekJson({ ...outcome, products: [broken] })).toThrow(
    new TypeError("week.products[0].expectedKg is missing"),
  );
});

test("names keep every character, and nothing in the text is obeyed by a terminal", () => {
  const name = "\u001b[31mA\u009b2J\u202eB\u2028";
  const text = weekJson(sample({ name }));
  expect(JSON.parse(text).farm.name).toBe(name);
  expect(text.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u2028-\u202e]/u);
});

test("where beds stand as data", () => {
  const beds = JSON.parse(bedsJson(sample()));
  expect(beds).toMatchObject({ leafpace: "beds", version: 1 });
  expect(beds.successions.map(({ succession }: { succession: string }) => succession)).toEqual([
    "A12",
    "S4",
    "M3",
    "L7",
    "K2",
  ]);
});

test("a way out says which kind its worth is", () => {
  const ways = (outcome: Outcome): unknown[] =>
    JSON.parse(weekJson(outcome)).successions.find(
      ({ succession }: { succession: string }) => succession === "S4",
    ).miss.alternatives;
  expect(ways(sample())).toMatchObject([
    { forced: false, fate: { kind: "hold" }, worth: 152 },
    { forced: false, fate: { kind: "pick" }, worth: 124 },
    { forced: false, fate: { kind: "none" }, worth: 0 },
  ]);
  const uncut = {
    forced: true,
    fate: { kind: "none" },
    cut: null,
    planned: false,
    worth: -152,
    off: 0,
  };
  expect(ways(plannedAround())[2]).toEqual(uncut);
});
