import { smoothedYears } from "../../../src/farm/index.ts";
import {
  addDays,
  catalogue,
  crpsMembers,
  followed,
  instantAt,
  type LearnedError,
  type LocalDate,
  learnedError,
  members,
  pastYears,
  quantile,
  singleDegreeDays,
  unbiased,
  weatherOf,
} from "../../../src/index.ts";
import { CITIES, type City } from "../../real/cities.ts";
import { byDate, foretell, gauss, otherYears } from "../../real/foretold.ts";
import type { Check, Subject } from "./check.ts";

const AHEAD = [3, 7, 14, 21] as const;
type Ahead = (typeof AHEAD)[number];
const SHARES = [0.8, 0.5] as const;
const YEARS = [2012, 2013, 2014, 2015] as const;

/** A forecast is made every so many days of March to November, when there is thermal time to foretell. [d] */
const EVERY = 3;
const FIRST = "03-01";
const LAST = "11-09";
/** Starts of one block, which overlap in what they foretell. */
const BLOCK = 10;

const { settings } = catalogue();

interface Temperatures {
  readonly low: number;
  readonly high: number;
}

/** Degree-days of a day above 4 °C and below 24 °C, single sine. [°C·d] */
const warmth = (day: Temperatures): number =>
  singleDegreeDays(day, { lower: 4, upper: 24 }, "sine", "horizontal");

const total = (days: readonly Temperatures[]): number => days.reduce((sum, day) => sum + warmth(day), 0);

/** One forecast of one thermal sum, and what came of it. */
interface Case {
  readonly block: string;
  readonly ahead: Ahead;
  readonly outcome: number;
  readonly members: readonly number[];
  readonly climatology: readonly number[];
  readonly lastWeek: number;
}

/** Forecasts of all station-years with errors so many times as large as stated, followed by members that know, or have learned, their error. */
function cases(size: number, bias: number, learned: boolean): readonly Case[] {
  const found: Case[] = [];
  (Object.keys(CITIES) as City[]).forEach((city, c) => {
    const days = byDate(city);
    const place = CITIES[city];
    for (const year of YEARS) {
      const numbers = gauss(year * 10 + c);
      const past = pastYears(otherYears(city, year));
      const usual = smoothedYears(otherYears(city, year), 2);
      const error = learned ? keptForAYear(city, year === 2015 ? 2012 : year + 1, size, bias) : NOTHING;
      for (let step = 0; ; step++) {
        const date = addDays(`${year}-${FIRST}`, step * EVERY);
        if (date > `${year}-${LAST}`) break;
        const forecast = foretell(city, days, date, size, bias, past, numbers);
        const truth = span(days, date, 0, 21);
        const before = span(days, date, -7, 0);
        if (forecast === null || truth === null || before === null) continue;
        const on = instantAt(place.zone, date, 0);
        const foretold = unbiased(forecast, error, place.zone);
        const until = addDays(date, 20);
        const from = addDays(date, -1);
        const hours: never[] = [];
        const { weather } = weatherOf({
          place,
          settings,
          hours,
          daily: [],
          forecast: foretold,
          usual,
          on,
          from,
          until,
        })!;
        const many = members({
          weather,
          place,
          // Every start has its own seed: the ranges are to be honest whatever it is.
          settings: { ...settings, seed: found.length },
          on,
          issued: forecast.issued,
          error: error.at,
          past,
        });
        for (const ahead of AHEAD) {
          found.push({
            block: `${city} ${year} ${Math.floor(step / BLOCK)}`,
            ahead,
            outcome: total(truth.slice(0, ahead)),
            members: many.daily.map(({ low, high }) =>
              total(Array.from({ length: ahead }, (_, i) => ({ low: low[i]!, high: high[i]! }))),
            ),
            climatology: climatology(past, date, ahead),
            lastWeek: (total(before) / 7) * ahead,
          });
        }
      }
    }
  });
  return found;
}

const NOTHING: LearnedError = learnedError([], settings);

/** Days `from` to `until` after a date; null where one is missing. */
function span(
  days: ReturnType<typeof byDate>,
  date: LocalDate,
  from: number,
  until: number,
): readonly Temperatures[] | null {
  const all = Array.from({ length: until - from }, (_, i) => days.get(addDays(date, from + i)));
  return all.every((day) => day !== undefined) ? all : null;
}

/** The sum of the same days in other years, and up to ten days earlier and later. */
function climatology(past: ReturnType<typeof pastYears>, date: LocalDate, ahead: number): readonly number[] {
  const usual = Array.from({ length: ahead }, (_, i) => past.usual(addDays(date, i))!);
  return past
    .stretches(date, ahead)
    .map((stretch) =>
      total(stretch.map(({ low, high }, i) => ordered(usual[i]!.low + low, usual[i]!.high + high))),
    );
}

const ordered = (a: number, b: number): Temperatures => ({ low: Math.min(a, b), high: Math.max(a, b) });

