import type { Outcome } from "../decide/index.ts";
import { list } from "../problem/index.ts";
import { groupBy } from "../quantity/index.ts";
import type { Names } from "./names.ts";
import type { Urgent } from "./warned.ts";
import { bedsIn, highest, noCloth, type Of, underPlan, worst } from "./warned.ts";
import { day, dayOfMonth, temperature } from "./words.ts";

/** Heat of one day, or of several days: then each tunnel that stays too hot is told with its worst. */
export function heatTold(group: readonly Of<"heat">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const dates = [...new Set(group.map(({ date }) => date))].sort();
  const told = group
    .map((warning) => {
      const { date, tunnel } = warning;
      const name = names.tunnel(tunnel);
      return {
        ...warning,
        under: underPlan(warning, "morning", outcome, names),
        name: dates.length === 1 ? name : `${name}, ${day(units, date)}`,
      };
    })
    .sort((a, b) => b.planned - b.limit - (a.planned - a.limit));
  const hot = temperature(units, highest(group.map(({ ifLeft }) => ifLeft)));
  const over = told.filter(({ planned, limit }) => planned > limit);
  const worstDays = [...groupBy(over, ({ tunnel }) => tunnel).values()].map((same) => same[0]!);
  const when = list(dates.map((date) => day(units, date)));
  return {
    kind: "heat",
    severity: worst(group),
    date: dates[0]!,
    when,
    brief: `Heat ${list(dates.map(dayOfMonth))}: ${hot} if left`,
    heading: `Heat on ${when}: up to ${hot} at the crop in calm air if what lies there now is left on.`,
    columns: ["Tunnel", "On it that day", "If left", "With plan", "Too hot above"],
    rows: (dates.length === 1 ? told : worstDays).map(
      ({ tunnel, name, under, ifLeft, planned, limit, successions }) => ({
        tunnel,
        cells: [
          name,
          under,
          temperature(units, ifLeft),
          temperature(units, planned),
          temperature(units, limit),
        ],
        sentence: `${name}, ${under}: ${temperature(units, planned)} with the plan, ${temperature(units, ifLeft)} if what lies there now is left. Above ${temperature(units, limit)} is too hot for ${list(successions.map(names.succession))}.`,
      }),
    ),
    open: over.length > 0,
    inShort: null,
    follows:
      over.length === 0
        ? ["With the plan no crop gets too hot."]
        : [
            `Still too hot with the plan: ${bedsIn(
              worstDays.map(({ tunnel, successions }) => ({
                name: names.tunnel(tunnel),
                beds: successions.map(names.succession),
              })),
            )}.`,
            ...noCloth(worstDays, names),
          ],
  };
}
