import { describe, expect, it } from "vitest";
import {
  type Change,
  changesOf,
  coursesOf,
  evaluate,
  hourAt,
  type Outcome,
  outletResults,
  ownTime,
  sceneOf,
  without,
} from "../../src/decide/index.ts";
import { departedBy, memberCourse, REQUIREMENTS } from "../../src/decide/memberCourse.ts";
import { thermalTimeAt } from "../../src/growth/index.ts";
import type { LocalDate } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import { namesOf } from "../../src/sheet/names.ts";
import { reason } from "../../src/sheet/reason.ts";
import { whole } from "../../src/sheet/why.ts";
import { chanceOf, leaves, value } from "../../src/sheet/words.ts";
import type { WeekInput } from "../../src/week.ts";
import { besideFaults } from "../check/beside.ts";
import { frostyFarm, only, product } from "../decide/frostyFarm.ts";
import { wetFarm } from "../decide/wetFarm.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { planAll, week } from "../week.ts";
import { exampleWeek } from "./exampleWeek.ts";

/** Ten tunnels are planned anew in each of these. */
const LONG = 240_000;

const total = ({ timing, stress, damage, labour, orders }: Change["gain"]): number =>
  timing + stress + damage + labour + orders;

/** Numbers of every reason that are not those of its own change, each as a sentence. */
function wordFaults(outcome: Outcome): readonly string[] {
  const { farm, together } = outcome;
  const { units } = farm;
  const names = namesOf(farm, outcome.successions);
  return outcome.tunnels.flatMap((plan) =>
    plan.changes.flatMap((change): readonly string[] => {
      const { told } = whole(reason(change, plan, outcome, names));
      const allowed = new Set<string>();
      for (const { cut } of [...change.without.beds, ...(change.rather?.beds ?? [])]) {
        if (cut === null) continue;
        const [a, b] = leaves(units, cut.size.plan, cut.size.other);
        for (const pair of [
          [a, b],
          [b, a],
          [chanceOf(cut.odds.plan), chanceOf(cut.odds.other)],
        ])
          allowed.add(pair.join(" / "));
      }
      const { worst } = change.without;
      if (worst !== null) allowed.add([chanceOf(worst.odds.plan), chanceOf(worst.odds.other)].join(" / "));
      const pairs = [
        ...told.matchAll(/(?:~|\b)([^~ ,:;]+)(?: on [^ ]+)? instead of ~?([^~ ,:;.]+)/g),
        ...told.matchAll(/(?:~|\b)([^~ ,:;]+), not ~?(?!faster)([^~ ,:;.]+)/g),
      ].map(([, a, b]) => `${a} / ${b}`);
      const worths = [...told.matchAll(/worth ([^ ]+?)(?: less| in all| more)?\.(?= |$)/gi)].map(
        ([, worth]) => worth!,
      );
      const unread = (said: RegExp, read: readonly string[]): readonly string[] =>
        (told.match(said) ?? []).length === read.length ? [] : [`a number that ${said} does not find`];
      const lost = together!.worth - change.without.worth;
      const known = [
        lost,
        change.gain.timing,
        change.gain.orders,
        change.gain.damage,
        change.gain.stress,
        change.gain.labour,
        ...(change.rather === null ? [] : [total(change.rather.gain)]),
      ].map((worth) => value(farm, worth));
      return [
        ...unread(/ instead of |, not (?!faster)/g, pairs),
        ...unread(/\bworth /gi, worths),
        ...pairs.filter((pair) => !allowed.has(pair)),
        ...worths.filter((worth) => !known.includes(worth)),
        ...(Math.abs(lost - total(change.gain)) < 1e-6 ? [] : ["worth of the change"]),
      ].map((fault) => `${plan.tunnel.id} ${change.walk.index}: ${fault} in ${told}`);
    }),
  );
}

const holds = (outcome: Outcome): void => {
  expect(besideFaults(JSON.parse(weekJson(outcome)))).toEqual([]);
  expect(wordFaults(outcome)).toEqual([]);
};

describe("every number a reason tells is what the week comes to without that one change", () => {
  it("on the example's Monday", { timeout: LONG }, async () => holds(await exampleWeek()));

  it.each([
    ["New York", "2012-06-18"],
    ["New York", "2013-10-14"],
    ["Seattle", "2013-05-06"],
  ] as const)("in weather measured in %s from %s on", { timeout: LONG }, (city, monday) =>
    holds(week(mondayInput(exampleFarm(), city, monday as LocalDate))),
  );

  it("on a frosty farm with orders", () => {
    const products = [
      product("arugula", only("arugula"), {
        orders: [{ market: exampleFarm().markets[0]!.id, weight: 8 as never, short: null }],
      }),
    ];
    for (const input of [frostyFarm(), frostyFarm({ products })]) holds(week(input));
  });

  it("on a farm with rain before a cut", () => holds(week(wetFarm(8, 6))));
});

/** Share of the cases in the window, each counted by itself. */
function oddsOf(input: WeekInput): readonly (readonly [told: number, counted: number])[] {
  const scene = sceneOf(input).scene!;
  const { plans, joint } = planAll(scene);
  return plans.flatMap((planned, t) => {
    const { problem, schedule, at } = planned;
    return changesOf(planned, t, joint, scene, coursesOf(scene)).flatMap((change) => {
      const left = without(schedule, change.walk.index);
      const instead = joint.instead(t, left);
      const again = evaluate(
        problem,
        left,
        instead.evaluation.successions.map(({ table, outlet }) =>
          outlet === null ? table.outlets.length : table.outlets.indexOf(outlet),
        ),
      );
      expect(again.parts).toEqual(instead.evaluation.parts);
      return change.without.beds.flatMap(({ succession, cut }) => {
        const table = problem.successions.find(({ standing }) => standing.succession.id === succession)!;
        const { growing, standing } = table;
        if (cut === null) return [];
        const { starts } = scene.horizon;
        const course = memberCourse(
          scene,
          at.tunnel.id,
          standing.crop,
          growing.origin,
          growing.notUp,
          (hour) => {
            const i = starts.findLastIndex((start) => start <= hour);
            return i < 0
              ? at.now
              : problem.settings[problem.lays[schedule[Math.min(i, schedule.length - 1)]!]!.setting]!;
          },
        );
        const departed = departedBy(course, hourAt(scene.weather, cut.at));
        return [schedule, left].map((each, k): readonly [number, number] => {
          const { thermalTime } = outletResults(problem, table, each).find(
            ({ outlet }) => outlet?.at === cut.at && outlet.fate.pick === cut.pick,
          )!;
          const inside = [...growing.requirements].filter((_, i) => {
            const own = ownTime(
              growing,
              i,
              Math.max(0, thermalTime + departed[Math.floor(i / REQUIREMENTS)]!),
            );
            return own >= growing.requirement && own < thermalTimeAt(growing.curve, standing.crop.largest);
          });
          return [k === 0 ? cut.odds.plan : cut.odds.other, inside.length / growing.requirements.length];
        });
      });
    });
  });
}

it("the odds of a reason are counted over the plan's members, moved by what the change does", () => {
  const pairs = oddsOf(frostyFarm());
  expect(pairs.length).toBeGreaterThan(0);
  for (const [told, counted] of pairs) expect(told).toBeCloseTo(counted, 9);
});
