import { describe, expect, it } from "vitest";
import type { LocalDate } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import type { Answer } from "../check/answer.ts";
import { faultsOf } from "../check/faults.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { exampleWeek } from "../sheet/exampleWeek.ts";
import { week } from "../week.ts";
import { frostyFarm } from "./frostyFarm.ts";
import { confirm } from "./recompute.ts";

const farm = exampleFarm();
/** Ten tunnels are planned anew in each of these. */
const LONG = 240_000;

describe("the printed JSON holds everything to recompute a week, and every limit is kept or told", () => {
  it("on the example's Monday", { timeout: LONG }, async () => {
    confirm(await exampleWeek());
  });

  it.each([
    ["New York", "2012-06-18"],
    ["New York", "2013-10-14"],
    ["New York", "2015-07-20"],
    ["Seattle", "2012-09-10"],
    ["Seattle", "2013-05-06"],
    ["Seattle", "2014-07-14"],
  ] as const)("in weather measured in %s from %s on", { timeout: LONG }, (city, monday) => {
    confirm(week(mondayInput(farm, city, monday as LocalDate)));
  });
});

describe("a number that is changed afterwards is noticed", () => {
  const printed = weekJson(week(frostyFarm()));
  const faultsAfter = (change: (answer: Answer) => void): readonly string[] => {
    const answer = JSON.parse(printed);
    change(answer);
    return faultsOf(answer);
  };

  it("and nothing is said of it as it was printed", () => {
    expect(faultsAfter(() => undefined)).toEqual([]);
  });

  const more = (value: number): number => value + 1e-4 * Math.max(1, Math.abs(value));
  it.each<readonly [what: string, change: (answer: Answer) => void]>([
    ["worth", ({ together }) => Object.assign(together, { worth: more(together.worth) })],
    [
      "worth unchanged",
      ({ together }) => Object.assign(together, { worthUnchanged: more(together.worthUnchanged) }),
    ],
    ["bound", ({ together }) => Object.assign(together, { bound: together.worth - 1 })],
    ["orders", ({ together: { parts } }) => Object.assign(parts, { orders: more(parts.orders) })],
    ["a tunnel's damage", ({ tunnels: [{ parts }] }) => Object.assign(parts, { damage: more(parts.damage) })],
    [
      "a tunnel's labour unchanged",
      ({ tunnels: [{ partsUnchanged }] }) => Object.assign(partsUnchanged, { labour: -1 }),
    ],
    [
      "what a change gains",
      ({
        tunnels: [
          {
            changes: [{ gain }],
          },
        ],
      }) => Object.assign(gain, { timing: more(gain.timing) }),
    ],
    [
      "worth without a change",
      ({
        tunnels: [
          {
            changes: [{ without }],
          },
        ],
      }) => Object.assign(without, { worth: more(without.worth) }),
    ],
    [
      "minutes of a change",
      ({
        tunnels: [
          {
            changes: [change],
          },
        ],
      }) => Object.assign(change, { minutesMin: 1 }),
    ],
    [
      "what decided a change",
      ({
        tunnels: [
          {
            changes: [change],
          },
        ],
      }) => Object.assign(change, { decidedBy: "labour" }),
    ],
    ["a setting", ({ tunnels: [tunnel] }) => tunnel.choice.fill(0)],
    ["a piece", ({ tunnels: [{ takenIn }] }) => Object.assign(takenIn[3][0], { piece: "light" })],
    ["a limit that gives way", ({ tunnels: [tunnel] }) => tunnel.gaveWay.push("net")],
    ["an overrun", ({ together }) => together.overrun.push("washing")],
    ["a cut", ({ successions: [{ basis }] }) => Object.assign(basis, { cut: null })],
    [
      "a leaf at a pick",
      ({
        successions: [
          {
            atPicks: [at],
          },
        ],
      }) => Object.assign(at.planned, { middleCm: more(at.planned.middleCm) }),
    ],
    ["a price", ({ successions: [{ basis }] }) => Object.assign(basis, { price: more(basis.price) })],
    [
      "minutes of cutting",
      ({ successions: [{ basis }] }) => Object.assign(basis, { cuttingMin: more(basis.cuttingMin) }),
    ],
    [
      "the spread at an outlet",
      ({ successions: [{ basis }] }) => Object.assign(basis.outlets[basis.cut], { spread: 0.2 }),
    ],
    [
      "a night's lowest",
      ({ tunnels: [{ ledger }] }) => Object.assign(ledger[40], { lowestC: ledger[40].lowestC + 0.1 }),
    ],
    [
      "a chance to come through",
      ({ tunnels: [{ ledger }] }) => Object.assign(ledger[40].successions[0], { safe: -0.5 }),
    ],
    ["a setting's limit", ({ tunnels: [{ ledger }] }) => ledger[40].breaks.push("net")],
    ["minutes there are", ({ farm: { labour } }) => Object.assign(labour, { walkMin: 1 })],
    ["what the cooler holds", ({ farm: { handling } }) => Object.assign(handling, { coolerKg: 0.1 })],
    ["what can be washed", ({ farm: { handling } }) => Object.assign(handling, { washingKg: 0.1 })],
    ["minutes for cutting", ({ farm: { labour } }) => Object.assign(labour, { pickingMin: 1 })],
    ["changes a week", ({ farm: { limits } }) => Object.assign(limits, { changesPerWeek: 0 })],
    ["sheets over each other", ({ farm: { limits } }) => Object.assign(limits, { layers: 0 })],
    ["the length of a piece", ({ farm: { pieces } }) => Object.assign(pieces[0], { lengthM: 1 })],
    ["the number of pieces", ({ farm: { pieces } }) => Object.assign(pieces[0], { count: 0 })],
    ["wind at a walk", ({ walks: [walk] }) => Object.assign(walk, { tooWindy: true })],
    ["wages", ({ farm: { labour } }) => Object.assign(labour, { wagePerHour: 19 })],
    ["what a lost bed still counts", ({ settings }) => Object.assign(settings, { neverLost: 0.02 })],
    [
      "an order",
      ({ farm: { products } }) =>
        products.push({
          product: "ordered",
          name: "ordered",
          parts: [{ crop: "arugula", share: 1, swaps: [] }],
          pricePerKg: 20,
          stallKg: null,
          orders: [{ market: "friday", weightKg: 1, shortPerKg: null }],
        }),
    ],
    ["the share of a group of weathers", ({ weathers }) => weathers.fill(1 / 2)],
  ])("%s", (_, change) => {
    expect(faultsAfter(change)).not.toEqual([]);
  });
});
