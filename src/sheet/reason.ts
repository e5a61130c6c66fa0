import type { Change, LimitName, Outcome, TunnelPlan } from "../decide/index.ts";
import { cools, frostReason, heatReason } from "./airReason.ts";
import { damageReason, dryReason, orderReason, timingReason } from "./bedReason.ts";
import type { Names } from "./names.ts";
import { ratherReason, total } from "./ratherReason.ts";
import { sheetCalled } from "./sheetCalled.ts";
import { cause, joined, type Why, why } from "./why.ts";
import { value } from "./words.ts";

/** Why a limit leaves no choice. */
const FORBIDS: Readonly<Record<LimitName, Why>> = {
  rowCoverInHeat: cause("Too hot: it would grow slower, not faster.", "Heat slows it."),
  wind: why("Other walks are too windy for it.", "Other walks: wind."),
  frozen: why("At other walks the cloth is frozen and may not be moved.", "Other walks: frozen cloth."),
  snow: why("At other walks it lies under snow and may not be moved.", "Other walks: under snow."),
  net: why("What grows here must stay under net.", "Must stay under net."),
  dim: why("Shade cloth may not keep it below its light floor any longer.", "Too little light any longer."),
  pieces: why("The cloth is needed on another tunnel.", "Cloth needed elsewhere."),
  changes: why("Your limit of changes a week leaves no other walk for it.", "Limit of changes a week."),
  minutes: why("There are no minutes left for it at other walks.", "Other walks: no minutes left."),
  picking: why("There is not time enough to cut more at that pick.", "No time to cut more."),
  washing: why("No more can be washed of that pick.", "No more can be washed."),
  cooler: why("The cooler holds no more.", "The cooler is full."),
};

/** What decided a change, from the plan with it beside the plan without. */
function decided(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why {
  const { farm } = outcome;
  const warmer = () => frostReason(change, plan, outcome);
  const cooler = () => heatReason(change, plan, outcome);
  const bySize = () => timingReason(change, outcome, names);
  const all = (...whys: readonly (Why | null)[]): Why | null => {
    const told = whys.filter((each) => each !== null);
    return told.length === 0 ? null : joined(told);
  };
  switch (change.decidedBy) {
    case "limit": {
      const limit = change.limit === null ? null : FORBIDS[change.limit];
      const shown = change.limit === "rowCoverInHeat" ? cooler() : null;
      return all(shown, limit, bySize()) ?? why("A limit leaves no other choice.");
    }
    case "damage": {
      const air = cools(change, outcome) ? (cooler() ?? warmer()) : (warmer() ?? cooler());
      return (
        all(air, damageReason(air, change, outcome, names)) ??
        why(`Lowers the damage to be feared by ${value(farm, change.gain.damage)}.`)
      );
    }
    case "stress":
      return (
        dryReason(change, outcome, names) ??
        cooler() ??
        why(`Spares the leaves heat: worth ${value(farm, change.gain.stress)}.`)
      );
    case "timing":
      return (
        all(cools(change, outcome) ? null : warmer(), bySize()) ??
        why("Brings more of it into size for the picks.")
      );
    case "again":
      return all(bySize(), why("More can be cut that grows again."))!;
    case "orders": {
      const gained = value(farm, change.gain.orders);
      const better = why(`Fills orders and stalls better: worth ${gained}.`, `Orders and stalls: ${gained}.`);
      return all(bySize(), orderReason(change, outcome) ?? better)!;
    }
    case "calm": {
      const sheet =
        outcome.since === null ? "the last sheet" : sheetCalled(farm, outcome.since.on, outcome.on);
      return why(`As on ${sheet}: to change it would gain too little.`, `As on ${sheet}.`);
    }
    case "labour":
      return why(`Saves work worth ${value(farm, change.gain.labour)}.`);
  }
}

/** Reasons that a worth of the whole change belongs to. */
const BY_WORTH: readonly Change["decidedBy"][] = ["timing", "again", "orders", "damage"];

/** Why a change is in the plan, what it is worth, and what another cover would do in its place. */
export function reason(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why {
  const gained = total(change.gain);
  const worth =
    BY_WORTH.includes(change.decidedBy) && gained > 0 ? `Worth ${value(outcome.farm, gained)} in all.` : "";
  return joined([
    decided(change, plan, outcome, names),
    why(worth, ""),
    why(ratherReason(change, outcome, names) ?? "", ""),
  ]);
}

/** What lies on a tunnel through one night, or by day, of a date. */
export function lyingOn(
  plan: TunnelPlan,
  outcome: Outcome,
  date: string,
  part: "morning" | "evening",
): TunnelPlan["now"] {
  const walk = outcome.walks.findIndex((each) => each.date === date && each.part === part);
  const chosen = walk < 0 ? plan.now : (plan.settings[plan.choice[walk] ?? -1] ?? plan.now);
  return chosen.filter(({ state }) => state !== "nights" || part === "evening");
}
