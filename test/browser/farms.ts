import { fileURLToPath } from "node:url";
import { contextOf } from "../../src/cli/context.ts";
import type { Io } from "../../src/cli/io.ts";
import { weekInput } from "../../src/cli/weekInput.ts";
import type { Outcome } from "../../src/decide/index.ts";
import { catalogue, type Farm, type Market, type Succession, type Tunnel } from "../../src/farm/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import {
  addDays,
  celsius,
  fahrenheit,
  feet,
  HOUR,
  hourOf,
  instant,
  instantAt,
  kilogram,
  type LocalDate,
  metre,
  milesPerHour,
} from "../../src/quantity/index.ts";
import type { DailyRecord, HourlyRecord } from "../../src/weather/index.ts";
import { week } from "../week.ts";

const ZONE = "America/New_York";
const MONDAY = "2026-04-20" as LocalDate;
const EXAMPLE = fileURLToPath(new URL("../../examples/hollow-creek", import.meta.url));

/** The example's week, read from its folder as the command does. */
export async function hollowCreek(): Promise<Outcome> {
  const silent: Io["stdout"] = { terminal: false, columns: undefined, write: () => {} };
  const io: Io = {
    stdout: silent,
    stderr: silent,
    env: {},
    cwd: EXAMPLE,
    zone: ZONE,
    now: () => Date.parse(MONDAY),
    input: async () => Buffer.from(""),
  };
  const read = await weekInput({ on: MONDAY }, contextOf(io, { farm: EXAMPLE }));
  if ("problems" in read) throw new Error(read.problems.map(formatProblem).join("\n"));
  return week(read.input);
}

/** An April that has been cool, a hot Wednesday ahead, then wind and two nights of frost. Made up. [°F], [mph] */
const AHEAD: readonly (readonly [low: number, high: number, wind: number, sky: DailyRecord["sky"]])[] = [
  [41, 64, 6, "mixed"],
  [46, 76, 5, "sun"],
  [53, 82, 7, "sun"],
  [40, 54, 19, "mixed"],
  [28, 50, 4, "sun"],
  [31, 55, 5, "sun"],
  [38, 58, 8, "cloud"],
  [40, 60, 7, "mixed"],
];

const forecastDays: readonly DailyRecord[] = AHEAD.map(([low, high, wind, sky], i) => ({
  date: addDays(MONDAY, i),
  low: celsius(fahrenheit(low)),
  high: celsius(fahrenheit(high)),
  wind: milesPerHour(wind),
  sky,
}));

const DAYS_LOGGED = 80;

/** A spring as a logger has it: warming from 4 to 10 °C, with waves of a week and a daily swing of 6 °C. Made up. */
const logged = (until: number): readonly HourlyRecord[] =>
  Array.from({ length: DAYS_LOGGED * 24 }, (_, i) => {
    const at = instant(until - (DAYS_LOGGED * 24 - i) * HOUR);
    const warmth = 4 + (6 * i) / (DAYS_LOGGED * 24) + 3 * Math.sin(i / 27);
    const swing = 6 * Math.sin((2 * Math.PI * (i - 9)) / 24);
    const mean = celsius(warmth + swing);
    return { hour: hourOf(at), mean, lowest: mean, highest: mean, count: 60 };
  });

const MARKETS: readonly Market[] = [
  { id: "friday", name: "Friday market", weekday: 5, picks: [{ daysBefore: 0, hour: 6 }] },
  { id: "tuesday", name: "Tuesday market", weekday: 2, picks: [{ daysBefore: 1, hour: 18 }] },
];

const CROPS = [
  "lettuce-mix",
  "spinach",
  "arugula",
  "mustard",
  "mizuna",
  "tatsoi",
  "kale",
  "beet-greens",
  "chard",
];

const FIELDS = ["Creek", "Alder", "Mill", "Barnside", "Orchard"];

const HOOPS = ["wire", "conduit", "pvc"] as const;

const numbers = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);

