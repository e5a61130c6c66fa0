import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heatSlows, type Scene, sceneOf } from "../../src/decide/index.ts";
import { catalogue, type Farm, settingKey } from "../../src/farm/index.ts";
import { between } from "../../src/growth/index.ts";
import {
  addDays,
  celsius,
  instantAt,
  type LocalDate,
  metre,
  metrePerSecond,
} from "../../src/quantity/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { planAll, week } from "../week.ts";

const { covers, settings } = catalogue();
const example = exampleFarm();
const MONDAY = "2026-05-18" as LocalDate;
const CROPS = ["lettuce-mix", "spinach", "mustard"];

/** One bare tunnel with three beds of leaves and a piece of every row cover and film there is. */
const farm: Farm = {
  ...example,
  tunnels: [example.tunnels[0]!],
  notes: [],
  products: [
    {
      id: "mix",
      name: "Mix",
      parts: [{ crop: "spinach", share: 1, swaps: [] }],
      price: 20,
      stall: null,
      orders: [],
    },
  ],
  pieces: [...covers.values()]
    .filter(({ kind }) => kind === "rowCover" || kind === "film")
    .map(({ id }) => ({ id, cover: id, length: metre(20), count: 1, spans: 1, liesOn: [] })),
  successions: CROPS.map((crop, i) => ({
    id: crop,
    crop,
    tunnel: example.tunnels[0]!.id,
    from: metre(i * 5),
    to: metre(i * 5 + 5),
    sown: addDays(MONDAY, -24),
    market: null,
    cuts: 0,
    net: false,
  })),
};

/** Fine weather for emergence, then days as they come. */
const weathers: fc.Arbitrary<readonly DailyRecord[]> = fc
  .array(
    fc.record({
      low: fc.integer({ min: -4, max: 27 }),
      rise: fc.integer({ min: 2, max: 18 }),
      wind: fc.integer({ min: 0, max: 6 }),
      sky: fc.constantFrom("sun" as const, "mixed" as const, "cloud" as const),
    }),
    { minLength: 5, maxLength: 5 },
  )
  .map((days) =>
    days.map(({ low, rise, wind, sky }, i) => ({
      date: addDays(MONDAY, i),
      low: celsius(low),
      high: celsius(low + rise),
      wind: metrePerSecond(wind),
      sky,
    })),
  );

const inputOf = (days: readonly DailyRecord[]): WeekInput => {
  const on = instantAt(farm.place.zone, MONDAY, 5);
  return { farm, settings, sensors: [], forecast: { issued: on, days }, on, days: 4, problems: [] };
};

/** Thermal time of every crop and the mean temperature between two walks under a setting. */
function under(
  { store }: Scene,
  setting: Parameters<Scene["store"]["climate"]>[0],
  from: number,
  to: number,
) {
  const { growing, from: first } = store.climate(setting);
  const hours = growing.subarray(from - first, to - first);
  return {
    warmth: hours.reduce((sum, value) => sum + value, 0),
    clocks: CROPS.map((crop) => {
      const sums = store.sums(farm.crops.get(crop)!, setting);
      return between(sums.thermalTime, sums.from, from, to);
    }),
  };
}

describe("whatever the weather", () => {
  it("no cover that makes a bed warmer and yet slower than a bare one is let through, by day or by night", {
    timeout: 60_000,
  }, () => {
    let slowed = 0;
    fc.assert(
      fc.property(weathers, (days) => {
        const scene = sceneOf(inputOf(days)).scene!;
        const { starts, walks } = scene.horizon;
        const [plan] = planAll(scene).plans;
        const { problem, choice } = plan!;
        const open = walks.map((_, i) => under(scene, [], starts[i]!, starts[i + 1]!));
        const slower = (setting: (typeof problem.settings)[number], i: number): boolean => {
          const here = under(scene, setting, starts[i]!, starts[i + 1]!);
          const bare = open[i]!;
          return here.warmth > bare.warmth && here.clocks.some((clock, c) => clock < bare.clocks[c]! - 1e-9);
        };
        const S = problem.settings.length;
        walks.forEach((_, i) => {
          problem.settings.forEach((setting, s) => {
            if (!slower(setting, i)) return;
            slowed += 1;
            expect(problem.broken[i * S + s], `${settingKey(setting)} from walk ${i}`).toContain(
              "rowCoverInHeat",
            );
          });
          expect(slower(problem.settings[choice[i]!]!, i), `chosen from walk ${i}`).toBe(false);
        });
      }),
      { numRuns: 25, seed: 20_260_518 },
    );
    expect(slowed).toBeGreaterThan(1000);
  });

  it("a bare bed is never said to be slowed by heat", () => {
    const [days] = fc.sample(weathers, { numRuns: 1, seed: 7 });
    const scene = sceneOf(inputOf(days!)).scene!;
    const [{ problem }] = planAll(scene).plans as [ReturnType<typeof planAll>["plans"][number]];
    expect(heatSlows(scene, [], problem.successions, scene.horizon.now, scene.horizon.end)).toBe(false);
  });
});

