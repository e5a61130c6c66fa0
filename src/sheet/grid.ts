import type { Outcome, TunnelPlan } from "../decide/index.ts";
import { type Setting, settingKey } from "../farm/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import type { Names } from "./names.ts";
import { dayOfMonth, howShort, lowToHigh, setting, settingAt, settingShort } from "./words.ts";

/** The tunnels by morning and evening. */
export interface Grid {
  readonly unit: string;
  readonly days: readonly GridDay[];
  readonly tunnels: readonly GridTunnel[];
}

export interface GridDay {
  readonly date: LocalDate;
  readonly label: string;
  /** Lowest and highest outside; null where unknown. */
  readonly outside: string | null;
}

export interface GridTunnel {
  readonly tunnel: string;
  readonly name: string;
  readonly now: string;
  /** Anything to do in the days planned? A rhythm is work too. */
  readonly idle: boolean;
  readonly rows: readonly { readonly part: "morning" | "evening"; readonly cells: readonly GridCell[] }[];
}

/** One tunnel at one walk; null where the day has no such walk. */
export type GridCell = {
  /** What lies on it from this walk on. */
  readonly lies: string;
  /** What the plan has on it from this walk on, by day and by night; the same words as long as nothing is changed. */
  readonly plan: string;
  /** The cloth of it, and how that lies where it does not simply lie: "vented". */
  readonly cloth: string;
  readonly how: string | null;
  /** What is done at this walk: a change of plan, the round of a rhythm, or nothing. */
  readonly work: "change" | "round" | "none";
  /** What the round of a rhythm does at this time of day. */
  readonly round: "on" | "off";
} | null;

const settingFrom = (plan: TunnelPlan, walk: number): Setting =>
  walk < 0 ? plan.now : (plan.settings[plan.choice[walk] ?? -1] ?? plan.now);

const isRhythm = (layers: Setting): boolean => layers.some(({ state }) => state === "nights");

function cell(plan: TunnelPlan, outcome: Outcome, names: Names, walk: number): GridCell {
  const each = outcome.walks[walk];
  if (each === undefined) return null;
  const [before, after] = [settingFrom(plan, walk - 1), settingFrom(plan, walk)];
  const changed = settingKey(before) !== settingKey(after);
  return {
    lies: settingAt(after, each.part, names.shortCover),
    plan: settingShort(after, names.tightCover),
    cloth: after.map(({ cover }) => cover).join(" "),
    how: howShort(after),
    round: each.part === "evening" ? "on" : "off",
    work: changed ? "change" : isRhythm(after) ? "round" : "none",
  };
}

const dates = (outcome: Outcome): LocalDate[] => [...new Set(outcome.walks.map(({ date }) => date))];

/** Days beyond the forecast rest on the last known ones. */
const about = (origin: string | undefined): string => (origin === "carried" || origin === "usual" ? "~" : "");

export function grid(outcome: Outcome, names: Names): Grid {
  const { units } = outcome.farm;
  const days = dates(outcome);
  return {
    unit: units === "US" ? "°F" : "°C",
    days: days.map((date) => {
      const weather = outcome.weather.find((each) => each.date === date);
      return {
        date,
        label: dayOfMonth(date),
        outside:
          weather === undefined ? null : about(weather.origin) + lowToHigh(units, weather.low, weather.high),
      };
    }),
    tunnels: outcome.tunnels.map((plan) => {
      const rows = (["morning", "evening"] as const).map((part) => ({
        part,
        cells: days.map((date) =>
          cell(
            plan,
            outcome,
            names,
            outcome.walks.findIndex((walk) => walk.date === date && walk.part === part),
          ),
        ),
      }));
      return {
        tunnel: plan.tunnel.id,
        name: names.tunnel(plan.tunnel.id),
        now: setting(plan.now, names.shortCover),
        idle: rows.every(({ cells }) => cells.every((each) => each === null || each.work === "none")),
        rows,
      };
    }),
  };
}

/** Is the round of a rhythm walked in these days? */
export const hasRounds = ({ tunnels }: Grid): boolean =>
  tunnels.some(({ rows }) => rows.some(({ cells }) => cells.some((cell) => cell?.work === "round")));
