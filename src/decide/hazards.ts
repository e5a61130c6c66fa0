import { lyingBy } from "../farm/index.ts";
import {
  addDays,
  type Celsius,
  type CelsiusDifference,
  type LocalDate,
  localDate,
  localHour,
} from "../quantity/index.ts";
import {
  boltingWarning,
  byUrgency,
  damageOdds,
  type Exposed,
  frostWarning,
  heatWarning,
  lightWarning,
  seedbedWarning,
  snowWarning,
  type Warning,
  windWarnings,
} from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import { type ExposedIn, exposedUnder } from "./exposed.ts";
import { partOf } from "./horizon.ts";
import { noCoolCloth, noWarmCloth, type WhyNone } from "./lacking.ts";
import type { Night } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import { NOW } from "./tunnelProblem.ts";

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

/** Hour of the highest value of a climate's row between two hours of the weather. */
function hourOfMost(values: Float64Array, start: number, from: number, to: number): number {
  let most = Math.max(from, start);
  for (let hour = most; hour < to; hour++) if (values[hour - start]! > values[most - start]!) most = hour;
  return most;
}

/** What may still hurt before the next walk, when nothing can be done but go out at once; past when its worst hour lies behind. */
function beforeNextWalk(scene: Scene, planned: Planned, exposed: ExposedIn): Warning | null {
  const { horizon, store } = scene;
  const { problem } = planned;
  const warning = untilNextWalk(scene, planned, exposed);
  if (warning === null || (warning.kind !== "frost" && warning.kind !== "heat")) return warning;
  const { from, to } = horizon.rounds.find((round) => round.from <= horizon.now && horizon.now < round.to)!;
  const under = store.climate(problem.settings[problem.lays[NOW]!.setting]!);
  const bad = warning.kind === "heat" ? under.heat : under.frost.map((value) => -value);
  const past = hourOfMost(bad, under.from, from, to) < horizon.now;
  return past ? { ...warning, severity: "care", past } : warning;
}

function untilNextWalk(scene: Scene, planned: Planned, exposedIn: ExposedIn): Warning | null {
  const { farm, horizon, store, settings, weather } = scene;
  const { problem, at } = planned;
  const [from, to] = [horizon.now, horizon.starts[0]!];
  if (to <= from) return null;
  const part = horizon.walks[0]!.part === "evening" ? "day" : "night";
  const exposed = exposedIn({ from, to }, 0, part);
  const today = localDate(farm.place.zone, horizon.on);
  const under = store.climate(problem.settings[problem.lays[NOW]!.setting]!);
  if (part === "day") {
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

/** Does anything lie on a tunnel's hoops at some hour of a date under its plan, or before its first walk? */
function coveredOn({ walks }: Scene["horizon"], { problem, choice, at }: Planned, date: LocalDate): boolean {
  if (at.tunnel.hoops === null) return false;
  const lies = walks.some(
    (walk, i) =>
      // A night reaches into the date of the walk after it.
      (walk.date === date || walks[i + 1]?.date === date) &&
      lyingBy(problem.settings[choice[i]!]!, partOf(walk)).length > 0,
  );
  return lies || (walks[0]?.date === date && at.now.length > 0);
}

/** Snow still to fall on a date, as water; none where nobody spoke of it. [mm] */
function snowToCome({ weather: { calendar, snowfall }, horizon }: Scene, date: LocalDate): number {
  const index = calendar.dates.indexOf(date);
  return snowfall.reduce(
    (sum, water, hour) => (hour >= horizon.now && calendar.day[hour] === index ? sum + water : sum),
    0,
  );
}

/** Everything that may hurt the crop from now to the end of the days planned, most urgent first. */
export function warningsOf(scene: Scene, plans: readonly Planned[]): readonly Warning[] {
  const { farm, horizon, weather, store, settings } = scene;
  const dates = new Set(horizon.walks.map(({ date }) => date));
  const days = weather.days.filter(({ date }) => dates.has(date));
  const warnings: (Warning | null)[] = [lightWarning(days), ...windWarnings(days, farm.limits.wind)];
  for (const day of days) {
    const covered = plans.filter((planned) => coveredOn(horizon, planned, day.date));
    warnings.push(
      snowWarning(
        day.date,
        snowToCome(scene, day.date),
        covered.map(({ at }) => at.tunnel.id),
        settings,
      ),
    );
  }
  for (const planned of plans) {
    const { problem, choice, at } = planned;
    const S = problem.settings.length;
    const exposed = exposedUnder(scene, planned);
    const during = (i: number): readonly Exposed[] =>
      exposed({ from: horizon.starts[i]!, to: horizon.starts[i + 1]! }, i);
    warnings.push(beforeNextWalk(scene, planned, exposed));
    const lacking = <W extends Warning>(warning: W | null, i: number, why: WhyNone): W | null => {
      if (warning === null) return null;
      const reason = why(scene, plans, planned, i);
      return reason === null ? warning : { ...warning, noClothLeft: reason };
    };
    for (const night of nightsOf(scene, planned)) {
      warnings.push(
        lacking(
          frostWarning(
            at.tunnel.id,
            { ...night, windy: problem.windy[night.interval]! },
            during(night.interval),
            settings,
          ),
          night.interval,
          noWarmCloth,
        ),
      );
    }
    for (const { index, date, part } of horizon.walks) {
      if (part === "evening") continue;
      const ifLeft = problem.highest[index * S + problem.lays[NOW]!.setting]! as Celsius;
      const under = problem.highest[index * S + choice[index]!]! as Celsius;
      warnings.push(
        lacking(heatWarning(at.tunnel.id, date, ifLeft, under, during(index), settings), index, noCoolCloth),
      );
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
