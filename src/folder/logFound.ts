import type { Problem } from "../problem/index.ts";
import { addDays, type LocalDate, localDate } from "../quantity/index.ts";
import type { DayRange } from "./daySums.ts";
import { allDrops } from "./drops.ts";
import { type Gathered, gathered } from "./gathered.ts";
import type { HourSum } from "./hourSum.ts";
import type { Sums } from "./hourSums.ts";
import type { Layout } from "./layout.ts";
import { faultsOf } from "./logFaults.ts";
import type { LogOptions, LogReading, LogSaid, SensorLog } from "./logReading.ts";
import { joined } from "./overlap.ts";
import type { SectionFound } from "./section.ts";
import { silencesIn } from "./silences.ts";
import type { StoredHour } from "./storeFile.ts";
import { timeIndices } from "./timeColumns.ts";
import type { DaysUnderstood, HoursUnderstood, Understood } from "./understood.ts";

/** Share of readings with the time of another from which two sensors are mixed. judgement */
const MIXED = 0.25;

const DAY = 86_400_000;

/** All that was found in a log, part by part. */
export interface LogFound {
  readonly options: LogOptions;
  readonly said: LogSaid;
  readonly remembered: readonly string[];
  readonly sections: readonly SectionFound[];
  readonly zoneOf: (layout: Layout) => string;
  readonly header: string;
}

const readingNames = ({ of }: Layout): readonly string[] => [
  ...new Set((of.kind === "days" ? [of.low, of.high] : of.columns).map(({ name }) => name)),
];

const meanOf = ({
  hour,
  sum,
  count,
}: HourSum): { readonly hour: HourSum["hour"]; readonly mean: number } => ({
  hour,
  mean: sum / count,
});

function hoursOf(
  sensor: string,
  { source, section }: Gathered,
  sums: Sums,
  hours: readonly HourSum[],
): HoursUnderstood {
  const means = hours.map(meanOf);
  const { scale, by } = section.scales.bySource.get(source)!;
  const { used, interval, first, last, twice } = sums;
  const { count: silences, longest } = silencesIn(hours);
  return {
    kind: "hours",
    sensor,
    source,
    scale,
    scaleBy: by,
    used,
    interval,
    first: first!,
    last: last!,
    silences,
    longest,
    twice,
    coldest: means.reduce((best, mean) => (mean.mean < best.mean ? mean : best)),
    warmest: means.reduce((best, mean) => (mean.mean > best.mean ? mean : best)),
  };
}

function daysOf(sensor: string, { source, section }: Gathered, days: readonly DayRange[]): DaysUnderstood {
  const { scale, by } = section.scales.bySource.get(source)!;
  return {
    kind: "days",
    sensor,
    source,
    scale,
    scaleBy: by,
    used: days.length,
    first: days[0]!.date,
    last: days.at(-1)!.date,
    coldest: days.reduce((best, day) => (day.low < best.low ? day : best)),
    warmest: days.reduce((best, day) => (day.high > best.high ? day : best)),
  };
}

/** Days of all sections, each date once. */
const joinedDays = (parts: readonly (readonly DayRange[])[]): readonly DayRange[] =>
  [...new Map(parts.flat().map((day) => [day.date, day])).values()].sort((a, b) =>
    a.date < b.date ? -1 : 1,
  );

const lastDayOf = (sections: readonly SectionFound[]): LocalDate | null => {
  const walls = sections
    .filter(({ layout }) => layout.of.kind === "days")
    .map(({ latest }) => latest?.wall ?? null);
  const known = walls.filter((wall) => wall !== null);
  return known.length === 0 ? null : addDays("1970-01-01", Math.floor(Math.max(...known) / DAY));
};

/** Puts together what the parts of a log hold, or says what keeps it from being stored. */
export function logFound(found: LogFound): LogReading {
  const { options, said, sections } = found;
  const { file, now, farm } = options;
  const lastDay = lastDayOf(sections);
  const none = (problems: readonly Problem[]): LogReading => ({
    understood: null,
    sensors: [],
    problems,
    lastDay,
  });
  const filled = sections.filter(({ rows }) => rows > 0);
  const stop = (
    code: string,
    line: number | null,
    expected: string,
    received: string,
    hint: string,
  ): LogReading => none([{ code, weight: "stops", file, line, column: null, expected, received, hint }]);
  if (filled.length === 0)
    return stop(
      "log-empty",
      sections[0]?.layout.line ?? null,
      "readings below the header",
      "none",
      "Look at the file.",
    );
  const faults = filled.flatMap((section) =>
    faultsOf(section, {
      file,
      said,
      zone: found.zoneOf(section.layout),
      today: localDate(farm.zone, now),
      now,
    }),
  );
  if (faults.length > 0) return none(faults);
  const sources = gathered(options, said, filled);
  if ("problem" in sources) return none([sources.problem]);

  let repeated = 0;
  const sensors: SensorLog[] = [];
  const told: (HoursUnderstood | DaysUnderstood)[] = [];
  for (const [sensor, part] of sources.bySensor) {
    const sums = part.series.filter((series) => series.kind === "hours").map((series) => series.sums);
    const days = joinedDays(
      part.series.filter((series) => series.kind === "days").map((series) => series.days),
    );
    let hours: readonly StoredHour[] = [];
    if (sums.length > 0) {
      const all = joined(sums, (count) => {
        repeated += count;
      });
      const sorted = [...all.hours.values()].sort((a, b) => a.hour - b.hour);
      if (sorted.length > 0) told.push(hoursOf(sensor, part, all, sorted));
      if (all.clashes > all.used * MIXED)
        return stop(
          "log-times-twice",
          part.section.layout.line,
          "each time once",
          `${all.clashes} times that come twice with two temperatures`,
          "Two sensors are mixed here; export them one by one, or with a column that names them.",
        );
      hours = sorted.map(({ hour, sum, count, lowest, highest }) => ({
        hour,
        sum,
        count,
        lowest,
        highest,
        origin: file,
      }));
    }
    if (days.length > 0) told.push(daysOf(sensor, part, days));
    if (hours.length + days.length > 0) sensors.push({ sensor, hours, days });
  }
  const [first] = filled;
  if (told.length === 0)
    return stop(
      "log-empty",
      first!.layout.line,
      "readings below the header",
      `none in ${filled.reduce((sum, { rows }) => sum + rows, 0)} lines`,
      "Look at the file, or choose another column with --column.",
    );
  const dropped = allDrops([
    ...filled.map((section) => section.dropped),
    ...(repeated > 0
      ? [[{ reason: "repeated" as const, count: repeated, firstLine: filled[1]?.layout.line ?? 1 }]]
      : []),
  ]);
  const { layout, settled } = first!;
  const understood: Understood = {
    titles: layout.titles,
    headerLine: layout.header ? layout.line : null,
    header: found.header,
    moreHeaders: filled.length - 1,
    timeColumns: timeIndices(layout.times).map((index) => layout.names[index] ?? `column ${index + 1}`),
    readingColumns: readingNames(layout),
    ignored: layout.ignored,
    dates: settled!.order,
    datesBy: settled!.by,
    zone: found.zoneOf(layout),
    zoneBy: said.zone !== null ? "option" : layout.offset !== null ? "header" : "farm",
    rows: filled.reduce((sum, { rows }) => sum + rows, 0),
    used: told.reduce((sum, { used }) => sum + used, 0),
    dropped,
    sensors: told,
    others: sources.others,
    remembered: found.remembered,
  };
  return { understood, sensors, problems: [], lastDay };
}
