import {
  accumulate,
  addDays,
  allocate,
  between,
  type Centimetre,
  type Crop,
  climate,
  type Farm,
  type Growing,
  HOUR,
  hourAt,
  instant,
  type LocalDate,
  leafLength,
  lightOnWeight,
  localDate,
  lyingIn,
  type Note,
  outlookOf,
  type Planned,
  pastYears,
  productCases,
  promisedOf,
  quantile,
  relativeWeight,
  type Scene,
  type Settings,
  type SuccessionOutlook,
  sceneOf,
  standing,
  tunnelNow,
} from "../../src/index.ts";
import { planAll, type WeekInput } from "../../src/week.ts";
import type { City } from "../real/cities.ts";
import { byDate, foretell, otherYears } from "../real/foretold.ts";
import type { Chance } from "./promiseFarms.ts";

/** What was promised of a product on a selling day, and what came. [kg] */
export interface Kept {
  readonly product: string;
  readonly mix: boolean;
  /** Days from the day planned from to the selling day. [d] */
  readonly ahead: number;
  readonly safe: number;
  readonly median: number;
  readonly mayCome: number;
  readonly came: number;
}

/** What is true of one succession and nobody knows. */
interface Truth {
  /** Its requirement over the catalogue's, and the thermal time it had over the model's when its leaf was measured. [1] */
  readonly requirement: number;
  readonly ahead: number;
  /** Hour at which its leaf was measured; null: never. */
  readonly measured: number | null;
}

/** How many beds in ten have had a leaf measured the evening before. */
const MEASURED = 0.7;

const scene = (input: WeekInput): Scene => sceneOf(input).scene!;

const growingIn = (given: Scene): ReadonlyMap<string, Growing> =>
  new Map(
    given.farm.tunnels.flatMap((tunnel) => {
      const at = tunnelNow(given, tunnel);
      return given.farm.successions
        .filter((succession) => succession.tunnel === tunnel.id)
        .flatMap((succession) => {
          const { growing } = standing(given, succession, at);
          return growing === null ? [] : [[succession.id, growing] as const];
        });
    }),
  );

/** What is true of every succession, and the leaves measured of some of them. */
function measure(
  input: WeekInput,
  chance: Chance,
  normal: () => number,
): { readonly truths: ReadonlyMap<string, Truth>; readonly notes: readonly Note[] } {
  const before = scene({ ...input, settings: { ...input.settings, members: 2 } });
  const { settings, farm, horizon } = before;
  const at = instant(horizon.on - 13 * HOUR);
  const hour = hourAt(before.weather, at);
  const truths = new Map<string, Truth>();
  const notes: Note[] = [];
  for (const [id, { curve, unchanged, origin, belief }] of growingIn(before)) {
    // No leaf is known yet, so what is believed is what the catalogue says of a sowing or a regrowth.
    const requirement = Math.exp(belief.spread * normal());
    const isMeasured = chance() < MEASURED && origin < hour - 3 * 24;
    const ahead = isMeasured ? Math.exp(settings.thermalError * normal()) : 1;
    truths.set(id, { requirement, ahead, measured: isMeasured ? hour : null });
    if (!isMeasured) continue;
    const time = (ahead * between(unchanged.pace, unchanged.from, origin, hour)) / requirement;
    const length = leafLength(curve, time) * Math.exp(settings.leafError * normal());
    notes.push({
      at,
      line: 2,
      remark: "",
      kind: "leaf",
      succession: id,
      lengths: [length as Centimetre],
    });
  }
  return { truths, notes: [...farm.notes, ...notes] };
}

/** Covers that warm, and shade that cools, so many times as much as stated. */
const otherwise = (
  farm: Farm,
  settings: Settings,
  warm: number,
  cool: number,
): { readonly covers: Farm["covers"]; readonly settings: Settings } => ({
  covers: new Map(
    [...farm.covers].map(([id, cover]) => [
      id,
      {
        ...cover,
        day: { ...cover.day, sun: cover.day.sun * warm },
        night: { clear: (cover.night.clear * warm) as never, cloudy: (cover.night.cloudy * warm) as never },
      },
    ]),
  ),
  settings: {
    ...settings,
    shadeOnPace: settings.shadeOnPace * cool,
    shadeOnLeaf: settings.shadeOnLeaf * cool,
    shadeOnSoil: settings.shadeOnSoil * cool,
  },
});

/** Chance that leaves are damaged between two temperatures at the crop: two logistics, as DEVELOPERS.md has them. */
function damaged(crop: Crop, lowest: number, highest: number, settings: Settings): number {
  const s = (Math.sqrt(3) / Math.PI) * settings.damageWidth;
  const odds = Math.exp((crop.unfit - lowest) / s) + Math.exp((highest - crop.growth.ceiling) / s);
  return odds / (1 + odds);
}

