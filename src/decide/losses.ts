import { normalQuantile } from "../learn/index.ts";
import { damageOddsWithin } from "../watch/index.ts";
import { coverDraws, spreadsOf } from "./memberCourse.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/**
 * Chance in each member that a bed's leaves come through every night and day under the plan, up to their cut or the end of the
 * days planned. A member's weather is as it is: what is uncertain of it is told by all of them. [0–1]
 *
 * @param cut - Hour of the weather.
 */
export function comesThrough(
  { farm, horizon, store, settings, members }: Scene,
  { at, problem, choice }: Planned,
  { standing, growing }: SuccessionTable,
  cut: number,
): Float64Array {
  const bare = store.climate([]);
  const { warmth, shade } = coverDraws(settings, at.tunnel.id);
  const { now, starts } = horizon;
  const spans = [
    { from: now, to: starts[0]!, setting: at.now },
    ...choice.map((s, i) => ({ from: starts[i]!, to: starts[i + 1]!, setting: problem.settings[s]! })),
  ]
    .map((span) => ({ ...span, from: Math.max(span.from, growing.origin), to: Math.min(span.to, cut) }))
    .filter(({ from, to }) => from < to)
    .map(({ setting, ...span }) => ({
      ...span,
      under: store.climate(setting),
      spreads: spreadsOf(setting, farm.covers, settings),
    }));
  return Float64Array.from(members.departures, (departure, m) => {
    const [warm, cool] = [normalQuantile(warmth(m)), normalQuantile(shade(m))];
    return spans.reduce((safe, { from, to, under, spreads }) => {
      const cooler = Math.exp(spreads.shade * cool);
      const [byNight, byDay] = [Math.exp(spreads.night * warm), Math.exp(spreads.day * warm)];
      /** What lies beside bare ground, as much as it does in this member. */
      const moved = (open: number, there: number, warmer: number): number =>
        open + (there - open) * (there > open ? warmer : cooler);
      let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (let hour = from; hour < to; hour++) {
        const i = hour - bare.from;
        const departed = departure[hour - members.now] ?? 0;
        lowest = Math.min(lowest, moved(bare.frost[i]!, under.frost[i]!, byNight) + departed);
        highest = Math.max(highest, moved(bare.heat[i]!, under.heat[i]!, byDay) + departed);
      }
      return safe / (1 + damageOddsWithin(standing.crop, lowest, highest, 0, settings));
    }, 1);
  });
}
