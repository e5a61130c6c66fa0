import { type ClockTime, clockReader, type Digits } from "./clockTime.ts";
import type { Dialect } from "./dialect.ts";

/** Columns that tell when a reading was taken, by their place in a row. */
export type TimeColumns =
  | {
      readonly kind: "moment";
      /** Date, or date and time together. */
      readonly moment: number;
      /** Time of day in a column of its own, and what plain numbers in it mean. */
      readonly clock: number | null;
      readonly digits: Digits;
      /** Morning or evening in a column of its own. */
      readonly half: number | null;
    }
  | {
      readonly kind: "parts";
      readonly year: number;
      /** null: `day` counts from the first of January. */
      readonly month: number | null;
      readonly day: number;
      readonly clock: number | null;
      readonly digits: Digits;
      readonly minute: number | null;
    };

/** When a reading was taken, as far as its row says: the order of its date's parts may still be open. */
export interface When {
  /** The date as written; null when `ms` says it already. */
  readonly date: string | null;
  /** Since midnight, or since 1970 on the log's clock where there is no date. [ms] */
  readonly ms: number;
  /** Minutes ahead of universal time, where the row says so. [min] */
  readonly offset: number | null;
  /** Does the row say the time of day, and its half? */
  readonly timed: boolean;
  readonly half: boolean;
}

const DAY = 86_400_000;

/** The day a spreadsheet counts from, so that its February of 1900 has 29 days. */
const SERIAL_START = Date.UTC(1899, 11, 30);
/** Serial numbers of the years 2000 to 2099. */
const [FIRST_SERIAL, LAST_SERIAL] = [36_526, 73_050];

const instantWritten = (ms: number): When => ({ date: null, ms, offset: 0, timed: true, half: false });

const DIGITS = /^\d{5,17}(?:[.,]\d+)?$/u;

/** Moments written as one number: a spreadsheet's days, seconds or milliseconds since 1970, or a date's own digits. */
function byNumber(text: string): When | null {
  const whole = text.replace(/[.,].*$/u, "");
  const number = Number(text.replace(",", "."));
  if (whole.length === 5) {
    if (number < FIRST_SERIAL || number > LAST_SERIAL) return null;
    // Five places of a day are most of a second.
    const exact = number * DAY;
    const minute = Math.round(exact / 60_000) * 60_000;
    const ms = Math.abs(exact - minute) < 2000 ? minute : Math.round(exact / 1000) * 1000;
    return { date: null, ms: SERIAL_START + ms, offset: null, timed: text.length > 5, half: false };
  }
  if (whole.length === 10) return instantWritten(Math.round(number * 1000));
  if (whole.length === 13) return instantWritten(number);
  return null;
}

const COMPACT = /^(\d{8})[T\s]?(\d{2})(\d{2})(\d{2})?(Z)?$/iu;

/** A time of day with the date behind it. */
const TIME_FIRST = /^(\d{1,2}:\d{2}(?::\d{2})?)\s+(\d{1,4}[-/.].*)$/u;

/**
 * A date with the time of day behind it. The date is as short as it can be, and what follows begins like a time.
 */
function momentPattern({ morning, evening, oClock }: Dialect): RegExp {
  const escaped = (words: readonly string[]): string =>
    words.map((word) => word.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&")).join("|");
  const halves = escaped([...morning, ...evening].filter((word) => word.length > 1));
  const oClocks = escaped(oClock);
  return new RegExp(
    `^(.*?\\d.*?)(?:T(?=\\d)|\\s*,\\s*|\\s+)((?:(?:${halves})\\s*)?\\d{1,2}(?:[:h]\\d{2}.*|\\.\\d{2}(?:\\.\\d{2})?|\\s?(?:${oClocks}|${halves}|[ap]))$)`,
    "iu",
  );
}

/** A reader of moments in rows: a log's next row mostly has the last one's date. */
export function momentReader(
  columns: TimeColumns,
  dialect: Dialect,
  zone: string,
): (cells: readonly string[]) => When | null {
  const inMoment = clockReader(dialect, zone, "none");
  const clockOf = clockReader(dialect, zone, columns.digits);
  const pattern = momentPattern(dialect);
  let lastDate = "";

  const timed = (date: string, time: ClockTime | null): When | null =>
    time === null ? null : { date, ms: time.ms, offset: time.offset, timed: true, half: time.half };

  /** A cell with date and time, or with either. */
  const split = (text: string): When | null => {
    if (DIGITS.test(text)) {
      const when = byNumber(text);
      if (when !== null) return when;
    }
    const compact = COMPACT.exec(text);
    if (compact !== null) {
      const [, date, hour, minute, second = "00", z = ""] = compact;
      return timed(date!, inMoment(`${hour}:${minute}:${second}${z}`));
    }
    const first = TIME_FIRST.exec(text.trim());
    if (first !== null) return timed(first[2]!, inMoment(first[1]!));
    const cut = pattern.exec(text.replace(/\s+/gu, " ").trim());
    if (cut === null) return { date: text.trim(), ms: 0, offset: null, timed: false, half: false };
    // Some print the year last, behind the time.
    const late = /^(.*\d.*)\s(\d{4})$/u.exec(cut[2]!);
    if (late !== null) return timed(`${cut[1]} ${late[2]}`, inMoment(late[1]!));
    lastDate = cut[1]!;
    return timed(lastDate, inMoment(cut[2]!));
  };

  const together = (text: string): When | null => {
    const next = text.charCodeAt(lastDate.length);
    if (lastDate !== "" && (next === 32 || next === 84) && text.startsWith(lastDate)) {
      const time = inMoment(text.slice(lastDate.length + 1));
      if (time !== null) return timed(lastDate, time);
    }
    return split(text);
  };

  if (columns.kind === "parts") {
    const { year, month, day, clock, minute } = columns;
    return (cells) => {
      const at = (index: number | null): string => (index === null ? "" : (cells[index] ?? "").trim());
      const time = clock === null ? { ms: 0, offset: null, half: false } : clockOf(at(clock));
      const more = minute === null ? 0 : Number(at(minute));
      if (time === null || !/^\d{4}$/u.test(at(year)) || !/^\d{1,3}$/u.test(at(day)) || !(more < 60))
        return null;
      const ms = time.ms + more * 60_000;
      const rest = { offset: time.offset, timed: clock !== null, half: time.half };
      if (month === null)
        return { date: null, ms: Date.UTC(Number(at(year)), 0, Number(at(day))) + ms, ...rest };
      return { date: `${at(year)}-${at(month)}-${at(day)}`, ms, ...rest };
    };
  }

  const { moment, clock, half } = columns;
  let above: string | null = null;
  return (cells) => {
    const cell = cells[moment];
    if (cell === undefined) return null;
    if (clock === null) {
      const alone = cell.trim();
      return alone === "" ? null : together(alone);
    }
    const time = (cells[clock] ?? "").trim();
    // A date that stands only in its day's first row.
    const date = cell.trim() === "" && time !== "" ? above : cell.trim();
    if (date === null || date === "") return null;
    above = date;
    const day = DIGITS.test(date) ? byNumber(date) : null;
    const read = clockOf(half === null ? time : `${time} ${(cells[half] ?? "").trim()}`);
    if (read === null) return null;
    if (day !== null) return { ...day, ms: day.ms + read.ms, timed: true, offset: read.offset };
    return timed(date, read);
  };
}
