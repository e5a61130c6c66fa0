import {
  expectedValue,
  type Moves,
  type OutletTable,
  type SuccessionTable,
  type TunnelProblem,
} from "../../src/decide/index.ts";
import { type Crop, catalogue, type Setting } from "../../src/farm/index.ts";
import { leafCurve, lightOnWeight } from "../../src/growth/index.ts";
import { degreeDays, type Instant } from "../../src/quantity/index.ts";
import { seeded } from "./seeded.ts";

export { seeded } from "./seeded.ts";

const BARE: Setting = [];
const CHOICES: readonly Setting[] = [
  BARE,
  [{ cover: "shade-40", state: "on" }],
  [{ cover: "row-cover-19", state: "on" }],
  [{ cover: "row-cover-19", state: "nights" }],
];

/** A tunnel's problem with random growth, light, heat, danger, limits and costs; small enough to try every schedule. */
export function randomProblem(seed: number): TunnelProblem {
  const random = seeded(seed);
  const between = (a: number, b: number): number => a + (b - a) * random();
  const whole = (a: number, b: number): number => Math.floor(between(a, b + 1));
  const { crops, settings } = catalogue();
  const all = [...crops.values()];
  const n = whole(3, 6);
  const S = whole(2, 4);
  const options = CHOICES.slice(0, S);
  const table = (make: () => number): Float64Array => Float64Array.from({ length: n * S }, make);
  const minutes = (make: () => number): Float64Array =>
    Float64Array.from({ length: S * S }, (_, k) =>
      Math.floor(k / S) === k % S && random() < 0.7 ? 0 : make(),
    );
  const bits = (size: number, chance: number): Uint8Array =>
    Uint8Array.from({ length: size }, () => (random() < chance ? 1 : 0));
  const moves = (): Moves => ({
    minutes: minutes(() => between(0, 20)),
    puts: bits(S * S, 0.3),
    takes: bits(S * S, 0.3),
  });
  const now = whole(0, S - 1);
  const possible = bits(n * S, 0.85);
  for (let i = 0; i < n; i++) possible[i * S + now] = 1;
  const parts = Array.from({ length: n }, (_, i) => (i % 2 === 0 ? ("day" as const) : ("night" as const)));

  const sometimes = (chance: number) => (): number => (random() < chance ? 1 : 0);

  const successionTable = (): SuccessionTable => {
    const endangered = Uint8Array.from({ length: n }, sometimes(0.3));
    const crop = all[whole(0, all.length - 1)] as Crop;
    const curve = leafCurve(crop, degreeDays(crop.requirement), settings);
    const belief = {
      shift: between(-0.1, 0.1),
      spread: between(0.03, 0.2),
      head: 0,
      surprising: false,
      measured: 0,
    };
    const start = crop.requirement * between(0.7, 1.25);
    const range = [start, start + 20 * n + 40] as const;
    const value = expectedValue(between(20, 300), curve, crop, belief, range, settings);
    const row = (make: () => number): Float64Array => Float64Array.from({ length: S }, make);
    const outlets = Array.from({ length: whole(1, 5) }, (): OutletTable => {
      const interval = whole(0, n);
      // A third are cut at the walk itself: what lies from that walk on adds nothing.
      const atWalk = random() < 0.33;
      const beyond = interval === n;
      return {
        fate: { kind: "none" } as never,
        at: 0 as Instant,
        interval,
        share: between(0.4, 1),
        days: between(25, 40),
        pace: row(() => (atWalk ? 0 : between(0, 40))),
        light: row(() => (atWalk ? 0 : between(0, 60))),
        heat: row(() => (atWalk || beyond ? 0 : between(0, 20))),
        safe: row(() => (atWalk || beyond ? 0 : -between(0, 1))),
        spread: belief.spread,
        value,
        // Until it is cut a bed is endangered as if it stayed; after that, less often or never.
        endangered: endangered.map((standing, i) =>
          i < interval ? standing : standing && random() < 0.3 ? 1 : 0,
        ),
        frozen: false,
        thaw: null,
      };
    });
    return {
      standing: { crop } as never,
      growing: {} as never,
      whole: 1,
      thermalTime: start,
      light: between(300, 900),
      thermalTimeIn: table(() => 0),
      pace: table(() => between(0, 20)),
      lightIn: table(() => between(0, 30)),
      heat: table(() => (random() < 0.2 ? between(0, 40) : 0)),
      safe: table(() => (random() < 0.2 ? -between(0, 2) : 0)),
      damage: table(() => 0),
      endangered,
      cutting: between(0, 60),
      outlets,
    };
  };

  return {
    settings: options,
    now,
    intervals: n,
    parts,
    week: Array.from({ length: n }, (_, i) => (i < 4 ? 0 : 1)),
    changesPerWeek: whole(0, 3),
    possible,
    broken: Array.from({ length: n * S }, () => (random() < 0.12 ? (["rowCoverInHeat"] as const) : [])),
    poor: bits(n * S, 0.5),
    endangered: bits(n, 0.1),
    dim: bits(n * S, 0.2),
    dimDays: whole(0, 2),
    moves: { day: moves(), night: moves() },
    windy: Array.from({ length: n }, () => random() < 0.2),
    frozen: Array.from({ length: n }, () => random() < 0.2),
    minute: between(0, 0.6),
    successions: Array.from({ length: whole(1, 3) }, successionTable),
    heatStress: settings.heatStress,
    stressMost: settings.stressMost,
    lightShare: ({ standing }, light, days) => lightOnWeight(light / days, standing.crop, settings),
    lowest: table(() => 0),
    highest: table(() => 0),
  };
}
