import { addDays, type LocalDate, weekday } from "../quantity/index.ts";
import { nameAt, shortened, WEEKDAYS } from "./calendarNames.ts";
import {
  DAY_FIRST,
  type DayOfYear,
  dateIn,
  dayNamed,
  EITHER_WAY,
  lastSuch,
  MONTH_FIRST,
  nearestSuch,
} from "./dayInWords.ts";
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

/** Which way from a date the names of days are counted. */
export interface Direction {
  /** @param last - "last" stands before the day's name. */
  weekday(named: number, from: LocalDate, last: boolean): LocalDate;
  /** null where the calendar has no such day. */
  dayOfYear(day: DayOfYear, from: LocalDate): LocalDate | null;
}

/** Of what was seen or done. */
export const BACK: Direction = {
  weekday: (named, from, last) => {
    const since = (weekday(from) - named + 7) % 7;
    return addDays(from, last && since === 0 ? -7 : -since);
  },
  dayOfYear: lastSuch,
};

/** Of what is planned; the date counted from is one of them. */
export const AHEAD: Direction = {
  weekday: (named, from, last) => addDays(from, ((named - weekday(from) + 7) % 7) - (last ? 7 : 0)),
  dayOfYear: nearestSuch,
};

/** Why a day or hour cannot be understood: the next step, a whole sentence. */
export interface Unclear {
  readonly unclear: string;
}

const BEFORE = String.raw`(?<![\p{L}\p{N}./,:])`;
const AFTER = String.raw`(?![\p{L}\p{N}]|[.,/:]\d)`;

const pattern = (body: string): RegExp =>
  new RegExp(String.raw`${BEFORE}(?:(on|since|from|at)\s+)?(?:${body})${AFTER}`, "iu");

const ISO = pattern(String.raw`(\d{4}-\d{2}-\d{2})`);
const MONTH_DAY = pattern(MONTH_FIRST);
const DAY_MONTH = pattern(DAY_FIRST);
const TWO_NUMBERS = pattern(EITHER_WAY);
const NAMED_DAY = pattern(String.raw`(last\s+)?(${shortened(WEEKDAYS)})(?:'?s)?\.?`);
const NEAR_DAY = pattern(
  String.raw`(today|yesterday|tomorrow|tonight|last\s+night|last\s+evening|this\s+morning|this\s+evening)(?:'?s)?`,
);
const WALK = pattern(String.raw`(?:the\s+)?(morning|evening)(?:'?s)?`);
const CLOCK = pattern(String.raw`(\d{1,2}(?:[:.]\d{2})?\s*[ap]\.?\s?m\.?|\d{1,2}:\d{2})`);

/** The date of a day and month; null when the month has no such day. */
function dateSaid(
  month: string,
  day: string,
  year: string | undefined,
  today: LocalDate,
  direction: Direction,
): LocalDate | null {
  const said = dayNamed(month, day);
  return year === undefined ? direction.dayOfYear(said, today) : dateIn(Number(year), said);
}

/**
 * Takes the day and the hour out of a line of words.
 *
 * @param today - The farm's date, from which the names of weekdays count.
 * @param day - The day "today" and "yesterday" are said on, where it is another one.
 * @example saidIn("S09 up since Sunday", "2026-04-20", "US").date // => "2026-04-19"
 */
export function saidIn(
  text: string,
  today: LocalDate,
  units: Units,
  day: LocalDate = today,
  direction: Direction = BACK,
): SaidIn | Unclear {
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
  if (TWO_NUMBERS.test(rest)) {
    return {
      unclear:
        "Write the day as year-month-day, like 2026-04-18: the number before and the one behind the month could both be it.",
    };
  }
  take(ISO, ([date]) => dates.push(parseDate(date!)));
  const monthFirst = (): void =>
    take(MONTH_DAY, ([month, day, year]) => dates.push(dateSaid(month!, day!, year, today, direction)));
  const dayFirst = (): void =>
    take(DAY_MONTH, ([day, month, year]) => dates.push(dateSaid(month!, day!, year, today, direction)));
  for (const order of units === "US" ? [monthFirst, dayFirst] : [dayFirst, monthFirst]) order();
  take(NEAR_DAY, ([phrase]) => {
    const words = phrase!.split(/\s+/u);
    const back = words[0] === "yesterday" || words[0] === "last" ? -1 : words[0] === "tomorrow" ? 1 : 0;
    dates.push(addDays(day, back));
    if (words[1] !== undefined || words[0] === "tonight")
      hours.push(words[1] === "morning" ? "morning" : "evening");
  });
  take(NAMED_DAY, ([before, name]) => {
    if (before !== undefined) last = true;
    const named = nameAt(name!, WEEKDAYS);
    const known = dates.find((date) => date !== null);
    // Beside a date the name of the day only confirms it.
    const confirmed = known !== undefined && weekday(known!) === named;
    dates.push(confirmed ? known! : direction.weekday(named, today, before !== undefined));
  });
  take(CLOCK, ([clock]) => {
    const hour = parseClock(clock!.replace(/(?<=\d)\.(?=\d)/u, ":").replace(/\s|\./gu, ""));
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
