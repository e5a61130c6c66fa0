import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue, type KeptValue, type SeasonOfYear } from "../../src/farm/index.ts";
import { leafCurve, leafLength } from "../../src/growth/index.ts";
import {
  type BedThen,
  beliefOf,
  cutSeen,
  type Growth,
  type KeptRequirement,
  leafSeen,
  learnRequirement,
  normalBelow,
  normalQuantile,
  notReadySeen,
  type Seen,
} from "../../src/learn/index.ts";
import { centimetre, degreeDays } from "../../src/quantity/index.ts";

const { crops, settings } = catalogue();
const crop = crops.get("lettuce-mix")!;
const curve = leafCurve(crop, crop.requirement, settings);
const NOTHING: KeptRequirement = { farm: null, seasons: new Map() };
const bed = (thermalTime: number, more: Partial<BedThen> = {}): BedThen => ({
  thermalTime,
  guess: 0,
  begun: "seen",
  ...more,
});

/** A leaf as long as a bed would have that needs some times the thermal time the catalogue says. */
const leafOf = (thermalTime: number, ratio: number, more: Partial<BedThen> = {}): Seen =>
  leafSeen(bed(thermalTime, more), leafLength(curve, thermalTime / ratio), crop, curve, settings);

const growth = (sowing: string, seen: readonly Seen[], more: Partial<Growth> = {}): Growth => ({
  sowing,
  season: "spring",
  age: 0,
  regrowth: false,
  seen,
  ...more,
});

const learn = (spread: number, growths: readonly Growth[], kept = NOTHING, own = settings) =>
  learnRequirement(spread, growths, kept, own);
const alone = (spread: number, seen: readonly Seen[], own = settings) =>
  learn(spread, [growth("S1", seen)], NOTHING, own).growths[0]!;

