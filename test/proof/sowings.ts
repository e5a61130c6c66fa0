import { type Climate, climate, lyingIn } from "../../src/cover/index.ts";
import { hourAt } from "../../src/decide/index.ts";
import { type Crop, catalogue, type Setting, settingKey } from "../../src/farm/index.ts";
import { accumulate, between, emergence, type Sums } from "../../src/growth/index.ts";
import { addDays, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, type Weather, weatherOf } from "../../src/weather/index.ts";
import { CITIES, type City, measuredDays } from "../real/cities.ts";

/** A city's weather under one setting, ready for any crop sown there. */
export interface Ground {
  readonly city: City;
  readonly weather: Weather;
  readonly under: Climate;
  /** Hours of the morning walks. */
  readonly mornings: readonly number[];
}

const { covers, settings } = catalogue();

/** What became of one sowing. */
export interface Sowing {
  readonly city: City;
  readonly sown: LocalDate;
  /** From sowing to the smallest salad size; null: not by the end of the year. [d] */
  readonly days: number | null;
  readonly daysToEmergence: number | null;
  /** Mean air temperature from sowing to then. [°C] */
  readonly mean: number;
  /** Share of the hours after emergence that were warmer than the crop's optimum. [1] */
  readonly hot: number;
  /** Share of the thermal time that light let it use. [1] */
  readonly light: number;
  /** The seedbed was too warm for part of the stand for at least a day's worth of hours before emergence. */
  readonly warmBed: boolean;
  /** Frost after emergence that would have left leaves unfit to sell; growth is counted all the same. */
  readonly frosted: boolean;
}

/** The measured days taken as if forecast, so that every hour lies on the curve of its day. */
function weatherIn(city: City, days: readonly DailyRecord[]): Weather {
  const place = CITIES[city];
  const [from, until] = [days[0]!.date, days[days.length - 1]!.date];
  const on = instantAt(place.zone, addDays(from, -1), 12);
  const result = weatherOf({
    place,
    settings,
    hours: [],
    daily: [],
    forecast: { issued: on, days },
    usual: [],
    on,
    from,
    until,
  });
  if (result === null) throw new RangeError(`no weather in ${city}`);
  return result.weather;
}

/**
 * @param setting - What lies all along; none is bare ground.
 * @param years - All that are recorded unless given.
 */
export function groundIn(city: City, setting: Setting = [], years: readonly string[] | null = null): Ground {
  const days = measuredDays(city).filter(({ date }) => years === null || years.includes(date.slice(0, 4)));
  const weather = weatherIn(city, days);
  const length = weather.temperature.length;
  const { zone } = CITIES[city];
  const walks = (clock: number): readonly number[] =>
    weather.calendar.dates
      .map((date) => hourAt(weather, instantAt(zone, date, clock)))
      .filter((hour) => hour > 0 && hour < length);
  const [mornings, evenings] = [walks(settings.morningWalk), walks(settings.eveningWalk)];
  const begins = [
    ...mornings.map((from) => ({ from, part: "day" as const })),
    ...evenings.map((from) => ({ from, part: "night" as const })),
  ].sort((a, b) => a.from - b.from);
  const rounds = [
    { from: 0, part: begins[0]!.part === "day" ? ("night" as const) : ("day" as const) },
    ...begins,
  ];
  const lying = { day: lyingIn(setting, "day", covers), night: lyingIn(setting, "night", covers) };
  const stretches = rounds.map(({ from, part }, i) => ({
    from,
    to: rounds[i + 1]?.from ?? length,
    lying: lying[part],
  }));
  return { city, weather, under: climate(weather, stretches, settings), mornings };
}

/** Sums of one crop over all of the city's weather; they serve every sowing of it. */
export const sumsIn = ({ under, mornings }: Ground, crop: Crop): Sums =>
  accumulate(crop, under, mornings, settings);

/** Grows one sowing as the main job does: sown at noon, up by the seedbed, salad size when pace has gathered the requirement. */
export function sowing({ city, weather, under }: Ground, crop: Crop, sums: Sums, sown: LocalDate): Sowing {
  const { zone } = CITIES[city];
  const start = hourAt(weather, instantAt(zone, sown, 12));
  const end = Math.min(
    weather.temperature.length,
    hourAt(weather, instantAt(zone, `${sown.slice(0, 4)}-12-31`, 24)),
  );
  const computed = emergence(under.seedbed.subarray(start, end), crop.emergence);
  const up = computed === null ? end : start + computed;
  let ready = up;
  while (ready < end && between(sums.pace, sums.from, up, ready) < crop.requirement) ready++;

  const air = weather.temperature.subarray(start, ready);
  const growing = under.growing.subarray(up, ready);
  const warmth = between(sums.thermalTime, sums.from, up, ready);
  return {
    city,
    sown,
    days: ready < end ? (ready - start) / 24 : null,
    daysToEmergence: computed === null ? null : computed / 24,
    mean: air.reduce((sum, temperature) => sum + temperature, 0) / Math.max(1, air.length),
    hot:
      growing.filter((temperature) => temperature > crop.growth.optimumHigh).length /
      Math.max(1, growing.length),
    light: warmth > 0 ? between(sums.pace, sums.from, up, ready) / warmth : 1,
    warmBed:
      under.seedbed.subarray(start, up).filter((temperature) => temperature > crop.emergence.tooWarm)
        .length >= 24,
    frosted: under.frost.subarray(up, ready).some((temperature) => temperature < crop.unfit),
  };
}

/** Dates of a year's sowings: the 1st and 15th of March to September. */
export const sowingDates = (year: number): readonly LocalDate[] =>
  [3, 4, 5, 6, 7, 8, 9].flatMap((month) =>
    ["01", "15"].map((day) => `${year}-0${month}-${day}` as LocalDate),
  );

const YEARS = [2012, 2013, 2014, 2015];

/** 19 g row cover on every night and off every day. */
export const NIGHTS: Setting = [{ cover: "row-cover-19", state: "nights" }];

const grounds = new Map<string, Ground>();

/** A crop's sowings of every recorded year in one city under one setting. */
export function sowingsOf(
  crop: Crop,
  city: City,
  setting: Setting,
  dates: (year: number) => readonly LocalDate[],
): readonly Sowing[] {
  const key = `${city} ${settingKey(setting)}`;
  const ground = grounds.get(key) ?? groundIn(city, setting);
  grounds.set(key, ground);
  const sums = sumsIn(ground, crop);
  return YEARS.flatMap(dates).map((sown) => sowing(ground, crop, sums, sown));
}

/** Sown on the 1st and 15th of March to September of every year in both cities. */
export const everySowing = (crop: Crop, setting: Setting): readonly Sowing[] =>
  (Object.keys(CITIES) as City[]).flatMap((city) => sowingsOf(crop, city, setting, sowingDates));
