import { probit } from "simple-statistics";
import type { Settings } from "../farm/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import { addDays } from "../quantity/index.ts";
import { draws, TOGETHER } from "./draws.ts";
import type { LowHigh, PastYears } from "./pastYears.ts";
import type { DayWeather } from "./weather.ts";

const NONE: LowHigh = { low: 0, high: 0 };

const both = (of: (key: "low" | "high") => number): LowHigh => ({ low: of("low"), high: of("high") });

/**
 * Independent standard normal values for a row of days, made so that their sums over few and over many days come out as they
 * should with few members: the sum of all is drawn first, then that of the first half, and so on down to single days. What moves
 * the sum of the days so far most is spread evenly together.
 *
 * @source the Brownian bridge
 */
function bridged(seed: number, name: string, days: number): (member: number) => Float64Array {
  const steps: { readonly from: number; readonly at: number; readonly to: number }[] = [];
  const open = [{ from: 0, to: days }];
  for (const { from, to } of open) {
    const at = (from + to) >> 1;
    if (at === from) continue;
    steps.push({ from, at, to });
    open.push({ from, to: at }, { from: at, to });
  }
  const moves = ({ from, at, to }: (typeof steps)[number]): number =>
    ((at - from) * (to - at)) / ((to - from) * at);
  const ranked = [...steps].sort((a, b) => moves(b) - moves(a));
  const nth = (k: number): ((member: number) => number) =>
    k < TOGETHER ? draws(seed, name, k) : draws(seed, `${name} ${k}`);
  const whole = nth(0);
  const parts = steps.map((step) => nth(1 + ranked.indexOf(step)));
  return (member) => {
    const sums = new Float64Array(days + 1);
    sums[days] = Math.sqrt(days) * probit(whole(member));
    steps.forEach(({ from, at, to }, k) => {
      const [before, after] = [at - from, to - at];
      const between = (after * sums[from]! + before * sums[to]!) / (to - from);
      sums[at] = between + Math.sqrt((before * after) / (to - from)) * probit(parts[k]!(member));
    });
    return Float64Array.from({ length: days }, (_, i) => sums[i + 1]! - sums[i]!);
  };
}

const isKnown = ({ origin }: DayWeather): boolean => origin === "forecast" || origin === "logger";

/**
 * How far each day ahead of a member may lie from the weather as it is expected.
 *
 * @param days - From today on.
 * @param known - Is the day before them logged?
 * @param errors - Spread of the forecast's error on each of them; nothing where it foretells nothing. [°C]
 */
export function departuresOf(
  days: readonly DayWeather[],
  known: boolean,
  errors: readonly LowHigh[],
  past: PastYears | null,
  { seed, dayToDay, lowToHigh, forecastSpreadMost, carriedLevel }: Settings,
): (member: number) => readonly LowHigh[] {
  const fresh = Math.sqrt(1 - dayToDay ** 2);
  const common = bridged(seed, "days", days.length);
  const apart = bridged(seed, "low less high", days.length);
  const [share, own] = [Math.sqrt((1 + lowToHigh) / 2), Math.sqrt((1 - lowToHigh) / 2)];
  /** Correlated for low and high: what both share, and what sets them apart. */
  const paired = (a: number, b: number): LowHigh => ({
    low: share * a + own * b,
    high: share * a - own * b,
  });
  const levels = [draws(seed, "level"), draws(seed, "level low less high")] as const;
  const usual = days.map(({ date }) => past?.spread(date) ?? both(() => forecastSpreadMost));
  const last = days.findLastIndex(isKnown);
  const nothing = last < 0 && !known;
  const from = addDays(days[0]!.date, last) as LocalDate;
  const stretches = past?.stretches(from, days.length - last) ?? [];
  const stretch = draws(seed, "past year");

  return (member) => {
    const year = stretches[Math.floor(stretch(member) * stretches.length)];
    const level = paired(probit(levels[0](member)), probit(levels[1](member)));
    const [together, differing] = [common(member), apart(member)];
    const course: LowHigh[] = [];
    let error = NONE;
    let season = NONE;
    let ended = NONE;
    let since = 0;
    days.forEach((day, i) => {
      const e = paired(together[i]!, differing[i]!);
      error = i === 0 ? e : both((key) => dayToDay * error[key] + fresh * e[key]);
      if (isKnown(day)) {
        ended = both((key) => Math.min(errors[i]![key], usual[i]![key]) * error[key]);
        [season, since] = [NONE, 0];
        course.push(ended);
        return;
      }
      since += 1;
      const kept = nothing ? 0 : dayToDay ** since;
      season =
        year !== undefined && i > last
          ? both((key) => year[i - last]![key] - kept * year[0]![key])
          : both((key) =>
              nothing && i === 0
                ? usual[i]![key] * e[key]
                : dayToDay * season[key] + fresh * usual[i]![key] * e[key],
            );
      const drift = day.origin === "usual" ? 0 : carriedLevel * (1 - kept);
      course.push(both((key) => kept * ended[key] + season[key] + drift * level[key]));
    });
    return course;
  };
}
