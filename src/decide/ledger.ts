import { settingKey } from "../farm/index.ts";
import type { Celsius } from "../quantity/index.ts";
import type { Evaluation, SuccessionResult } from "./evaluate.ts";
import { STEP } from "./harvest.ts";
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
        breaks: problem.broken[k]!,
        allowed: problem.broken[k]!.length === 0,
        dim: problem.dim[k]! > 0,
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
          rooted: table.rooted[k]!,
        })),
        undated: problem.undated.map(({ standing, safe }) => ({
          id: standing.succession.id,
          safe: safe[k]!,
        })),
      };
    }),
  ).flat();
}

/** Index of an outlet among those of its succession; null: it is not cut. */
export const outletIndex = ({ table, outlet }: SuccessionResult): number | null =>
  outlet === null ? null : table.outlets.indexOf(outlet);

const cutOf = (table: SuccessionTable, { successions }: Evaluation): number | null =>
  outletIndex(successions.find((result) => result.table.standing === table.standing)!);

/** What the worth of one succession is computed from, together with the ledger. */
export function basisOf({ problem, chosen, unchanged }: Planned, table: SuccessionTable): Basis {
  const { start, end, rate, middle } = table.growing.curve;
  return {
    shift: table.growing.belief.shift,
    thermalTime: table.thermalTime,
    light: table.light,
    unfit: table.standing.crop.unfit,
    mass: table.mass,
    price: table.price,
    cutting: table.cutting,
    regrown: table.regrown,
    curve: { start, end, rate, middle },
    outlets: table.outlets.map((outlet) => ({
      kind: outlet.fate.kind,
      at: outlet.at,
      pick: outlet.fate.pick,
      interval: outlet.interval,
      kept: outlet.kept,
      share: outlet.share,
      days: outlet.days,
      spread: outlet.spread,
      moved: outlet.moved.map((by) => by * STEP),
      rain: outlet.rain,
      night: outlet.dry?.night ?? null,
      added: problem.settings.map((setting, s) => ({
        setting: settingKey(setting),
        pace: outlet.pace[s]!,
        light: outlet.light[s]!,
        heat: outlet.heat[s]!,
        safe: outlet.safe[s]!,
        keeps: outlet.dry?.keeps[s] ?? 1,
      })),
    })),
    cut: cutOf(table, chosen),
    cutUnchanged: cutOf(table, unchanged),
  };
}
