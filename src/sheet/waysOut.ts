import type {
  Alternative,
  Fate,
  Freed,
  Miss,
  Outcome,
  PlannedAround,
  SuccessionOutlook,
} from "../decide/index.ts";
import { celsius } from "../quantity/index.ts";
import { otherwise, way } from "./fate.ts";
import { isLittle } from "./isLittle.ts";
import { samePick } from "./samePick.ts";
import { capital, days, lowToHigh, value } from "./words.ts";
import { TIED } from "./wrap.ts";

/** Cuts told by what their bed alone brings, and the share of the best one's greens below which another way is not. [1] judgement */
const WAYS = 2;
const WORTH_TELLING = 0.5;

/** An honest way out of a miss. */
export interface WayOut {
  readonly sentence: string;
  /** In as few words as say it. */
  readonly brief: string;
  /** What else it brings with it. */
  readonly beside: readonly string[];
  readonly worth: string | null;
  /** What the plan does. */
  readonly planned: boolean;
}

type Farm = Outcome["farm"];

/** The same greens for the same selling day, cut at the same moment. */
const isSame = (one: Fate, other: Fate): boolean =>
  one.kind === "none" || other.kind === "none"
    ? one.kind === other.kind
    : one.kind === other.kind &&
      one.as === other.as &&
      samePick(one.pick, other.pick) &&
      (one.kind === "pick" || (other.kind === "hold" && one.cut === other.cut));

/** In what cold greens are kept whose days in store the catalogue has. [°C] */
const COLD = [celsius(0), celsius(2)] as const;

function kept({ farm, settings }: Outcome, { fate }: Alternative): readonly string[] {
  if (fate.kind !== "hold") return [];
  const lost = Math.round(100 * (1 - (1 - settings.holdLoss) ** fate.days));
  return [
    `Kept at ${lowToHigh(farm.units, ...COLD)}${TIED}°${farm.units === "US" ? "F" : "C"} it loses about ${lost}${TIED}% of its quality.`,
  ];
}

const free = ({ days: sooner }: Freed): string =>
  `the bed is free about ${days(Math.max(1, Math.round(sooner)))} sooner`;

/** What a bed left uncut could make room for. */
const cleared = (farm: Farm, { freed }: Miss): readonly string[] =>
  freed === null || isLittle(farm, freed.worth)
    ? []
    : [
        `${capital(free(freed))}: sowing anew may bring ${value(farm, freed.worth)} more, by judgement; not counted here.`,
      ];

/** What a way out comes to, with all else planned anew around it. */
function against(farm: Farm, { planned, worth, off }: PlannedAround): string {
  if (planned) return "That is the plan.";
  if (isLittle(farm, worth)) return "As good as the plan.";
  const shown = value(farm, Math.abs(worth));
  const beside = `${shown} ${worth < 0 ? "less" : "more"} than the plan.`;
  return off >= Math.abs(worth) ? `Perhaps ${beside}` : beside;
}

/** What a cut's bed alone brings; with the first cut told, how much of it comes only with the next. */
function brings(farm: Farm, { fate, worth }: Alternative, { again }: Miss, isFirst: boolean): string {
  if (fate.kind === "none") return "";
  const shown = `Worth ${value(farm, worth)}`;
  if (again === null) return `${shown}.`;
  return isFirst
    ? `${shown}, up to ${value(farm, again)} of it by a later cut, by judgement.`
    : `${shown}, the later cut counted.`;
}

/** Of a cut told by what its bed alone brings; one worth more than the plan's is not in the plan for what it takes from others. */
function alone(farm: Farm, each: Alternative, plan: Alternative, worth: string): string {
  if (each === plan)
    return isLittle(farm, each.worth) ? "That is the plan." : `That is the plan. ${worth}`.trimEnd();
  if (each.worth <= plan.worth || isLittle(farm, each.worth - plan.worth)) return worth;
  return `${worth} That is by itself: the plan's is worth more to the whole farm.`;
}

function worthOf(farm: Farm, each: Alternative, plan: Alternative, worth: string): string | null {
  if (each.forced) return against(farm, each);
  return alone(farm, each, plan, worth) || null;
}

/** What a way brings now, the later cut left out. */
const greens = ({ fate, worth }: Alternative, { again }: Miss): number =>
  worth - (fate.kind === "none" ? 0 : (again ?? 0));

/** Clearing the bed, among cuts told by what the bed alone brings, where it is worth as much. */
function withSownAnew(
  farm: Farm,
  { freed }: Miss,
  told: readonly Alternative[],
  ways: readonly WayOut[],
): readonly WayOut[] {
  if (told.length === 0 || told[0]!.forced || freed === null || isLittle(farm, freed.worth)) return ways;
  if (freed.worth < Math.max(...told.map(({ worth }) => worth)) * WORTH_TELLING) return ways;
  const anew: WayOut = {
    sentence: "Clear it and sow anew.",
    brief: "Clear it and sow anew.",
    beside: [`${capital(free(freed))}.`],
    worth: `By judgement worth ${value(farm, freed.worth)}.`,
    planned: false,
  };
  const place = told.filter(({ worth }) => worth >= freed.worth).length;
  return [...ways.slice(0, place), anew, ...ways.slice(place)];
}

/** Ways out of a miss worth a line, the best first: each the farm was planned around, else by what the bed brings. */
export function waysOut(outcome: Outcome, { fate, worth }: SuccessionOutlook, miss: Miss): readonly WayOut[] {
  const { farm } = outcome;
  const [best] = miss.alternatives;
  const found = miss.alternatives.find((each) => isSame(each.fate, fate));
  const plan = found ?? ({ forced: false, fate, worth } as const);
  const told =
    best === undefined || best.forced
      ? miss.alternatives
      : [...(found === undefined ? [plan] : []), ...miss.alternatives].filter(
          (each, i) =>
            each === plan ||
            i === 0 ||
            (i < WAYS && greens(each, miss) >= Math.max(0, greens(best, miss)) * WORTH_TELLING),
        );
  const first = told.find((each) => each.fate.kind !== "none");
  const ways = told.map((each) => ({
    sentence: otherwise(farm, each.fate, miss.pick.at),
    brief: way(farm, each.fate),
    beside: [
      ...kept(outcome, each),
      ...(each.forced && !each.planned && each.fate.kind === "none" ? cleared(farm, miss) : []),
    ],
    worth: worthOf(farm, each, plan, brings(farm, each, miss, each === first)),
    planned: each.forced ? each.planned : each === plan,
  }));
  return withSownAnew(farm, miss, told, ways);
}
