import type { SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import { mark } from "./mark.ts";
import { type MarketReach, marketsOf } from "./markets.ts";
import { monthAndDay } from "./words.ts";

/** First dates of salad size with the fastest and the slowest covers, and which markets of the days planned that reaches, else the first beyond them. */
export function withinReach(
  { units }: { readonly units: Farm["units"] },
  outlook: SuccessionOutlook,
): string {
  const { earliest, latest } = outlook.reach;
  if (earliest === null) return "Salad size comes later than the days looked at.";
  const told = (date: LocalDate): string => mark(outlook) + monthAndDay(units, date);
  const from =
    earliest === latest
      ? `Salad size from ${told(earliest)} on`
      : latest === null
        ? `With covers, salad size from ${told(earliest)} at the earliest`
        : `With covers, salad size from ${told(earliest)} at the earliest and ${told(latest)} at the latest`;
  const all = marketsOf(outlook);
  const markets = all.filter(({ planned }) => planned);
  const name = ({ market, date }: MarketReach): string => `${market} ${monthAndDay(units, date)}`;
  const right = markets.filter((each) => each.right !== "no").map(name);
  const wrong = markets.filter((each) => each.right === "no").map(name);
  if (markets.length === 0) return `${from}.`;
  if (right.length === 0) {
    const first = all.find((each) => each.right !== "no");
    return `${from}: ${first === undefined ? "right for no market in sight" : `right first for ${name(first)}`}.`;
  }
  const not = wrong.length === 0 ? "" : `, not for ${list(wrong, "or")}`;
  return `${from}: right for ${list(right)}${not}.`;
}
