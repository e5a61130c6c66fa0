import { section } from "./layout.ts";
import { COLUMNS, type Page, page, type TextOptions } from "./page.ts";
import type { Score } from "./score.ts";
import { type Rows, scoreTold } from "./scoreTold.ts";

/** A table where there is room for its columns; else a line a row. */
function rowsTold(out: Page, heading: string, told: Rows | null): void {
  if (told === null) return;
  out.gap();
  out.head(heading);
  const all = [told.head, ...told.rows];
  if (out.width >= COLUMNS) {
    const widths = out.natural(
      all,
      told.head.map(() => [4, 22] as const),
    );
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
    head: ["Bed", "Sheet of", "Said", "4 of 5 in", "Was", "Off"],
    rows: told.beds.map(({ who, sheet, said, range, was, off }) => [who, sheet, said, range, was, off]),
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
