import { expect, test } from "vitest";
import {
  asKept,
  moreThan,
  outletResults,
  type PlannedAround,
  planSettled,
  type SuccessionOutlook,
  sceneOf,
} from "../../src/decide/index.ts";
import type { Farm } from "../../src/farm/index.ts";
import { readIssuedSheet } from "../../src/folder/index.ts";
import { kilogram, type LocalDate } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { planAll, solver, week } from "../week.ts";
import { bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const [a, b] = [tunnel("A", 12), tunnel("B", 12)];
const arugula = bed("arugula", a, { market: "friday" });
const spinach = bed("spinach", b, { market: "friday" });
const { products } = exampleFarm();

const farm = (lengths: readonly [number, number], more: Partial<Farm> = {}) => ({
  tunnels: [a, b],
  successions: [arugula, spinach],
  pieces: [piece("light", "row-cover-19", 15), piece("dark", "shade-40", 15)],
  notes: [leaf(arugula, lengths[0]), leaf(spinach, lengths[1])],
  ...more,
});

const cool = clear([2, 12], [1, 13], [3, 14], [2, 12], [4, 15]);
const warm = clear([12, 27], [13, 28], [13, 29], [12, 27], [11, 26]);

/** A sheet made while it was to stay cool, which changed instructions are dear to differ from. */
const { sheet } = readIssuedSheet("sheets/monday.json", weekJson(week(input(farm([11, 9.5]), cool))));
const { labour } = exampleFarm();
const turned: WeekInput = {
  ...input(farm([11, 9.5], { labour: { ...labour, changedInstruction: 3 } }), warm),
  issued: sheet!,
};

const farms: readonly (readonly [string, WeekInput])[] = [
  ["beds too large", input(farm([11, 9.5]), warm)],
  ["beds too small", input(farm([4, 3]), cool)],
  ["one of each", input(farm([12, 3]), cool)],
  ["orders", input(farm([11, 9.5], { products }), warm)],
  ["a sheet given out", turned],
];

/** What is told with the farm planned anew around every way out of a miss. */
const anew = (asked: WeekInput): readonly SuccessionOutlook[] => week({ ...asked, whatIf: true }).successions;

const waysOut = ({ miss }: SuccessionOutlook): readonly PlannedAround[] =>
  (miss?.alternatives ?? []).flatMap((way) => (way.forced ? [way] : []));

/** Every way out of a plan's misses beside what keeping it comes to. */
function expectAsKept(asked: WeekInput): void {
  const plain = planAll(sceneOf(asked).scene!).joint;
  const ways = anew(asked).flatMap(waysOut);
  expect(ways.length).toBeGreaterThan(0);
  for (const { kept, worth, off } of ways) {
    const settled = planAll(sceneOf({ ...asked, keep: [kept] }).scene!).joint;
    const asKept = moreThan(settled, plain);
    const within = Math.max(1e-6 * Math.max(1, Math.abs(asKept.worth)), asKept.off + off);
    expect(Math.abs(worth - asKept.worth), JSON.stringify(kept)).toBeLessThanOrEqual(within);
  }
}

test.each([
  ["from scratch", farms[0]![1]],
  ["with a sheet given out", turned],
])("the plan's own way is told first, and no other is worth more: %s", (_name, asked) => {
  const missed = anew(asked).filter(({ miss }) => miss !== null);
  expect(missed.length).toBeGreaterThan(0);
  for (const ways of missed.map(waysOut)) {
    expect(ways[0]).toMatchObject({ planned: true, worth: 0, off: 0 });
    expect(ways.length).toBeLessThanOrEqual(4);
    for (const { worth } of ways.slice(1)) expect(worth).toBeLessThanOrEqual(1e-6);
  }
});

test("orders of a day that a settled cut leaves no bed for still cost what they lack", () => {
  const product = products.find(({ id }) => id === "restaurant-arugula")!;
  const order = { market: "friday", weight: kilogram(200), short: 5 };
  const alone = {
    ...farm([9, 9]),
    tunnels: [a],
    successions: [arugula],
    notes: [leaf(arugula, 9)],
    products: [{ ...product, orders: [order] }],
  };
  const plan = planAll(sceneOf(input(alone, cool)).scene!);
  const settled = planSettled(plan, { kind: "uncut", succession: arugula.id }, solver);
  expect(plan.joint.proved).toBe(true);
  expect(moreThan(settled, plan.joint).worth).toBeLessThanOrEqual(1e-6);
  // Three Fridays are looked at, and nothing is brought to any of them.
  expect(settled.orders).toBeCloseTo(-3 * 200 * 5, 6);
});

test("what a way out pays for changed instructions counts in its worth", () => {
  const plan = planAll(sceneOf(turned).scene!);
  const { joint } = plan;
  const calm = ({ tunnels }: typeof joint): number =>
    tunnels.reduce((sum, { evaluation }) => sum + evaluation.parts.calm, 0);
  const cuts = plan.plans.flatMap(({ problem }) =>
    problem.successions.flatMap(({ standing, outlets }) =>
      outlets.map((outlet) => asKept(turned.farm.place.zone, standing.succession, outlet)),
    ),
  );
  const differing = cuts.flatMap((kept) => {
    const settled = planSettled(plan, kept, solver);
    const paid = calm(settled) - calm(joint);
    const { worth } = moreThan(settled, joint);
    return paid === 0 ? [] : [{ paid, apart: worth - (settled.worth - joint.worth) }];
  });
  expect(differing.length).toBeGreaterThan(0);
  for (const { paid, apart } of differing) expect(apart).toBeCloseTo(paid, 6);
});

test("what the grower has settled has no other way", () => {
  const [, asked] = farms[0]!;
  const kept = {
    kind: "cut",
    succession: arugula.id,
    date: "2026-04-24" as LocalDate,
    part: "morning",
  } as const;
  const own = anew({ ...asked, keep: [kept] }).find(({ succession }) => succession.id === arugula.id)!;
  expect(own.miss?.alternatives).toMatchObject([{ forced: true, kept, planned: true, worth: 0, off: 0 }]);
});

test("a bed cleared is free as many days as its cut lies ahead, each a bed-day of what it lacks of a whole harvest", () => {
  const [, asked] = farms[1]!;
  const { plans } = planAll(sceneOf(asked).scene!);
  const cleared = week(asked).successions.flatMap(({ succession, miss }) =>
    miss === null || miss.freed === null ? [] : [{ succession, freed: miss.freed }],
  );
  expect(cleared.length).toBeGreaterThan(0);
  for (const { succession, freed } of cleared) {
    const own = plans
      .flatMap(({ chosen }) => chosen.successions)
      .find(({ table }) => table.standing.succession.id === succession.id)!;
    const days = (own.outlet!.at - asked.on) / 86_400_000;
    const lacking = own.table.mass * own.table.price - Math.max(0, own.worth - own.again);
    expect(freed.days).toBeCloseTo(days, 9);
    expect(freed.worth).toBeCloseTo(0.01 * days * lacking, 9);
  }
});

test.each([
  [2, 0.3],
  [1, null],
])("of a crop usually cut %i times what grows again is worth %j of a whole harvest", (cuts, share) => {
  const [, asked] = farms[0]!;
  const crops = new Map([...asked.farm.crops].map(([id, crop]) => [id, { ...crop, cuts }]));
  const grown = { ...asked, farm: { ...asked.farm, crops } };
  const tables = planAll(sceneOf(grown).scene!).plans.flatMap(({ problem }) => problem.successions);
  const missed = week(grown).successions.filter(({ miss }) => miss !== null);
  expect(missed.length).toBeGreaterThan(0);
  for (const { succession, miss } of missed) {
    const { mass, price } = tables.find(({ standing }) => standing.succession.id === succession.id)!;
    expect(miss!.again).toBe(share === null ? null : share * mass * price);
  }
});

test("every cut of a bed that grows again is worth the next cut as well, as far as its roots come through; leaving it is not", () => {
  const [, asked] = farms[0]!;
  const { problem, lays } = planAll(sceneOf(asked).scene!).plans.map(({ problem: each }) => ({
    problem: each,
    lays: new Array<number>(each.intervals).fill(0),
  }))[0]!;
  const table = problem.successions[0]!;
  const once = { ...table, regrown: 0 };
  expect(table.regrown).toBeGreaterThan(0);
  const rooted = lays.reduce((sum, lay, i) => sum + table.rooted[i * problem.settings.length + lay]!, 0);
  const later = table.regrown * Math.exp(rooted) + problem.neverLost * table.mass * table.price * rooted;
  const [again, without] = [table, once].map((each) => outletResults(problem, each, lays));
  again!.forEach(({ worth, outlet }, k) => {
    expect(worth - without![k]!.worth).toBeCloseTo(outlet === null ? 0 : later, 9);
  });
});

test.each(farms)("every way out is worth what keeping it comes to: %s", (_name, asked) => {
  expectAsKept(asked);
});

test("without being asked each is told by what its bed alone brings under the plan, the best first", () => {
  const [, asked] = farms[0]!;
  const tables = planAll(sceneOf(asked).scene!).plans.flatMap(({ problem, schedule }) =>
    problem.successions.map((table) => ({ table, results: outletResults(problem, table, schedule) })),
  );
  const missed = week(asked).successions.filter(({ miss }) => miss !== null);
  expect(missed.length).toBeGreaterThan(0);
  for (const { succession, miss } of missed) {
    const { results } = tables.find(({ table }) => table.standing.succession.id === succession.id)!;
    const worths = miss!.alternatives.map(({ worth }) => worth);
    expect(miss!.alternatives.every(({ forced }) => !forced)).toBe(true);
    expect(worths[0]).toBe(Math.max(...results.map(({ worth }) => worth)));
    expect(worths).toEqual([...worths].sort((x, y) => y - x));
  }
});

test("the best cut is told with its worth, even where its greens do not pay for the wages of cutting them", () => {
  const single = tunnel("A", 16);
  const lettuce = bed("lettuce-mix", single);
  const { labour } = exampleFarm();
  const { successions } = week(
    input(
      {
        tunnels: [single],
        successions: [lettuce],
        notes: [leaf(lettuce, 24)],
        pieces: [],
        labour: { ...labour, wage: 224 },
      },
      clear([3, 14], [2, 12]),
    ),
  );
  const { worth, miss } = successions[0]!;
  expect(miss!.alternatives.length).toBeGreaterThan(0);
  expect(miss!.alternatives[0]!.worth).toBe(worth);
});

const FRIDAY_CUT = { kind: "cut", date: "2026-04-24" as LocalDate, part: "morning" } as const;

test("what is settled of a bed changes nothing of which markets it could be right for", () => {
  const [, asked] = farms[2]!;
  const rights = (...keep: NonNullable<WeekInput["keep"]>): readonly string[] =>
    week({ ...asked, keep }).successions.map(({ atPicks }) => atPicks.map(({ right }) => right).join());
  const free = rights();
  expect(free.every((each) => each.includes(","))).toBe(true);
  expect(rights({ ...FRIDAY_CUT, succession: arugula.id })).toEqual(free);
  expect(rights({ kind: "uncut", succession: arugula.id })).toEqual(free);
});
