import type { Crop } from "../farm/index.ts";
import { damageOdds, type Exposed, killingTemperature, livedBefore } from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import { asStubble, leavesIn, NEVER, type Span, stubbleIn } from "./exposure.ts";
import { hourAt } from "./horizon.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import { isUndated } from "./standing.ts";
import { leadsOf } from "./successionTable.ts";

/** What stands on a tunnel in some hours of an interval, or before the first; of a day or a night, left out: as the interval is. */
export type ExposedIn = (span: Span, interval: number, part?: "day" | "night") => readonly Exposed[];

/** The growing point under the plan, from the weather's beginning to the end of the days planned. [°C] */
function lived({ horizon, store }: Scene, { problem, choice, at }: Planned): Float64Array {
  const temperature = at.unchanged.growing.slice(0, horizon.end);
  choice.forEach((setting, i) => {
    const { growing, from } = store.climate(problem.settings[setting]!);
    const [a, b] = [horizon.starts[i]!, horizon.starts[i + 1]!];
    temperature.set(growing.subarray(a - from, b - from), a);
  });
  return temperature;
}

/**
 * What stands on a tunnel under its plan: leaves up to their cut, then the stubble of what grows again, and beds whose last cut
 * nobody dated. Leaves cut early in a night, before its cold, or on a day before its heat, count no more.
 */
export function exposedUnder(scene: Scene, planned: Planned): ExposedIn {
  const { horizon, weather, store, settings } = scene;
  const { problem, choice, chosen, standings } = planned;
  const S = problem.settings.length;
  const leads = leadsOf(scene);
  const temperature = lived(scene, planned);
  const bare = store.climate([]);
  const cutAt = new Map(
    chosen.successions.map(({ table, outlet, worth }) => [
      table.standing,
      worth > 0 && outlet !== null ? hourAt(weather, outlet.at) : NEVER,
    ]),
  );
  return (span, i, part = problem.parts[i]!) => {
    const k = i * S + choice[i]!;
    const lives = livedBefore(temperature, Math.max(1, span.from));
    const exposed = (id: string, crop: Crop, cutSoon: boolean, of: Exposed["of"] = "leaves"): Exposed => {
      const odds = damageOdds(crop, problem.lowest[k]!, problem.highest[k]!, leads[i]!, settings);
      const kill = killingTemperature(crop, lives, settings);
      return { id, crop, of, kill, risk: odds / (1 + odds), cutSoon };
    };
    const harms = (crop: Crop, { from, to }: Span): boolean =>
      part === "night"
        ? extremeBetween(bare.frost, bare.from, from, to, Math.min) <=
          Math.max(crop.unfit, killingTemperature(crop, lives, settings)) + settings.nearFrost
        : extremeBetween(bare.heat, bare.from, from, to, Math.max) > crop.qualityLimit;
    const known = problem.successions.flatMap(({ growing, standing }): readonly Exposed[] => {
      if (growing.origin >= span.to) return [];
      const cut = cutAt.get(standing)!;
      const { crop, succession } = standing;
      const leaves = leavesIn(span, cut);
      if (leaves !== null && (leaves.to === span.to || harms(crop, leaves)))
        return [exposed(succession.id, crop, cut < horizon.end)];
      return part === "night" && stubbleIn(span, cut, standing) !== null
        ? [exposed(succession.id, asStubble(crop), false, "stubble")]
        : [];
    });
    const undated = standings
      .filter(isUndated)
      .map(({ crop, succession }) => exposed(succession.id, crop, false));
    return [...known, ...undated];
  };
}
