import type { Range } from "../decide/index.ts";
import type { Farm, Layer } from "../farm/index.ts";
import {
  addDays,
  type Celsius,
  type Centimetre,
  celsiusDifference,
  type DegreeDays,
  daysBetween,
  HOUR,
  type Instant,
  type Kilogram,
  type LocalDate,
  localDate,
  localHour,
  type Metre,
  type MetrePerSecond,
  toFahrenheit,
  toFahrenheitDifference,
  toFeet,
  toInches,
  toMilesPerHour,
  toPounds,
  weekday,
} from "../quantity/index.ts";
import { TIED } from "./wrap.ts";

export type Units = Farm["units"];

const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
const QUARTERS = ["", "¼", "½", "¾"] as const;

/** Nearest multiple of a step, never −0. */
const toStep = (value: number, step: number): number => Math.round(value / step) * step + 0;

/** A number with a real minus sign. */
const signed = (value: number): string => (value < 0 ? `−${-value}` : String(value));

const tied = (number: string, unit: string): string => `${number}${TIED}${unit}`;

/** A number of quarters as whole and fraction. @example quarters(3.5) // => "3½" */
export function quarters(value: number): string {
  const all = Math.round(value * 4);
  const whole = Math.floor(all / 4);
  const part = QUARTERS[all % 4] ?? "";
  return whole === 0 && part !== "" ? part : `${whole}${part}`;
}

const MILLIMETRES_PER_INCH = 25.4;

/** Below this a half degree Celsius, as fine as a whole degree Fahrenheit, can decide about a leaf. [°C] */
const NEAR_FREEZING = 5;

/** Whole degrees; halves of a degree Celsius near freezing. */
export const temperature = (units: Units, value: Celsius): string =>
  units === "US"
    ? tied(signed(toStep(toFahrenheit(value), 1)), "°F")
    : tied(signed(toStep(value, value < NEAR_FREEZING ? 0.5 : 1)), "°C");

/** Degree-days to the nearest whole one. */
export const thermalTime = (units: Units, value: DegreeDays): string =>
  units === "US"
    ? tied(String(Math.round(toFahrenheitDifference(celsiusDifference(value)))), "°F·d")
    : tied(String(Math.round(value)), "°C·d");

/** Two temperatures in one unit, for a narrow place whose heading names it. */
export const lowToHigh = (units: Units, low: Celsius, high: Celsius): string =>
  [low, high]
    .map((value) => signed(toStep(units === "US" ? toFahrenheit(value) : value, 1)))
    .join(`${TIED}to${TIED}`);

export const wind = (units: Units, value: MetrePerSecond): string =>
  units === "US"
    ? tied(String(toStep(toMilesPerHour(value), 1)), "mph")
    : tied(String(toStep(value * 3.6, 1)), "km/h");

/** An amount of rain, never less than the finest step. [mm] in, the farm's unit out. */
export const rain = (units: Units, depth: number): string =>
  units === "US"
    ? tied(Math.max(0.05, toStep(depth / MILLIMETRES_PER_INCH, 0.05)).toFixed(2), "in")
    : tied(String(Math.max(1, Math.round(depth))), "mm");

/** A depth of snow, as roughly as it is known: whole inches or centimetres, in steps of five from ten on. */
export function snowDepth(units: Units, depth: Centimetre): string {
  const own = units === "US" ? toInches(depth) : depth;
  const shown = own < 10 ? Math.max(1, Math.round(own)) : toStep(own, 5);
  return tied(String(shown), units === "US" ? "in" : "cm");
}

/** A length along a bed or of a cloth. */
export const length = (units: Units, value: Metre): string =>
  units === "US" ? tied(String(toStep(toFeet(value), 1)), "ft") : tied(String(toStep(value, 0.5)), "m");

/** The step a leaf length deserves: finer than a quarter of the range four of five leaves lie in would be invented. */
function leafStep(units: Units, spread: number): number {
  if (units === "metric") return spread <= 2.5 ? 0.5 : 1;
  const inches = toInches(spread as Centimetre);
  return inches <= 1 ? 0.25 : inches <= 2 ? 0.5 : 1;
}

const leafNumber = (units: Units, value: number): string =>
  units === "US" ? quarters(value) : String(value);