describe("learning a requirement from notes", () => {
  it("believes the catalogue when nothing was noted", () => {
    const { farm, season, growths } = learn(0.15, [growth("S1", [])]);
    expect(growths).toEqual([{ shift: 0, spread: 0.15, before: 0.15, weighed: [] }]);
    expect([farm.shift, season("spring").shift]).toEqual([0, 0]);
    expect(farm.spread).toBeCloseTo(0.15 * Math.sqrt(settings.farmShare), 12);
  });

  it("moves towards what was seen and grows surer, never past what was seen", () => {
    const slow = leafOf(250, 1.2);
    const [once, thrice] = [alone(0.15, [slow]), alone(0.15, [slow, slow, slow])];
    expect(once.shift).toBeGreaterThan(0);
    expect(thrice.shift).toBeGreaterThan(once.shift);
    expect(thrice.shift).toBeLessThan(Math.log(1.2) + 1e-9);
    expect(thrice.spread).toBeLessThan(once.spread);
  });

  it("learns of a crop from a bed that is gone, most for the same season, least from long ago", () => {
    const slow = [leafOf(300, 1.2)];
    const other = (more: Partial<Growth>): number =>
      learn(0.15, [growth("S1", slow, more), growth("S2", [])]).growths[1]!.shift;
    const [same, autumn, old] = [other({}), other({ season: "autumn" }), other({ age: 10 })];
    expect(same).toBeGreaterThan(autumn);
    expect(autumn).toBeGreaterThan(0.02);
    expect(old).toBeLessThan(same);
    expect(old).toBeGreaterThan(0);
  });

  it("takes a cut for a bed somewhere in its window: one cut at its usual place changes nothing", () => {
    const usual = 330 + settings.cutPlace * 54.3;
    const seen = cutSeen(bed(usual), crop, curve, settings);
    expect(Math.abs(alone(0.15, [seen]).shift)).toBeLessThan(0.01);
    expect(cutSeen(bed(usual * 1.2), crop, curve, settings).value).toBeCloseTo(
      seen.value + Math.log(1.2),
      12,
    );
    expect(seen.error).toBeGreaterThan(leafOf(330, 1).error);
  });

  it("takes a bed that is not ready for one that needs more, and learns little where that was clear", () => {
    const notReady = (thermalTime: number): number =>
      alone(0.15, [notReadySeen(bed(thermalTime), crop, curve, settings)]).shift;
    expect(notReady(200)).toBeLessThan(0.001);
    expect(notReady(330)).toBeGreaterThan(0.05);
    expect(notReady(400)).toBeGreaterThan(notReady(330));
  });

  // Truncated normal against a sum over a fine grid: Bayes' rule itself.
  it("weighs one bed that is not ready as Bayes' rule does", () => {
    const spread = 0.15;
    const seen = notReadySeen(bed(345), crop, curve, settings);
    const grid = Array.from({ length: 40_001 }, (_, i) => (i - 20_000) / 20_000);
    const weights = grid.map(
      (x) => Math.exp(-(x * x) / (2 * spread ** 2)) * normalBelow((x - seen.value) / seen.error),
    );
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = weights.reduce((sum, weight, i) => sum + weight * grid[i]!, 0) / total;
    const variance = weights.reduce((sum, weight, i) => sum + weight * (grid[i]! - mean) ** 2, 0) / total;
    const { shift, spread: left } = alone(spread, [seen]);
    expect(shift).toBeCloseTo(mean, 9);
    expect(left).toBeCloseTo(Math.sqrt(variance), 9);
  });

  it("learns less from a leaf whose thermal time is guessed, or whose coming up nobody saw", () => {
    const sure = alone(0.15, [leafOf(250, 1.3)]);
    for (const more of [{ guess: 0.2 }, { begun: "computed" as const }]) {
      const unsure = alone(0.15, [leafOf(250, 1.3, more)]);
      expect(unsure.shift).toBeLessThan(sure.shift);
      expect(unsure.spread).toBeGreaterThan(sure.spread);
    }
  });

  it("never becomes surer than the floor", () => {
    const many = Array.from({ length: 200 }, () => leafOf(260, 1));
    expect(alone(0.2, many).spread).toBe(settings.spreadFloor);
  });

  it("spreads a regrowth wider, and learns of the next one from it", () => {
    const again = growth("S1", [leafOf(300, 1.3)], { regrowth: true });
    const { growths } = learn(0.15, [again, growth("S2", [], { regrowth: true }), growth("S3", [])]);
    expect(growths[0]!.before).toBeCloseTo(0.15 * settings.regrowthSpread, 12);
    expect(growths[1]!.shift).toBeGreaterThan(growths[2]!.shift);
    expect(growths[2]!.shift).toBeGreaterThan(0);
  });
});

describe("what the grower keeps", () => {
  const typed: KeptValue = { shift: Math.log(1.1), spread: 0, typed: true };
  const slow = [leafOf(300, 1.3)];

  it("stays as it is, whatever the notes say, and each bed still has its own", () => {
    const kept: KeptRequirement = { farm: typed, seasons: new Map() };
    const { farm, growths } = learn(0.15, [growth("S1", slow), growth("S2", [], { season: "autumn" })], kept);
    expect(farm).toEqual({ shift: Math.log(1.1), spread: 0, before: 0 });
    expect(growths[1]!.shift).toBeCloseTo(Math.log(1.1), 12);
    expect(growths[1]!.spread).toBeCloseTo(0.15 * Math.sqrt(1 - settings.farmShare), 12);
    expect(growths[0]!.shift).toBeGreaterThan(Math.log(1.1));
  });

  it("counts for its season alone when it is a season's", () => {
    const kept: KeptRequirement = {
      farm: null,
      seasons: new Map<SeasonOfYear, KeptValue>([["spring", { ...typed, spread: 0.05 }]]),
    };
    const { farm, season } = learn(0.15, [growth("S1", slow)], kept);
    expect(season("spring")).toEqual({ shift: Math.log(1.1), spread: 0.05, before: 0.05 });
    expect(farm.shift).toBe(0);
  });
});

