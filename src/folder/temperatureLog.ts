import type { Problem } from "../problem/index.ts";
import { celsius, fahrenheit, type Instant, type UtcHour } from "../quantity/index.ts";
import { type DateOrder, type Dialect, PLAIN, plainWords, unitNamed } from "./dialect.ts";
import { shown, type Units } from "./faults.ts";
import { type DropReason, type HourSums, hourSums, type Stretch, type Sums } from "./hourSums.ts";
import { type LogHeader, logHeader } from "./logHeader.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import type { Row } from "./row.ts";
import { steadyHint } from "./standardTime.ts";
import type { StoredHour } from "./storeFile.ts";
import { settledByItself, splitMoment, wallReader } from "./timestamp.ts";

export interface LogOptions {
  /** Name people know the file by. */
  readonly file: string;
  /** Zone the logger's clock shows. */
  readonly zone: string;
  readonly zoneBy: "option" | "farm";
  /** What the grower says; null: the file must say it. */
  readonly unit: "C" | "F" | null;
  readonly dates: DateOrder | null;
  readonly column: string | null;
  /** Numbers have decimal commas. Possible only when another sign separates the cells. */
  readonly decimalComma: boolean;
  readonly dialect?: Dialect;
  /** The farm's, for examples in problems. */
  readonly units?: Units;
}

export type Reason = DropReason | "noReading" | "unreadable" | "outOfRange";

export interface Dropped {
  readonly reason: Reason;
  readonly count: number;
  readonly firstLine: number;
}

/** What was understood of a log, to be shown before anything is stored. */
export interface Understood {
  readonly titles: readonly string[];
  readonly header: LogHeader;
  readonly unit: "C" | "F";
  readonly unitBy: "option" | "header" | "cells" | "title";
  readonly dates: DateOrder;
  /** "itself": year first or month by name; "fits": another order gives no dates; "sequence": in another order days would not follow each other. */
  readonly datesBy: "option" | "itself" | "fits" | "sequence";
  readonly zone: string;
  readonly zoneBy: "option" | "farm" | "header";
  /** [min] */
  readonly interval: number | null;
  readonly rows: number;
  readonly used: number;
  readonly dropped: readonly Dropped[];
  readonly first: Instant;
  readonly last: Instant;
  readonly silences: number;
  readonly longest: Stretch | null;
  /** Readings in an hour that came twice. */
  readonly twice: number;
  readonly coldest: HourMean;
  readonly warmest: HourMean;
}

export interface HourMean {
  readonly hour: UtcHour;
  /** [°C] */
  readonly mean: number;
}

export interface LogReading {
  /** null when the log cannot be stored. */
  readonly understood: Understood | null;
  readonly hours: readonly StoredHour[];
  readonly problems: readonly Problem[];
}

export interface TemperatureLog {
  feed(row: Row): void;
  finish(): LogReading;
}

interface Drops {
  add(reason: Reason, line: number): void;
  list(): readonly Dropped[];
}

function drops(): Drops {
  const found = new Map<Reason, { count: number; firstLine: number }>();
  return {
    add: (reason, line) => {
      const entry = found.get(reason);
      if (entry === undefined) found.set(reason, { count: 1, firstLine: line });
      else entry.count += 1;
    },
    list: () => [...found].map(([reason, entry]) => ({ reason, ...entry })),
  };
}

/** One way of reading the dates, followed until the file rules it out. */
interface Candidate {
  readonly order: DateOrder;
  readonly wall: ReturnType<typeof wallReader>;
  readonly sums: HourSums;
  readonly dropped: Drops;
}

