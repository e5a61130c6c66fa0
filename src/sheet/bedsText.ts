import type { Beds } from "./beds.ts";
import { type BedGroup, bedGroups } from "./bedsTable.ts";
import { cautions } from "./cautions.ts";
import { clean } from "./clean.ts";
import { filled, over, section, sized } from "./layout.ts";
import { learnedWords } from "./learnedWords.ts";
import { madeFrom, membersTold } from "./madeFrom.ts";
import { namesOf } from "./names.ts";
import { COLUMNS, type Page, page, type TextOptions } from "./page.ts";
import { reachTable } from "./reachTable.ts";
import { reachText } from "./reachText.ts";
import { marksUsed, needsYou } from "./sheet.ts";
import { moment } from "./words.ts";

const HEAD = ["Succession", "Now", "At the pick", "Odds", "Salad size", "With covers", "Lasts"] as const;

function group(out: Page, { heading, rows }: BedGroup): void {
  out.gap();
  out.say(heading, { tone: "bold" });
  if (out.width < COLUMNS) {
    for (const { state } of rows) out.say(state.join(" "), { mark: "- " });
    return;
  }
  const all = [
    HEAD,
    ...rows.map((row) => [
      `${row.who}\n${row.tunnel}, ${row.window}`,
      sized(row.now),
      row.pick === null ? "" : sized(row.pick.unchanged),
      row.pick === null ? "" : row.pick.oddsUnchanged,
      over(row.reach.since ? row.reach.told : row.reach.unchanged, row.reach.range.unchanged),
      row.reach.since ? "" : row.reach.told.replace(" … ", "\n… "),
      row.lasts ?? "",
    ]),
  ];
  const bounds = [
    [10, 60],
    [4, 14],
    [7, 9],
    [4, 8],
    [11, 14],
    [11, 13],
    [5, 7],
  ] as const;
  out.table(all, filled(out, all, bounds, 0), { headed: true });
}

/** Where each succession stands if nothing is changed, as text for a terminal. */
export function bedsText(beds: Beds, options: TextOptions): string {
  const { farm, on, successions, problems } = beds;
  const out = page(options);
  const names = namesOf(farm, successions);
  const groups = bedGroups(farm, successions, names, on, null);
  out.head(`${clean(farm.name)}: where every succession stands`);
  out.say(`On ${moment(farm, on)}, if nothing is changed.`);
  if (successions.length === 0) out.say("No succession is sown.");
  for (const each of groups) group(out, each);
  reachText(out, reachTable(farm, successions, names, on));
  section(out, "NEEDS YOU", needsYou(problems));
  section(out, "LEARNED", learnedWords(farm, successions, beds.madeFrom));
  section(out, "MADE FROM", [...madeFrom(farm, beds.madeFrom, on), ...membersTold(beds.madeFrom)]);
  section(out, "HOW TO READ IT", marksUsed(groups, []));
  section(out, "CAUTIONS", cautions(farm, successions));
  return out.text();
}
