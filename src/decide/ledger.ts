import { settingKey } from "../farm/index.ts";
import type { Celsius } from "../quantity/index.ts";
import type { LedgerEntry } from "./outcome.ts";
import type { Planned } from "./share.ts";

/** What every setting would do in every interval, so that anyone can recompute sizes, worth and the choice. */
export function ledgerOf({ problem }: Planned): readonly LedgerEntry[] {
  const S = problem.settings.length;
  return Array.from({ length: problem.intervals }, (_, i) =>
    problem.settings.map((setting, s): LedgerEntry => {
      const k = i * S + s;
      return {
        walk: i,
        setting: settingKey(setting),
        allowed: problem.possible[k] === 1 && problem.broken[k]!.length === 0,
        lowest: problem.lowest[k]! as Celsius,
        highest: problem.highest[k]! as Celsius,
        successions: problem.successions.map((table) => ({
          id: table.standing.succession.id,
          thermalTime: table.thermalTimeIn[k]!,
          pace: table.pace[k]!,
          light: table.lightIn[k]!,
          heat: table.heat[k]!,
          damage: table.damage[k]!,
        })),
      };
    }),
  ).flat();
}