describe("shade cloth over spinach past its size on long days", () => {
  const long = Array.from({ length: 5 }, (_, i) => ({
    date: addDays(MONDAY, i),
    low: celsius(10),
    high: celsius(20),
    wind: metrePerSecond(1),
    sky: "sun" as const,
  }));
  const [tunnel] = farm.tunnels;
  const warned = (age: number, shaded: boolean): boolean => {
    const sown = addDays(MONDAY, -age);
    const notes = shaded
      ? [
          {
            at: instantAt(farm.place.zone, sown, 12),
            line: 2,
            kind: "cover" as const,
            tunnel: tunnel!.id,
            cover: "shade-50",
            state: "on" as const,
            remark: "",
          },
        ]
      : [];
    const successions = farm.successions
      .filter(({ crop }) => crop === "spinach")
      .map((succession) => ({ ...succession, sown }));
    const pieces = [{ id: "p", cover: "shade-50", length: metre(20), count: 1, spans: 1, liesOn: [] }];
    const input = inputOf(long);
    const { warnings } = week({ ...input, farm: { ...farm, notes, successions, pieces } });
    return warnings.some(({ kind }) => kind === "bolting");
  };

  it("takes no bolting warning away, at any age", { timeout: 60_000 }, () => {
    const ages = Array.from({ length: 25 }, (_, i) => 24 + i);
    const bare = ages.filter((age) => warned(age, false));
    expect(bare.length).toBeGreaterThan(5);
    expect(bare.length).toBeLessThan(ages.length);
    expect(bare.filter((age) => !warned(age, true))).toEqual([]);
  });
});

describe("what kills the planting in one and the same night", () => {
  const night = [0, 1, 2, 3, 4].map((i) => ({
    date: addDays(MONDAY, i),
    low: celsius(i === 1 ? -6 : 4),
    high: celsius(10),
    wind: metrePerSecond(1),
    sky: "sun" as const,
  }));
  const killed = (low: number): number => {
    const on = instantAt(farm.place.zone, MONDAY, 5);
    const hours = Array.from({ length: 40 * 24 }, (_, i) => {
      const hour = Math.round(on / 3_600_000) - 40 * 24 + i;
      const mild = i < 32 * 24 ? 12 : low;
      const value = celsius(mild + 4 * (1 - Math.cos((i * Math.PI) / 12)));
      return { hour, mean: value, lowest: value, highest: value, count: 4 } as never;
    });
    const sensors = new Map([["outside", "outside"]]);
    const successions = [{ ...farm.successions[0]!, sown: addDays(MONDAY, -16) }];
    const { warnings } = week({
      ...inputOf(night),
      farm: { ...farm, pieces: [], sensors, successions },
      sensors: [{ sensor: "outside", hours }],
    });
    const frost = warnings.find((warning) => warning.kind === "frost" && warning.date === MONDAY);
    return frost?.kind === "frost" ? frost.kill : Number.NaN;
  };

  it("depends on the week before: lettuce dies at −3 °C after 10 °C nights, and near −6 °C after frosty ones", () => {
    expect(killed(10)).toBeCloseTo(-3, 9);
    expect(killed(-3)).toBeLessThan(-5);
  });
});
