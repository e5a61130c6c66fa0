import type { Right, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { type Instant, type LocalDate, localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import { type MarketReach, marketsOf } from "./markets.ts";
import type { Names } from "./names.ts";
import { capital, day, monthAndDay } from "./words.ts";

/** Which markets every succession still to be cut can be in salad size for. */
export interface ReachTable {
  readonly markets: readonly ReachMarket[];
  readonly rows: readonly ReachRow[];
}

export interface ReachMarket {
  /** "Fri Apr 24"; with the market's name where two sell on that day. */
  readonly name: string;
  /** What is in salad size for it left as it is, by id: "as it is S01 and S04"; null: nothing is. */
  readonly asItIs: string | null;
  /** The same only with covers, with their dates: "with covers S17 (Apr 24 … Apr 26)". */
  readonly withCovers: string | null;
}

export interface ReachRow {
  readonly succession: string;
  readonly who: string;
  /** "Apr 22 … Apr 24", "since Apr 13", "later". */
  readonly dates: string;
  /** A word for each market. */
  readonly words: readonly string[];
  /** The same as a sentence. */
  readonly sentence: string;
}

/** Markets beyond the days planned that are told of. judgement */
const BEYOND = 3;

export const REACH_HEADING = "Salad size with covers, market by market";

/** What the words of the table mean. */
export const REACH_WORDS =
  "As it is: salad size for that market with nothing changed. Covers: with covers at hand. No: with none of them.";

const WORD: Readonly<Record<Right, string>> = { asItIs: "as it is", withCovers: "covers", no: "no" };

/** Earliest and latest day of salad size with covers, in the fewest words. */
function datesOf({ units }: Farm, outlook: SuccessionOutlook, today: LocalDate): string {
  const { earliest, latest, unchanged } = outlook.reach;
  const told = (date: LocalDate): string => mark(outlook) + monthAndDay(units, date);
  if (unchanged !== null && unchanged < today) return `since ${told(unchanged)}`;
  if (earliest === null) return "later";
  if (earliest === latest) return told(earliest);
  return `${told(earliest)} … ${latest === null ? "later" : told(latest)}`;
}

/** Markets as they are told of one way; null where there are none. */
const among = (markets: readonly string[], before: string): string | null =>
  markets.length === 0 ? null : `${before} ${list(markets)}`;

export function reachTable(
  farm: Farm,
  outlooks: readonly SuccessionOutlook[],
  names: Names,
  on: Instant,
): ReachTable {
  const today = localDate(farm.place.zone, on);
  const growing = outlooks.filter(({ stage }) => stage !== "finished");
  const reached = growing.map(marketsOf);
  const all = reached.reduce((most, each) => (each.length > most.length ? each : most), []);
  const planned = all.filter((each) => each.planned).length;
  const told = all.slice(0, planned + BEYOND);
  const name = ({ market, date }: MarketReach): string =>
    told.filter((other) => other.date === date).length > 1
      ? `${day(farm.units, date)} ${market}`
      : day(farm.units, date);
  const rights = reached.map((each) =>
    told.map(({ id, date }) => each.find((other) => other.id === id && other.date === date)?.right ?? "no"),
  );
  const dates = growing.map((outlook) => datesOf(farm, outlook, today));
  const brief = (m: number, right: Right, also: (i: number) => string): string[] =>
    growing.flatMap(({ succession }, i) => (rights[i]![m] === right ? [clean(succession.id) + also(i)] : []));
  return {
    markets: told.map((each, m) => ({
      name: name(each),
      asItIs: among(
        brief(m, "asItIs", () => ""),
        "as it is",
      ),
      withCovers: among(
        brief(m, "withCovers", (i) => ` (${dates[i]!})`),
        "with covers",
      ),
    })),
    rows: growing.map(({ succession }, i) => {
      const forWhat = (right: Right): string[] => told.filter((_, m) => rights[i]![m] === right).map(name);
      const parts = [
        among(forWhat("asItIs"), "as it is for"),
        among(forWhat("withCovers"), "with covers for"),
        among(forWhat("no"), "not for"),
      ].flatMap((part) => part ?? []);
      const who = names.succession(succession.id);
      return {
        succession: succession.id,
        who,
        dates: dates[i]!,
        words: rights[i]!.map((right) => WORD[right]),
        sentence: `${capital(who)}, ${dates[i]!}${parts.length === 0 ? "" : `: ${parts.join("; ")}`}.`,
      };
    }),
  };
}
