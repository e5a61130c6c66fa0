import { settingKey } from "../farm/index.ts";
import type { Celsius } from "../quantity/index.ts";
import { breachesStanding } from "./evaluate.ts";
import type { Basis, LedgerEntry } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** What every setting would do in every interval, so that anyone can recompute sizes, worth and the choice. */
export function ledgerOf({ problem }: Planned): readonly LedgerEntry[] {
  const S = problem.settings.length;
  return Array.from({ length: problem.intervals }, (_, i) =>
    problem.settings.map((setting, s): LedgerEntry => {
      const k = i * S + s;
      return {
        walk: i,
        setting: settingKey(setting),
        allowed: problem.possible[k] === 1 && breachesStanding(problem, i, s).length === 0,
        lowest: problem.lowest[k]! as Celsius,
        highest: problem.highest[k]! as Celsius,
        successions: problem.successions.map((table) => ({
          id: table.standing.succession.id,
          thermalTime: table.thermalTimeIn[k]!,
          pace: table.pace[k]!,
          light: table.lightIn[k]!,
          heat: table.heat[k]!,
          damage: table.damage[k]!,
          safe: table.safe[k]!,
        })),
      };
    }),
  ).flat();
}

/** What the worth of one succession is computed from, together with the ledger. */
export function basisOf({ problem }: Planned, table: SuccessionTable): Basis {
  const { start, end, rate, middle } = table.growing.curve;
  return {
    shift: table.growing.belief.shift,
    thermalTime: table.thermalTime,
    light: table.light,
    whole: table.whole,
    cutting: table.cutting,
    curve: { start, end, rate, middle },
    outlets: table.outlets.map(({ fate, at, interval, share, days, spread, pace, light, heat, safe }) => ({
      kind: fate.kind,
      at,
      pick: fate.pick,
      interval,
      share,
      days,
      spread,
      added: problem.settings.map((setting, s) => ({
        setting: settingKey(setting),
        pace: pace[s]!,
        light: light[s]!,
        heat: heat[s]!,
        safe: safe[s]!,
      })),
    })),
  };
}
