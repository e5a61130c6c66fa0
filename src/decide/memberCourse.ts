import type { Cover, Crop, LearnedOfCover, Setting, Settings } from "../farm/index.ts";
import { emergence, sumPace, sumThermalTime } from "../growth/index.ts";
import { normalQuantile } from "../learn/index.ts";
import { draws } from "../weather/index.ts";
import type { Scene } from "./scene.ts";

/** Requirements drawn with each member: the weather is dear to follow, a requirement is not. */
export const REQUIREMENTS = 8;

/** What lies ahead of one succession under one schedule, in every member. */
export interface MemberCourse {
  /** Hour of the weather at which every sum is 0: now. */
  readonly from: number;
  /** Running sum of pace as expected, and in each member, from emergence or now on. [°C·d] */
  readonly expected: Float64Array;
  readonly members: readonly Float64Array[];
}

/** A succession not up yet, which each member brings up at an hour of its own. */
export interface NotUp {
  /** Hour it was or will be sown, and its seedbed as expected from the weather's beginning. [°C] */
  readonly sown: number;
  readonly seedbed: Float64Array;
}

/** Departure of the seedbed, which follows the last day's mean and half of the hour's departure from it. */
function seedbedDeparture(departure: Float64Array): Float64Array {
  let sum = 0;
  return departure.map((value, i) => {
    sum += value - (i >= 24 ? departure[i - 24]! : 0);
    const mean = sum / Math.min(24, i + 1);
    return mean + (value - mean) / 2;
  });
}

/** Spreads of what lies: of several covers the widest, where nothing was learned of one those of the settings. [1] */
export function spreadsOf(
  setting: Setting,
  covers: ReadonlyMap<string, Cover>,
  { warmthSpread, shadeSpread }: Settings,
): Pick<LearnedOfCover, "day" | "night" | "shade"> {
  const usual = { day: warmthSpread, night: warmthSpread, shade: shadeSpread };
  const own = setting.map(({ cover }) => covers.get(cover)?.learned ?? usual);
  if (own.length === 0) return usual;
  const widest = (key: keyof typeof usual): number => Math.max(...own.map((each) => each[key]));
  return { day: widest("day"), night: widest("night"), shade: widest("shade") };
}

/** What decides, in each member, how much the covers of a tunnel warm and its shade cools: from 0 to 1. */
export const coverDraws = (
  { seed }: Settings,
  tunnel: string,
): { readonly warmth: (member: number) => number; readonly shade: (member: number) => number } => ({
  warmth: draws(seed, `warmth ${tunnel}`),
  shade: draws(seed, `shade ${tunnel}`),
});

/**
 * Follows a succession through every member. What the covers warm, and what shade cools, is drawn with each of them.
 *
 * @param tunnel - Its id: beds under one cover share what that cover does.
 * @param origin - Hour of emergence or of the last cut.
 * @param notUp - null: up already, or told when it came up.
 * @param under - What lies from an hour on.
 */