const NUMBER = /^([-+−]?\s*(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*(.*)$/u;

/** The value of a cell in °C, or why there is none. */
function reading(
  cell: string,
  unit: "C" | "F" | null,
  { decimalComma }: LogOptions,
  dialect: Dialect,
): { readonly value: number; readonly named: "C" | "F" | null } | "noReading" | "unreadable" | "noUnit" {
  const text = cell.trim();
  if (dialect.missing.includes(plainWords(text))) return "noReading";
  const match = NUMBER.exec(text);
  if (match === null || (match[1]!.includes(",") && !decimalComma)) return "unreadable";
  const named = match[2] === "" ? null : unitNamed(match[2]!, dialect);
  if (match[2] !== "" && named === null) return "unreadable";
  const number = Number(match[1]!.replace("−", "-").replace(",", ".").replace(/\s/gu, ""));
  if (dialect.missing.includes(String(number))) return "noReading";
  const counts = named ?? unit;
  if (counts === null) return "noUnit";
  return { value: counts === "F" ? fahrenheit(number) : celsius(number), named };
}

/**
 * Reads a logger's temperature log, row by row: titles, header, readings. Holds the hours, never the rows.
 * Nothing is guessed: what the file does not settle is a problem that names the option which does.
 */
export function temperatureLog(options: LogOptions): TemperatureLog {
  const { file, dialect = PLAIN, units = "US" } = options;
  const titles: Row[] = [];
  const problems: Problem[] = [];
  const dropped = drops();
  let header: LogHeader | null = null;
  let candidates: Candidate[] = [];
  let ambiguous: { readonly line: number; readonly text: string } | null = null;
  let rows = 0;
  let byItself = false;
  let cellUnit: "C" | "F" | null = null;
  let unitless: { readonly line: number; readonly text: string } | null = null;
  let givenUp = false;

  const problem = (
    code: string,
    line: number | null,
    column: string | null,
    expected: string,
    received: string,
    hint: string,
    weight: Problem["weight"] = "stops",
  ): void => {
    problems.push({ code, weight, file, line, column, expected, received, hint });
  };

  // In a line of prose a single letter is an initial, no unit.
  const spelledOut: Dialect = {
    ...dialect,
    fahrenheit: dialect.fahrenheit.filter((unit) => unit.length > 1),
    celsius: dialect.celsius.filter((unit) => unit.length > 1),
  };
  const titleUnit = (): "C" | "F" | null => {
    const named = new Set(
      titles.map(({ cells }) => unitNamed(cells.join(" "), spelledOut)).filter((unit) => unit !== null),
    );
    return named.size === 1 ? [...named][0]! : null;
  };
  let statedUnit: "C" | "F" | null = options.unit;

  const begin = (date: string, zone: string): void => {
    byItself = settledByItself(date);
    const orders: readonly DateOrder[] =
      options.dates !== null ? [options.dates] : byItself ? ["ymd"] : ["mdy", "dmy", "ymd"];
    candidates = orders.map((order) => {
      const own = drops();
      return { order, wall: wallReader(order, dialect), sums: hourSums(zone, file, own.add), dropped: own };
    });
  };

  const zone = (): string => {
    const offset = header?.offset ?? null;
    if (options.zoneBy === "option" || offset === null) return options.zone;
    const [hours, minutes] = [Math.floor(Math.abs(offset) / 60), Math.abs(offset) % 60];
    const two = (value: number): string => String(value).padStart(2, "0");
    return offset === 0 ? "UTC" : `${offset < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}`;
  };

  const findHeader = (row: Row): void => {
    const found = logHeader(row, file, options.column, dialect);
    if (found === null) {
      if (titles.length < dialect.titleLines) titles.push(row);
      else givenUp = true;
    } else if ("header" in found) {
      header = found.header;
      statedUnit = options.unit ?? header.unit ?? titleUnit();
    } else {
      problems.push(found.problem);
      givenUp = true;
    }
  };

  /** Takes in one line; the reason when it is left out. */
  const feedReading = (row: Row, { moment, clock, temperature }: LogHeader): Reason | null => {
    const momentCell = row.cells[moment] ?? "";
    const cell = row.cells[temperature] ?? "";
    rows += 1;
    const [date, time] =
      clock === null ? splitMoment(momentCell) : [momentCell.trim(), row.cells[clock] ?? ""];
    if (date === "") return cell.trim() === "" ? "noReading" : "unreadable";
    if (candidates.length === 0) begin(date, zone());
    const walls = candidates.map((candidate) => candidate.wall(date, time));
    if (walls.every((wall) => wall === null)) return "unreadable";
    const fitting = candidates
      .map((candidate, index) => ({ candidate, wall: walls[index]! }))
      .filter(({ wall }) => wall !== null);
    if (fitting.length < candidates.length) candidates = fitting.map(({ candidate }) => candidate);
    if (ambiguous === null) ambiguous = { line: row.line, text: date };
    const read = reading(cell, statedUnit, options, dialect);
    if (read === "noUnit") {
      unitless ??= { line: row.line, text: cell };
      // Nothing of it is stored; but its date may still settle the order, or show that it needs settling.
      for (const { candidate, wall } of fitting) candidate.sums.feed(row.line, wall, 0);
      return null;
    }
    if (typeof read === "string") return read;
    cellUnit ??= read.named;
    if (read.value < ON_A_FARM.coldest || read.value > ON_A_FARM.warmest) return "outOfRange";
    for (const { candidate, wall } of fitting) candidate.sums.feed(row.line, wall, read.value);
    return null;
  };

  /** The one way of reading the dates that is left, or none. */
  const settle = (): {
    readonly chosen: Candidate;
    readonly sums: Sums;
    readonly by: Understood["datesBy"];
  } | null => {
    const read = candidates.map((candidate) => ({ chosen: candidate, sums: candidate.sums.finish() }));
    if (read.length === 1) {
      const by = options.dates !== null ? "option" : byItself ? "itself" : "fits";
      return { ...read[0]!, by };
    }
    const following = read.filter(({ sums }) => sums.leaps === 0 && sums.nextDays > 0);
    return following.length === 1 ? { ...following[0]!, by: "sequence" } : null;
  };

  const understand = (found: LogHeader): LogReading => {
    const none: LogReading = { understood: null, hours: [], problems };
    const momentName = found.names[found.moment]!;
    const temperatureName = found.names[found.temperature]!;
    const unit = statedUnit ?? cellUnit;
    if (unitless !== null || unit === null) {
      const received = unitless === null ? "no reading" : shown(unitless.text);
      const line = unitless === null ? found.line : unitless.line;
      const hint = /[([]\s*(?:K|kelvin)\s*[)\]]/iu.test(temperatureName)
        ? "The unit K is not known; export the log in °C or °F."
        : "Say --unit F or --unit C.";
      problem(
        "log-unit-missing",
        line,
        temperatureName,
        "a unit, °F or °C, in the header or behind the number",
        received,
        hint,
      );
    }
    if (candidates.length === 0) {
      const received = rows === 0 ? "no readings" : `${rows} lines without one`;
      const hint =
        options.dates === null ? "Look at the file's first lines." : "Try another order behind --dates.";
      problem(
        "log-dates-unreadable",
        found.line,
        momentName,
        "dates and times below the header",
        received,
        hint,
      );
      return none;
    }
    const settled = settle();
    if (settled === null) {
      problem(
        "log-dates-ambiguous",
        ambiguous?.line ?? null,
        momentName,
        "dates whose order can be told",
        shown(ambiguous?.text ?? ""),
        "Say --dates mdy when the month comes first, --dates dmy when the day does.",
      );
      return none;
    }
    if (unit === null || unitless !== null) return none;
    const { chosen, sums, by } = settled;
    if (sums.used === 0 || sums.first === null || sums.last === null) {
      problem(
        "log-empty",
        found.line,
        temperatureName,
        "readings below the header",
        `none in ${rows} lines`,
        "Look at the file, or choose another column with --column.",
      );
      return none;
    }
    const left = [...dropped.list(), ...chosen.dropped.list()];
    const unreadable = left.find(({ reason }) => reason === "unreadable");
    if (unreadable !== undefined && unreadable.count > sums.used) {
      problem(
        "log-unreadable",
        unreadable.firstLine,
        null,
        "a date, a time and a temperature in most lines",
        `${unreadable.count} of ${rows} lines without`,
        "Look at this line of the file; --dates, --unit and --column say how to read it.",
      );
      return none;
    }
    const lost = left.find(({ reason }) => reason === "noSuchHour");
    if (lost !== undefined)
      problem(
        "log-hour-that-never-was",
        lost.firstLine,
        momentName,
        `times of the clock in ${zone()}`,
        `${lost.count} in the hour it skips in spring`,
        `The logger does not change its clock: import it with the zone it keeps, ${steadyHint(zone(), new Date(sums.first).getUTCFullYear())}.`,
        "needsYou",
      );
    const means = sums.hours.map(({ hour, sum, count }) => ({ hour, mean: sum / count }));
    const pick = (better: (a: HourMean, b: HourMean) => boolean): HourMean =>
      means.reduce((best, mean) => (better(mean, best) ? mean : best));
    return {
      understood: {
        titles: titles.map(({ cells }) => cells.join(" ").trim()),
        header: found,
        unit,
        unitBy:
          options.unit !== null
            ? "option"
            : found.unit !== null
              ? "header"
              : titleUnit() !== null
                ? "title"
                : "cells",
        dates: chosen.order,
        datesBy: by,
        zone: zone(),
        zoneBy: options.zoneBy === "option" ? "option" : found.offset !== null ? "header" : "farm",
        interval: sums.interval,
        rows,
        used: sums.used,
        dropped: left,
        first: sums.first,
        last: sums.last,
        silences: sums.silences,
        longest: sums.longest,
        twice: sums.twice,
        coldest: pick((a, b) => a.mean < b.mean),
        warmest: pick((a, b) => a.mean > b.mean),
      },
      hours: sums.hours,
      problems,
    };
  };

  return {
    feed(row) {
      if (givenUp || row.cells.every((cell) => cell.trim() === "")) return;
      if (header === null) {
        findHeader(row);
        return;
      }
      const reason = feedReading(row, header);
      if (reason !== null) dropped.add(reason, row.line);
    },
    finish() {
      if (header !== null) return understand(header);
      if (problems.length === 0)
        problem(
          "log-header-missing",
          titles[0]?.line ?? null,
          null,
          "a header line with a date, a time and a temperature column",
          shown(titles.map(({ cells }) => cells.join(", ")).find((title) => title.trim() !== "") ?? ""),
          `Name the columns in the line above the readings, like Date,Time,Temp (${units === "US" ? "F" : "C"}).`,
        );
      return { understood: null, hours: [], problems };
    },
  };
}
