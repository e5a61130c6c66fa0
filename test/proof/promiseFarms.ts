import {
  addDays,
  type Crop,
  catalogue,
  type Farm,
  type LocalDate,
  metre,
  type Product,
} from "../../src/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { type City, measuredDays, mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

/** Numbers from 0 to 1. */
export type Chance = () => number;

const within = (chance: Chance, a: number, b: number): number => a + (b - a) * chance();
const oneOf = <Item>(chance: Chance, items: readonly Item[]): Item =>
  items[Math.floor(chance() * items.length)]!;

/** Log of a city's hours that stands before the day planned from, less the days a seedbed needs to be seen. [d] */
const OLDEST = 85;

/** Roughly when a bed was sown that has so large a part of its warmth on a date: by the measured days' means. */
function sownFor(
  city: City,
  { growth, emergence, requirement }: Crop,
  date: LocalDate,
  part: number,
): LocalDate {
  const means = new Map(measuredDays(city).map((day) => [day.date, (day.low + day.high) / 2]));
  let [wanted, back] = [part * requirement, 0];
  const gained = (base: number, most: number): number =>
    Math.max(0, Math.min(most, means.get(addDays(date, -back)) ?? base) - base);
  for (; wanted > 0 && back < OLDEST; back++) wanted -= gained(growth.base, growth.optimumLow);
  for (wanted = emergence.sum; wanted > 0 && back < OLDEST; back++) wanted -= gained(emergence.base, 30);
  return addDays(date, -back);
}

/** Its beds sown so that they come to size somewhere about the days planned; those cut once stay as they are. */
function timely(input: WeekInput, city: City, date: LocalDate, chance: Chance): WeekInput {
  const successions = input.farm.successions.map((succession) =>
    succession.cuts > 0
      ? succession
      : {
          ...succession,
          sown: sownFor(
            city,
            input.farm.crops.get(succession.crop)!,
            addDays(date, 4),
            within(chance, 0.8, 1.25),
          ),
        },
  );
  return { ...input, farm: { ...input.farm, successions } };
}

const example = exampleFarm();
const { crops } = catalogue();

/** A farm of a few tunnels with beds of any crops, products of one to three of them, two markets and some cloth. */
function randomFarm(chance: Chance): Farm {
  const tunnels = example.tunnels.slice(0, 3 + Math.floor(3 * chance()));
  const grown = Array.from({ length: 4 }, () => oneOf(chance, [...crops.keys()]));
  const successions = tunnels.flatMap(({ id, length }, t) =>
    [0, 0.5].map((from, k) => ({
      id: `B${2 * t + k}`,
      crop: oneOf(chance, grown),
      tunnel: id,
      from: metre(from * length),
      to: metre((from + 0.5) * length),
      sown: "2026-03-01" as LocalDate,
      market: null,
      cuts: 0,
      net: false,
    })),
  );
  const markets = example.markets.map((market, i) => ({
    ...market,
    weekday: (2 * Math.floor(3 * chance()) + i) % 7,
    picks: [{ daysBefore: Math.floor(2 * chance()), hour: oneOf(chance, [6, 18]) }],
  }));
  const kinds = [...new Set(successions.map(({ crop }) => crop))];
  const product = (id: string, of: readonly string[]): Product => ({
    id,
    name: id,
    parts: of.map((crop) => ({ crop, share: within(chance, 0.2, 0.6) })),
    price: within(chance, 15, 30),
    orders: markets
      .filter(() => chance() < 0.5)
      .map(({ id: market }) => ({ market, weight: within(chance, 1, 8) as never })),
  });
  const products = [
    ...(kinds.length > 1 ? [product("mix", kinds.slice(0, 2 + Math.floor(2 * chance())))] : []),
    ...kinds.map((crop) => product(crop, [crop])),
  ];
  const pieces = example.pieces.filter(() => chance() < 0.6).map((piece) => ({ ...piece, liesOn: [] }));
  return { ...example, tunnels, successions, markets, products, pieces, notes: [] };
}

/** The week of a farm in a city: the example's beds and cloth, or a farm of its own. */
export function weekOf(kind: "example" | "random", city: City, date: LocalDate, chance: Chance): WeekInput {
  const farm = kind === "example" ? example : randomFarm(chance);
  return timely(mondayInput(farm, city, date), city, date, chance);
}
