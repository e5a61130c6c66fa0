import type { Crop, Settings } from "../farm/index.ts";
import { type Celsius, centimetre, type LocalDate } from "../quantity/index.ts";
import type { DayWeather } from "../weather/index.ts";
import type { FrostedBed, Warning } from "./warning.ts";

/** A night at one tunnel, at crop height in calm air. [°C] */
export interface TunnelNight {
  readonly date: LocalDate;
  readonly bare: Celsius;
  readonly expected: Celsius;
  readonly promised: Celsius;
  /** Cloth could not be put on at the walk before because of wind. */
  readonly windy: boolean;
}

/** A succession with leaves up or its stubble, and its chance of damage that night or day under the plan. */
export interface Exposed {
  readonly id: string;
  readonly crop: Crop;
  readonly of: FrostedBed["of"];
  /** Temperature at which it dies after what it has lived through. [°C] */
  readonly kill: Celsius;
  readonly risk: number;
  /** It is to be cut within the days planned, so that marked leaves are lost leaves. */
  readonly cutSoon: boolean;
}

/** Grower's rule for the dark season; a note, never a switch. [h] common practice, no source */
const SHORT_DAY = 10;

/** Frost at one tunnel on one night; null when no leaf comes near its limit. Danger: what is promised keeps leaves that are soon cut not fit, or plants not alive. */
export function frostWarning(
  tunnel: string,
  night: TunnelNight,
  exposed: readonly Exposed[],
  { nearFrost }: Settings,
): Warning | null {
  const tender = exposed.filter(({ crop, kill }) => night.bare <= Math.max(crop.unfit, kill) + nearFrost);
  if (tender.length === 0) return null;
  const unfit = Math.max(...tender.map(({ crop, kill }) => Math.max(crop.unfit, kill))) as Celsius;
  const kill = Math.max(...tender.map((each) => each.kill)) as Celsius;
  const { date, bare, expected, promised, windy } = night;
  const soon = tender.some(({ crop, cutSoon }) => cutSoon && promised < crop.unfit);
  return {
    kind: "frost",
    severity: soon || promised < kill ? "danger" : "care",
    date,
    tunnel,
    beds: tender.map(({ id, of, kill, risk }) => ({ succession: id, of, kill, risk })),
    bare,
    expected,
    promised,
    unfit,
    kill,
    risk: Math.max(...tender.map(({ risk }) => risk)),
    windy,
  };
}

/** Heat at one tunnel on one day; null when the leaf stays cool both as it lies now and under the plan. Danger: above a crop's ceiling under the plan. */
export function heatWarning(
  tunnel: string,
  date: LocalDate,
  ifLeft: Celsius,
  planned: Celsius,
  exposed: readonly Exposed[],
  { nearHeat }: Settings,
): Warning | null {
  const hottest = Math.max(ifLeft, planned);
  const tender = exposed.filter(({ crop }) => hottest > crop.qualityLimit + nearHeat);
  if (tender.length === 0) return null;
  const limit = Math.min(...tender.map(({ crop }) => crop.qualityLimit)) as Celsius;
  const ceiling = Math.min(...tender.map(({ crop }) => crop.growth.ceiling));
  return {
    kind: "heat",
    severity: planned >= ceiling ? "danger" : "care",
    date,
    tunnel,
    successions: tender.map(({ id }) => id),
    ifLeft,
    planned,
    limit,
  };
}

/** Days too windy to put cloth on. */
export function windWarnings(days: readonly DayWeather[], limit: DayWeather["wind"]): readonly Warning[] {
  return days
    .filter(({ wind, windKnown }) => windKnown && wind > limit)
    .map(({ date, wind }) => ({ kind: "wind", severity: "care", date, wind, limit }));
}

/**
 * A day's snow on what lies on hoops; null when none is foretold worth a look, or nothing lies there.
 *
 * @param water - What is still to fall. [mm]
 * @param tunnels - Covered that day.
 */
export function snowWarning(
  date: LocalDate,
  water: number,
  tunnels: readonly string[],
  { snowLies, newSnow }: Pick<Settings, "snowLies" | "newSnow">,
): Warning | null {
  if (water < snowLies || tunnels.length === 0) return null;
  const depth = centimetre((water * newSnow) / 10);
  return { kind: "snow", severity: "care", date, water, depth, tunnels };
}

/** The first day with less than ten hours of day. */
export function lightWarning(days: readonly DayWeather[]): Warning | null {
  const short = days.find(({ dayLength }) => dayLength < SHORT_DAY);
  return short === undefined
    ? null
    : { kind: "light", severity: "care", date: short.date, light: short.light, dayLength: short.dayLength };
}

/**
 * A crop that tends to bolt on such days and has been cut or is past its size.
 *
 * @param cutOrPast - Judged as if no shade cloth had lain: shade delays the leaf, but dim light lowers the day length spinach needs.
 */
export function boltingWarning(
  succession: string,
  crop: Crop,
  cutOrPast: boolean,
  day: DayWeather,
): Warning | null {
  if (crop.boltingDay === null || !cutOrPast || day.dayLength < crop.boltingDay) return null;
  return { kind: "bolting", severity: "care", date: day.date, succession, dayLength: day.dayLength };
}

/** A seedbed so warm that part of the stand will not come up. */
export function seedbedWarning(
  succession: string,
  crop: Crop,
  date: LocalDate,
  seedbed: Celsius,
): Warning | null {
  const limit = crop.emergence.tooWarm;
  return seedbed <= limit ? null : { kind: "seedbed", severity: "care", date, succession, seedbed, limit };
}

const URGENCY = ["frost", "heat", "snow", "wind", "seedbed", "bolting", "light"] as const;

/** Danger before care, frost and heat before all else, then by date. */
export function byUrgency(warnings: readonly Warning[]): readonly Warning[] {
  const rank = ({ severity, kind }: Warning): number =>
    (severity === "danger" ? 0 : 10) + URGENCY.indexOf(kind);
  return [...warnings].sort((a, b) => rank(a) - rank(b) || (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}
