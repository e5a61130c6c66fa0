import type { SeasonOfYear, Settings } from "../../src/farm/index.ts";
import { type Growth, normalQuantile, type Seen } from "../../src/learn/index.ts";

/** A stream of chance of its own: the same seed gives the same farms. @source mulberry32, public domain */
export function chance(seed: number): { uniform(): number; normal(): number } {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return { uniform, normal: () => normalQuantile(uniform()) };
}

export type Chance = ReturnType<typeof chance>;

/** The truth of one crop on one farm, drawn from what is believed before any note. */
export interface Truth {
  readonly farm: number;
  readonly season: ReadonlyMap<SeasonOfYear, number>;
  readonly growths: readonly { readonly truth: number; readonly growth: Omit<Growth, "seen"> }[];
}

/** @param farm - Given: the farm lies just there. */
export function truthOf(
  { normal }: Chance,
  spread: number,
  sowings: number,
  { farmShare, seasonShare }: Settings,
  farm: number = normal() * spread * Math.sqrt(farmShare),
): Truth {
  const season = new Map<SeasonOfYear, number>(
    (["spring", "summer"] as const).map((name) => [name, normal() * spread * Math.sqrt(seasonShare)]),
  );
  return {
    farm,
    season,
    growths: Array.from({ length: sowings }, (_, i) => {
      const name: SeasonOfYear = i % 2 === 0 ? "spring" : "summer";
      const own = normal() * spread * Math.sqrt(1 - farmShare - seasonShare);
      return {
        truth: farm + season.get(name)! + own,
        growth: { sowing: `S${i}`, season: name, age: 0, regrowth: false },
      };
    }),
  };
}

/** A note as that truth makes it; null: a bed that is ready, of which nobody says that it is not. */
export function noteOf(
  { normal }: Chance,
  truth: number,
  kind: Seen["kind"],
  error: number,
  at: number,
): Seen | null {
  if (kind === "about") return { kind, value: truth + error * normal(), error };
  return truth + error * normal() > at ? { kind, value: at, error } : null;
}