/** Salad-size weight of every bed of a tunnel that is cut in the days planned, in the weather that came. [kg] */
function cutFrom(
  told: Scene,
  came: Scene,
  { at, problem, choice }: Planned,
  outlooks: readonly SuccessionOutlook[],
  truths: ReadonlyMap<string, Truth>,
  chance: Chance,
  normal: () => number,
): readonly { readonly outlook: SuccessionOutlook; readonly weight: number }[] {
  const { horizon, farm } = told;
  const { now, starts, mornings, rounds } = horizon;
  const { covers, settings } = otherwise(
    farm,
    told.settings,
    Math.exp(told.settings.warmthSpread * normal()),
    Math.exp(told.settings.shadeSpread * normal()),
  );
  const begin = mornings.findLast((hour) => hour <= now) ?? now;
  const settingAt = (hour: number) => {
    const i = starts.slice(0, -1).findLastIndex((start) => start <= hour);
    return i < 0 ? at.now : problem.settings[choice[i]!]!;
  };
  const under = climate(
    came.weather,
    rounds
      .filter(({ to }) => to > begin)
      .map(({ from, to, part }) => ({
        from: Math.max(from, begin),
        to,
        lying: lyingIn(settingAt(Math.max(from, begin)), part, covers),
      })),
    settings,
  );
  const extreme = (values: Float64Array, from: number, to: number, of: typeof Math.min): number =>
    of(...values.subarray(from - under.from, to - under.from));
  return outlooks
    .filter(({ succession, fate }) => succession.tunnel === at.tunnel.id && fate.kind !== "none")
    .map((outlook) => {
      const { fate, crop, succession } = outlook;
      const { growing } = problem.successions.find(({ standing }) => standing.succession === succession)!;
      const { origin, curve, share } = growing!;
      const cut = hourAt(
        told.weather,
        fate.kind === "hold" ? fate.cut : fate.kind === "pick" ? fate.pick.at : told.horizon.on,
      );
      const sums = accumulate(crop, under, mornings, settings);
      const { requirement, ahead, measured } = truths.get(succession.id)!;
      const { pace, from } = growing.unchanged;
      const past =
        measured === null
          ? between(pace, from, origin, now)
          : ahead * between(pace, from, origin, measured) + between(pace, from, measured, now);
      const begun = Math.max(now, origin);
      const time = (past + between(sums.pace, sums.from, begun, cut)) / requirement;
      const length = leafLength(curve, time);
      const light = growing.light + between(sums.light, sums.from, begun, cut);
      const days = (cut - origin) / 24;
      const edges = [now, ...starts.filter((start) => start > now && start < cut), cut];
      const lost = edges
        .slice(1)
        .map((to, i) => ({ from: edges[i]!, to }))
        .filter(({ from: start, to }) => start >= origin && start < to)
        .some(
          ({ from: start, to }) =>
            chance() <
            damaged(
              crop,
              extreme(under.frost, start, to, Math.min),
              extreme(under.heat, start, to, Math.max),
              settings,
            ),
        );
      const fits = !lost && length >= crop.smallest && length < crop.largest;
      const full = crop.yield * Math.abs(succession.to - succession.from) * share;
      const weight = fits
        ? full * relativeWeight(length, crop, settings) * lightOnWeight(light / days, crop, settings)
        : 0;
      return { outlook, weight };
    });
}

/**
 * One week as it might go: what is true of beds, covers and yields is drawn first, leaves are measured, a forecast that errs as
 * stated is made of the days that were measured, the week is planned; then the plan is followed through the weather that came.
 *
 * @returns null where the forecast cannot be made of the days measured.
 */
export function keptIn(
  given: WeekInput,
  city: City,
  date: LocalDate,
  chance: Chance,
  numbers: Generator<number, never>,
): readonly Kept[] | null {
  const normal = (): number => numbers.next().value;
  const days = byDate(city);
  const past = otherYears(city, Number(date.slice(0, 4)));
  const forecast = foretell(city, days, date, 1, 0, pastYears(past), numbers);
  if (forecast === null) return null;
  const unmeasured: WeekInput = { ...given, past, forecast };
  const { truths, notes } = measure(unmeasured, chance, normal);
  const input = { ...unmeasured, farm: { ...given.farm, notes } };
  const told = scene(input);
  const actual = Array.from({ length: 25 }, (_, i) => days.get(addDays(date, i))).filter(
    (day) => day !== undefined,
  );
  const came = scene({
    ...input,
    forecast: { ...forecast, days: actual },
    settings: { ...input.settings, members: 2 },
  });
  const plans = planAll(told);
  const outlooks = plans.flatMap((plan) => plan.standings.map((each) => outlookOf(told, plan, each)));
  const cuts = plans.flatMap((plan) => cutFrom(told, came, plan, outlooks, truths, chance, normal));
  const { yieldSpread, bedSpread } = told.settings;
  const factor = (spread: number): number => Math.exp(spread * normal() - spread ** 2 / 2);
  const ofCrop = new Map([...told.farm.crops.keys()].map((crop) => [crop, factor(yieldSpread)]));
  const yielded = cuts.map(({ outlook, weight }) => ({
    outlook,
    weight: weight * ofCrop.get(outlook.crop.id)! * factor(bedSpread),
  }));
  const today = localDate(told.farm.place.zone, told.horizon.on);
  const promised = productCases(told, plans, outlooks);
  return promised.map((product) => {
    const { market, marketDate, cases } = product;
    const weights = new Map<string, number>();
    for (const { outlook, weight } of yielded) {
      const { fate, crop } = outlook;
      if (fate.kind === "none" || fate.pick.market.id !== market.id || fate.pick.marketDate !== marketDate)
        continue;
      weights.set(crop.id, (weights.get(crop.id) ?? 0) + weight);
    }
    const same = promised.filter((other) => other.market === market && other.marketDate === marketDate);
    const { made } = allocate(
      same.map((other) => other.product),
      same.map(({ ordered }) => ordered),
      weights,
    );
    const { safe, mayCome } = promisedOf(product);
    return {
      product: product.product.id,
      mix: product.product.parts.length > 1,
      ahead: Math.round((Date.parse(marketDate) - Date.parse(today)) / 86_400_000),
      safe,
      median: quantile(cases.slice().sort(), 0.5),
      mayCome,
      came: made[same.indexOf(product)]!,
    };
  });
}
