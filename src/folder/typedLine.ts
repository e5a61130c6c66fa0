import { didYouMean } from "../problem/index.ts";
import { type LocalDate, type MetrePerSecond, parseQuantity } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import { MONTHS, nameAt, WEEKDAYS } from "./calendarNames.ts";
import type { Units } from "./faults.ts";
import { type LowAndHigh, lowAndHigh } from "./lowAndHigh.ts";
import { parseDate } from "./moment.ts";
import { SKY } from "./sky.ts";

/** The day a line names; null: the day after the line before. */
export type TypedDay =
  | { readonly kind: "date"; readonly date: LocalDate | null }
  | { readonly kind: "ofYear"; readonly month: number; readonly day: number }
  | { readonly kind: "weekday"; readonly weekday: number }
  | { readonly kind: "ahead"; readonly days: number };

/** One line of a typed forecast, as far as it was understood. */
export interface TypedLine {
  readonly range: LowAndHigh;
  readonly day: TypedDay | null;
  /** The day of the week it begins with, also where a date follows. Sunday 0. */
  readonly weekday: number | null;
  readonly sky: DailyRecord["sky"];
  readonly wind: MetrePerSecond | null;
  /** What is left besides day, sky and wind. */
  readonly rest: string;
}

const MONTH = `(${MONTHS.map((name) => `${name.slice(0, 3).toLowerCase()}[a-z]*`).join("|")})\\.?`;
const DATE = String.raw`(\d{1,2})(?:st|nd|rd|th)?`;
const YEAR = String.raw`(?:\s+(\d{4}))?(?=\s|$)`;
const MONTH_FIRST = new RegExp(`^${MONTH}\\s+${DATE}${YEAR}`, "u");
const DAY_FIRST = new RegExp(`^${DATE}\\s+${MONTH}${YEAR}`, "u");
const ISO = /^\d{4}-\d{2}-\d{2}(?=\s|$)/u;
const WORD = /^([a-z]{3,9})\.?(?=\s|$)/u;
const WIND =
  /(?:\bwinds?\s+)?(?:\b[nesw]{1,3}\s+)?(\d+(?:\.\d+)?\s*(?:mph|mi\/h|km\/?h|kmph|kph|m\/s|mps|kn|kts?|knots?))\b(?:\s+winds?\b)?/u;
const SKIES = new RegExp(
  `\\b(${Object.keys(SKY)
    .sort((a, b) => b.length - a.length)
    .join("|")})\\b`,
  "u",
);

/** Separators become blanks; a point or a colon within a number stays. */
const plain = (text: string): string =>
  text
    .replace(/[,;\t"]+|:(?!\d)/gu, " ")
    .replace(/\s+/gu, " ")
    .trim()
    .toLowerCase();

/** Takes a piece out of a text: what it was and what is left. */
function without(text: string, piece: RegExp): readonly [RegExpExecArray | null, string] {
  const match = piece.exec(text);
  if (match === null) return [null, text];
  return [match, `${text.slice(0, match.index)}${text.slice(match.index + match[0].length)}`.trim()];
}

const two = (value: number): string => String(value).padStart(2, "0");

/** A date, or null where the calendar has none. */
export const dateOfYear = (year: number, month: number, day: number): LocalDate | null =>
  parseDate(`${year}-${two(month)}-${two(day)}`);

/** The date at the beginning of a text, if one stands there. */
function dateIn(text: string): readonly [TypedDay | null, string] {
  const [iso, afterIso] = without(text, ISO);
  if (iso !== null) return [{ kind: "date", date: parseDate(iso[0]) }, afterIso];
  const [monthFirst, afterMonth] = without(text, MONTH_FIRST);
  const [dayFirst, afterDay] = without(text, DAY_FIRST);
  const found = monthFirst ?? dayFirst;
  if (found === null) return [null, text];
  const [name, number] = monthFirst !== null ? [found[1]!, found[2]!] : [found[2]!, found[1]!];
  const [month, day] = [nameAt(name, MONTHS) + 1, Number(number)];
  const said: TypedDay =
    found[3] === undefined
      ? { kind: "ofYear", month, day }
      : { kind: "date", date: dateOfYear(Number(found[3]), month, day) };
  return [said, monthFirst !== null ? afterMonth : afterDay];
}

/** Reads "Wed Apr 22, high 78, low 49, cloud, wind 10 mph" or any shorter form of it. */
export function typedLine(text: string, units: Units): TypedLine {
  const whole = plain(text);
  const [word, afterWord] = without(whole, WORD);
  const ahead = word === null ? -1 : ["today", "tomorrow"].indexOf(word[1]!);
  const named = word === null ? -1 : nameAt(word[1]!, WEEKDAYS);
  const [date, afterDate] = dateIn(ahead >= 0 || named >= 0 ? afterWord : whole);
  const [wind, afterWind] = without(afterDate, WIND);
  const [sky, rest] = without(afterWind, SKIES);
  return {
    range: lowAndHigh(rest.replace(/\s+/gu, " "), units),
    day:
      date ??
      (named >= 0 ? { kind: "weekday", weekday: named } : ahead >= 0 ? { kind: "ahead", days: ahead } : null),
    weekday: named >= 0 ? named : null,
    sky: sky === null ? null : SKY[sky[1]!]!,
    wind: wind === null ? null : parseQuantity(wind[1]!, "speed", null).value,
    rest,
  };
}

const EXAMPLE: Readonly<Record<Units, { readonly range: string; readonly wind: string }>> = {
  US: { range: "62 41", wind: "wind 10 mph" },
  metric: { range: "17 5", wind: "wind 15 km/h" },
};

const DAY_NAMES: readonly string[] = [...WEEKDAYS, ...WEEKDAYS.map((name) => name.slice(0, 3))];

/** What to write in the place of a line that could not be read: the form nearest to it. */
export function nearestForm({ rest, weekday, sky }: TypedLine, units: Units): string {
  const { range, wind } = EXAMPLE[units];
  if (/\bwinds?\b/u.test(rest)) return `Write the wind with its unit, like "${wind}".`;
  const numbers = rest.match(/-?\d+(?:\.\d+)?/gu) ?? [];
  const first = WORD.exec(rest)?.[1] ?? "";
  const words = rest.match(/(?<=\s)[a-z]{3,}/gu) ?? [];
  const day = (weekday === null ? didYouMean(first, DAY_NAMES) : WEEKDAYS[weekday]!)?.slice(0, 3) ?? "";
  const near = words.map((word) => didYouMean(word, Object.keys(SKY))).find((name) => name !== null) ?? "";
  const form = (pair: string): string =>
    [day, pair, sky ?? SKY[near] ?? ""].filter((part) => part !== "").join(" ");
  return numbers.length === 2
    ? `Did you mean "${form(numbers.join(" "))}"?`
    : `Write the day's high and low, like "${form(range)}".`;
}

/** Is this how people type a forecast: at least one line that is one, or that begins with a day and holds no time? */
export function looksTyped(opening: readonly (readonly string[])[]): boolean {
  return opening.some((cells) => {
    const text = cells.join(" ");
    const { range, weekday } = typedLine(text, "US");
    return range.fault === null || (weekday !== null && /\d/u.test(text) && !/\d:\d\d/u.test(text));
  });
}
