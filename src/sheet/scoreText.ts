import { filled, section } from "./layout.ts";
import { COLUMNS, type Page, page, type TextOptions } from "./page.ts";
import type { Score } from "./score.ts";
import { type Rows, scoreTold } from "./scoreTold.ts";

/** Widest a column that need not give way becomes. */
const WIDEST = 22;

/** A table where there is room for its columns; else a line a row. @param flexible - The column that takes what the others leave. */
function rowsTold(out: Page, heading: string, told: Rows | null, flexible = 0): void {
  if (told === null) return;
  out.gap();
  out.head(heading);
  const all = [told.head, ...told.rows];
  if (out.width >= COLUMNS) {
    const bounds = told.head.map((_, i): [number, number] => [4, i === flexible ? out.width : WIDEST]);
    const widths = filled(out, all, bounds, flexible);
    out.table(all, widths, { headed: true });
    return;
  }
  for (const row of told.rows) {
    const cells = row.slice(1).flatMap((cell, i) => (cell === "" ? [] : [`${told.head[i + 1]!}: ${cell}`]));
    out.say(`${row[0]!}. ${cells.join("; ")}.`, { mark: "- " });
  }
}

/** How earlier sheets and forecasts did, as text for a terminal. */
export function scoreText(score: Score, options: TextOptions): string {
  const told = scoreTold(score);
  const out = page(options);
  out.head(told.title);
  out.say(told.made);
  if (told.verdict.length + told.next.length > 0) out.gap();
  for (const [i, sentence] of [...told.verdict, ...told.next].entries())
    out.say(sentence, { tone: i === 0 ? "bold" : "plain" });
  rowsTold(out, "DATES, SIZES AND WEIGHTS", told.crops);
  const beds = {
    head: ["Bed", "Said", "4 of 5 in", "Was", "Off", "Inside"],
    rows: told.beds.map(({ who, said, range, was, off, inside }) => [who, said, range, was, off, inside]),
  };
  rowsTold(out, "SALAD SIZE, BED BY BED", beds.rows.length === 0 ? null : beds);
  section(out, "ODDS OF SALAD SIZE", told.odds);
  section(out, "RANGES", told.ahead);
  section(out, "OTHER DAYS", told.days);
  rowsTold(out, "PICKS", told.picks);
  rowsTold(out, "FORECASTS", told.forecasts);
  section(out, "NEEDS YOU", told.needsYou);
  section(out, "HOW TO READ IT", told.reading);
  return out.text();
}
