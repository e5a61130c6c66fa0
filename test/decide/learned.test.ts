import { describe, expect, test } from "vitest";
import { gain, layersOf } from "../../src/cover/index.ts";
import {
  bestStrip,
  coverPairs,
  learnCovers,
  type StripPlace,
  sceneOf,
  stripPairs,
  stripTeaches,
} from "../../src/decide/index.ts";
import { catalogue, type Note, type Succession } from "../../src/farm/index.ts";
import { leafCurve, leafLength } from "../../src/growth/index.ts";
import {
  type Centimetre,
  centimetre,
  daysBetween,
  type LocalDate,
  pounds,
  startOf,
} from "../../src/quantity/index.ts";
import { type WeekInput, week } from "../../src/week.ts";
import { daysBefore, logged, recorded } from "./loggedFarm.ts";
import { at, bed, leaf, MONDAY, piece, tunnel } from "./smallFarm.ts";

const { settings, crops } = catalogue();
const [T, U] = [tunnel("T", 18), tunnel("U", 18)];
const lettuce = bed("lettuce-mix", T, { sown: daysBefore(MONDAY, 42) });
const other = bed("lettuce-mix", U, { sown: daysBefore(MONDAY, 40) });

const note = (
  day: number,
  said: { kind: "cut" | "emerged" | "not ready"; succession: string; last?: boolean },
): Note =>
  ({
    at: at(day, 8),
    line: 3,
    remark: "",
    ...said,
    ...(said.kind === "cut" ? { weight: pounds(5), last: said.last ?? true } : {}),
  }) as Note;

const plan = (notes: readonly Note[], successions: readonly Succession[] = [lettuce, other]) =>
  week(logged({ tunnels: [T, U], successions, pieces: [], notes }, daysBefore(MONDAY, 50)));

const of = (outcome: ReturnType<typeof week>, { id }: Succession) =>
  outcome.successions.find(({ succession }) => succession.id === id)!;

/** Bed T as the model has it with no note. */
const alone = plan([]);
const expected = of(alone, lettuce);

describe("what the notes of one bed say of another", () => {
  test("a leaf far behind makes the other bed of its crop later, and a little surer", () => {
    const slow = plan([leaf(lettuce, expected.sizeNow!.middle * 0.75)]);
    expect(of(slow, other).requirement).toBeGreaterThan(of(alone, other).requirement);
    expect(of(slow, other).spread).toBeLessThan(of(alone, other).spread);
    const { successions } = slow.madeFrom.learned!;
    expect(successions.get(other.id)!.sameSeason.leaf + successions.get(other.id)!.elsewhere.leaf).toBe(1);
  });

  test("a bed seen not to be ready needs more, where the model had it ready", () => {
    const ready = { ...lettuce, sown: daysBefore(MONDAY, 48) };
    const before = of(plan([], [ready]), ready);
    const after = of(
      plan(
        [note(0, { kind: "not ready", succession: ready.id })].map((each) => ({ ...each, at: at(-1, 8) })),
        [ready],
      ),
      ready,
    );
    expect(after.requirement).toBeGreaterThan(before.requirement);
  });

  test("a bed of last year that is gone counts, by the weather that was logged then", () => {
    const past: Succession = { ...other, id: "gone", sown: daysBefore(MONDAY, 365 + 60) };
    const cut: Note = { ...note(-365, { kind: "cut", succession: "gone" }), at: at(-365 - 5, 8) } as Note;
    const learnedFrom = (from: LocalDate) =>
      of(
        week(logged({ tunnels: [T, U], successions: [lettuce, past], pieces: [], notes: [cut] }, from)),
        lettuce,
      );
    const [withLog, without] = [learnedFrom(daysBefore(MONDAY, 440)), learnedFrom(daysBefore(MONDAY, 50))];
    const moved = ({ requirement }: typeof expected): number =>
      Math.abs(Math.log(requirement / crops.get("lettuce-mix")!.requirement));
    expect(moved(withLog)).toBeGreaterThan(0.01);
    expect(withLog.spread).toBeLessThan(without.spread);
  });

  test("a last cut without a weight clears the bed and says nothing of its size", () => {
    const cleared = (weight: ReturnType<typeof pounds> | null): number => {
      const cut: Note = {
        kind: "cut",
        at: at(-20, 8),
        line: 4,
        remark: "",
        succession: other.id,
        weight,
        last: true,
      };
      return of(plan([cut]), lettuce).requirement;
    };
    expect(cleared(null)).toBe(expected.requirement);
    expect(cleared(pounds(5))).not.toBe(expected.requirement);
  });
});

