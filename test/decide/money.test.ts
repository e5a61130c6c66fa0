import { expect, test } from "vitest";
import type { KeptCut, Market } from "../../src/farm/index.ts";
import type { LocalDate } from "../../src/quantity/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";
import { only, product } from "./frostyFarm.ts";
import { bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const TUNNELS = ["A", "B", "C"].map((id) => tunnel(id, 30));
const BEDS = TUNNELS.map((each) => bed("lettuce-mix", each));
const FRIDAY: Market = {
  id: "friday",
  name: "Friday",
  weekday: 5,
  picks: [{ daysBefore: 0, hour: 14 }],
};

/** Three beds settled for one afternoon on which little can be washed; money in units of which so many make one. */
function settled(money: number): WeekInput {
  const { labour, handling } = exampleFarm();
  return {
    ...input(
      {
        tunnels: TUNNELS,
        successions: BEDS,
        notes: BEDS.map((each, i) => leaf(each, 8 + i / 4)),
        pieces: [piece("on A", "row-cover-30", 30, ["A"]), piece("free", "row-cover-30", 30)],
        markets: [FRIDAY],
        products: [product("lettuce", only("lettuce-mix"), { price: 12 * money })],
        labour: { ...labour, wage: 18 * money },
        handling: { ...handling, washing: 14 as never },
      },
      clear([3, 14], [4, 13], [1, 16], [5, 20], [2, 14], [3, 12]),
    ),
    keep: BEDS.map(
      ({ id }): KeptCut => ({
        kind: "cut",
        succession: id,
        date: "2026-04-24" as LocalDate,
        part: "evening",
      }),
    ),
  };
}

test.each([500, 100_000])("a farm that counts in money worth %i times less gets the same plan", (money) => {
  const [one, many] = [1, money].map((each) => week(settled(each)));
  expect(many!.tunnels.map(({ choice }) => choice)).toEqual(one!.tunnels.map(({ choice }) => choice));
  expect(many!.together!.overrun).toEqual(one!.together!.overrun);
  expect(many!.together!.worth / money).toBeCloseTo(one!.together!.worth, 4);
});
