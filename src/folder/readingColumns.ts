import { didYouMean } from "../problem/index.ts";
import type { CellKinds } from "./cellKind.ts";
import { airRank, baseOf, isCalled, isHigh, isLow, isTimeHeader, sensorKey } from "./columnRole.ts";
import { type Dialect, plainWords } from "./dialect.ts";
import { shown } from "./faults.ts";
import { type Scale, scaleNamed } from "./scale.ts";

/** What there is to choose from. */
export interface Choice {
  readonly names: readonly string[];
  /** What stands below a name, in the rows of units. */
  readonly units: readonly string[];
  readonly sample: readonly (readonly string[])[];
  /** Columns with nothing known about them yet. */
  readonly free: readonly number[];
  /** Column that says of what a row's reading is. */
  readonly element: number | null;
  /** A row's day, and the station if there are several. */
  readonly dayOf: (cells: readonly string[]) => string;
  readonly asked: string | null;
  readonly sensors: readonly string[];
  readonly kinds: CellKinds;
  readonly dialect: Dialect;
}

/** Which columns hold the readings, or what keeps anyone from telling. */
export type Chosen =
  | { readonly kind: "hours"; readonly columns: readonly number[] }
  /** A row a day, a column for each time of day. */
  | { readonly kind: "wide"; readonly columns: readonly number[] }
  | { readonly kind: "days"; readonly low: number; readonly high: number }
  | {
      readonly kind: "problem";
      readonly code: string;
      readonly expected: string;
      readonly received: string;
      readonly hint: string;
    };

/** Share of rows with a date of their own from which lows and highs are those of days. A day may stand there twice. judgement */
const OWN_DATE = 0.9;

export const columnName = (names: readonly string[], index: number): string =>
  names[index] === undefined || names[index] === "" ? `column ${index + 1}` : names[index];

/** The column asked for: by its header, with or without its unit, or by its number from 1. */
function askedColumn({ asked, names, sample }: Choice): number {
  const column = asked ?? "";
  const whole = names.findIndex((name) => plainWords(name) === plainWords(column));
  if (whole >= 0) return whole;
  const short = names.filter((name) => baseOf(name) === baseOf(column));
  if (short.length === 1) return names.indexOf(short[0]!);
  const number = Number(column);
  const width = Math.max(names.length, ...sample.map((cells) => cells.length));
  return Number.isInteger(number) && number >= 1 && number <= width ? number - 1 : -1;
}

function unknownColumn({ asked, names }: Choice): Chosen {
  const near = didYouMean(asked ?? "", names);
  const all = `The file has: ${names.filter((name) => name !== "").join(", ")}.`;
  return {
    kind: "problem",
    code: "log-column-unknown",
    expected: "a column of this file behind --column",
    received: shown(asked ?? ""),
    hint: near === null ? all : `Did you mean "${near}"? ${all}`,
  };
}

const unitOf = (name: string, dialect: Dialect): Scale["unit"] | null =>
  scaleNamed(name, dialect)?.unit ?? null;

/** Columns of one sensor in two units are one: the first stands. */
const oncePerSensor = (columns: readonly number[], { names, dialect }: Choice): readonly number[] =>
  columns.filter((index, at) =>
    columns.slice(0, at).every((other) => {
      const [own, before] = [names[index] ?? "", names[other] ?? ""];
      const [unit, unitBefore] = [unitOf(own, dialect), unitOf(before, dialect)];
      const same = sensorKey(own, dialect) === sensorKey(before, dialect);
      return !same || unit === null || unitBefore === null || unit === unitBefore;
    }),
  );

const severalColumns = (columns: readonly number[], { names }: Choice): Chosen => {
  const first = columns[0]!;
  const name = names[first] ?? "";
  const alone = name !== "" && names.indexOf(name) === names.lastIndexOf(name);
  const say = alone ? JSON.stringify(name) : String(first + 1);
  return {
    kind: "problem",
    code: "log-columns-several",
    expected: "one temperature column",
    received: columns.map((index) => `"${columnName(names, index)}"`).join(", "),
    hint: `Name the one to take, as in --column ${say}.`,
  };
};

/** A row for each thing measured, which one column names. */
function byElement(choice: Choice): Chosen | null {
  const { element, free, names, sample, kinds, dialect } = choice;
  if (element === null) return null;
  const value =
    free.find((index) => isCalled(names[index] ?? "", "value", dialect)) ??
    free.find((index) => sample.some((cells) => kinds.isNumber(cells[index] ?? "")));
  if (value === undefined) return null;
  const says = (is: typeof isLow): boolean => sample.some((cells) => is(cells[element] ?? "", dialect));
  return says(isLow) && says(isHigh)
    ? { kind: "days", low: value, high: value }
    : { kind: "hours", columns: [value] };
}

/** Contents decide only where there are no words to go by: one column of numbers. */
function byContents(choice: Choice): Chosen {
  const { free, names, sample, kinds, dialect } = choice;
  const numeric = free.filter(
    (index) => sample.filter((cells) => kinds.isNumber(cells[index] ?? "")).length * 2 > sample.length,
  );
  const worded = names.some((name) => isTimeHeader(name, dialect) || /[a-z]{2}/iu.test(name));
  if (!worded && numeric.length === 1) return { kind: "hours", columns: numeric };
  if (!worded && numeric.length > 1) return severalColumns(numeric, choice);
  return {
    kind: "problem",
    code: "log-temperature-missing",
    expected: "a column with the temperature of outside air",
    received: shown(names.filter((name) => name !== "").join(", ")),
    hint: "If one of them is the temperature, name it with --column.",
  };
}

/** Chooses the columns of readings: the one asked for, else lows and highs of days, the farm's sensors, outside air. */
export function readingColumns(choice: Choice): Chosen {
  const { asked, names, units, sample, free, dayOf, sensors, kinds, dialect } = choice;
  if (asked !== null) {
    const column = askedColumn(choice);
    return column < 0 ? unknownColumn(choice) : { kind: "hours", columns: [column] };
  }
  const elements = byElement(choice);
  if (elements !== null) return elements;
  const wide = free.filter((index) => kinds.isTime(names[index] ?? ""));
  if (wide.length > 1) return { kind: "wide", columns: wide };

  const lows = free.filter((index) => isLow(names[index] ?? "", dialect));
  const highs = free.filter((index) => isHigh(names[index] ?? "", dialect));
  const dates = sample.map(dayOf);
  const daily = dates.length > 0 && new Set(dates).size >= dates.length * OWN_DATE;
  if (lows.length > 0 && highs.length > 0 && daily) return { kind: "days", low: lows[0]!, high: highs[0]! };

  const keys = new Set(sensors.map((sensor) => sensorKey(sensor, dialect)));
  const own = free.filter(
    (index) =>
      keys.has(sensorKey(names[index] ?? "", dialect)) && !lows.includes(index) && !highs.includes(index),
  );
  if (own.length > 0) return { kind: "hours", columns: oncePerSensor(own, choice) };

  const ranks = free.map((index) => airRank(`${names[index] ?? ""} ${units[index] ?? ""}`, dialect));
  const best = Math.max(0, ...ranks);
  const top = free.filter((_, at) => best > 0 && ranks[at] === best);
  if (top.length === 0) return byContents(choice);
  const columns = oncePerSensor(top, choice);
  return columns.length === 1 ? { kind: "hours", columns } : severalColumns(columns, choice);
}
