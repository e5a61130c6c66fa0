import { formatProblem } from "../../src/problem/index.ts";
import { TABLE_DAMAGE, TEXT_DAMAGE } from "./damage.ts";
import { type Random, random } from "./random.ts";
import { type LogRead, readLog } from "./readLog.ts";
import { type Hour, hoursOf, type Series, seriesOf } from "./series.ts";
import { bytesOf, optionsOf, randomStyle, tableOf, textOf } from "./style.ts";

/** What became of one file. */
export type Fate = "exact" | "in part" | "refused";

export interface Verdict {
  readonly seed: number;
  /** What was done to the file: "kept" when all it says stayed. */
  readonly what: string;
  readonly fate: Fate;
  /** Did the refusal name a line? */
  readonly byLine: boolean;
  /** What is wrong with the answer, or null. */
  readonly fault: string | null;
  /** The file itself. */
  readonly text: string;
}

/** Rounding of sums. [°C] */
const NEAR = 1e-6;

const near = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

const same = (a: Hour, b: Hour | undefined): boolean =>
  b !== undefined &&
  a.hour === b.hour &&
  a.count === b.count &&
  near(a.sum, b.sum) &&
  near(a.lowest, b.lowest) &&
  near(a.highest, b.highest);

/** Nothing in an hour that was not measured in it: readings may be missing, none may be wrong. */
const within = (found: Hour, truth: Hour | undefined): boolean =>
  truth !== undefined && found.lowest > truth.lowest - NEAR && found.highest < truth.highest + NEAR;

const shown = (hours: readonly Hour[]): string =>
  hours
    .slice(0, 3)
    .map(
      ({ hour, lowest, highest, count }) =>
        `${new Date(hour * 3_600_000).toISOString().slice(0, 13)} ${lowest.toFixed(2)} to ${highest.toFixed(2)} (${count})`,
    )
    .join(", ");

/** A word no grower should read, unless it stood in the file. */
function badWords({ problems }: LogRead, file: string): string | null {
  const bad = problems
    .map(formatProblem)
    .find((text) =>
      (text.match(/\bNaN\b|\bundefined\b|\bnull\b|\[object/gu) ?? []).some((word) => !file.includes(word)),
    );
  return bad === undefined ? null : `a message says: ${bad}`;
}

/** Judges the reading of a file in which everything stayed as measured. */
function judgeKept(read: LogRead, truth: readonly Hour[]): string | null {
  const { hours } = read;
  if (hours === null) return `refused: ${read.problems.map(formatProblem).join(" ")}`;
  const wrong = hours.filter((hour, i) => !same(hour, truth[i]));
  if (wrong.length === 0 && hours.length === truth.length) return null;
  return `${hours.length} hours for ${truth.length}, ${wrong.length} of them wrong: ${shown(wrong)} for ${shown(truth)}`;
}

/** Judges the reading of a damaged file. A row that no longer says what was measured may spoil the hour it left and the one it is put into. */
function judgeDamaged(read: LogRead, truth: readonly Hour[], touched: number, file: string): string | null {
  const { hours } = read;
  if (hours === null) return read.problems.length > 0 ? badWords(read, file) : "refused without a word";
  const byHour = new Map(truth.map((hour) => [hour.hour, hour]));
  const wrong = hours.filter((hour) => !within(hour, byHour.get(hour.hour)));
  return wrong.length <= 2 * touched
    ? badWords(read, file)
    : `${wrong.length} of ${hours.length} hours hold what was never measured: ${shown(wrong)}; truth ${shown(truth)}`;
}

interface File {
  readonly what: string;
  readonly series: Series;
  readonly text: string;
  readonly bytes: Buffer;
  readonly said: { readonly unit: "C" | "F" | null };
  /** null: nothing was damaged. */
  readonly touched: number | null;
}

/** The file that belongs to a seed: even seeds keep what it says, odd ones damage it. */
export function fileOf(seed: number): File {
  const chosen: Random = random(seed);
  const series = seriesOf(chosen.below(2 ** 31));
  const style = randomStyle(chosen);
  const table = tableOf(series, style);
  const said = optionsOf(style, series);
  const whole = textOf(table, style);
  const kept = {
    what: "kept",
    series,
    text: whole,
    bytes: bytesOf(whole, style.encoding),
    said,
    touched: null,
  };
  if (seed % 2 === 0) return kept;
  const what = chosen.pick([...Object.keys(TEXT_DAMAGE), ...Object.keys(TABLE_DAMAGE)]);
  const ofTable = TABLE_DAMAGE[what];
  if (ofTable !== undefined) {
    const { log, touched } = ofTable(table, chosen);
    const text = textOf(log, style);
    return { ...kept, what, text, bytes: bytesOf(text, style.encoding), touched };
  }
  const { log, touched } = TEXT_DAMAGE[what]!(whole, chosen);
  return { ...kept, what, text: log, bytes: bytesOf(log, style.encoding), touched };
}

/** Writes, perhaps damages, and reads one file. */
export async function tried(seed: number): Promise<Verdict> {
  const { what, series, text, bytes, said, touched } = fileOf(seed);
  const truth = hoursOf(series);
  const verdict = { seed, what, text };
  let read: LogRead;
  const begun = performance.now();
  try {
    read = await readLog(bytes, { zone: series.zone, unit: said.unit });
  } catch (error) {
    return {
      ...verdict,
      fate: "refused",
      byLine: false,
      fault: `crashed: ${(error as Error).stack ?? error}`,
    };
  }
  const spent = performance.now() - begun;
  const judged = touched === null ? judgeKept(read, truth) : judgeDamaged(read, truth, touched, text);
  const { hours } = read;
  const fate: Fate =
    hours === null
      ? "refused"
      : hours.length === truth.length && hours.every((hour, i) => same(hour, truth[i]))
        ? "exact"
        : "in part";
  return {
    ...verdict,
    fate,
    byLine: read.problems.some(({ line }) => line !== null),
    fault: judged ?? (spent > SLOW ? `took ${Math.round(spent)} ms` : null),
  };
}

/** No small file takes so long unless something runs away. [ms] */
const SLOW = 5000;