function leafAt(units: Units, value: Centimetre, step: number): string {
  const unit = units === "US" ? "in" : "cm";
  const rounded = toStep(units === "US" ? toInches(value) : value, step);
  return rounded <= 0
    ? `under${TIED}${tied(leafNumber(units, step), unit)}`
    : tied(leafNumber(units, rounded), unit);
}

/** A leaf length as precise as its spread allows. [cm] in, the farm's unit out. */
export const leaf = (units: Units, size: Range<Centimetre>): string =>
  leafAt(units, size.middle, leafStep(units, size.high - size.low));

/** Two sizes of one leaf, both as precise as the wider of them allows. */
export function leaves(units: Units, a: Range<Centimetre>, b: Range<Centimetre>): readonly [string, string] {
  const step = leafStep(units, Math.max(a.high - a.low, b.high - b.low));
  return [leafAt(units, a.middle, step), leafAt(units, b.middle, step)];
}

/** The range four of five leaves lie in, without unit; null when it rounds to one number. */
export function leafSpread(units: Units, size: Range<Centimetre>): string | null {
  const step = leafStep(units, size.high - size.low);
  const [low, high] = [size.low, size.high].map((value) =>
    toStep(units === "US" ? toInches(value) : value, step),
  );
  return low === high ? null : `${leafNumber(units, low!)}–${leafNumber(units, high!)}`;
}

/** A size that is a setting, not an estimate. */
export const leafLimit = (units: Units, value: Centimetre): string =>
  leafAt(units, value, units === "US" ? 0.25 : 0.5);

/** A leaf length told beside a limit it lies above or below: "just over 5 in" where rounding would say otherwise. */
export function leafBeside(units: Units, size: Range<Centimetre>, limit: Centimetre): string {
  const rounded = (value: Centimetre, step: number): number =>
    toStep(units === "US" ? toInches(value) : value, step);
  const shown = rounded(size.middle, leafStep(units, size.high - size.low));
  const against = rounded(limit, units === "US" ? 0.25 : 0.5);
  const over = size.middle > limit;
  return (over ? shown > against : shown < against)
    ? leaf(units, size)
    : `just ${over ? "over" : "under"} ${leafLimit(units, limit)}`;
}

/** Smallest to largest salad size. */
export function leafWindow(units: Units, smallest: Centimetre, largest: Centimetre): string {
  const step = units === "US" ? 0.25 : 0.5;
  const low = toStep(units === "US" ? toInches(smallest) : smallest, step);
  return `${leafNumber(units, low)}–${leafAt(units, largest, step)}`;
}

/** A weight as it is shown: whole above ten, halves above one, then quarters of a pound or tenths of a kilogram. */
function weightShown(units: Units, value: number): number {
  const size = Math.abs(value);
  return toStep(value, size >= 10 ? 1 : size >= 1 ? 0.5 : units === "US" ? 0.25 : 0.1);
}

const inUnit = (units: Units, value: Kilogram): number => (units === "US" ? toPounds(value) : value);

function weightText(units: Units, value: number): string {
  const number = units === "US" ? quarters(Math.abs(value)) : String(Math.round(Math.abs(value) * 10) / 10);
  return tied(`${value < 0 ? "−" : ""}${number}`, units === "US" ? "lb" : "kg");
}

/** The same as a number in the farm's unit, at least the finest step of it. */
export const weightNumber = (units: Units, value: Kilogram): number =>
  Math.max(weightShown(units, inUnit(units, value)), units === "US" ? 0.25 : 0.1);

export function weight(units: Units, value: Kilogram): string {
  const shown = weightShown(units, inUnit(units, value));
  return shown === 0 && value > 0
    ? `under${TIED}${units === "US" ? tied("¼", "lb") : tied("0.1", "kg")}`
    : weightText(units, shown);
}

/** A weight that was stated, not estimated, to a quarter of a pound or a tenth of a kilogram. */
export const statedShown = (units: Units, value: number): number =>
  toStep(value, units === "US" ? 0.25 : 0.1);

export const weightStated = (units: Units, value: Kilogram): string =>
  weightText(units, statedShown(units, inUnit(units, value)));

/** A weight that was typed, or a sum of such: no rounding but of what its unit in the store adds. */
export const weightTyped = (units: Units, value: Kilogram): string =>
  tied(String(Math.round(inUnit(units, value) * 100) / 100), units === "US" ? "lb" : "kg");

