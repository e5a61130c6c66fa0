import { type Celsius, startOf, type UtcHour } from "../quantity/index.ts";
import type { CropAir } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";

/**
 * What a leaf at crop height meets in calm air, hour by hour over the days planned: the same numbers frost and heat are
 * judged by, in one row.
 */
export function cropAirOf({ horizon, weather, store }: Scene, plans: readonly Planned[]): CropAir {
  const { starts, end } = horizon;
  const first = starts[0]!;
  const open = store.climate([]);
  const bare = (hour: number): Celsius => open.frost[hour - open.from]! as Celsius;
  const drop = (hour: number): number => weather.temperature[hour]! - bare(hour);
  const hours = Array.from({ length: end - first }, (_, i) => first + i);
  const under = ({ problem, choice }: Planned): readonly Celsius[] =>
    choice.flatMap((setting, i) => {
      const { heat, from } = store.climate(problem.settings[setting]!);
      return Array.from({ length: starts[i + 1]! - starts[i]! }, (_, k) => {
        const hour = starts[i]! + k;
        return (heat[hour - from]! - drop(hour)) as Celsius;
      });
    });
  return {
    from: startOf((weather.first + first) as UtcHour),
    until: startOf((weather.first + end) as UtcHour),
    bare: hours.map(bare),
    under: new Map(plans.map((plan) => [plan.at.tunnel.id, under(plan)])),
  };
}
