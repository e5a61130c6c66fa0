import type { Outcome } from "../decide/index.ts";
import { type Instant, localHour } from "../quantity/index.ts";
import { namesOf } from "./names.ts";
import { walks } from "./walks.ts";
import { whole } from "./why.ts";
import { clock } from "./words.ts";

const HEADER = [
  "date",
  "walk",
  "time",
  "tunnel",
  "succession",
  "what to do",
  "minutes",
  "why",
  "mind",
  "done",
];

/** A tied space is for lines that break; a cell has none. */
const loose = (text: string): string => text.replaceAll("\u00a0", " ");

/** The cover schedule as rows under a header: one for each thing to do, in the order of the walks. */
export function scheduleRows(outcome: Outcome): readonly (readonly string[])[] {
  const { farm, successions } = outcome;
  const names = namesOf(farm, successions);
  const time = (at: Instant): string => clock("metric", localHour(farm.place.zone, at));
  const tunnelOf = new Map(
    successions.map(({ succession }) => [succession.id, names.tunnel(succession.tunnel)]),
  );
  const rows = walks(outcome, names).flatMap(({ date, part, walk, cuts, tasks, notes }) => {
    const mind = notes.join(" ");
    const at = outcome.walks[walk]!.at;
    return [
      ...cuts.map(({ succession, sentence, at: cut }) => [
        date,
        part,
        time(cut),
        tunnelOf.get(succession) ?? "",
        names.succession(succession),
        sentence,
        "",
        "",
        mind,
        "",
      ]),
      ...tasks.map(({ name, actions, spent, reason }) => [
        date,
        part,
        time(at),
        name,
        "",
        actions.join(" "),
        String(Math.round(spent)),
        reason === null ? "" : whole(reason).told,
        mind,
        "",
      ]),
    ];
  });
  return [HEADER, ...rows.map((row) => row.map(loose))];
}
