import { Body, Observer, SearchRiseSet } from "astronomy-engine";
import {
  addDays,
  dayOfYear,
  daysBetween,
  HOUR,
  type LocalDate,
  megajoule,
} from "../../../src/quantity/index.ts";
import {
  clearSky,
  dayLength,
  declination,
  extraterrestrial,
  fromRange,
  fromSunshine,
  inverseDistance,
  shortDays,
  sunsetAngle,
  sunshineHours,
} from "../../../src/weather/index.ts";
import { dateOf } from "../../published/dateOf.ts";
import lengths from "../../published/day-length.json" with { type: "json" };
import short from "../../published/days-under-ten-hours.json" with { type: "json" };
import fao from "../../published/fao56-examples.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

type Case = (typeof fao.cases)[number];
const example = (number: number): Case => fao.cases.find((each) => each.example === number)!;
const [eight, nine, ten, fifteen] = [8, 9, 10, 15].map(example) as [Case, Case, Case, Case];

const faoCheck = (
  what: string,
  unit: string,
  published: number,
  digits: number,
  ours: () => number,
): Check => ({
  what,
  source: "faoIrrigation56",
  unit,
  published,
  ours: () => Number(ours().toFixed(digits)),
  tolerance: 0,
  why: "rounded as printed",
});

const above = ({ latitude, dayOfYear: day }: Case): number => extraterrestrial(latitude, day);
const possible = ({ latitude, dayOfYear: day }: Case): number => sunshineHours(latitude, day);

export const radiation: Subject = {
  name: "Radiation, FAO-56 examples",
  checks: [
    faoCheck("example 8, distance of the sun", "1", eight.published.inverseDistance!, 3, () =>
      inverseDistance(eight.dayOfYear),
    ),
    faoCheck("example 8, declination", "rad", eight.published.declination!, 3, () =>
      declination(eight.dayOfYear),
    ),
    faoCheck("example 8, sunset angle", "rad", eight.published.sunsetAngle!, 3, () =>
      sunsetAngle(eight.latitude, eight.dayOfYear),
    ),
    faoCheck("example 8, radiation above the air", "MJ/m²", eight.published.extraterrestrial!, 1, () =>
      above(eight),
    ),
    faoCheck("example 9, possible sunshine", "h", nine.published.sunshineHours!, 1, () => possible(nine)),
    faoCheck("example 10, radiation above the air", "MJ/m²", ten.given!.extraterrestrial, 1, () =>
      above(ten),
    ),
    faoCheck("example 10, possible sunshine", "h", ten.given!.sunshineHours!, 1, () => possible(ten)),
    faoCheck("example 10, radiation from 7.1 h of sunshine", "MJ/m²", ten.published.radiation!, 1, () =>
      fromSunshine(megajoule(above(ten)), ten.sunshine! / possible(ten)),
    ),
    faoCheck("example 15, radiation above the air", "MJ/m²", fifteen.given!.extraterrestrial, 1, () =>
      above(fifteen),
    ),
    faoCheck("example 15, radiation from the daily range", "MJ/m²", fifteen.published.radiation!, 1, () =>
      fromRange(megajoule(above(fifteen)), fifteen.high! - fifteen.low!, "inland", 200),
    ),
    {
      what: "clear sky at 44° N on 21 December, as light at 0.45 × 4.57 mol/MJ",
      source: "leafpaceDerivation",
      unit: "mol/m²",
      published: 17.046202,
      ours: () => clearSky(megajoule(extraterrestrial(44, 355)), 0) * 0.45 * 4.57,
      tolerance: 0.5e-6,
      why: "half of the last printed digit",
    },
  ],
};

/** Sunrise to sunset at sea level by a general astronomy library, refraction and the sun's disc included. [h] */
function riseToSet(observer: Observer, date: LocalDate): number {
  const rise = SearchRiseSet(Body.Sun, observer, 1, new Date(`${date}T00:00:00Z`), 1);
  const set = rise && SearchRiseSet(Body.Sun, observer, -1, rise, 1);
  return rise === null || set === null ? Number.NaN : (set.date.getTime() - rise.date.getTime()) / HOUR;
}

const FROM = "2024-01-01" as LocalDate;
const TWO_YEARS = Array.from({ length: 731 }, (_, i) => addDays(FROM, i));

function worstDay(latitude: number): number {
  const observer = new Observer(latitude, 0, 0);
  let most = 0;
  for (const date of TWO_YEARS) {
    const off = dayLength(latitude, dayOfYear(date)) - riseToSet(observer, date);
    if (!(Math.abs(off) <= Math.abs(most))) most = off;
  }
  return most;
}

export const dayLengths: Subject = {
  name: "Day length",
  checks: [
    ...[-60, -50, -35, 0, 20, 35, 40, 44, 48, 50, 55, 60].map(
      (latitude): Check => ({
        what: `at ${latitude}°, every day of 2024 and 2025, worst`,
        source: "forsytheCbm1995",
        unit: "h",
        published: 0,
        ours: () => worstDay(latitude),
        tolerance: Math.abs(latitude) <= 50 ? 0.1 : 0.14,
        why: "six minutes to 50°, eight to 60°: the model knows no year of its own",
      }),
    ),
    ...lengths.rows.map(
      ({ latitude, date, cbm }): Check => ({
        what: `at ${latitude}° on ${date}, as the model was computed elsewhere`,
        source: "forsytheCbm1995",
        unit: "h",
        published: cbm,
        ours: () => dayLength(latitude, dayOfYear(dateOf(date, 2025))),
        tolerance: 0.5e-4,
        why: "half of the last printed digit",
      }),
    ),
    ...short.rows.flatMap(({ latitude, riseSet }) =>
      ([0, 1] as const).map((end): Check => {
        const published = dateOf(riseSet[end]!, 2025 + end);
        const middle = "2025-12-21" as LocalDate;
        return {
          what: `${end === 0 ? "first" : "last"} day under ten hours at ${latitude}°, counted from 1 October`,
          source: "leafpaceDerivation",
          unit: "d",
          published: daysBetween("2025-10-01", published),
          ours: () => {
            const found = shortDays(latitude, middle, middle);
            return found === null ? Number.NaN : daysBetween("2025-10-01", end === 0 ? found.from : found.to);
          },
          tolerance: 2,
          why: "a day changes by two to four minutes there",
        };
      }),
    ),
  ],
};
