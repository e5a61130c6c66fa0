import { addDays, daysBetween, type LocalDate } from "../quantity/index.ts";
import { MONTHS } from "./calendarNames.ts";
import { type DateOrder, PLAIN } from "./dialect.ts";
import { dateOf, settledByItself } from "./timestamp.ts";

/** A column of dates read as one: its order is what all of them allow. */
export interface DateColumn {
  /** The date in one of its cells, whatever time of day stands behind it; null when there is none. */
  read(text: string): LocalDate | null;
  /** The cell with its date written year-month-day; as it stands when there is none. */
  yearFirst(text: string): string;
  /** Why a cell that has the form of a date is none, a whole sentence: its month is too short. null: not for that. */
  noSuchDay(text: string): string | null;
  /** The first cell whose meaning nothing settles, with what it may mean; null when there is none. */
  readonly ambiguous: { readonly text: string; readonly meanings: readonly LocalDate[] } | null;
  /** True for each of the cells whose meaning nothing settles. */
  doubtful(text: string): boolean;
}

const EPOCH = "1970-01-01" as LocalDate;

/** Days a spreadsheet counts from, so that day 1 is the first of January 1900 and its February has 29 days. */
const SERIAL_START = "1899-12-30" as LocalDate;

/** Serial numbers of the years 2000 to 2099: five digits that nothing else in a column of dates means. */
const SERIAL = /^(\d{5})(?:[.,](\d+))?$/u;
const [FIRST_SERIAL, LAST_SERIAL] = [36_526, 73_050];

const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,?\s+/iu;

/** A date with a time of day or a walk's name behind it. */
const MOMENT = /^(.*?\d)(?:T(?=\d)|,?\s+)(\d{1,2}(?::\d{2}.*|\s*[ap]\.?m\.?)|[a-z]+)$/iu;

/** A cell cut into its date and what stands behind it. */
function cut(text: string): readonly [date: string, rest: string] {
  const written = text.trim().replace(WEEKDAY, "");
  const match = MOMENT.exec(written);
  return match === null ? [written, ""] : [match[1]!, match[2]!];
}

/** A spreadsheet's number for a moment, as date and clock; null when it is none. */
function serial(text: string): { readonly date: LocalDate; readonly clock: string } | null {
  const match = SERIAL.exec(text.trim());
  const whole = Number(match?.[1]);
  if (match === null || whole < FIRST_SERIAL || whole > LAST_SERIAL) return null;
  const minutes = Math.min(1439, Math.round(Number(`0.${match[2] ?? "0"}`) * 1440));
  const two = (value: number): string => String(value).padStart(2, "0");
  const clock = match[2] === undefined ? "" : `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
  return { date: addDays(SERIAL_START, whole), clock };
}

function dateIn(text: string, order: DateOrder): LocalDate | null {
  const numbered = serial(text);
  if (numbered !== null) return numbered.date;
  const [written] = cut(text);
  const yearLeads = /^\d{4}/u.test(written);
  // Two digits for the year come first only between dashes.
  if (order === "ymd" && !yearLeads && !/^\d{1,2}-\d{1,2}-/u.test(written) && !/[a-z]/iu.test(written))
    return null;
  const ms = dateOf(written, yearLeads ? "ymd" : order, PLAIN);
  return ms === null ? null : addDays(EPOCH, Math.round(ms / 86_400_000));
}

/** The first of the month of a text that has a date's form with a day its month lacks; null for any other text. */
function monthWithoutDay(text: string, order: DateOrder): LocalDate | null {
  const [written] = cut(text);
  const parts = written.split(/[-/.,\s]+/u).filter((part) => part !== "");
  const yearLeads = /^\d{4}$/u.test(parts[0] ?? "");
  const named = parts.findIndex((part) => /[a-z]/iu.test(part));
  if (parts.length !== 3 || (order === "ymd" && !yearLeads && named < 0)) return null;
  const at = yearLeads ? 2 : named === 0 || (named < 0 && order === "mdy") ? 1 : 0;
  const day = Number(parts[at]);
  if (!(day >= 1 && day <= 31) || dateIn(text, order) !== null) return null;
  return dateIn(parts.with(at, "1").join("-"), order);
}

function noSuchDay(text: string, order: DateOrder): string | null {
  const first = monthWithoutDay(text, order);
  if (first === null) return null;
  const [year, month] = [Number(first.slice(0, 4)), Number(first.slice(5, 7))];
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  return `${MONTHS[month - 1]!} has ${days} days${month === 2 ? ` in ${year}` : ""}.`;
}

const follow = (dates: readonly (LocalDate | null)[]): boolean => {
  const known = dates.filter((date) => date !== null);
  return known.length > 1 && known.slice(1).every((date, index) => daysBetween(known[index]!, date) === 1);
};

function columnIn(
  order: DateOrder,
  ambiguous: DateColumn["ambiguous"],
  doubtful: readonly string[],
): DateColumn {
  const read = (text: string): LocalDate | null => dateIn(text, order);
  const yearFirst = (text: string): string => {
    const date = read(text);
    if (date === null) return text;
    const rest = serial(text)?.clock ?? cut(text)[1].replace(/^(\d{1,2}:\d{2}):\d{2}(?:[.,]\d+)?/u, "$1");
    return rest === "" ? date : `${date} ${rest}`;
  };
  return {
    read,
    yearFirst,
    noSuchDay: (text) => noSuchDay(text, order),
    ambiguous,
    doubtful: (text) => doubtful.includes(text),
  };
}

/** Dates enough that all but one of them settle the order, and that one is a slip. judgement */
const ENOUGH = 3;

/**
 * Finds the order of a column's dates: the one asked for, else the only one that makes dates of all of them (or of all
 * but one where there are several), else the only one in which the days follow each other.
 */
export function dateColumn(texts: readonly string[], asked: DateOrder | null): DateColumn {
  if (asked !== null) return columnIn(asked, null, []);
  const open = texts.filter((text) => !settledByItself(cut(text)[0]) && serial(text) === null);
  const orders: readonly DateOrder[] = ["mdy", "dmy", "ymd"];
  const fits = (text: string, order: DateOrder): boolean =>
    dateIn(text, order) !== null || monthWithoutDay(text, order) !== null;
  const dated = open.filter((text) => orders.some((order) => fits(text, order)));
  const tried = orders.map((order) => ({
    order,
    dates: dated.map((text) => dateIn(text, order)),
    misfits: dated.filter((text) => !fits(text, order)).length,
  }));
  const nearly = dated.length < ENOUGH ? [] : tried.filter(({ misfits }) => misfits === 1);
  const whole = tried.filter(({ misfits }) => misfits === 0);
  const ways = whole.length > 0 ? whole : nearly.length === 1 ? nearly : [];
  const meanings = new Set(ways.map(({ dates }) => dates.join()));
  const following = ways.filter(({ dates }) => follow(dates));
  const way = meanings.size === 1 ? ways[0] : following.length === 1 ? following[0] : undefined;
  const unsettled = way === undefined && ways.length > 0 && dated.length > 0;
  const at = ways[0]?.dates.findIndex((date, i) => ways.some(({ dates }) => dates[i] !== date)) ?? -1;
  const ambiguous =
    unsettled && at >= 0
      ? { text: dated[at]!, meanings: [...new Set(ways.flatMap(({ dates }) => dates[at] ?? []))] }
      : null;
  // Dates that no one order fits are read year first, so that those which are not are told one by one.
  return columnIn(way?.order ?? "ymd", ambiguous, ambiguous === null ? [] : dated);
}
