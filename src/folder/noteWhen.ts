import { addDays, type LocalDate, weekday } from "../quantity/index.ts";
import { PLAIN } from "./dialect.ts";
import type { Units } from "./faults.ts";
import { parseClock, parseDate } from "./moment.ts";

/** The day and hour a text says, as far as it says them. */
export interface Said {
  readonly date: LocalDate | null;
  /** Hours since midnight, or the walk it names. */
  readonly hour: number | "morning" | "evening" | null;
}

export const NOTHING_SAID: Said = { date: null, hour: null };

/** A text with its day and hour taken out. */
export interface SaidIn extends Said {
  readonly rest: string;
  /** An "on" stood before the day; it may be the day's or a cover's. */
  readonly on: boolean;
  /** A "last" stood before the name of a weekday; it may be the day's or a cut's. */
  readonly last: boolean;
}

/** Why a day or hour cannot be understood: the next step, a whole sentence. */
export interface Unclear {
  readonly unclear: string;
}

const WEEKDAYS = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];
const SHORT_DAY = "sun|mon|tues?|weds?|thu(?:rs?)?|fri|sat";
const DAY_NAME = `${WEEKDAYS.join("|")}|${SHORT_DAY}`;
const MONTH_NAME =
  "jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?";
const DAY_NUMBER = String.raw`(\d{1,2})(?:st|nd|rd|th)?`;
const YEAR = String.raw`(?:,?\s+(\d{4}))?`;
const BEFORE = String.raw`(?<![\p{L}\p{N}./,:])`;
const AFTER = String.raw`(?![\p{L}\p{N}]|[.,/:]\d)`;

const pattern = (body: string): RegExp =>
  new RegExp(String.raw`${BEFORE}(?:(on|since|from|at)\s+)?(?:${body})${AFTER}`, "iu");

const ISO = pattern(String.raw`(\d{4}-\d{2}-\d{2})`);
const MONTH_DAY = pattern(String.raw`(${MONTH_NAME})\.?\s+${DAY_NUMBER}${YEAR}`);
const DAY_MONTH = pattern(String.raw`${DAY_NUMBER}\.?\s+(?:of\s+)?(${MONTH_NAME})\.?${YEAR}`);
const EITHER_WAY = pattern(String.raw`\d{1,2}\.?\s+(?:${MONTH_NAME})\.?\s+\d{1,2}`);
const NAMED_DAY = pattern(String.raw`(last\s+)?(${DAY_NAME})(?:'?s)?\.?`);
const NEAR_DAY = pattern(
  String.raw`(today|yesterday|tomorrow|tonight|last\s+night|last\s+evening|this\s+morning|this\s+evening)(?:'?s)?`,
);
const WALK = pattern(String.raw`(?:the\s+)?(morning|evening)(?:'?s)?`);
const CLOCK = pattern(String.raw`(\d{1,2}(?::\d{2})?\s*[ap]\.?\s?m\.?|\d{1,2}:\d{2})`);

/** A day this near ahead is a slip, not the same day a year ago. [d] judgement */
const SLIP = 31;

const weekdayOf = (name: string): number => WEEKDAYS.findIndex((day) => day.startsWith(name.slice(0, 3)));

/** The last date of a day and month, or one that lies just ahead; null when the month has no such day. */
function lastSuch(month: string, day: string, year: string | undefined, today: LocalDate): LocalDate | null {
  const two = (value: number): string => String(value).padStart(2, "0");
  const number = PLAIN.months.findIndex((begins) => begins.includes(month.slice(0, 3).toLowerCase())) + 1;
  const written = (of: number): LocalDate | null => parseDate(`${of}-${two(number)}-${two(Number(day))}`);
  if (year !== undefined) return written(Number(year));
  const thisYear = Number(today.slice(0, 4));
  const dates = [thisYear + 1, thisYear, thisYear - 1].map(written).filter((date) => date !== null);
  return dates.find((date) => date <= addDays(today, SLIP)) ?? null;
}

/**
 * Takes the day and the hour out of a line of words.
 *
 * @param today - The farm's date, from which "yesterday" and the names of weekdays count back.
 * @example saidIn("S09 up since Sunday", "2026-04-20", "US").date // => "2026-04-19"
 */
export function saidIn(text: string, today: LocalDate, units: Units): SaidIn | Unclear {
  let rest = text.replace(/(\d{4}-\d{2}-\d{2})T(?=\d)/giu, "$1 ");
  let on = false;
  let last = false;
  const dates: (LocalDate | null)[] = [];
  const hours: (number | "morning" | "evening")[] = [];
  const take = (what: RegExp, use: (groups: readonly (string | undefined)[]) => void): void => {
    for (let match = what.exec(rest); match !== null; match = what.exec(rest)) {
      if (match[1]?.toLowerCase() === "on") on = true;
      use(match.slice(2).map((group) => group?.toLowerCase()));
      rest = `${rest.slice(0, match.index)} , ${rest.slice(match.index + match[0].length)}`;
    }
  };
  if (EITHER_WAY.test(rest)) {
    return {
      unclear:
        "Write the day as year-month-day, like 2026-04-18: the number before and the one behind the month could both be it.",
    };
  }
  take(ISO, ([date]) => dates.push(parseDate(date!)));
  const monthFirst = (): void =>
    take(MONTH_DAY, ([month, day, year]) => dates.push(lastSuch(month!, day!, year, today)));
  const dayFirst = (): void =>
    take(DAY_MONTH, ([day, month, year]) => dates.push(lastSuch(month!, day!, year, today)));
  for (const order of units === "US" ? [monthFirst, dayFirst] : [dayFirst, monthFirst]) order();
  take(NEAR_DAY, ([phrase]) => {
    const words = phrase!.split(/\s+/u);
    const back = words[0] === "yesterday" || words[0] === "last" ? -1 : words[0] === "tomorrow" ? 1 : 0;
    dates.push(addDays(today, back));
    if (words[1] !== undefined || words[0] === "tonight")
      hours.push(words[1] === "morning" ? "morning" : "evening");
  });
  take(NAMED_DAY, ([before, name]) => {
    if (before !== undefined) last = true;
    const since = (weekday(today) - weekdayOf(name!) + 7) % 7;
    const known = dates.find((date) => date !== null);
    // Beside a date the name of the day only confirms it.
    const confirmed = known !== undefined && weekday(known!) === weekdayOf(name!);
    dates.push(confirmed ? known! : addDays(today, before !== undefined && since === 0 ? -7 : -since));
  });
  take(CLOCK, ([clock]) => {
    const hour = parseClock(clock!.replace(/\s|\./gu, ""));
    hours.push(hour ?? Number.NaN);
  });
  take(WALK, ([part]) => hours.push(part === "morning" ? "morning" : "evening"));
  if (dates.includes(null))
    return { unclear: "There is no such day; write it as year-month-day, like 2026-04-18." };
  if (hours.some((hour) => Number.isNaN(hour)))
    return { unclear: "There is no such hour; write it like 7:10 or 5 pm." };
  if (new Set(dates).size > 1) return { unclear: "It says two different days; keep one of them." };
  // "yesterday morning, 7:10": the clock is closer than the walk.
  const clocks = hours.filter((hour) => typeof hour === "number");
  const said = clocks.length > 0 ? clocks : hours;
  if (new Set(said).size > 1) return { unclear: "It says two different hours; keep one of them." };
  return { date: dates[0] ?? null, hour: said[0] ?? null, rest, on, last };
}