describe("a note", () => {
  test("taken back is as if it had never been", () => {
    const kept = [leaf(other, 6)];
    const told = ({ successions }: ReturnType<typeof week>) =>
      successions.map(({ requirement, spread, sizeNow, reach }) => ({ requirement, spread, sizeNow, reach }));
    plan([...kept, leaf(lettuce, 3)]);
    expect(told(plan([...kept]))).toEqual(told(plan(kept)));
    expect(told(plan([]))).toEqual(told(alone));
  });

  test("however wild moves a date by no more than two and a half of its standard deviations, and is told", () => {
    const until = (outcome: ReturnType<typeof week>): number =>
      daysBetween(MONDAY, of(outcome, lettuce).reach.unchanged!);
    const begun = until(alone);
    for (const cm of [1, 2, 3, 20, 40, 60]) {
      const wild = plan([leaf(lettuce, cm)]);
      // Its thermal time is known to some 6 %, its requirement to 12 %, a leaf to 5 or 15 %: together at most 0.22, times 2.5.
      const most = Math.exp(2.5 * 0.22);
      const time =
        of(wild, lettuce).thermalTime /
        Math.exp(Math.log(of(wild, lettuce).requirement / expected.requirement));
      expect(time, `${cm} cm`).toBeLessThan(expected.thermalTime * most);
      expect(time, `${cm} cm`).toBeGreaterThan(expected.thermalTime / most);
      expect(Math.abs(until(wild) - begun), `${cm} cm`).toBeLessThanOrEqual(24);
      if (cm > 20 || cm < 2)
        expect(wild.problems.map(({ code, line, column }) => ({ code, line, column }))).toEqual([
          { code: "leaf-surprises", line: 2, column: "value" },
        ]);
    }
  });
});

describe("a logger under a cover beside the one outside", () => {
  const cloth = [piece("20 m", "row-cover-19", 20, ["T"]), piece("20 m too", "row-cover-19", 20, ["U"])];
  /** Both tunnels under one kind of cloth; a logger in T that is warmer by a part of what the catalogue expects. */
  function withLogger(part: number): WeekInput {
    const asked = logged(
      {
        tunnels: [T, U],
        successions: [lettuce, other],
        pieces: cloth,
        notes: [],
        sensors: new Map([["in-t", "T"]]),
      },
      daysBefore(MONDAY, 50),
    );
    const { scene } = sceneOf(asked);
    const { weather } = scene!;
    const layers = layersOf([{ cover: catalogue().covers.get("row-cover-19")!, vented: false }], settings);
    const gainOf = (hour: number): number => {
      const i = hour - weather.first;
      return gain(layers, weather.radiation[i]!, weather.wind[i]!, weather.cloud[i]!);
    };
    const inside = recorded("in-t", daysBefore(MONDAY, 14), at(0, 6.5), (hour) => part * gainOf(hour));
    return { ...asked, sensors: [...asked.sensors, inside] };
  }

  test("refits what that cloth warms, on other tunnels too, and makes it surer", () => {
    const cold = week(withLogger(0.5));
    const [{ cover, factors } = { cover: "", factors: [] }] = cold.madeFrom.learned!.covers;
    expect(cover).toBe("row-cover-19");
    const [day, night] = factors;
    expect(day!.pairs).toBeGreaterThan(9);
    expect(day!.factor).toBeLessThan(0.75);
    expect(day!.spread).toBeLessThan(settings.warmthSpread / 2);
    expect(night!.factor).toBeLessThan(1);
    expect(of(cold, other).thermalTime).toBeLessThan(
      of(week({ ...withLogger(1), sensors: withLogger(1).sensors.slice(0, 1) }), other).thermalTime,
    );
  });

  test("makes pairs of days and nights in which one cloth lay alone, and of no others", () => {
    const asked = withLogger(1);
    const { scene } = sceneOf(asked);
    const pairs = coverPairs({ ...scene!, farm: asked.farm });
    expect(new Set(pairs.map((pair) => pair.cover))).toEqual(new Set(["row-cover-19"]));
    expect(pairs.filter(({ part }) => part === "day").length).toBeGreaterThanOrEqual(12);
    expect(coverPairs({ ...scene!, farm: { ...asked.farm, pieces: [] } })).toEqual([]);
    const off: Note = {
      kind: "cover",
      at: at(-7, 12),
      line: 2,
      remark: "",
      tunnel: "T",
      cover: "row-cover-19",
      state: "vented",
    };
    expect(coverPairs({ ...scene!, farm: { ...asked.farm, notes: [off] } }).length).toBeLessThan(
      pairs.length,
    );
  });
});

