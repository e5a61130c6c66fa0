import { didYouMean } from "../problem/index.ts";
import { type LocalDate, type MetrePerSecond, parseQuantity } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import { WEEKDAYS, weekdayNamed } from "./calendarNames.ts";
import { DAY_FIRST, type DayOfYear, dateIn, dayNamed, MONTH_FIRST } from "./dayInWords.ts";
import { type Fall, fallIn } from "./fallIn.ts";
import type { Units } from "./faults.ts";
import { type LowAndHigh, lowAndHigh } from "./lowAndHigh.ts";
import { parseDate } from "./moment.ts";
import { SKY } from "./sky.ts";

/** The day a line names; null: the day after the line before. */
export type TypedDay =
  | { readonly kind: "date"; readonly date: LocalDate | null }
  | { readonly kind: "ofYear"; readonly day: DayOfYear }
  | { readonly kind: "weekday"; readonly weekday: number }
  | { readonly kind: "ahead"; readonly days: number };

/** One line of a typed forecast, as far as it was understood. */
export interface TypedLine {
  readonly range: LowAndHigh;
  readonly day: TypedDay | null;
  /** The day of the week it begins with, also where a date follows. Sunday 0. */
  readonly weekday: number | null;
  readonly sky: DailyRecord["sky"];
  /** What is said of rain and snow; null: nothing. */
  readonly fall: Fall | null;
  readonly wind: MetrePerSecond | null;
  /** What is left besides day, sky, wind, rain and snow. */
  readonly rest: string;
}

const MONTH_THEN_DAY = new RegExp(`^${MONTH_FIRST}(?=\\s|$)`, "u");
const DAY_THEN_MONTH = new RegExp(`^${DAY_FIRST}(?=\\s|$)`, "u");
const ISO = /^\d{4}-\d{2}-\d{2}(?=\s|$)/u;
const WORD = /^([a-z]{2,10})\.?(?=\s|$)/u;
const WIND =
  /(?:\bwinds?\s+)?(?:\b[nesw]{1,3}\s+)?(\d+(?:\.\d+)?\s*(?:mph|mi\/h|km\/?h|kmph|kph|m\/s|mps|kn|kts?|knots?))\b(?:\s+winds?\b)?/u;
const SKIES = new RegExp(
  `\\b(${Object.keys(SKY)
    .sort((a, b) => b.length - a.length)
    .join("|")})\\b`,
  "u",
);

/** Separators become blanks; a point or a colon within a number stays. Letters lose their accents. */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
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

/** The date at the beginning of a text, if one stands there. */
function dayIn(text: string): readonly [TypedDay | null, string] {
  const [iso, afterIso] = without(text, ISO);
  if (iso !== null) return [{ kind: "date", date: parseDate(iso[0]) }, afterIso];
  const [monthFirst, afterMonth] = without(text, MONTH_THEN_DAY);
  const [dayFirst, afterDay] = without(text, DAY_THEN_MONTH);
  const found = monthFirst ?? dayFirst;
  if (found === null) return [null, text];
  const [name, number] = monthFirst !== null ? [found[1]!, found[2]!] : [found[2]!, found[1]!];
  const day = dayNamed(name, number);
  const said: TypedDay =
    found[3] === undefined ? { kind: "ofYear", day } : { kind: "date", date: dateIn(Number(found[3]), day) };
  return [said, monthFirst !== null ? afterMonth : afterDay];
}

/** A comma with one digit behind it, as half of the world writes decimals. */
const DECIMAL_COMMA = /(\d),(\d)(?!\d)/gu;

/**
 * Reads "Wed Apr 22, high 78, low 49, cloud, wind 10 mph" or any shorter form of it. A comma between digits stands between
 * two numbers, else within one: whatever makes a high and a low of the line. "Mar" before a number is March, else Tuesday.
 */
export function typedLine(text: string, units: Units): TypedLine {
  const points = text.replace(DECIMAL_COMMA, "$1.$2");
  const tuesday = (line: string): string => line.replace(/^\s*mar\b/iu, "Tue");
  const ways = [text, points, tuesday(text), tuesday(points)].map((each) => lineOf(each, units));
  return ways.find(({ range }) => range.fault !== "unreadable") ?? ways[0]!;
}

