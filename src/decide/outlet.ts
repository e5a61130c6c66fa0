import { between } from "../growth/index.ts";
import { daysBetween, HOUR, type Instant, type LocalDate } from "../quantity/index.ts";
import { rainBefore } from "./dry.ts";
import type { Fate, Pick } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { Growing, Standing } from "./standing.ts";
import { type Frost, frostAt } from "./thaw.ts";

/** A moment at which a succession may be cut, and what it is cut for. */
export interface Outlet extends Frost {
  readonly fate: Fate & { readonly kind: "pick" | "hold" };
  readonly at: Instant;
  /** The interval it lies in; the number of intervals when it lies beyond them. */
  readonly interval: number;
  /** Share of its quality left when it has been kept cold up to the market. [0–1] */
  readonly kept: number;
  /** Share of the price for its market and for waiting. [0–1] */
  readonly share: number;
  /** Days since emergence or the last cut. [d] */
  readonly days: number;
  /** That falls from noon of the day before up to a cut in the morning; none before a later one. [mm] */
  readonly rain: number;
}

/**
 * Every moment a succession may be cut, in order of time: at each pick, and early at each morning walk for the pick it keeps cold for best.
 * Nobody cuts frozen leaves, nor lifts the cloth frozen over them: an early cut waits until they have thawed, a pick keeps its
 * hour and says so. Cutting early is offered once the bed, left as it is, has reached its size, since nobody keeps leaves cold that are
 * too small, and on a day the grower has settled it for.
 */
export function outletsOf(
  { farm, keep, picks, horizon, frost, weather, settings }: Scene,
  { succession, crop }: Standing,
  growing: Growing,
): readonly Outlet[] {
  const marketShare = ({ market }: Pick): number =>
    succession.market === null || succession.market === market.id ? 1 : settings.otherMarketShare;
  const wait = (at: Instant): number => (1 - settings.bedDay) ** ((at - horizon.on) / (24 * HOUR));
  /** Share of quality left after days in the cold, up to the market. */
  const kept = (days: number): number => (1 - settings.holdLoss) ** days;
  const place = (at: Instant): number => {
    const hour = at / HOUR - weather.first;
    if (hour >= horizon.end) return horizon.walks.length;
    return Math.max(
      0,
      horizon.starts.findLastIndex((start) => start <= hour),
    );
  };
  const grown = (at: Instant): number => Math.max(1, at / HOUR - weather.first - growing.origin) / 24;
  const frozenAt = (at: Instant): Frost => frostAt(farm.place.zone, frost, weather.first, at);
  const atPicks = picks.map((pick) => ({
    fate: { kind: "pick" as const, pick, as: "salad" as const },
    at: pick.at,
    interval: place(pick.at),
    kept: kept(daysBetween(pick.date, pick.marketDate)),
    share: marketShare(pick) * wait(pick.at),
    days: grown(pick.at),
    ...frozenAt(pick.at),
  }));
  const { unchanged, origin, requirement, belief } = growing;
  const grownTo = (at: Instant): number =>
    belief.head + between(unchanged.pace, unchanged.from, origin, Math.round(at / HOUR) - weather.first);
  const isSettled = (date: LocalDate): boolean =>
    keep.some((kept) => kept.kind === "cut" && kept.succession === succession.id && kept.date === date);
  const early = horizon.walks
    .filter(
      ({ part, at, date }) =>
        part === "morning" && (isSettled(date) || grownTo(at) >= requirement * Math.exp(belief.shift)),
    )
    .flatMap((walk) => {
      const { date } = walk;
      const state = frozenAt(walk.at);
      const at = state.frozen ? state.thaw : walk.at;
      if (at === null) return [];
      const best = picks
        .filter((pick) => pick.at - at >= 12 * HOUR)
        .map((pick) => ({ pick, days: daysBetween(date, pick.marketDate) }))
        .filter((hold) => hold.days <= crop.storage)
        .map((hold) => ({
          ...hold,
          kept: kept(hold.days),
          share: marketShare(hold.pick) * wait(at),
        }))
        .sort((a, b) => b.share * b.kept - a.share * a.kept)[0];
      if (best === undefined) return [];
      const fate = { kind: "hold" as const, cut: at, days: best.days, pick: best.pick, as: "salad" as const };
      return [
        { fate, at, interval: place(at), kept: best.kept, share: best.share, days: grown(at), ...state },
      ];
    });
  return [...atPicks, ...early]
    .filter(({ at }) => at / HOUR - weather.first > growing.origin)
    .map((outlet) => ({ ...outlet, rain: rainBefore(farm.place.zone, weather, outlet.at) }))
    .sort((a, b) => a.at - b.at);
}
