import type { Celsius, CelsiusDifference } from "../quantity/index.ts";
import {
  boltingWarning,
  byUrgency,
  type Exposed,
  frostWarning,
  heatWarning,
  lightWarning,
  seedbedWarning,
  type Warning,
  windWarnings,
} from "../watch/index.ts";
import type { Night } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { Planned } from "./share.ts";

const lowestOf = (values: Float64Array, from: number, a: number, b: number): number =>
  values
    .subarray(Math.max(0, a - from), b - from)
    .reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);

/** Nights of the plan at one tunnel, bare and under what the plan has on. */
export function nightsOf(
  { horizon, weather, store }: Scene,
  { problem, choice }: Planned,
): readonly (Night & { readonly interval: number })[] {
  const bare = store.climate([]);
  return horizon.walks.flatMap(({ index, date, part }) => {
    if (part === "morning") return [];
    const [a, b] = [horizon.starts[index]!, horizon.starts[index + 1]!];
    const under = store.climate(problem.settings[choice[index]!]!);
    const open = lowestOf(bare.frost, bare.from, a, b) as Celsius;
    const expected = lowestOf(under.frost, under.from, a, b) as Celsius;
    return [
      {
        interval: index,
        date,
        station: lowestOf(weather.temperature, 0, a, b) as Celsius,
        bare: open,
        expected,
        promised: lowestOf(under.frostPromised, under.from, a, b) as Celsius,
        gain: (expected - open) as CelsiusDifference,
      },
    ];
  });
}

/** Everything that may hurt the crop in the days planned, most urgent first. */
export function warningsOf(scene: Scene, plans: readonly Planned[]): readonly Warning[] {
  const { farm, horizon, weather, store } = scene;
  const dates = new Set(horizon.walks.map(({ date }) => date));
  const days = weather.days.filter(({ date }) => dates.has(date));
  const warnings: (Warning | null)[] = [lightWarning(days), ...windWarnings(days, farm.limits.wind)];
  for (const planned of plans) {
    const { problem, choice, at } = planned;
    const S = problem.settings.length;
    const exposed = (i: number): readonly Exposed[] =>
      problem.successions
        .filter(({ growing }) => growing.origin < horizon.starts[i + 1]!)
        .map(({ standing, damage }) => ({
          id: standing.succession.id,
          crop: standing.crop,
          risk: damage[i * S + choice[i]!]!,
        }));
    for (const night of nightsOf(scene, planned)) {
      warnings.push(
        frostWarning(
          at.tunnel.id,
          { ...night, windy: problem.windy[night.interval]! },
          exposed(night.interval),
        ),
      );
    }
    for (const { index, date, part } of horizon.walks) {
      if (part === "evening") continue;
      const ifLeft = problem.highest[index * S + problem.now]! as Celsius;
      const under = problem.highest[index * S + choice[index]!]! as Celsius;
      warnings.push(heatWarning(at.tunnel.id, date, ifLeft, under, exposed(index)));
    }
    for (const { standing, growing } of problem.successions) {
      const { crop, succession } = standing;
      const past = growing.thermalTime >= growing.requirement * Math.exp(growing.belief.shift);
      warnings.push(boltingWarning(succession.id, crop, past || succession.cuts > 0, days[0]!));
      if (growing.origin <= horizon.now) continue;
      const under = store.climate(problem.settings[choice[0]!]!);
      const warm = under.seedbed
        .subarray(0, Math.min(under.seedbed.length, 7 * 24))
        .reduce((top, value) => Math.max(top, value), Number.NEGATIVE_INFINITY);
      warnings.push(seedbedWarning(succession.id, crop, days[0]!.date, warm as Celsius));
    }
  }
  return byUrgency(warnings.filter((warning) => warning !== null));
}
