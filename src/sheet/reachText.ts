import { filled } from "./layout.ts";
import { COLUMNS, type Page } from "./page.ts";
import { REACH_HEADING, REACH_WORDS, type ReachTable } from "./reachTable.ts";
import { TIED } from "./wrap.ts";

/** Columns of a market: "as it is", "Apr 28". */
const MARKET = 8;

/** Markets side by side, as many as there is room for; sentences where there is room for no columns. */
export function reachText(out: Page, { markets, rows }: ReachTable): void {
  if (rows.length === 0 || markets.length === 0) return;
  out.gap();
  out.head(REACH_HEADING.toUpperCase());
  if (out.width < COLUMNS) {
    for (const { sentence } of rows) out.say(sentence, { mark: "- " });
    return;
  }
  out.say(REACH_WORDS);
  const heads = markets.map(({ name }) => name.replace(TIED, "\n"));
  const bounds = [
    [10, 30],
    [8, 16],
  ] as const;
  const own = [["Succession", "Earliest … latest"], ...rows.map(({ who, dates }) => [who, dates])];
  const widths = filled(out, own, bounds, 0);
  const room = out.width - widths.reduce((sum, width) => sum + width + 1, -1);
  const size = Math.max(1, Math.floor(room / (MARKET + 1)));
  for (let from = 0; from < markets.length; from += size) {
    if (from > 0) out.gap();
    const all = own.map((cells, i) => [
      ...cells,
      ...(i === 0 ? heads : rows[i - 1]!.words).slice(from, from + size),
    ]);
    out.table(all, [...widths, ...markets.slice(from, from + size).map(() => MARKET)], { headed: true });
  }
}
