import { type Climate, climate, lyingIn } from "../cover/index.ts";
import {
  type Cover,
  type Crop,
  type Farm,
  lyingBy,
  type Setting,
  type Settings,
  settingKey,
} from "../farm/index.ts";
import { accumulate, between, lightOnWeight, type Sums } from "../growth/index.ts";
import { daysBetween, HOUR, type Instant } from "../quantity/index.ts";
import { damageOdds, predicted } from "../watch/index.ts";
import type { Weather } from "../weather/index.ts";
import { type Horizon, partOf } from "./horizon.ts";
import type { Fate, LimitName, Pick } from "./outcome.ts";
import type { Growing, Standing, TunnelNow } from "./standing.ts";
import { type Value, expectedValue } from "./value.ts";

/** Climates and sums under every setting from now to the lookout, each computed once. */
export interface Ahead {
  climate(setting: Setting): Climate;
  sums(crop: Crop, setting: Setting): Sums;
}

/** A store of what lies ahead, filled when asked. */
export function ahead(farm: Farm, weather: Weather, horizon: Horizon, settings: Settings): Ahead {
  const climates = new Map<string, Climate>();
  const sums = new Map<string, Sums>();
  const rounds = horizon.rounds
    .filter(({ to }) => to > horizon.now)
    .map((round) => ({ ...round, from: Math.max(round.from, horizon.now) }));
  const under = (setting: Setting): Climate => {
    const key = settingKey(setting);
    const known = climates.get(key);
    if (known !== undefined) return known;
    const lying = {
      day: lyingIn(setting, "day", farm.covers),
      night: lyingIn(setting, "night", farm.covers),
    };
    const made = climate(
      weather,
      rounds.map(({ from, to, part }) => ({ from, to, lying: lying[part] })),
      settings,
    );
    climates.set(key, made);
    return made;
  };
  return {
    climate: under,
    sums(crop, setting) {
      const key = `${crop.id} ${settingKey(setting)}`;
      const known = sums.get(key);
      if (known !== undefined) return known;
      const made = accumulate(crop, under(setting), horizon.mornings, settings);
      sums.set(key, made);
      return made;
    },
  };
}

/** A moment at which a succession may be cut, and what it is cut for. */
export interface Outlet {
  readonly fate: Fate & { readonly kind: "pick" | "hold" };
  readonly at: Instant;
  /** The interval it lies in; the number of intervals when it lies beyond them. */
  readonly interval: number;
  /** Share of the price for market, keeping cold and waiting. [0–1] */
  readonly share: number;
  /** Days since emergence or the last cut. [d] */
  readonly days: number;
  /** Added by the part of its interval before it, per setting. */
  readonly pace: Float64Array;
  readonly light: Float64Array;
  readonly heat: Float64Array;
  /** Logarithm of the chance to come through that part, with caution. Nothing beyond the time planned. */
  readonly safe: Float64Array;
}

/** What one succession gains and suffers in every interval under every setting; tables are [interval × settings + setting]. */
export interface SuccessionTable {
  readonly standing: Standing;
  readonly growing: Growing;
  readonly value: Value;
  /** At the first walk. */
  readonly thermalTime: number;
  readonly light: number;
  readonly thermalTimeIn: Float64Array;
  readonly pace: Float64Array;
  readonly lightIn: Float64Array;
  readonly heat: Float64Array;
  readonly safe: Float64Array;
  /** Chance of damage without caution. [0–1] */
  readonly damage: Float64Array;
  readonly outlets: readonly Outlet[];
}