/** What an estimate lacks to a stated weight, taken from the two as shown so that the printed sum is right; null when nothing. */
export function lacking(units: Units, wanted: Kilogram, had: Kilogram): string | null {
  const gap = statedShown(units, inUnit(units, wanted)) - weightShown(units, inUnit(units, had));
  return gap > 0 ? weightText(units, gap) : null;
}

/** A value in the farm's currency, or in weight when it has none. */
export function value(farm: Pick<Farm, "units" | "currency">, worth: number): string {
  if (farm.currency === null) return weight(farm.units, worth as Kilogram);
  const rounded = toStep(Math.abs(worth), 1);
  const mark = farm.currency.length > 1 ? `${farm.currency}${TIED}` : farm.currency;
  if (rounded === 0 && worth !== 0) return `under${TIED}${mark}1`;
  return `${worth < 0 ? "−" : ""}${mark}${rounded}`;
}

/** A chance in the words of the trade. Never "0 in 5" nor "5 in 5". @example odds(0.001) // => "hardly" */
export function odds(chance: number): string {
  if (chance < 0.01) return "hardly";
  if (chance > 0.99) return `almost${TIED}surely`;
  const [good, of] =
    chance < 0.075
      ? [1, 20]
      : chance < 0.15
        ? [1, 10]
        : chance > 0.925
          ? [19, 20]
          : chance > 0.85
            ? [9, 10]
            : chance > 0.45 && chance < 0.55
              ? [1, 2]
              : [Math.round(chance * 5), 5];
  return `${good}${TIED}in${TIED}${of}`;
}

/** The same as it follows "odds of" or "risk of". @example chanceOf(0.001) // => "hardly any" */
export function chanceOf(chance: number): string {
  if (chance < 0.01) return `hardly${TIED}any`;
  return chance > 0.99 ? `almost${TIED}certain` : odds(chance);
}

/** A day of the year. */
export const monthAndDay = (units: Units, date: LocalDate): string => {
  const month = MONTHS[Number(date.slice(5, 7)) - 1]!;
  const day = String(Number(date.slice(8, 10)));
  return units === "US" ? `${month}${TIED}${day}` : `${day}${TIED}${month}`;
};

/** A date as it is read on the farm. */
export const day = (units: Units, date: LocalDate): string =>
  `${DAYS[weekday(date)]!}${TIED}${monthAndDay(units, date)}`;

/** The shortest form of a date, for the head of a column. */
export const dayOfMonth = (date: LocalDate): string =>
  `${DAYS[weekday(date)]!}${TIED}${Number(date.slice(8, 10))}`;

/** Days beyond which a range leaves no single day worth naming. [d] judgement */
const NAMED_WITHIN = 9;

/** A date as precise as the range it lies in allows: a day, else a third of a month. @param late - null: the range is open. */
export function dayWithin(
  units: Units,
  date: LocalDate,
  early: LocalDate | null,
  late: LocalDate | null,
): string {
  if (early !== null && late !== null && daysBetween(early, late) <= NAMED_WITHIN) return day(units, date);
  const third = ["early", "mid", "late"][Math.min(2, Math.floor((Number(date.slice(8, 10)) - 1) / 10))]!;
  return `${third}${TIED}${MONTHS[Number(date.slice(5, 7)) - 1]!}`;
}

/** The dates four of five cases lie between; null when that is one day, or all lies beyond the days looked at. */
export function daySpread(units: Units, early: LocalDate | null, late: LocalDate | null): string | null {
  if (early === null || early === late) return null;
  if (late === null) return `${monthAndDay(units, early)} or${TIED}later`;
  if (early.slice(0, 7) !== late.slice(0, 7))
    return `${monthAndDay(units, early)}–${monthAndDay(units, late)}`;
  const [from, to] = [early, late].map((date) => String(Number(date.slice(8, 10))));
  const month = MONTHS[Number(early.slice(5, 7)) - 1]!;
  return units === "US" ? `${month}${TIED}${from}–${to}` : `${from}–${to}${TIED}${month}`;
}

export const dayAndYear = (units: Units, date: LocalDate): string =>
  units === "US"
    ? `${day(units, date)}, ${date.slice(0, 4)}`
    : `${day(units, date)}${TIED}${date.slice(0, 4)}`;

/** The night that begins on the evening of `date`. */
export const night = (units: Units, date: LocalDate): string =>
  `the night from ${day(units, date)} to ${DAYS[weekday(addDays(date, 1))]!}`;