const seen: fc.Arbitrary<Seen> = fc.record({
  kind: fc.constantFrom("about" as const, "above" as const),
  value: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
  error: fc.double({ min: 0.04, max: 0.3, noNaN: true }),
});
const season = fc.constantFrom<SeasonOfYear>("winter", "spring", "summer", "autumn");
const growths: fc.Arbitrary<readonly Growth[]> = fc.uniqueArray(
  fc.record({
    sowing: fc.constantFrom("A", "B", "C", "D", "E", "F"),
    season,
    age: fc.integer({ min: 0, max: 4 }),
    regrowth: fc.boolean(),
    seen: fc.array(seen, { maxLength: 5 }),
  }),
  { minLength: 1, maxLength: 8, selector: ({ sowing, regrowth }) => `${sowing} ${regrowth}` },
);

describe("notes in any number and order", () => {
  it("come to the same to the ninth digit in any order", () => {
    fc.assert(
      fc.property(growths, fc.nat(), (all, turn) => {
        const turned = all.map((_, i) => all[(i + turn) % all.length]!).reverse();
        const mixed = turned.map((each) => ({ ...each, seen: [...each.seen].reverse() }));
        const [forth, back] = [learn(0.15, all), learn(0.15, mixed)];
        all.forEach((each, i) => {
          const k = turned.indexOf(each);
          expect(back.growths[k]!.shift).toBeCloseTo(forth.growths[i]!.shift, 9);
          expect(back.growths[k]!.spread).toBeCloseTo(forth.growths[i]!.spread, 9);
          expect([...back.growths[k]!.weighed].reverse()).toEqual(forth.growths[i]!.weighed);
        });
        expect(back.farm.shift).toBeCloseTo(forth.farm.shift, 9);
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  it("come to numbers, surer than before and no surer than the floor", () => {
    fc.assert(
      fc.property(growths, (all) => {
        for (const { shift, spread, before } of learn(0.15, all).growths) {
          expect(Number.isFinite(shift)).toBe(true);
          expect(spread).toBeLessThanOrEqual(before + 1e-9);
          expect(spread).toBeGreaterThanOrEqual(settings.spreadFloor);
        }
      }),
      { numRuns: 300, seed: 6 },
    );
  });

  it("are as if one had never been, once it is forgotten", () => {
    fc.assert(
      fc.property(growths, seen, (all, wild) => {
        const [first, ...rest] = all as [Growth, ...Growth[]];
        const before = learn(0.15, all);
        learn(0.15, [{ ...first, seen: [...first.seen, wild] }, ...rest]);
        expect(learn(0.15, all).growths).toEqual(before.growths);
      }),
      { numRuns: 50, seed: 7 },
    );
  });
});

describe("a note that everything else contradicts", () => {
  /** How far one leaf moves a requirement, in spreads of what was believed without it. */
  const moved = (value: number, others: readonly Seen[]): number => {
    const error = 0.09;
    const without = alone(0.15, others);
    const withIt = alone(0.15, [...others, { kind: "about", value, error }]);
    return Math.abs(withIt.shift - without.shift) / without.spread;
  };

  it("moves a requirement by at most two and a half spreads, and the less the further off it is", () => {
    for (const others of [[], [leafOf(250, 1)], [leafOf(250, 1), leafOf(280, 1.05)]]) {
      for (let value = -4; value <= 4; value += 0.05)
        expect(moved(value, others)).toBeLessThanOrEqual(settings.surprise);
      expect(moved(1, others)).toBeGreaterThan(moved(2, others));
      expect(moved(2, others)).toBeGreaterThan(moved(4, others));
      expect(moved(4, others)).toBeGreaterThan(0);
    }
  });

  it("does no more whatever else was noted", () => {
    const usual = fc.record({
      kind: fc.constantFrom("about" as const, "above" as const),
      value: fc.double({ min: -0.3, max: 0.15, noNaN: true }),
      error: fc.double({ min: 0.06, max: 0.2, noNaN: true }),
    });
    const wild = fc.double({ min: 1, max: 4, noNaN: true });
    fc.assert(
      fc.property(fc.array(usual, { maxLength: 6 }), wild, fc.boolean(), (others, far, below) => {
        expect(moved(below ? -far : far, others)).toBeLessThanOrEqual(settings.surprise);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  it("is told, and counts again once another agrees with it", () => {
    const wild = leafOf(300, 2);
    const once = alone(0.12, [leafOf(200, 1), wild]);
    expect(once.weighed.map(({ surprising }) => surprising)).toEqual([false, true]);
    const agreed = alone(0.12, [wild, leafOf(290, 2), leafOf(310, 2)]);
    expect(agreed.shift).toBeGreaterThan(once.shift);
    const [first] = alone(0.12, [leafOf(300, 1.3)]).weighed;
    expect(first).toEqual({ surprising: false, taken: leafOf(300, 1.3).value });
  });

  it("is told too when it says not ready of a bed far past it", () => {
    const late = notReadySeen(bed(900), crop, curve, settings);
    const { weighed, shift } = alone(0.12, [late]);
    expect(weighed).toMatchObject([{ surprising: true }]);
    expect(shift).toBeLessThan(2.5 * 0.12);
  });
});

describe("the bed as its last leaf has it", () => {
  const standing = (thermalTime: number, ratio: number, spread = 0.1) => {
    const leaf = leafOf(thermalTime, ratio);
    const estimate = alone(spread, [leaf]);
    const grown = thermalTime * Math.exp(-estimate.weighed[0]!.taken);
    return { ...beliefOf(estimate, { thermalTime, grown }, 0, 1), estimate, leaf };
  };

  it("is as long as that leaf, which moves its requirement by at most two spreads", () => {
    for (const ratio of [0.85, 0.95, 1, 1.1, 1.25]) {
      const { shift, head, surprising } = standing(200, ratio);
      expect(leafLength(curve, (200 + head) * Math.exp(-shift))).toBeCloseTo(
        leafLength(curve, 200 / ratio),
        6,
      );
      expect(Math.abs(shift)).toBeLessThanOrEqual(0.2 + 1e-12);
      expect(surprising).toBe(false);
    }
  });

  it("goes with a leaf that surprises no further than two and a half of its standard deviations", () => {
    for (const ratio of [0.3, 0.5, 2.5, 6]) {
      const { shift, head, surprising, leaf } = standing(200, ratio);
      const most = settings.surprise * Math.hypot(0.1, leaf.error);
      expect(surprising).toBe(true);
      expect(Math.abs(Math.log((200 + head) / 200) - shift)).toBeLessThanOrEqual(most + 1e-9);
    }
  });

  it("spreads wider by what is guessed since the last leaf, or since sowing", () => {
    expect(beliefOf(alone(0.15, []), null, 0.2, 0)).toEqual({
      shift: 0,
      spread: 0.25,
      head: 0,
      surprising: false,
      measured: 0,
    });
  });
});

it("answers with the normal distribution of the tables", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.1, table of the normal distribution: 1.28 → 0.89973, 1.96 → 0.97500.
  expect(normalBelow(1.28)).toBeCloseTo(0.89973, 5);
  expect(normalBelow(1.96)).toBeCloseTo(0.975, 5);
  expect(normalQuantile(0.975)).toBeCloseTo(1.96, 2);
});

it("finds the thermal time again that a length came from", () => {
  for (const thermalTime of [120, 200, 303, 380]) expect(leafOf(thermalTime, 1).value).toBeCloseTo(0, 6);
  expect(leafLength(curve, degreeDays(crop.requirement))).toBeCloseTo(crop.smallest, 9);
  expect(leafSeen(bed(20), centimetre(0.5), crop, curve, settings).value).toBeCloseTo(Math.log(20), 6);
});
