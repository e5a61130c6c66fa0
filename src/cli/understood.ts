import { type IssuedBy, type Reason, type Understood, WEEKDAYS } from "../folder/index.ts";
import {
  type Celsius,
  celsius,
  type Instant,
  localDate,
  localHour,
  startOf,
  toFahrenheit,
  toMilesPerHour,
  weekday,
} from "../quantity/index.ts";
import type { Forecast } from "../weather/index.ts";

const SEPARATOR: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

const UNIT_BY: Readonly<Record<Understood["unitBy"], string>> = {
  option: "as --unit says",
  header: "from the header",
  cells: "from the readings",
  title: "from a line above the header",
};

const ORDER = { ymd: "year first", mdy: "month first", dmy: "day first" } as const;

const DATES_BY: Readonly<Record<Understood["datesBy"], string>> = {
  option: "as --dates says",
  itself: "as written",
  fits: "because another order gives no dates",
  sequence: "because in another order the days would not follow each other",
};

const ZONE_BY: Readonly<Record<Understood["zoneBy"], string>> = {
  option: "as --zone says",
  farm: "the farm's",
  header: "from the header",
};

const REASON: Readonly<Record<Reason, string>> = {
  noReading: "without a reading",
  unreadable: "not readable",
  outOfRange: "outside −60 to 60 °C",
  spike: "a single jump of more than 10 °C and back",
  noSuchHour: "in an hour the clock skips",
  repeated: "with the time of the line before",
};

const number = (value: number): string => String(value).replace(/\B(?=(?:\d{3})+$)/gu, ",");

/** Date and time on a clock, as 2026-04-20 06:45. */
export function moment(zone: string, at: Instant): string {
  const hour = localHour(zone, at);
  const minutes = Math.round(hour * 60);
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${localDate(zone, at)} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

export const degrees = (value: Celsius, units: "US" | "metric"): string =>
  units === "US" ? `${toFahrenheit(value).toFixed(1)} °F` : `${value.toFixed(1)} °C`;

const table = (rows: readonly (readonly [string, string])[]): string =>
  rows.map(([name, text]) => `  ${name.padEnd(10)} ${text}\n`).join("");

/** What was understood of a temperature log, for people. */
export function understoodText(
  file: string,
  sensor: string,
  separator: string,
  farm: { readonly zone: string; readonly units: "US" | "metric" },
  read: Understood,
): string {
  const { header, dropped, longest, silences } = read;
  const names = [header.moment, header.clock, header.temperature]
    .filter((index) => index !== null)
    .map((index) => `"${header.names[index]}"`);
  const left = dropped.reduce((sum, { count }) => sum + count, 0);
  const at = (instant: Instant): string => moment(farm.zone, instant);
  const mean = ({ hour, mean: value }: Understood["coldest"]): string =>
    `${at(startOf(hour))}, ${degrees(celsius(value), farm.units)}`;
  const rows: (readonly [string, string])[] = [
    [
      "columns",
      `${names.join(", ")}; header in line ${header.line}, separated by ${SEPARATOR[separator] ?? separator}`,
    ],
    ["unit", `°${read.unit}, ${UNIT_BY[read.unitBy]}`],
    ["dates", `${ORDER[read.dates]}, ${DATES_BY[read.datesBy]}`],
    ["zone", `${read.zone}, ${ZONE_BY[read.zoneBy]}`],
    ["interval", read.interval === null ? "a single reading" : `${number(read.interval)} min`],
    ["lines", `${number(read.rows)}: ${number(read.used)} used, ${number(left)} left out`],
    ...dropped.map(
      ({ reason, count, firstLine }) =>
        ["left out", `${number(count)} ${REASON[reason]} (first in line ${firstLine})`] as const,
    ),
    ...(read.twice > 0
      ? [
          [
            "clock",
            `${number(read.twice)} readings in the hour that came twice, told apart by their order`,
          ] as const,
        ]
      : []),
    ...(longest === null
      ? []
      : [
          [
            "silent",
            `${silences === 1 ? "once" : `${number(silences)} times, longest`}, ${at(longest.from)} to ${at(longest.to)}`,
          ] as const,
        ]),
    ["period", `${at(read.first)} to ${at(read.last)}`],
    ["coldest", `hour ${mean(read.coldest)}`],
    ["warmest", `hour ${mean(read.warmest)}`],
  ];
  return `${file}: temperature log of sensor ${sensor}\n${table(rows)}`;
}

const ISSUED_BY: Readonly<Record<IssuedBy, string>> = {
  option: "as --issued says",
  file: "as the file says",
  now: "now, since nothing says otherwise (--issued)",
  firstDay: "the beginning of its first day, since nothing says otherwise (--issued)",
};

/** One day of a forecast, as the grower sees it before it is stored. */
function dayText({ date, low, high, wind, sky }: Forecast["days"][number], units: "US" | "metric"): string {
  const named = WEEKDAYS[weekday(date)]!.slice(0, 3);
  const range =
    units === "US"
      ? `${toFahrenheit(low).toFixed(1)} to ${toFahrenheit(high).toFixed(1)} °F`
      : `${low.toFixed(1)} to ${high.toFixed(1)} °C`;
  const blows =
    wind === null
      ? null
      : `wind ${units === "US" ? `${toMilesPerHour(wind).toFixed(0)} mph` : `${(wind * 3.6).toFixed(0)} km/h`}`;
  return [named, range, sky, blows].filter((part) => part !== null).join(", ");
}

/**
 * What was understood of a forecast, for people.
 *
 * @param separator - Between the columns of a table; null for typed lines.
 */
export function forecastText(
  file: string,
  separator: string | null,
  farm: { readonly zone: string; readonly units: "US" | "metric" },
  { issued, days }: Forecast,
  by: IssuedBy,
): string {
  return `${file}: forecast\n${table([
    separator === null
      ? ["lines", "typed, one a day; the lower number is the low"]
      : ["columns", `separated by ${SEPARATOR[separator] ?? separator}`],
    ["issued", `${moment(farm.zone, issued)}, ${ISSUED_BY[by]}`],
    ...days.map((day): readonly [string, string] => [day.date, dayText(day, farm.units)]),
  ])}`;
}
