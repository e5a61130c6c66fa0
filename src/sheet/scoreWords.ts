import { type DaysOff, ENOUGH, type Share, type Verdict } from "../learn/index.ts";
import { celsiusDifference, toFahrenheitDifference } from "../quantity/index.ts";
import type { Units } from "./words.ts";
import { TIED } from "./wrap.ts";

const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;

const daysOf = (value: number): string => `${value}${TIED}${value === 1 ? "day" : "days"}`;

/** How far a day came from the one said. @example later(-1.04) // => "1 day earlier" */
export function later(days: number): string {
  const shown = tenth(days);
  if (shown === 0) return "on the day";
  return `${daysOf(Math.abs(shown))} ${shown > 0 ? "later" : "earlier"}`;
}

/** A number of days without its direction; "" where none is known. */
export const usually = ({ usual }: DaysOff): string => (usual === null ? "" : daysOf(tenth(usual)));

export const onTheWhole = ({ mean }: DaysOff): string => (mean === null ? "" : later(mean));

/** "7 of 9"; "" of none. */
export const ofAll = ({ hits, count }: Pick<Share, "hits" | "count">): string =>
  count === 0 ? "" : `${hits}${TIED}of${TIED}${count}`;

/** Chances that lie nearest to a fifth. */
export const aboutInFive = (fifth: number): string =>
  fifth === 0
    ? `under 1${TIED}in${TIED}10`
    : fifth === 5
      ? `9${TIED}in${TIED}10 or more`
      : `about ${fifth}${TIED}in${TIED}5`;

/** What so few cannot rule out. */
export const fits = ({ low, high }: Share): string =>
  `${Math.round(low * 100)} to ${Math.round(high * 100)} in${TIED}100`;

/** A difference of temperatures to a tenth. [°C] in, the farm's unit out. */
export function difference(units: Units, value: number): string {
  const shown = units === "US" ? toFahrenheitDifference(celsiusDifference(value)) : value;
  return `${tenth(Math.abs(shown)).toFixed(1)}${TIED}°${units === "US" ? "F" : "C"}`;
}

/** Whether forecasts run warm or cold. @param error - Observed less foretold. [°C] */
export function runs(units: Units, error: number): string {
  const shown = difference(units, error);
  return shown.startsWith("0.0") ? "true" : `${shown} ${error < 0 ? "warm" : "cold"}`;
}

const beds = (count: number): string => (count === 1 ? "1 bed" : `${count} beds`);

const CONCLUSION: Readonly<Record<Exclude<Verdict["kind"], "tooEarly">, string>> = {
  less: "Trust the dates less than their ranges say",
  asSaid: "Trust the dates as their ranges say",
  more: "Trust the dates more than their ranges say",
};

/** The conclusion, and what it stands on. */
export function verdictTold({ kind, inside }: Verdict, days: DaysOff): readonly string[] {
  if (inside.count === 0)
    return ["Too early to say whether to trust the dates: of no bed is it known yet how it came."];
  const lay = `${inside.hits} of ${beds(inside.count)} came inside a range that should hold 4 of 5`;
  if (kind === "tooEarly")
    return [
      `Too early to say whether to trust the dates: ${lay}, and it takes about ${ENOUGH} beds to tell.`,
    ];
  const may = `${inside.count} beds leave open a true share from ${fits(inside)}; 80 is what was said.`;
  const off =
    days.mean !== null && days.count >= ENOUGH
      ? [`Salad size came ${later(days.mean)}${tenth(days.mean) === 0 ? "" : " than said"}, on the whole.`]
      : [];
  return [`${CONCLUSION[kind]}: ${lay}.`, may, ...off];
}