/** The same in short, as it is said of a night ahead: its date only where the day alone could be another week's. */
export const nightAhead = (units: Units, date: LocalDate, today: LocalDate): string =>
  daysBetween(today, date) < 7
    ? `${DAYS[weekday(date)]!}${TIED}night`
    : `${DAYS[weekday(date)]!}${TIED}night, ${monthAndDay(units, date)}`;

/** A market and its day, as it follows "for". */
export const marketDay = (units: Units, name: string, picked: LocalDate, sold: LocalDate): string =>
  picked === sold ? `${name} the same day` : `${name} on ${day(units, sold)}`;

/** An hour of the farm's clock. */
export function clock(units: Units, hour: number): string {
  const minutes = Math.round(hour * 60);
  const [h, m] = [Math.floor(minutes / 60) % 24, minutes % 60];
  const past = `:${String(m).padStart(2, "0")}`;
  if (units === "metric") return `${h}${past}`;
  if (m === 0 && h === 12) return "noon";
  if (m === 0 && h === 0) return "midnight";
  return `${h % 12 === 0 ? 12 : h % 12}${m === 0 ? "" : past}${TIED}${h < 12 ? "am" : "pm"}`;
}

export const dayOf = (farm: Pick<Farm, "units" | "place">, at: Instant): string =>
  day(farm.units, localDate(farm.place.zone, at));

/** Midnight alone would leave open which of two days it begins or ends. */
export const moment = (farm: Pick<Farm, "units" | "place">, at: Instant): string => {
  const hour = clock(farm.units, localHour(farm.place.zone, at));
  return hour === "midnight" ? `midnight before ${dayOf(farm, at)}` : `${dayOf(farm, at)}, ${hour}`;
};

/** How old something is. */
export function age(then: Instant, now: Instant): string {
  const hours = Math.floor((now - then) / HOUR);
  if (hours < 1) return "under an hour old";
  if (hours < 48) return hours === 1 ? "1 hour old" : `${hours} hours old`;
  return `${Math.floor(hours / 24)} days old`;
}

export const days = (count: number): string => tied(String(count), count === 1 ? "day" : "days");

/** Minutes of work; null where there is none worth naming. */
export const minutes = (value: number): string | null =>
  Math.round(value) < 1 ? null : tied(String(Math.round(value)), "min");

/** The sum of work each of which is told by itself, of the minutes as they are told, so that they add up. */
export const minutesTogether = (values: readonly number[]): string | null =>
  minutes(values.reduce((sum, value) => sum + Math.round(value), 0));

/** A sentence's first letter made large; the rest stays as typed. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const LAYER: Readonly<Record<Layer["state"], (cover: string) => string>> = {
  on: (cover) => `${cover} on`,
  vented: (cover) => `${cover} vented: one side lifted`,
  nights: (cover) => `${cover} on every night, off every day`,
};

/** What lies on a tunnel, in words. */
export const setting = (layers: readonly Layer[], coverName: (id: string) => string): string =>
  layers.length === 0
    ? "bare"
    : layers.map(({ cover, state }) => LAYER[state](coverName(cover))).join(", and ");

/** What lies on a tunnel at one time of day: a rhythm is on by night and off by day. */
export function settingAt(
  layers: readonly Layer[],
  part: "morning" | "evening",
  coverName: (id: string) => string,
): string {
  const lying = layers.filter(({ state }) => state !== "nights" || part === "evening");
  return lying.length === 0
    ? "bare"
    : lying
        .map(({ cover, state }) => (state === "vented" ? `${coverName(cover)} vented` : coverName(cover)))
        .join(" and ");
}

const SHORT: Readonly<Record<Layer["state"], (cover: string) => string>> = {
  on: (cover) => cover,
  vented: (cover) => `${cover} vented`,
  nights: (cover) => `${cover}, nights only`,
};

/** What lies on a tunnel, in as few words as say it. */
export const settingShort = (layers: readonly Layer[], coverName: (id: string) => string): string =>
  layers.length === 0
    ? "bare"
    : layers.map(({ cover, state }) => SHORT[state](coverName(cover))).join(" and ");

const HOW: Readonly<Record<Layer["state"], string | null>> = {
  on: null,
  vented: "vented",
  nights: "nights only",
};

/** How cloth lies that does not simply lie. */
export const howShort = (layers: readonly Layer[]): string | null =>
  layers.flatMap(({ state }) => HOW[state] ?? []).join(" and ") || null;