function lineOf(text: string, units: Units): TypedLine {
  const whole = plain(text);
  const [word, afterWord] = without(whole, WORD);
  const ahead = word === null ? -1 : ["today", "tomorrow"].indexOf(word[1]!);
  const named = word === null || word[1] === "mar" ? -1 : weekdayNamed(word[1]!);
  const [date, afterDate] = dayIn(ahead >= 0 || named >= 0 ? afterWord : whole);
  const [wind, afterWind] = without(afterDate, WIND);
  const [fall, afterFall] = fallIn(afterWind);
  const [sky, rest] = without(afterFall, SKIES);
  return {
    range: lowAndHigh(rest.replace(/\s+/gu, " "), units),
    day:
      date ??
      (named >= 0 ? { kind: "weekday", weekday: named } : ahead >= 0 ? { kind: "ahead", days: ahead } : null),
    weekday: named >= 0 ? named : null,
    sky: sky !== null ? SKY[sky[1]!]! : fall !== null ? "cloud" : null,
    fall,
    wind: wind === null ? null : parseQuantity(wind[1]!, "speed", null).value,
    rest,
  };
}

const EXAMPLE: Readonly<
  Record<Units, { readonly range: string; readonly wind: string; readonly amount: string }>
> = {
  US: { range: "62 41", wind: "wind 10 mph", amount: "rain 0.25 in" },
  metric: { range: "17 5", wind: "wind 15 km/h", amount: "rain 6 mm" },
};

const DAY_NAMES: readonly string[] = [...WEEKDAYS, ...WEEKDAYS.map((name) => name.slice(0, 3))];

/** Words that may begin the temperatures of a line. */
const LABELS: ReadonlySet<string> = new Set(["high", "hi", "max", "low", "lo", "min"]);

/** What to write in the place of a line that could not be read: the form nearest to it. */
export function nearestForm({ rest, weekday, sky, fall }: TypedLine, units: Units): string {
  const { range, wind, amount } = EXAMPLE[units];
  if (/\bwinds?\b/u.test(rest)) return `Write the wind with its unit, like "${wind}".`;
  const strange = /^[a-z]{2,10}(?=\.?\s+-?\d)/u.exec(rest)?.[0];
  const numbers = rest.match(/-?\d+(?:\.\d+)?/gu) ?? [];
  if (fall !== null && numbers.length > 2) return `Write the amount with its unit, like "${amount}".`;
  const first = WORD.exec(rest)?.[1] ?? "";
  const words = rest.match(/(?<=\s)[a-z]{3,}/gu) ?? [];
  const near = didYouMean(first, DAY_NAMES);
  if (weekday === null && strange !== undefined && near === null && !LABELS.has(strange))
    return `Write the day like Mon or Apr 20 in the place of "${strange}".`;
  const day = (weekday === null ? near : WEEKDAYS[weekday]!)?.slice(0, 3) ?? "";
  const skyNear = words.map((word) => didYouMean(word, Object.keys(SKY))).find((name) => name !== null) ?? "";
  const form = (pair: string): string =>
    [day, pair, sky ?? SKY[skyNear] ?? ""].filter((part) => part !== "").join(" ");
  return numbers.length === 2
    ? `Did you mean "${form(numbers.join(" "))}"?`
    : `Write the day's high and low, like "${form(range)}".`;
}

/** A word, two numbers of at most three digits and perhaps another word: a day nobody knows with its temperatures. */
const DAY_AND_RANGE =
  /^\s*\p{L}{2,10}\.?\s+-?\d{1,3}(?:[.,]\d)?[\s/]+-?\d{1,3}(?:[.,]\d)?(?:\s+\p{L}+)?\s*$/u;

/**
 * Is this how people type a forecast: at least one line that is one, or that begins with a day and holds no time?
 *
 * @param separator - At which the lines were cut.
 */
export function looksTyped(opening: readonly (readonly string[])[], separator: string): boolean {
  return opening.some((cells) => {
    const text = cells.join(separator);
    const { range, weekday } = typedLine(text, "US");
    const day = weekday !== null && /\d/u.test(text) && !/\d:\d\d/u.test(text);
    return range.fault === null || day || DAY_AND_RANGE.test(text);
  });
}
