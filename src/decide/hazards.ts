import { addDays, type Celsius, type CelsiusDifference, localDate, localHour } from "../quantity/index.ts";
import {
  boltingWarning,
  byUrgency,
  damageOdds,
  type Exposed,
  frostWarning,
  heatWarning,
  killingTemperature,
  lightWarning,
  livedBefore,
  seedbedWarning,
  type Warning,
  windWarnings,
} from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import type { Night } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { Planned } from "./share.ts";

const lowestOf = (values: Float64Array, from: number, a: number, b: number): number =>
  extremeBetween(values, from, a, b, Math.min);

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

/** What may still hurt before the next walk, when nothing can be done but go out at once. */
function beforeNextWalk(scene: Scene, planned: Planned, exposed: readonly Exposed[]): Warning | null {
  const { farm, horizon, store, settings, weather } = scene;
  const { problem, at } = planned;
  const [from, to] = [horizon.now, horizon.starts[0]!];
  if (to <= from) return null;
  const today = localDate(farm.place.zone, horizon.on);
  const under = store.climate(problem.settings[problem.now]!);
  if (horizon.walks[0]!.part === "evening") {
    const hottest = extremeBetween(under.heat, under.from, from, to, Math.max) as Celsius;
    return heatWarning(at.tunnel.id, today, hottest, hottest, exposed, settings);
  }
  const bare = store.climate([]);
  const lowest = (values: Float64Array, start: number): Celsius =>
    extremeBetween(values, start, from, to, Math.min) as Celsius;
  const expected = lowest(under.frost, under.from);
  const risky = exposed.map((each) => {
    const odds = damageOdds(each.crop, expected, Number.NEGATIVE_INFINITY, 0, settings);
    return { ...each, risk: odds / (1 + odds) };
  });
  const night = {
    date: localHour(farm.place.zone, horizon.on) >= 12 ? today : addDays(today, -1),
    bare: lowest(bare.frost, bare.from),
    expected,
    promised: lowest(under.frostPromised, under.from),
    windy: weather.days.find(({ date }) => date === today)!.wind > farm.limits.wind,
  };
  return frostWarning(at.tunnel.id, night, risky, settings);
}

/** Everything that may hurt the crop from now to the end of the days planned, most urgent first. */
export function warningsOf(scene: Scene, plans: readonly Planned[]): readonly Warning[] {
  const { farm, horizon, weather, store, settings } = scene;
  const dates = new Set(horizon.walks.map(({ date }) => date));
  const days = weather.days.filter(({ date }) => dates.has(date));
  const warnings: (Warning | null)[] = [lightWarning(days), ...windWarnings(days, farm.limits.wind)];
  for (const planned of plans) {
    const { problem, choice, at } = planned;
    const S = problem.settings.length;
    /** Interval in which the plan cuts a succession; null when it is not worth cutting in the time looked at. */
    const cutIn = new Map(
      planned.chosen.successions.map(({ table, outlet, worth }) => [
        table,
        worth > 0 && outlet !== null ? outlet.interval : null,
      ]),
    );
    const temperature = lived(scene, planned);
    const exposed = (i: number): readonly Exposed[] =>
      problem.successions.flatMap((table) => {
        const { growing, standing, damage } = table;
        const cut = cutIn.get(table) ?? null;
        if ((cut !== null && cut <= i) || growing.origin >= horizon.starts[i + 1]!) return [];
        const { succession, crop } = standing;
        const cutSoon = cut !== null && cut < problem.intervals;
        const kill = killingTemperature(crop, livedBefore(temperature, horizon.starts[i]!), settings);
        return [{ id: succession.id, crop, kill, risk: damage[i * S + choice[i]!]!, cutSoon }];
      });
    warnings.push(beforeNextWalk(scene, planned, exposed(0)));
    for (const night of nightsOf(scene, planned)) {
      warnings.push(
        frostWarning(
          at.tunnel.id,
          { ...night, windy: problem.windy[night.interval]! },
          exposed(night.interval),
          settings,
        ),
      );
    }
    for (const { index, date, part } of horizon.walks) {
      if (part === "evening") continue;
      const ifLeft = problem.highest[index * S + problem.now]! as Celsius;
      const under = problem.highest[index * S + choice[index]!]! as Celsius;
      warnings.push(heatWarning(at.tunnel.id, date, ifLeft, under, exposed(index), settings));
    }
    for (const { standing, growing } of problem.successions) {
      const { crop, succession } = standing;
      const past = growing.unshadedTime >= growing.requirement * Math.exp(growing.belief.shift);
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