export function memberCourse(
  { farm, weather, horizon, store, settings, members }: Scene,
  tunnel: string,
  crop: Crop,
  origin: number,
  notUp: NotUp | null,
  under: (hour: number) => Setting,
): MemberCourse {
  const { now, lookout, mornings } = horizon;
  const { from, growing: open } = store.climate([]);
  const length = open.length;
  const gain = new Float64Array(length);
  const radiation = new Float64Array(length);
  const spread = new Float64Array(length);
  let [setting, climate] = [under(from), store.climate(under(from))];
  let known = spreadsOf(setting, farm.covers, settings);
  for (let i = 0; i < length; i++) {
    const lying = under(from + i);
    if (lying !== setting) {
      [setting, climate] = [lying, store.climate(lying)];
      known = spreadsOf(lying, farm.covers, settings);
    }
    gain[i] = climate.growing[i]! - weather.temperature[from + i]!;
    spread[i] =
      gain[i]! < 0 ? known.shade : weather.radiation[from + i]! < settings.dusk ? known.night : known.day;
    radiation[i] = climate.radiation[i]!;
  }
  const { warmth, shade } = coverDraws(settings, tunnel);
  // The same arrays serve every member: only sums from now on are kept.
  const growing = new Float64Array(length);
  const [thermalTime, pace] = [new Float64Array(length + 1), new Float64Array(length + 1)];
  const follow = (
    warm: number,
    cool: number,
    departure: Float64Array | null,
    begin: number,
  ): Float64Array => {
    const ahead = from - members.now;
    // A spread changes with what lies, not by the hour: few exponentials are needed.
    let [wide, factor] = [Number.NaN, 1];
    let cooled = false;
    for (let i = 0; i < length; i++) {
      const own = gain[i]!;
      const departed = departure === null || i + ahead < 0 ? 0 : departure[i + ahead]!;
      if (spread[i] !== wide || own < 0 !== cooled) {
        [wide, cooled] = [spread[i]!, own < 0];
        factor = Math.exp(wide * (cooled ? cool : warm));
      }
      growing[i] = weather.temperature[from + i]! + departed + own * factor;
    }
    sumPace(crop, { from, radiation }, mornings, sumThermalTime(crop, growing, thermalTime), pace);
    const begun = pace[Math.min(length, Math.max(now, begin) - from)]!;
    const course = pace.slice(now - from, lookout - from + 1);
    for (let h = 0; h < course.length; h++) course[h] = Math.max(0, course[h]! - begun);
    return course;
  };
  const comesUp = (departure: Float64Array): number => {
    if (notUp === null) return origin;
    const moved = seedbedDeparture(departure);
    const bed = notUp.seedbed
      .subarray(notUp.sown)
      .map((value, i) => value + (moved[notUp.sown + i - members.now] ?? 0));
    const up = emergence(bed, crop.emergence);
    return up === null ? lookout : notUp.sown + up;
  };
  return {
    from: now,
    expected: follow(0, 0, null, origin),
    members: members.departures.map((departure, m) =>
      follow(normalQuantile(warmth(m)), normalQuantile(shade(m)), departure, comesUp(departure)),
    ),
  };
}

/** Requirements that go with the members, as multiples of the crop's own, each with the same number of them. [1] */
export function requirementDraws(
  { settings, members }: Scene,
  succession: string,
  { shift, spread }: { readonly shift: number; readonly spread: number },
): Float64Array {
  const draw = draws(settings.seed, `requirement ${succession}`);
  return Float64Array.from({ length: members.departures.length * REQUIREMENTS }, (_, i) =>
    Math.exp(shift + spread * normalQuantile(draw(i))),
  );
}

const at = ({ from, expected }: MemberCourse, hour: number): number =>
  Math.min(expected.length - 1, Math.max(0, hour - from));

/** Thermal time expected from now, or from emergence, to an hour. [°C·d] */
export const expectedAt = (course: MemberCourse, hour: number): number => course.expected[at(course, hour)]!;

/** How far each member's thermal time lies from the expected at an hour of the weather. [°C·d] */
export const departedBy = (course: MemberCourse, hour: number): readonly number[] => {
  const h = at(course, hour);
  return course.members.map((sum) => sum[h]! - course.expected[h]!);
};

/** Part of its requirement below which a bed is so far from size that only what it still lacks counts. [1] */
const FAR = 0.5;

/**
 * Spread that weather and covers give the thermal time of an hour: standard deviation of its logarithm.
 *
 * @param expected - Its thermal time then. [°C·d]
 * @param requirement - What its smallest size needs. [°C·d]
 */
export function weatherSpread(
  course: MemberCourse,
  hour: number,
  expected: number,
  requirement: number,
): number {
  const base = Math.max(expected, FAR * requirement);
  const logs = departedBy(course, hour).map((by) => Math.log1p(Math.max(-FAR, by / base)));
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / logs.length);
}
