import { addDays, daysBetween, type LocalDate } from "../quantity/index.ts";
import { type DateOrder, PLAIN } from "./dialect.ts";
import { dateOf, settledByItself } from "./timestamp.ts";

/** A column of dates read as one: its order is what all of them allow. */
export interface DateColumn {
  /** The date in one of its cells, or null when it is none. */
  read(text: string): LocalDate | null;
  /** The first cell whose meaning nothing settles; null when there is none. */
  readonly ambiguous: string | null;
}

function dateIn(text: string, order: DateOrder): LocalDate | null {
  const written = text.trim();
  const ms = dateOf(written, /^\d{4}/u.test(written) ? "ymd" : order, PLAIN);
  return ms === null ? null : addDays("1970-01-01", Math.round(ms / 86_400_000));
}

const follow = (dates: readonly LocalDate[]): boolean =>
  dates.length > 1 && dates.slice(1).every((date, index) => daysBetween(dates[index]!, date) === 1);

/**
 * Finds the order of a column's dates: the one asked for, else the only one that makes dates of all of them,
 * else the only one in which the days follow each other.
 */
export function dateColumn(texts: readonly string[], asked: DateOrder | null): DateColumn {
  const open = texts.filter((text) => !settledByItself(text));
  if (asked !== null) return { read: (text) => dateIn(text, asked), ambiguous: null };
  const orders: readonly DateOrder[] = ["mdy", "dmy", "ymd"];
  const dated = open.filter((text) => orders.some((order) => dateIn(text, order) !== null));
  const ways = orders
    .map((order) => ({ order, dates: dated.map((text) => dateIn(text, order)) }))
    .filter((way): way is { order: DateOrder; dates: LocalDate[] } => !way.dates.includes(null));
  const meanings = new Set(ways.map(({ dates }) => dates.join()));
  const following = ways.filter(({ dates }) => follow(dates));
  const way = meanings.size === 1 ? ways[0] : following.length === 1 ? following[0] : undefined;
  // Dates that no one order fits are read year first, so that those which are not are told one by one.
  const order = way?.order ?? "ymd";
  return {
    read: (text) => dateIn(text, order),
    ambiguous: way === undefined && ways.length > 0 && dated.length > 0 ? dated[0]! : null,
  };
}
