import { catalogue } from "../farm/index.ts";
import {
  type DaysUnderstood,
  type HoursUnderstood,
  type IssuedBy,
  type Reason,
  scaleText,
  type Understood,
  WEEKDAYS,
} from "../folder/index.ts";
import {
  type Celsius,
  celsius,
  type Instant,
  localDate,
  localHour,
  startOf,
  toFahrenheit,
  toMilesPerHour,
  type UtcHour,
  weekday,
} from "../quantity/index.ts";
import type { Forecast } from "../weather/index.ts";
import type { Encoding } from "./encoding.ts";
import type { ReadFrom } from "./foretold.ts";

const SEPARATOR: Readonly<Record<string, string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "vertical bars",
  " ": "blanks",
};

const ENCODING: Readonly<Record<Encoding, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16",
  "utf-16be": "UTF-16",
  "windows-1252": "Windows-1252",
  macintosh: "Mac Roman",
};

const SCALE_BY: Readonly<Record<HoursUnderstood["scaleBy"], string>> = {
  option: "as --unit says",
  header: "from the header",
  cells: "from the readings",
  column: "from a column of units",
  title: "from a line above the header",
};

const ORDER = { ymd: "year first", mdy: "month first", dmy: "day first" } as const;

const DATES_BY: Readonly<Record<Understood["datesBy"], string>> = {
  option: "as --dates says",
  itself: "as written",
  fits: "because another order gives no dates",
  sequence: "because in another order the days would not follow each other",
  same: "or any other order: all give the same dates",
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
  repeated: "there already, with the same time and temperature",
  clockUnset: "from a clock that was not set",
  cutOff: "cut off at the end of the file",
  lowAboveHigh: "with the low above the high",
  otherElement: "of something else",
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

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(", ");

/** @param seconds - Step from one reading to the next. [s] */
const intervalText = (seconds: number | null): string =>
  seconds === null
    ? "a single reading"
    : seconds % 60 === 0
      ? `${number(seconds / 60)} min`
      : `${number(seconds)} s`;

type Rows = readonly (readonly [string, string])[];
interface Look {
  readonly zone: string;
  readonly units: "US" | "metric";
}

const scaleRow = ({ scale, scaleBy }: HoursUnderstood | DaysUnderstood): Rows[number] => [
  "unit",
  `${scaleText(scale)}, ${SCALE_BY[scaleBy]}`,
];

function hoursRows(read: HoursUnderstood, { zone, units }: Look): Rows {
  const at = (instant: Instant): string => moment(zone, instant);
  const mean = ({ hour, mean: value }: HoursUnderstood["coldest"]): string =>
    `hour ${at(startOf(hour))}, ${degrees(celsius(value), units)}`;
  const { longest, silences, twice } = read;
  return [
    scaleRow(read),
    ["interval", intervalText(read.interval)],
    ...(twice > 0
      ? [
          [
            "clock",
            `${number(twice)} readings in the hour that came twice, told apart by their order`,
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
    ["coldest", mean(read.coldest)],
    ["warmest", mean(read.warmest)],
  ];
}

const daysRows = (read: DaysUnderstood, { units }: Look): Rows => [
  scaleRow(read),
  ["days", `${number(read.used)} lows and highs, ${read.first} to ${read.last}`],
  ["coldest", `${read.coldest.date}, ${degrees(celsius(read.coldest.low), units)}`],
  ["warmest", `${read.warmest.date}, ${degrees(celsius(read.warmest.high), units)}`],
];

const sensorRows = (read: HoursUnderstood | DaysUnderstood, look: Look): Rows =>
  read.kind === "hours" ? hoursRows(read, look) : daysRows(read, look);

/** What was understood of a temperature log, for people. */
export function understoodText(
  written: { readonly file: string; readonly separator: string; readonly encoding: Encoding },
  farm: Look,
  read: Understood,
): string {
  const { dropped, sensors, headerLine, moreHeaders } = read;
  const left = dropped.reduce((sum, { count }) => sum + count, 0);
  const header =
    headerLine === null
      ? "no header"
      : `header in line ${headerLine}${moreHeaders === 0 ? "" : ` and ${moreHeaders} more below`}`;
  const daily = sensors.every(({ kind }) => kind === "days");
  const shared: Rows = [
    [
      "written",
      `${ENCODING[written.encoding]}, separated by ${SEPARATOR[written.separator] ?? written.separator}; ${header}`,
    ],
    ["columns", quoted([...read.timeColumns, ...read.readingColumns])],
    ...(read.ignored.length > 0 ? [["ignored", quoted(read.ignored)] as const] : []),
    ...(read.others.length > 0 ? [["ignored", `${quoted(read.others)}, named like no sensor`] as const] : []),
    ["dates", `${ORDER[read.dates]}, ${DATES_BY[read.datesBy]}`],
    ...(daily ? [] : [["zone", `${read.zone}, ${ZONE_BY[read.zoneBy]}`] as const]),
    ...(read.remembered.length > 0
      ? [
          [
            "remembered",
            `${read.remembered.map((option) => `--${option}`).join(", ")}, said before of files with this header (temperature/kinds.csv)`,
          ] as const,
        ]
      : []),
    ["lines", `${number(read.rows)}: ${number(read.used)} used, ${number(left)} left out`],
    ...dropped.map(
      ({ reason, count, firstLine }) =>
        ["left out", `${number(count)} ${REASON[reason]} (first in line ${firstLine})`] as const,
    ),
  ];
  const title = (which: readonly (HoursUnderstood | DaysUnderstood)[]): string =>
    `${daily ? "daily record" : "temperature log"} of ${which.length === 1 ? "sensor" : "sensors"} ${which.map(({ sensor }) => sensor).join(", ")}`;
  const [only] = sensors;
  const station: Rows =
    only === undefined || only.source === "" || read.readingColumns.includes(only.source)
      ? []
      : [["station", `"${only.source}"`]];
  if (sensors.length === 1)
    return `${written.file}: ${title(sensors)}\n${table([...shared, ...station, ...sensorRows(only!, farm)])}`;
  const parts = sensors.map((each) => `  ${each.sensor}, "${each.source}"\n${table(sensorRows(each, farm))}`);
  return `${written.file}: ${title(sensors)}\n${table(shared)}${parts.join("")}`;
}

const ISSUED_BY: Readonly<Record<IssuedBy, string>> = {
  option: "as --issued says",
  file: "as the file says",
  now: "now, since nothing says otherwise (--issued)",
  firstHour: "its first hour, since nothing says otherwise (--issued)",
  firstDay: "the beginning of its first day, since nothing says otherwise (--issued)",
};

/** One day of a forecast, as the grower sees it before it is stored. */
/** What falls on a day; snow where it may be, which the amount does not tell apart. @param rain - Or snow as water. [mm] */
function fallText(low: Celsius, rain: number, units: "US" | "metric"): string {
  const amount = units === "US" ? `${(rain / MILLIMETRES_PER_INCH).toFixed(2)} in` : `${rain.toFixed(1)} mm`;
  return low > catalogue().settings.rainSnow ? `rain ${amount}` : `rain or snow, ${amount} as water`;
}

function dayText(
  { date, low, high, wind, sky, cloud, rain, wet }: Forecast["days"][number],
  units: "US" | "metric",
): string {
  const named = WEEKDAYS[weekday(date)]!.slice(0, 3);
  const range =
    units === "US"
      ? `${toFahrenheit(low).toFixed(1)} to ${toFahrenheit(high).toFixed(1)} °F`
      : `${low.toFixed(1)} to ${high.toFixed(1)} °C`;
  const covered = cloud === undefined ? null : `${Math.round(cloud * 100)} % cloud`;
  const blows =
    wind === null
      ? null
      : `wind ${units === "US" ? `${toMilesPerHour(wind).toFixed(0)} mph` : `${(wind * 3.6).toFixed(0)} km/h`}`;
  const falls =
    rain === undefined || rain < LEAST_RAIN
      ? wet === true
        ? "rain or snow"
        : null
      : fallText(low, rain, units);
  return [named, range, sky, covered, blows, falls].filter((part) => part !== null).join(", ");
}

const MILLIMETRES_PER_INCH = 25.4;

/** Less is not told. [mm] */
const LEAST_RAIN = 0.2;

/** What a forecast was read from, as a line of the table. */
function fromText(from: ReadFrom): readonly [string, string] {
  if (from === "typed") return ["lines", "typed, one a day; the lower number is the low"];
  if ("page" in from) return ["from", from.page];
  const separated = `separated by ${SEPARATOR[from.separator] ?? from.separator}`;
  return ["columns", from.hourly ? `${separated}, hour by hour` : separated];
}

/** From which hour to which a forecast goes by hours, and what it says of them. */
function hoursText(zone: string, hours: NonNullable<Forecast["hours"]>): string {
  const said = (["wind", "cloud", "radiation", "rain"] as const).filter((name) =>
    hours.some((hour) => hour[name] !== null),
  );
  const end = startOf((hours.at(-1)!.hour + 1) as UtcHour);
  return `${number(hours.length)}, ${moment(zone, startOf(hours[0]!.hour))} to ${moment(zone, end)}: ${["temperature", ...said].join(", ")}`;
}

/** What was understood of a forecast, for people. */
export function forecastText(
  file: string,
  from: ReadFrom,
  farm: { readonly zone: string; readonly units: "US" | "metric" },
  { issued, days, hours = [] }: Forecast,
  by: IssuedBy,
): string {
  return `${file}: forecast\n${table([
    fromText(from),
    ["issued", `${moment(farm.zone, issued)}, ${ISSUED_BY[by]}`],
    ...(hours.length === 0 ? [] : [["hours", hoursText(farm.zone, hours)] as const]),
    ...days.map((day): readonly [string, string] => [day.date, dayText(day, farm.units)]),
  ])}`;
}