describe("a check strip", () => {
  const cloth = [piece("20 m", "row-cover-19", 20, ["T"])];
  const curve = leafCurve(crops.get("lettuce-mix")!, crops.get("lettuce-mix")!.requirement, settings);
  const strip = (cm: number): Note =>
    ({ ...leaf(lettuce, cm), kind: "strip", lengths: [centimetre(cm) as Centimetre] }) as Note;
  const asked = (notes: readonly Note[]): WeekInput =>
    logged({ tunnels: [T], successions: [lettuce], pieces: cloth, notes }, daysBefore(MONDAY, 50));

  test("beside the bed says what the cloth gained, next to what was expected", () => {
    const { scene } = sceneOf(asked([leaf(lettuce, leafLength(curve, 300)), strip(leafLength(curve, 270))]));
    const [pair, ...more] = stripPairs(scene!);
    expect(more).toEqual([]);
    expect(pair).toMatchObject({ cover: "row-cover-19", crop: "lettuce-mix" });
    expect(pair!.measured / (pair!.error / settings.stripError)).toBeCloseTo(0.1, 9);
    expect(pair!.expected).toBeGreaterThan(0);
    const [learned] = week(asked([leaf(lettuce, leafLength(curve, 300)), strip(leafLength(curve, 299))]))
      .madeFrom.learned!.covers;
    expect(learned!.factors[0]!.factor).toBeLessThan(1);
    expect(learned!.strips[0]!.own).toBeGreaterThan(0);
    expect(learned!.strips[0]!.own).toBeLessThan(1);
  });

  test("without a leaf of its bed on that day says nothing, nor does one where no cloth lay", () => {
    expect(stripPairs(sceneOf(asked([strip(7)])).scene!)).toEqual([]);
    const bare = { ...asked([leaf(lettuce, 8), strip(7)]) };
    expect(stripPairs(sceneOf({ ...bare, farm: { ...bare.farm, pieces: [] } }).scene!)).toEqual([]);
  });

  test("teaches most where its cloth does much, is little known and much hangs on it", () => {
    const place = (more: Partial<StripPlace>): StripPlace => ({
      succession: "S1",
      cover: "row-cover-19",
      expected: 30,
      error: 13,
      spread: 0.25,
      worth: 100,
      ...more,
    });
    expect(stripTeaches(place({ expected: 0 }))).toBeCloseTo(0, 12);
    expect(stripTeaches(place({ expected: 1e6 }))).toBeCloseTo(0.25, 4);
    const best = bestStrip([
      place({}),
      place({ succession: "S2", worth: 300 }),
      place({ succession: "S3", spread: 0.05 }),
    ]);
    expect(best?.succession).toBe("S2");
    expect(bestStrip([place({ expected: 0 }), place({ worth: 0 })])).toBeNull();
  });
});

describe("what the grower keeps of a cover", () => {
  test("counts as it stands, and the rest goes on being learned", () => {
    const { covers } = catalogue();
    const kept = [
      {
        what: "day warmth" as const,
        name: "row-cover-19",
        season: null,
        value: { shift: Math.log(0.8), spread: 0, typed: true },
        line: 4,
      },
    ];
    const pair = { cover: "row-cover-19", part: "day" as const, expected: 4, measured: 8, error: 0.5 };
    const [learned] = learnCovers({ covers, kept }, [pair, { ...pair, part: "night" }], [], settings);
    expect(learned!.factors.map(({ what, factor }) => [what, factor.toFixed(2)])).toEqual([
      ["day warmth", "0.80"],
      ["night warmth", learned!.factors[1]!.factor.toFixed(2)],
    ]);
    expect(learned!.factors[1]!.factor).toBeGreaterThan(1.5);
  });
});

test("the logged farm's hours end where they are asked to", () => {
  const { hours } = recorded("x", MONDAY, at(1, 0));
  expect([hours.length, startOf(hours[0]!.hour)]).toEqual([24, at(0, 0)]);
});