/** What a year of forecasts, one issued every day, teaches. */
function keptForAYear(city: City, year: number, size: number, bias: number): LearnedError {
  const days = byDate(city);
  const numbers = gauss(year * 100 + size * 10);
  const past = pastYears(otherYears(city, year));
  const kept = Array.from({ length: 355 }, (_, i) =>
    foretell(city, days, addDays(`${year}-01-01`, i), size, bias, past, numbers),
  ).filter((forecast) => forecast !== null);
  return learnedError(followed(kept, [...days.values()], CITIES[city].zone), settings);
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** A share of cases with the limits that 95 of 100 samples of whole blocks lie between. */
interface Share {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** Members are spread evenly: each stands in the middle of one of as many equal parts. */
const between = (sorted: readonly number[], p: number): number =>
  quantile(sorted, (p * sorted.length - 0.5) / (sorted.length - 1));

function inside(all: readonly Case[], share: number): Share {
  const within = ({ members, outcome }: Case): number => {
    const sorted = [...members].sort((a, b) => a - b);
    const [low, high] = [0.5 - share / 2, 0.5 + share / 2].map((p) => between(sorted, p));
    return outcome >= low! && outcome <= high! ? 1 : 0;
  };
  const blocks = new Map<string, number[]>();
  for (const each of all) blocks.set(each.block, [...(blocks.get(each.block) ?? []), within(each)]);
  const every = [...blocks.values()].map((hits) => [hits.reduce((a, b) => a + b, 0), hits.length] as const);
  let state = 12_345;
  const samples = Array.from({ length: 2000 }, () => {
    let [hits, count] = [0, 0];
    for (let k = 0; k < every.length; k++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const [some, of] = every[Math.floor((state / 2 ** 32) * every.length)]!;
      hits += some;
      count += of;
    }
    return hits / count;
  }).sort((a, b) => a - b);
  return { share: mean(all.map(within)), low: quantile(samples, 0.025), high: quantile(samples, 0.975) };
}

/** Once worked out, kept. */
const once = <Value>(make: () => Value): (() => Value) => {
  let made: { value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
};

const WAYS = {
  "errors as stated": once(() => cases(1, 0, false)),
  "errors 1.5 times as large, highs foretold 1 °C too low": once(() => cases(1.5, 1, false)),
  "the same, learned from a year of forecasts": once(() => cases(1.5, 1, true)),
} as const;
type Way = keyof typeof WAYS;
const [STATED, LARGER, LEARNED] = Object.keys(WAYS) as [Way, Way, Way];

const of = (way: Way, ahead: Ahead): readonly Case[] => WAYS[way]().filter((each) => each.ahead === ahead);

/** How far a share lies outside its limits. [%] */
const outside = (share: number, { low, high }: Share): number => 100 * Math.max(0, low - share, share - high);

const score = (all: readonly Case[], values: (each: Case) => readonly number[]): number =>
  mean(all.map((each) => crpsMembers(values(each), each.outcome)));

const common = { source: "seattleNewYorkDays", tolerance: 0 } as const;

/** What errors larger than is known cost: the range holds this much less at least. [1] */
const COST = 0.05;

const dishonest = AHEAD.map(
  (ahead): Check => ({
    what: `80 % range ${ahead} days ahead, ${LARGER}: share of outcomes`,
    ...common,
    unit: "1",
    published: [0, 0.8 - COST],
    ours: () => inside(of(LARGER, ahead), 0.8).share,
    why: "a range that did not notice would not be worth learning",
  }),
);

const honest = (way: Way): readonly Check[] =>
  AHEAD.flatMap((ahead) =>
    SHARES.map(
      (share): Check => ({
        what: `${100 * share} % range ${ahead} days ahead, ${way}: how far ${100 * share} % lies outside the 95 % limits of its share`,
        ...common,
        unit: "%",
        published: 0,
        ours: () => outside(share, inside(of(way, ahead), share)),
        why: "the limits are the tolerance: whole blocks of a month resampled, for overlapping sums are alike",
      }),
    ),
  );

const better = AHEAD.flatMap((ahead): readonly Check[] => {
  const ratio = (values: (each: Case) => readonly number[]): number =>
    score(of(STATED, ahead), ({ members }) => members) / score(of(STATED, ahead), values);
  const row = { ...common, unit: "1", published: [0, 1], why: "below 1 is better" } as const;
  return [
    {
      what: `CRPS ${ahead} days ahead over that of other years' days alone`,
      ...row,
      ours: () => ratio(({ climatology }) => climatology),
    },
    {
      what: `CRPS ${ahead} days ahead over that of last week's pace carried on`,
      ...row,
      ours: () => ratio(({ lastWeek }) => [lastWeek]),
    },
  ];
});

const percent = (value: number): string => (100 * value).toFixed(1).padStart(5);

/** Thermal sums of real weather beside the ranges members give them. */
export const weathersAhead: Subject = {
  name: "Weathers ahead: thermal sums of Seattle and New York 2012–2015",
  checks: [...honest(STATED), ...dishonest, ...honest(LEARNED), ...better],
  findings: () => [
    `Share of outcomes inside the range, with 95 % limits, over ${of(STATED, 3).length} starts each:`,
    ...(Object.keys(WAYS) as Way[]).flatMap((way) => [
      `  ${way}`,
      ...AHEAD.map((ahead) => {
        const told = SHARES.map((share) => {
          const { share: found, low, high } = inside(of(way, ahead), share);
          return `${100 * share} %: ${percent(found)} (${percent(low)} to ${percent(high)})`;
        });
        const crps = score(of(way, ahead), ({ members }) => members).toFixed(2);
        return `  ${String(ahead).padStart(4)} days  ${told.join("   ")}   CRPS ${crps} °C·d`;
      }),
    ]),
    "CRPS of other years' days alone and of last week's pace carried on:",
    ...AHEAD.map((ahead) => {
      const all = of(STATED, ahead);
      const [others, carried] = [
        score(all, ({ climatology }) => climatology),
        score(all, ({ lastWeek }) => [lastWeek]),
      ];
      return `  ${String(ahead).padStart(4)} days  ${others.toFixed(2)}   ${carried.toFixed(2)} °C·d`;
    }),
  ],
};
