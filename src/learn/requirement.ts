import type { KeptValue, SeasonOfYear, Settings } from "../farm/index.ts";
import { type Seen, settle, type Weighed } from "./seen.ts";

/** From sowing, or a cut, to the next cut: what one requirement belongs to, with the notes about it. */
export interface Growth {
  /** The sowing it belongs to: all growths of one share what is special to its bed. */
  readonly sowing: string;
  /** Of the sowing. */
  readonly season: SeasonOfYear;
  /** Years the sowing lies back, by the calendar. [a] */
  readonly age: number;
  /** After a cut. */
  readonly regrowth: boolean;
  readonly seen: readonly Seen[];
}

/** The logarithm of a requirement's ratio to the catalogue's. [1] */
export interface Estimate {
  readonly shift: number;
  readonly spread: number;
  /** Its spread before any note. [1] */
  readonly before: number;
}

/** What is known of one growth's requirement. */
export interface GrowthEstimate extends Estimate {
  /** What became of each of its notes, in the order given. */
  readonly weighed: readonly Weighed[];
}

/** What a crop's notes come to: on this farm, in each season, for each growth in the order given. */
export interface LearnedCrop {
  readonly farm: Estimate;
  season(season: SeasonOfYear): Estimate;
  readonly growths: readonly GrowthEstimate[];
}

/** What of a crop's requirement the grower has set or frozen. */
export interface KeptRequirement {
  readonly farm: KeptValue | null;
  readonly seasons: ReadonlyMap<SeasonOfYear, KeptValue>;
}

/** Anything with a requirement: a growth, or a crop as it is, or as it is in a season. */
type Place = Pick<Growth, "age" | "regrowth"> & {
  readonly season: SeasonOfYear | null;
  readonly sowing: string | null;
};

/**
 * Covariance of the logarithms of two requirements. Of a crop's variance a part is the farm's, wandering from year to year,
 * a part the season's, the rest each sowing's own; a regrowth's further variance is the farm's and the growth's own alike.
 */
function covariance(
  spread: number,
  { farmShare, seasonShare, requirementDrift, regrowthSpread }: Settings,
  keptFor: (place: Place) => "farm" | "season" | null,
): (a: Place, b: Place) => number {
  const variance = spread ** 2;
  const further = variance * (regrowthSpread ** 2 - 1);
  return (a, b) => {
    const [keptA, keptB] = [keptFor(a), keptFor(b)];
    const sameSowing = a.sowing !== null && a.sowing === b.sowing;
    const farm =
      keptA === null && keptB === null
        ? farmShare * variance + requirementDrift ** 2 * Math.min(a.age, b.age)
        : 0;
    const season =
      a.season !== null && a.season === b.season && keptA !== "season" ? seasonShare * variance : 0;
    const own = sameSowing ? (1 - farmShare - seasonShare) * variance : 0;
    const again = a.regrowth && b.regrowth ? further * (sameSowing ? 1 : farmShare) : 0;
    return farm + season + own + again;
  };
}

/** Notes and growths in an order of their own, so that not even the last digit hangs on the order they came in. */
const keyOf = (value: unknown): string => JSON.stringify(value);
const byKey = (a: unknown, b: unknown): number => (keyOf(a) < keyOf(b) ? -1 : keyOf(a) > keyOf(b) ? 1 : 0);

/**
 * What all notes about a crop say of its requirement: on this farm, in each season of the year, for each growth.
 *
 * The season is that of the year, not of one year: where the catalogue is wrong about a crop in cold or in dim weeks, it is so
 * every spring; what one year had of its own is in the drift.
 *
 * @param spread - Standard deviation of the logarithm of a sowing's requirement before any note. [1]
 * @source levels of a normal model (partial pooling), textbook; shares of the variance: judgement
 */
export function learnRequirement(
  spread: number,
  growths: readonly Growth[],
  kept: KeptRequirement,
  settings: Settings,
): LearnedCrop {
  const keptValue = ({ season }: Place): KeptValue | null =>
    (season === null ? undefined : kept.seasons.get(season)) ?? kept.farm;
  const keptFor = (place: Place): "farm" | "season" | null =>
    place.season !== null && kept.seasons.has(place.season) ? "season" : kept.farm === null ? null : "farm";
  const shared = covariance(spread, settings, keptFor);
  const told = growths
    .filter(({ seen }) => seen.length > 0)
    .map((growth) => ({ growth, notes: [...growth.seen].sort(byKey) }))
    .sort((a, b) =>
      byKey([a.growth.sowing, a.growth.regrowth, a.notes], [b.growth.sowing, b.growth.regrowth, b.notes]),
    );
  const { all, weighed } = settle(
    told.map(({ growth: a }) => told.map(({ growth: b }) => shared(a, b))),
    told.map(({ growth, notes }) => {
      const begun = keptValue(growth)?.shift ?? 0;
      return notes.map((seen) => ({ ...seen, value: seen.value - begun }));
    }),
    settings.surprise,
  );
  const at = (place: Place): Estimate => {
    const covariances = told.map(({ growth }) => shared(place, growth));
    const own = shared(place, place);
    const { mean, variance } = all.at(covariances, own);
    const { shift, spread: doubt } = keptValue(place) ?? { shift: 0, spread: 0 };
    return {
      shift: mean + shift,
      spread: Math.hypot(Math.sqrt(variance), doubt),
      before: Math.hypot(Math.sqrt(own), doubt),
    };
  };
  const fates = new Map(
    told.map(({ growth, notes }, i) => [growth, new Map(notes.map((note, k) => [note, weighed[i]![k]!]))]),
  );
  const level = { sowing: null, age: 0, regrowth: false };
  return {
    farm: at({ ...level, season: null }),
    season: (season) => at({ ...level, season }),
    growths: growths.map((growth): GrowthEstimate => {
      const estimate = at(growth);
      return {
        ...estimate,
        spread: Math.max(settings.spreadFloor, estimate.spread),
        weighed: growth.seen.map((note) => {
          const fate = fates.get(growth)!.get(note)!;
          return { ...fate, taken: fate.taken + (keptValue(growth)?.shift ?? 0) };
        }),
      };
    }),
  };
}
