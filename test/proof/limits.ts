import { type Climate, climate, lyingIn } from "../../src/cover/index.ts";
import { catalogue, type Setting } from "../../src/farm/index.ts";
import { accumulate } from "../../src/growth/index.ts";
import { addDays, HOUR, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { type Weather, weatherOf } from "../../src/weather/index.ts";
import { CITIES, type City, measuredDays } from "../real/cities.ts";

/** How far covers reach: the change of the growth clock on measured weather, as the README prints it. */

const YEARS = [2012, 2013, 2014, 2015] as const;
const CROPS = ["arugula", "spinach"] as const;

/** First day, and the day after the last. */
const SEASONS = [
  { name: "March, April", from: "03-01", until: "05-01" },
  { name: "May", from: "05-01", until: "06-01" },
  { name: "July, August", from: "07-01", until: "09-01" },
] as const;

type Season = (typeof SEASONS)[number];

const on = (cover: string): Setting => [{ cover, state: "on" }];
const nights = (cover: string): Setting => [{ cover, state: "nights" }];

interface Way {
  readonly name: string;
  /** What lies, and what it is compared with. */
  readonly settings: readonly Setting[];
  readonly against: Setting;
}

const WAYS: readonly Way[] = [
  { name: "shade cloth 40 to 50 %", settings: [on("shade-40"), on("shade-50")], against: [] },
  { name: "row cover 19 g (0.55 oz), day and night", settings: [on("row-cover-19")], against: [] },
  { name: "row cover 19 g (0.55 oz), nights only", settings: [nights("row-cover-19")], against: [] },
  { name: "taking that row cover off, against leaving it on", settings: [[]], against: on("row-cover-19") },
];

/** Least and greatest change of the growth clock over cities and crops. [1] */
export interface Change {
  readonly least: number;
  readonly most: number;
}

/** A season's weather in one place and year, and the hours at which its walks begin. */
interface Stage {
  readonly weather: Weather;
  readonly mornings: readonly number[];
  readonly evenings: readonly number[];
}

const { crops, covers, settings } = catalogue();

function stageOf(city: City, year: number, { from, until }: Season): Stage {
  const place = CITIES[city];
  const first = `${year}-${from}` as LocalDate;
  const last = addDays(`${year}-${until}` as LocalDate, -1);
  const start = instantAt(place.zone, first, 0);
  const forecast = { issued: start, days: measuredDays(city) };
  const { weather } = weatherOf({
    place,
    settings,
    hours: [],
    daily: [],
    forecast,
    usual: [],
    on: start,
    from: first,
    until: last,
  })!;
  const at = (clock: number): readonly number[] =>
    weather.calendar.dates
      .filter((date) => date >= first && date <= last)
      .map((date) => Math.round(instantAt(place.zone, date, clock) / HOUR) - weather.first);
  return { weather, mornings: at(settings.morningWalk), evenings: at(settings.eveningWalk) };
}

/** The season from its first morning walk to its last under one setting. */
function climateUnder({ weather, mornings, evenings }: Stage, setting: Setting): Climate {
  const [day, night] = [lyingIn(setting, "day", covers), lyingIn(setting, "night", covers)];
  const stretches = mornings.slice(0, -1).flatMap((morning, i) => [
    { from: morning, to: evenings[i]!, lying: day },
    { from: evenings[i]!, to: mornings[i + 1]!, lying: night },
  ]);
  return climate(weather, stretches, settings);
}

/** Growth, thermal time corrected for light, of a crop over a season of all years together. [°C·d] */
function grown(stages: readonly Stage[], crop: string, setting: Setting): number {
  return stages.reduce((total, stage) => {
    const { pace } = accumulate(crops.get(crop)!, climateUnder(stage, setting), stage.mornings, settings);
    return total + pace[pace.length - 1]!;
  }, 0);
}

/** For each way to cover and each season how much faster or slower the crop grows; one range over cities and crops. */
export function limits(): readonly { readonly way: Way; readonly seasons: readonly Change[] }[] {
  const stages = SEASONS.map((season) =>
    (Object.keys(CITIES) as City[]).map((city) => YEARS.map((year) => stageOf(city, year, season))),
  );
  return WAYS.map((way) => ({
    way,
    seasons: stages.map((cities): Change => {
      const changes = cities.flatMap((years) =>
        CROPS.flatMap((crop) =>
          way.settings.map((setting) => grown(years, crop, setting) / grown(years, crop, way.against) - 1),
        ),
      );
      return { least: Math.min(...changes), most: Math.max(...changes) };
    }),
  }));
}

const percent = (share: number): string => {
  const whole = Math.round(share * 100);
  return whole === 0 ? "0" : whole > 0 ? `+${whole}` : `−${-whole}`;
};

/** "−5 to −7 %": the smaller change first. */
function printed({ least, most }: Change): string {
  const [a, b] = Math.abs(least) <= Math.abs(most) ? [least, most] : [most, least];
  return percent(a) === percent(b) ? `${percent(a)} %` : `${percent(a)} to ${percent(b)} %`;
}

/** The days by which four full days of it move a harvest. */
function days({ least, most }: Change): string {
  const greatest = 4 * Math.max(Math.abs(least), Math.abs(most));
  if (greatest < 0.125) return "under 3 h";
  return greatest < 1 ? `up to ${Math.round(greatest * 24)} h` : `up to ${greatest.toFixed(1)} days`;
}

/** The table of the README. */
export function limitsTable(): string {
  const head = ["", ...SEASONS.map(({ name }) => name)];
  const rows = limits().map(({ way, seasons }) => [
    way.name,
    ...seasons.map((change) => `${printed(change)}; ${days(change)}`),
  ]);
  return [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}

if (process.argv[1]?.endsWith("limits.mjs")) process.stdout.write(`${limitsTable()}\n`);