/** Everything the search for one tunnel's schedule needs, as numbers. */
export interface TunnelProblem {
  readonly settings: readonly Setting[];
  /** Index of what lies now. */
  readonly now: number;
  readonly intervals: number;
  readonly parts: readonly ("day" | "night")[];
  /** Week of each interval, for the number of changes. */
  readonly week: readonly number[];
  readonly changesPerWeek: number;
  /** A piece is there: [interval × settings + setting]. */
  readonly possible: Uint8Array;
  /** Limits broken by having a setting in an interval. */
  readonly broken: readonly (readonly LimitName[])[];
  /** Shade under the light floor, counted once a day, on its day interval. */
  readonly dim: Uint8Array;
  readonly dimDays: number;
  /** Minutes at a walk from one setting to another: [part][from × settings + to]. Part is that of the interval that begins. */
  readonly minutes: { readonly day: Float64Array; readonly night: Float64Array };
  /** A cloth is put on or taken off at such a walk: [part][from × settings + to]. */
  readonly puts: { readonly day: Uint8Array; readonly night: Uint8Array };
  readonly takes: { readonly day: Uint8Array; readonly night: Uint8Array };
  readonly windy: readonly boolean[];
  readonly frozen: readonly boolean[];
  /** Worth of a minute. */
  readonly minute: number;
  readonly successions: readonly SuccessionTable[];
  readonly heatStress: number;
  readonly stressMost: number;
  /** Light of a day to the share of full weight it allows, per succession's crop. */
  readonly lightShare: (succession: SuccessionTable, light: number, days: number) => number;
  /** Lowest and highest at the crop in calm air: [interval × settings + setting]. [°C] */
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

const extreme = (
  values: Float64Array,
  from: number,
  a: number,
  b: number,
  pick: (x: number, y: number) => number,
): number => {
  let found = values[Math.min(values.length - 1, Math.max(0, a - from))]!;
  for (let i = Math.max(0, a - from); i < Math.min(values.length, b - from); i++)
    found = pick(found, values[i]!);
  return found;
};

/** Every moment a succession may be cut: at each pick, and at each morning walk for the pick it keeps cold for best. */
function outletsOf(
  farm: Farm,
  standing: Standing,
  growing: Growing,
  picks: readonly Pick[],
  horizon: Horizon,
  weather: Weather,
  settings: Settings,
): readonly Omit<Outlet, "pace" | "light" | "heat" | "safe">[] {
  const { succession, crop } = standing;
  const marketShare = ({ market }: Pick): number =>
    succession.market === null || succession.market === market.id ? 1 : settings.otherMarketShare;
  const wait = (at: Instant): number => (1 - settings.bedDay) ** ((at - horizon.on) / (24 * HOUR));
  const place = (at: Instant): number => {
    const hour = at / HOUR - weather.first;
    if (hour >= horizon.end) return horizon.walks.length;
    return Math.max(
      0,
      horizon.starts.findLastIndex((start) => start <= hour),
    );
  };
  const grown = (at: Instant): number => Math.max(1, at / HOUR - weather.first - growing.origin) / 24;
  const atPicks = picks.map((pick) => ({
    fate: { kind: "pick" as const, pick, as: "salad" as const },
    at: pick.at,
    interval: place(pick.at),
    share: marketShare(pick) * wait(pick.at),
    days: grown(pick.at),
  }));
  const early = horizon.walks
    .filter(({ part }) => part === "morning")
    .flatMap(({ at, date }) => {
      const best = picks
        .map((pick) => ({ pick, days: (pick.at - at) / (24 * HOUR) }))
        .filter((hold) => hold.days >= 0.5 && hold.days <= crop.storage)
        .map((hold) => ({
          ...hold,
          share: marketShare(hold.pick) * (1 - settings.holdLoss) ** hold.days * wait(at),
        }))
        .sort((a, b) => b.share - a.share)[0];
      if (best === undefined) return [];
      const days = daysBetween(date, best.pick.marketDate);
      const fate = { kind: "hold" as const, cut: at, days, pick: best.pick, as: "salad" as const };
      return [{ fate, at, interval: place(at), share: best.share, days: grown(at) }];
    });
  return [...atPicks, ...early].filter(({ at }) => at / HOUR - weather.first > growing.origin);
}

/** Price per kilogram of a crop: that of the best product with it, or the farm's usual. */
export function priceOf(farm: Farm, crop: string, settings: Settings): number {
  if (farm.currency === null) return 1;
  const prices = farm.products
    .filter(({ parts, price }) => price !== null && parts.some((part) => part.crop === crop))
    .map(({ price }) => price!);
  return prices.length > 0 ? Math.max(...prices) : settings.price;
}

/** The problem of one tunnel as tables. */
export function tunnelProblem(
  farm: Farm,
  { now }: TunnelNow,
  options: readonly Setting[],
  possible: (setting: Setting, interval: number) => boolean,
  standings: readonly Standing[],
  picks: readonly Pick[],
  horizon: Horizon,
  weather: Weather,
  store: Ahead,
  hundredFeet: number,
  settings: Settings,
): TunnelProblem {
  const S = options.length;
  const { walks, starts } = horizon;
  const n = walks.length;
  const nowIndex = options.findIndex((setting) => settingKey(setting) === settingKey(now));
  const bare = store.climate([]);
  const table = (): Float64Array => new Float64Array(n * S);
  const [lowest, highest] = [table(), table()];
  options.forEach((setting, s) => {
    const under = store.climate(setting);
    for (let i = 0; i < n; i++) {
      lowest[i * S + s] = extreme(under.frost, under.from, starts[i]!, starts[i + 1]!, Math.min);
      highest[i * S + s] = extreme(under.heat, under.from, starts[i]!, starts[i + 1]!, Math.max);
    }
  });
  const leads = walks.map(({ date }) => weather.days[weather.calendar.dates.indexOf(date)]!.lead);

  const successions = standings
    .filter((standing): standing is Standing & { growing: Growing } => standing.growing !== null)
    .map((standing) =>
      successionTable(
        farm,
        standing,
        standing.growing,
        options,
        picks,
        horizon,
        weather,
        store,
        nowIndex,
        lowest,
        highest,
        leads,
        settings,
      ),
    );

  const canBe = new Uint8Array(n * S);
  const dim = new Uint8Array(n * S);
  const broken: LimitName[][] = [];
  const netRequired = standings.some(({ succession, finished }) => succession.net && !finished);
  for (let i = 0; i < n; i++) {
    const part = partOf(walks[i]!);
    const frostNight =
      part === "night" &&
      successions.some(
        (s) =>
          predicted(damageOdds(s.standing.crop, bareLowest(bare, starts, i), -99, leads[i]!, settings)) &&
          up(s, starts[i + 1]!),
      );
    let warmest = Number.NEGATIVE_INFINITY;
    options.forEach((setting, s) => {
      canBe[i * S + s] = s === nowIndex || possible(setting, i) ? 1 : 0;
      if (canBe[i * S + s]) warmest = Math.max(warmest, lowest[i * S + s]!);
    });
    options.forEach((setting, s) => {
      const limits: LimitName[] = [];
      if (
        netRequired &&
        !setting.some(({ cover, state }) => state === "on" && farm.covers.get(cover)?.kind === "net")
      )
        limits.push("net");
      if (part === "day" && heatSlows(setting, farm.covers, successions, store, starts[i]!, starts[i + 1]!))
        limits.push("rowCoverInHeat");
      if (frostNight && lowest[i * S + s]! < warmest - 0.1) limits.push("frost");
      broken.push(limits);
      if (
        part === "day" &&
        isDim(setting, farm, successions, store, starts[i]!, starts[i + 2] ?? starts[i + 1]!)
      )
        dim[i * S + s] = 1;
    });
  }

  const moves = (part: "day" | "night") => movesOf(farm, options, part, hundredFeet);
  const [day, night] = [moves("day"), moves("night")];
  const price = farm.currency === null ? settings.wage / settings.price : farm.labour.wage;
  return {
    settings: options,
    now: nowIndex,
    intervals: n,
    parts: walks.map(partOf),
    week: walks.map(({ at }) => Math.floor((at - horizon.on) / (7 * 24 * HOUR))),
    changesPerWeek: farm.limits.changesPerWeek,
    possible: canBe,
    broken,
    dim,
    dimDays: farm.limits.dimDays,
    minutes: { day: day.minutes, night: night.minutes },
    puts: { day: day.puts, night: night.puts },
    takes: { day: day.takes, night: night.takes },
    windy: walks.map(({ tooWindy }) => tooWindy),
    frozen: walks.map(({ frozen }) => frozen),
    minute: price / 60,
    successions,
    heatStress: settings.heatStress,
    stressMost: settings.stressMost,
    lightShare: ({ standing }, light, days) => lightOnWeight(light / days, standing.crop, settings),
    lowest,
    highest,
  };
}

/** The succession has leaves before an hour. */
const up = ({ growing }: SuccessionTable, hour: number): boolean => growing.origin < hour;

const bareLowest = (bare: Climate, starts: readonly number[], i: number): number =>
  extreme(bare.frost, bare.from, starts[i]!, starts[i + 1]!, Math.min);

/** Row cover or film by day that makes some crop warmer and yet slower than a bare bed. */
function heatSlows(
  setting: Setting,
  covers: ReadonlyMap<string, Cover>,
  successions: readonly SuccessionTable[],
  store: Ahead,
  from: number,
  to: number,
): boolean {
  const warming = lyingBy(setting, "day").some(({ cover }) =>
    ["rowCover", "film"].includes(covers.get(cover)?.kind ?? ""),
  );
  if (!warming) return false;
  const rest = setting.filter(({ cover }) => !["rowCover", "film"].includes(covers.get(cover)?.kind ?? ""));
  return successions.some((table) => {
    if (!up(table, to)) return false;
    const { crop } = table.standing;
    const under = store.sums(crop, setting);
    const without = store.sums(crop, rest);
    const gained =
      between(under.thermalTime, under.from, from, to) - between(without.thermalTime, without.from, from, to);
    return gained < -1e-9;
  });
}

/** Shade cloth under which the day's light falls below the floor of some crop, though the open bed would have enough. */
function isDim(
  setting: Setting,
  farm: Farm,
  successions: readonly SuccessionTable[],
  store: Ahead,
  from: number,
  to: number,
): boolean {
  if (!setting.some(({ cover }) => farm.covers.get(cover)?.kind === "shade")) return false;
  return successions.some((table) => {
    if (!up(table, to)) return false;
    const sums = store.sums(table.standing.crop, setting);
    return between(sums.light, sums.from, from, to) < table.standing.crop.lightFloor;
  });
}

/** Minutes, and whether cloth is put on or taken off, from every setting to every other at a walk that opens a day or a night. */
function movesOf(farm: Farm, options: readonly Setting[], part: "day" | "night", hundredFeet: number) {
  const S = options.length;
  const minutes = new Float64Array(S * S);
  const puts = new Uint8Array(S * S);
  const takes = new Uint8Array(S * S);
  const before = part === "day" ? "night" : "day";
  options.forEach((from, a) => {
    options.forEach((to, b) => {
      const lay = lyingBy(from, before);
      const lies = lyingBy(to, part);
      let sum = 0;
      for (const { cover, state } of lies) {
        const had = lay.find((layer) => layer.cover === cover);
        const cost = farm.covers.get(cover)!.minutes;
        if (had === undefined) {
          sum += cost.on;
          puts[a * S + b] = 1;
        } else if ((had.state === "vented") !== (state === "vented")) sum += cost.vent;
      }
      for (const { cover } of lay) {
        if (lies.some((layer) => layer.cover === cover)) continue;
        sum += farm.covers.get(cover)!.minutes.off;
        takes[a * S + b] = 1;
      }
      minutes[a * S + b] = sum * hundredFeet * farm.labour.pace;
    });
  });
  return { minutes, puts, takes };
}

function successionTable(
  farm: Farm,
  standing: Standing,
  growing: Growing,
  options: readonly Setting[],
  picks: readonly Pick[],
  horizon: Horizon,
  weather: Weather,
  store: Ahead,
  now: number,
  lowest: Float64Array,
  highest: Float64Array,
  leads: readonly number[],
  settings: Settings,
): SuccessionTable {
  const { crop, succession } = standing;
  const { starts, walks } = horizon;
  const n = walks.length;
  const S = options.length;
  const table = (): Float64Array => new Float64Array(n * S);
  const [thermalTimeIn, pace, lightIn, heat, safe, damage] = [
    table(),
    table(),
    table(),
    table(),
    table(),
    table(),
  ];
  const sums = options.map((setting) => store.sums(crop, setting));
  const grown = (sum: Float64Array, from: number, a: number, b: number): number =>
    between(sum, from, Math.max(a, growing.origin), Math.max(b, growing.origin));
  const survive = (low: number, high: number, lead: number): number =>
    -Math.log1p(farm.limits.caution * damageOdds(crop, low, high, lead, settings));
  for (let i = 0; i < n; i++) {
    const [a, b] = [starts[i]!, starts[i + 1]!];
    for (let s = 0; s < S; s++) {
      const under = sums[s]!;
      const k = i * S + s;
      thermalTimeIn[k] = grown(under.thermalTime, under.from, a, b);
      pace[k] = grown(under.pace, under.from, a, b);
      lightIn[k] = grown(under.light, under.from, a, b);
      heat[k] = grown(under.heat, under.from, a, b);
      if (b <= growing.origin) continue;
      const odds = damageOdds(crop, lowest[k]!, highest[k]!, leads[i]!, settings);
      safe[k] = survive(lowest[k]!, highest[k]!, leads[i]!);
      damage[k] = odds / (1 + odds);
    }
  }
  const outlets = outletsOf(farm, standing, growing, picks, horizon, weather, settings).map(
    (outlet): Outlet => {
      const parts = [0, 1, 2, 3].map(() => new Float64Array(S)) as [
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
      ];
      const [outPace, outLight, outHeat, outSafe] = parts;
      const from = starts[outlet.interval]!;
      const to = Math.max(from, Math.round(outlet.at / HOUR) - weather.first);
      options.forEach((setting, s) => {
        const under = sums[s]!;
        outPace[s] = grown(under.pace, under.from, from, to);
        outLight[s] = grown(under.light, under.from, from, to);
        if (outlet.interval >= n || to === from || to <= growing.origin) return;
        outHeat[s] = grown(under.heat, under.from, from, to);
        const climateUnder = store.climate(setting);
        outSafe[s] = survive(
          extreme(climateUnder.frost, climateUnder.from, from, to, Math.min),
          extreme(climateUnder.heat, climateUnder.from, from, to, Math.max),
          leads[outlet.interval]!,
        );
      });
      return { ...outlet, pace: outPace, light: outLight, heat: outHeat, safe: outSafe };
    },
  );
  const nowSums = sums[now]!;
  const thermalTime = growing.thermalTime + grown(nowSums.pace, nowSums.from, horizon.now, starts[0]!);
  const light = growing.light + grown(nowSums.light, nowSums.from, horizon.now, starts[0]!);
  const most = sums.map((under) => grown(under.pace, under.from, starts[0]!, horizon.lookout));
  const length = Math.abs(succession.to - succession.from);
  const whole = priceOf(farm, crop.id, settings) * crop.yield * length * growing.share;
  // Changes may reach a higher sum than any one setting held throughout.
  const reach = thermalTime + 1.5 * Math.max(0, ...most);
  return {
    standing,
    growing,
    value: expectedValue(whole, growing.curve, crop, growing.belief, [thermalTime, reach], settings),
    thermalTime,
    light,
    thermalTimeIn,
    pace,
    lightIn,
    heat,
    safe,
    damage,
    outlets,
  };
}
