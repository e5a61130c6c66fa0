import type { Alternative, Miss, Outcome, PlannedAround, SuccessionOutlook } from "../decide/index.ts";
import { celsius } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { otherwise, way } from "./fate.ts";
import { isLittle } from "./isLittle.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { samePick } from "./samePick.ts";
import { withinReach } from "./withinReach.ts";
import { capital, day, dayOfMonth, days, leafBeside, leafLimit, lowToHigh, setting, value } from "./words.ts";
import { TIED } from "./wrap.ts";

/** Ways out told by what their bed alone brings, and the share of the best one's worth below which another is not. [1] judgement */
const WAYS = 2;
const WORTH_TELLING = 0.5;

/** A succession that misses its market, and the honest ways out worth telling, best first. */
export interface MissBlock {
  readonly succession: string;
  readonly who: string;
  readonly tunnel: string;
  /** "too large Fri 24, 6 in" */
  readonly brief: string;
  readonly sentence: string;
  readonly covers: string;
  /** "Salad size with covers: Apr 22 … Apr 26, Friday market Apr 24 within reach." */
  readonly reach: string;
  /** Can covers not help at all? */
  readonly beyondCovers: boolean;
  readonly alternatives: readonly {
    readonly sentence: string;
    /** In as few words as say it. */
    readonly brief: string;
    /** What else it brings with it. */
    readonly beside: readonly string[];
    readonly worth: string | null;
  }[];
}

/** What covers could do about a miss; `what`: the setting that would, from the first walk on. */
const COULD: Readonly<Record<Miss["why"], (what: string | null) => string>> = {
  tooSmall: (what) =>
    what === null
      ? "Covers could bring it there, but the plan is worth more without."
      : `${what}, from the first walk on, would bring it there; the plan is worth more without.`,
  tooLarge: (what) =>
    what === null
      ? "Covers could hold it, but the plan is worth more without."
      : `${what}, from the first walk on, would hold it; the plan is worth more without.`,
};
const CANNOT: Readonly<Record<Miss["why"], string>> = {
  tooSmall: "No cover at hand brings it there in time.",
  tooLarge: "No cover at hand holds it that long.",
};

/** Why nothing is changed on a tunnel with a miss. */
const LEFT = "So nothing is changed on its tunnel.";

function coversOf(miss: Miss, tunnel: string, outcome: Outcome, names: Names): string {
  if (miss.coversCanHelp)
    return COULD[miss.why](miss.helps === null ? null : capital(setting(miss.helps, names.cover)));
  const plan = outcome.tunnels.find((each) => each.tunnel.id === tunnel);
  return plan?.changes.length === 0 ? `${CANNOT[miss.why]} ${LEFT}` : CANNOT[miss.why];
}

/** In what cold greens are kept whose days in store the catalogue has. [°C] */
const COLD = [celsius(0), celsius(2)] as const;

/** What a way out brings with it beside its worth. */
function beside(
  { farm, settings }: Outcome,
  { crop, succession }: SuccessionOutlook,
  way: Alternative,
): readonly string[] {
  const { units } = farm;
  const { fate } = way;
  const freed = way.forced ? way.freed : null;
  if (freed !== null)
    return [
      `Sow anew: the bed is free about ${days(Math.max(1, Math.round(freed.days)))} sooner, by judgement worth ${value(farm, freed.worth)}, not counted here.`,
    ];
  if (fate.kind !== "hold") return [];
  const lost = Math.round(100 * (1 - (1 - settings.holdLoss) ** fate.days));
  return [
    `Kept at ${lowToHigh(units, ...COLD)}${TIED}°${units === "US" ? "F" : "C"} it loses about ${lost}${TIED}% of its quality; local food rules come first.`,
    ...(succession.cuts + 1 < crop.cuts
      ? [
          `It is usually cut ${crop.cuts} times: growing again takes ${Math.round(100 * crop.regrowth)}${TIED}% of the warmth of the first time, and is not counted.`,
        ]
      : []),
  ];
}

/** What a way out comes to, with all else planned anew around it. */
function against(farm: Outcome["farm"], { planned, worth, off }: PlannedAround): string {
  if (planned) return "So the plan has it.";
  if (isLittle(farm, worth)) return "Worth as much as the plan.";
  const shown = value(farm, Math.abs(worth));
  const open = off >= Math.abs(worth) ? ", as far as was looked" : "";
  return worth < 0 ? `Costs ${shown} against the plan${open}.` : `Worth ${shown} more than the plan${open}.`;
}

function worthOf(farm: Outcome["farm"], way: Alternative): string | null {
  if (way.forced) return against(farm, way);
  return way.fate.kind === "none" ? null : `Worth ${value(farm, way.worth)}.`;
}

/** Ways out worth a line: each the farm was planned around, else the best by what the bed alone brings. */
function told({ alternatives }: Miss): readonly Alternative[] {
  const [best] = alternatives;
  return best === undefined || best.forced
    ? alternatives
    : alternatives.slice(0, WAYS).filter(({ worth }) => worth >= best.worth * WORTH_TELLING);
}

function block(outlook: SuccessionOutlook, miss: Miss, outcome: Outcome, names: Names): MissBlock {
  const { farm } = outcome;
  const { units } = farm;
  const { succession, crop } = outlook;
  const at = outlook.atPicks.find(({ pick }) => samePick(pick, miss.pick));
  const who = `${capital(names.succession(succession.id))} in ${names.tunnel(succession.tunnel)}`;
  const when = `on ${day(units, miss.pick.date)} for ${clean(miss.pick.market.name)}`;
  const [small, large] = [leafLimit(units, crop.smallest), leafLimit(units, crop.largest)];
  const limit = miss.why === "tooSmall" ? crop.smallest : crop.largest;
  const size = at === undefined ? null : mark(outlook) + leafBeside(units, at.planned, limit);
  const sentence =
    miss.why === "tooSmall"
      ? size === null
        ? `${who} is too small ${when}: salad size begins at ${small}.`
        : `${who} is too small ${when}: ${size} with the plan, salad size begins at ${small}.`
      : size === null
        ? `${who} is too large ${when}: salad size ends at ${large}.`
        : `${who} is too large ${when}: ${size} with the plan, salad size ends at ${large}.`;
  return {
    succession: succession.id,
    who: capital(names.succession(succession.id)),
    tunnel: names.tunnel(succession.tunnel),
    brief: [
      `${miss.why === "tooSmall" ? "too small" : "too large"} ${dayOfMonth(miss.pick.date)}`,
      ...(size === null ? [] : [size]),
    ].join(", "),
    sentence,
    covers: coversOf(miss, succession.tunnel, outcome, names),
    beyondCovers: !miss.coversCanHelp,
    reach: withinReach(farm, outlook),
    alternatives: told(miss).map((each) => ({
      sentence: otherwise(farm, each.fate, miss.pick.at),
      brief: way(farm, each.fate),
      beside: beside(outcome, outlook, each),
      worth: worthOf(farm, each),
    })),
  };
}

export const misses = (outcome: Outcome, names: Names): readonly MissBlock[] =>
  outcome.successions.flatMap((outlook) =>
    outlook.miss === null ? [] : [block(outlook, outlook.miss, outcome, names)],
  );
