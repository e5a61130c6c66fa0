import type { Miss, Outcome, SuccessionOutlook } from "../decide/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { samePick } from "./samePick.ts";
import { type WayOut, waysOut } from "./waysOut.ts";
import { withinReach } from "./withinReach.ts";
import { capital, day, dayOfMonth, leafBeside, leafLimit, setting } from "./words.ts";

/** A succession that misses its market, and the honest ways out worth telling, best first. */
export interface MissBlock {
  readonly succession: string;
  readonly who: string;
  readonly tunnel: string;
  /** "too large Fri 24, 6 in" */
  readonly brief: string;
  readonly sentence: string;
  readonly covers: string;
  /** "With covers, salad size from Apr 22 at the earliest and Apr 26 at the latest: right for Friday market Apr 24." */
  readonly reach: string;
  /** Can covers not help at all? */
  readonly beyondCovers: boolean;
  readonly alternatives: readonly WayOut[];
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

/** Why nothing is changed on a tunnel with misses; told with the first of them that covers cannot help. */
const LEFT = "So nothing is changed on its tunnel.";

function coversOf(
  { succession: { id, tunnel } }: SuccessionOutlook,
  miss: Miss,
  outcome: Outcome,
  names: Names,
): string {
  if (miss.coversCanHelp)
    return COULD[miss.why](miss.helps === null ? null : capital(setting(miss.helps, names.cover)));
  const plan = outcome.tunnels.find((each) => each.tunnel.id === tunnel);
  const first = outcome.successions.find(
    (other) => other.succession.tunnel === tunnel && other.miss?.coversCanHelp === false,
  );
  return plan?.changes.length === 0 && first?.succession.id === id
    ? `${CANNOT[miss.why]} ${LEFT}`
    : CANNOT[miss.why];
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
        : `${who} is too small ${when}: ${size} by then; salad size begins at ${small}.`
      : size === null
        ? `${who} is too large ${when}: salad size ends at ${large}.`
        : `${who} is too large ${when}: ${size} by then; salad size ends at ${large}.`;
  return {
    succession: succession.id,
    who: capital(names.succession(succession.id)),
    tunnel: names.tunnel(succession.tunnel),
    brief: [
      `${miss.why === "tooSmall" ? "too small" : "too large"} ${dayOfMonth(miss.pick.date)}`,
      ...(size === null ? [] : [size]),
    ].join(", "),
    sentence,
    covers: coversOf(outlook, miss, outcome, names),
    beyondCovers: !miss.coversCanHelp,
    reach: withinReach(farm, outlook),
    alternatives: waysOut(outcome, outlook, miss),
  };
}

export const misses = (outcome: Outcome, names: Names): readonly MissBlock[] =>
  outcome.successions.flatMap((outlook) =>
    outlook.miss === null ? [] : [block(outlook, outlook.miss, outcome, names)],
  );