/** A farm of some size, in the example's valley. */
export function madeFarm(tunnelCount: number, successionCount: number): Farm {
  const { crops, covers } = catalogue();
  const tunnels = numbers(tunnelCount).map(
    (i): Tunnel => ({
      id: `T${i + 1}`,
      name: `${FIELDS[i % FIELDS.length]} ${Math.floor(i / FIELDS.length) + 1}`,
      length: feet(50),
      hoops: HOOPS[i % HOOPS.length]!,
      beds: 1,
    }),
  );
  const successions = numbers(successionCount).map((i): Succession => {
    const place = Math.floor(i / tunnelCount);
    return {
      id: `S${String(i + 1).padStart(2, "0")}`,
      crop: CROPS[i % CROPS.length]!,
      tunnel: `T${(i % tunnelCount) + 1}`,
      from: feet(place * 25),
      to: feet(place * 25 + 25),
      sown: addDays("2026-02-20", (i * 7) % 58),
      market: i % 4 === 3 ? null : i % 4 === 2 ? "tuesday" : "friday",
      cuts: 0,
      net: tunnels[i % tunnelCount]!.id.endsWith("4"),
    };
  });
  const onEvery = (remainder: number): string[] =>
    tunnels.filter(({ id }, i) => i % 3 === remainder || id.endsWith("4")).map(({ id }) => id);
  const piece = (id: string, cover: string, count: number, liesOn: readonly string[]) => ({
    id,
    cover,
    length: feet(60),
    count,
    spans: 1,
    liesOn,
  });
  return {
    name: "Long Valley Greens",
    units: "US",
    currency: "$",
    place: { latitude: 44.12, longitude: -72.84, elevation: metre(190), zone: ZONE, setting: "inland" },
    usual: [],
    walks: { morning: 7, evening: 18 },
    markets: MARKETS,
    products: [
      {
        id: "salad-mix",
        name: "Salad mix",
        parts: [
          { crop: "lettuce-mix", share: 0.5, swaps: [] },
          { crop: "arugula", share: 0.25, swaps: [] },
          { crop: "mizuna", share: 0.25, swaps: [] },
        ],
        price: 26,
        stall: null,
        orders: [{ market: "friday", weight: kilogram(14), short: null }],
      },
      {
        id: "color-mix",
        name: "Color mix",
        parts: [
          { crop: "kale", share: 0.6, swaps: [] },
          { crop: "chard", share: 0.4, swaps: [] },
        ],
        price: 22,
        stall: null,
        orders: [{ market: "tuesday", weight: kilogram(4), short: null }],
      },
      ...["spinach", "mustard", "tatsoi", "beet-greens"].map((crop) => ({
        id: crop,
        name: crops.get(crop)!.name,
        parts: [{ crop, share: 1, swaps: [] }],
        price: 24,
        stall: null,
        orders: [],
      })),
    ],
    tunnels,
    sideBySide: [],
    pieces: [
      piece("light", "row-cover-19", tunnelCount, onEvery(0)),
      piece("heavy", "row-cover-30", Math.ceil(tunnelCount / 2), onEvery(1)),
      piece("shade", "shade-40", Math.ceil(tunnelCount / 3), []),
      piece(
        "net",
        "net",
        tunnelCount,
        tunnels.filter(({ id }) => id.endsWith("4")).map(({ id }) => id),
      ),
    ],
    successions,
    notes: [],
    labour: { wage: 18, pace: 1, cutting: 2, walk: null, picking: null },
    handling: { washing: null, cooler: null },
    limits: { changesPerWeek: 3, layers: 2, wind: milesPerHour(15), dimDays: 2, caution: 3 },
    keepFlagged: new Set(),
    sensors: new Map([["outside", "outside"]]),
    crops,
    covers,
  };
}

/** The week of a farm in the made-up April. */
export function madeWeek(farm: Farm): Outcome {
  const morning = instantAt(ZONE, MONDAY, farm.walks.morning);
  return week({
    farm,
    settings: catalogue().settings,
    sensors: [{ sensor: "outside", hours: logged(morning) }],
    forecast: { issued: morning, days: forecastDays },
    on: instant(morning - 60_000),
    days: 7,
    problems: [],
  });
}
