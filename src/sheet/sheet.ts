import type { LimitName, Outcome, Parts, TogetherPlan } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { formatProblem, list, type Problem } from "../problem/index.ts";
import { type Instant, localDate } from "../quantity/index.ts";
import type { NoCloth } from "../watch/index.ts";
import { type BedGroup, bedGroups } from "./bedsTable.ts";
import { cautions } from "./cautions.ts";
import { clean } from "./clean.ts";
import { type Grid, grid, hasRounds } from "./grid.ts";
import { madeFrom, membersTold } from "./madeFrom.ts";
import { type MissBlock, misses } from "./misses.ts";
import { type Names, namesOf } from "./names.ts";
import { type PickBlock, picks } from "./picks.ts";
import { type ReachTable, reachTable } from "./reachTable.ts";
import { sheetCalled } from "./sheetCalled.ts";
import { type SinceBlock, since } from "./since.ts";
import { type Strip, strip } from "./strip.ts";
import { unforeseen, urgent } from "./urgent.ts";
import { type WalkBlock, walks } from "./walks.ts";
import type { Urgent } from "./warned.ts";
import { whatIfLines } from "./whatIfLine.ts";
import { day, dayAndYear, minutesTogether, moment, value } from "./words.ts";

/** The week's answer in words: units chosen, numbers rounded, sentences whole; what every rendering is made from. */
export interface Sheet {
  readonly title: string;
  /** The moment it was made for. */
  readonly made: string;
  readonly on: Instant;
  readonly urgent: readonly Urgent[];
  /** Said where there is no frost and no heat to tell of. */
  readonly quiet: string | null;
  /** null: no sheet was given out before, or it has nothing to say of these days. */
  readonly since: SinceBlock | null;
  /** What the plan comes to against changing nothing. */
  readonly summary: readonly string[];
  /** Limits no allowed plan keeps. */
  readonly limits: readonly string[];
  /** Is the first walk on the day it was made for? */
  readonly startsToday: boolean;
  readonly walks: readonly WalkBlock[];
  readonly grid: Grid;
  readonly picks: readonly PickBlock[];
  readonly misses: readonly MissBlock[];
  readonly beds: readonly BedGroup[];
  readonly reach: ReachTable;
  /** Where a check strip would teach most; null: nowhere worth it. */
  readonly strip: Strip | null;
  /** What one thing more would be worth, one line each; none where it was not asked for. */
  readonly whatIf: readonly string[];
  readonly needsYou: readonly string[];
  readonly madeFrom: readonly string[];
  /** How odds and plan were found and how far they are to be trusted; whole sentences. */
  readonly found: readonly string[];
  readonly marks: readonly string[];
  readonly cautions: readonly string[];
}

const GAVE_WAY: Readonly<Record<LimitName, (tunnel: string) => string>> = {
  rowCoverInHeat: (tunnel) =>
    `${tunnel}: a cloth stays on in heat, because at no walk before it the cloth may be moved: it is frozen, you keep it there, or your minutes or changes a week are used up.`,
  wind: (tunnel) =>
    `${tunnel}: cloth is put on in wind above your limit: at every other walk in time it is as windy, you keep the tunnel as it is, or your minutes or changes a week are used up.`,
  frozen: (tunnel) =>
    `${tunnel}: cloth has to be moved while frozen: at every other walk in time it is frozen too, you keep the tunnel as it is, or your minutes or changes a week are used up. Thaw it first if you can.`,
  snow: (tunnel) =>
    `${tunnel}: cloth has to be moved while snow lies: at every other walk in time it does too, you keep the tunnel as it is, or your minutes or changes a week are used up. Brush it off gently first, and drag nothing from under it.`,
  net: (tunnel) => `${tunnel}: what must stay under net is without it for a time.`,
  dim: (tunnel) => `${tunnel}: shade cloth keeps it below its light floor longer than your settings allow.`,
  pieces: (tunnel) => `${tunnel}: the plan asks for more cloth than is free.`,
  changes: (tunnel) => `${tunnel}: the plan asks for more changes a week than your settings allow.`,
  minutes: (tunnel) => `${tunnel}: the covers take more minutes at a walk than your settings allow.`,
  picking: (tunnel) => `${tunnel}: cutting takes more minutes at a pick than your settings allow.`,
  washing: (tunnel) => `${tunnel}: more is cut at once than can be washed.`,
  cooler: (tunnel) => `${tunnel}: more is kept cold in a night than the cooler holds.`,
};

/** Cloth that stays on in heat, where it is known why. */
const STAYS_ON: Partial<Readonly<Record<NoCloth, (tunnel: string) => string>>> = {
  keptOn: (tunnel) => `${tunnel}: a cloth stays on in heat, because you keep it there.`,
  minutesOff: (tunnel) =>
    `${tunnel}: a cloth stays on in heat, because no walk before it has the minutes to take it off.`,
};

function gaveWayTold(limit: LimitName, tunnel: string, { warnings }: Outcome, names: Names): string {
  const why = warnings.flatMap((each) =>
    each.kind === "heat" && each.tunnel === tunnel ? (each.noClothLeft ?? []) : [],
  )[0];
  const told = limit === "rowCoverInHeat" && why !== undefined ? STAYS_ON[why] : undefined;
  return (told ?? GAVE_WAY[limit])(names.tunnel(tunnel));
}

const limits = (outcome: Outcome, names: Names): string[] => [
  ...outcome.tunnels.flatMap(({ tunnel, gaveWay }) =>
    gaveWay.map((limit) => gaveWayTold(limit, tunnel.id, outcome, names)),
  ),
  ...(outcome.together?.overrun ?? []).map((limit) => GAVE_WAY[limit]("All tunnels together")),
];

/** What the grower should see to, one line each. */
export const needsYou = (problems: readonly Problem[]): string[] =>
  problems.filter(({ weight }) => weight === "needsYou").map((problem) => clean(formatProblem(problem)));

/** Why a plan is followed that is worth less than changing nothing. */
const DEMANDS: Readonly<Record<LimitName, string>> = {
  rowCoverInHeat: "a warm cover would stay on in heat",
  wind: "cloth would go on in wind",
  frozen: "frozen cloth would be moved",
  snow: "cloth would be moved under snow",
  net: "a net is required",
  dim: "shade would lie too long",
  pieces: "cloth is short",
  changes: "changes a week are limited",
  minutes: "minutes are short",
  picking: "time for cutting is short",
  washing: "washing is limited",
  cooler: "the cooler is full",
};

const demands = ({ tunnels }: Outcome, names: Names): string[] =>
  tunnels.flatMap(({ tunnel, gaveWay, unchangedBreaks }) =>
    unchangedBreaks
      .filter((limit) => !gaveWay.includes(limit))
      .map((limit) => `${DEMANDS[limit]} in ${names.tunnel(tunnel.id)}`),
  );

/** What a plan costs more for than it is worth. */
function grounds(outcome: Outcome, names: Names): string {
  const demanded = demands(outcome, names);
  const { farm, since: issued, on } = outcome;
  return demanded.length === 0 && issued !== null
    ? `so that ${sheetCalled(farm, issued.on, on)} holds`
    : `for safety: ${list(demanded)}`;
}

/** What the part of worth is called that leaves lose of their quality before they are cut. */
const keeping = ({ successions }: Outcome): string =>
  successions.some(({ basis }) =>
    [basis?.cut, basis?.cutUnchanged].some((cut) => cut != null && basis!.outlets[cut]!.night !== null),
  )
    ? "heat stress and wet leaves"
    : "heat stress";

function summary(outcome: Outcome, table: Grid, names: Names): string[] {
  const { farm } = outcome;
  if (outcome.walks.length === 0)
    return ["No plan can be made: no weather is known, neither a log nor a forecast."];
  const changes = outcome.tunnels.flatMap((plan) => plan.changes);
  if (changes.length === 0 && farm.pieces.length === 0)
    return ["No cloth is listed in pieces.csv, so nothing can be put on: this is how the beds do without."];
  if (changes.length === 0) return ["Nothing to change: no change that can be made is worth its work."];
  const { together } = outcome;
  const part = (name: keyof Parts): number =>
    together === null ? 0 : together.parts[name] - together.partsUnchanged[name];
  const total = together === null ? 0 : together.worth - together.worthUnchanged;
  const more = (told: string, name: keyof Parts): string =>
    Math.abs(part(name)) < 0.5 ? "" : `, ${told} ${value(farm, part(name))}`;
  const touched = outcome.tunnels.filter((plan) => plan.changes.length > 0).length;
  const work = minutesTogether(changes.map((change) => change.minutes));
  const count = changes.length === 1 ? "1 change" : `${changes.length} changes`;
  const where = touched === 1 ? "1 tunnel" : `${touched} tunnels`;
  return [
    work === null
      ? `${count} on ${where}.`
      : `${count} on ${where}, about ${work} of work${hasRounds(table) ? " besides the daily rounds" : ""}.`,
    total < 0
      ? `Costs ${value(farm, -total)} against leaving everything as it is, ${grounds(outcome, names)}.`
      : farm.currency === null
        ? `Worth ${value(farm, total)} more than leaving everything as it is, risks and work counted in weight.`
        : `Worth ${value(farm, total)} more than leaving everything as it is: size and weight ${value(farm, part("timing"))}, ${keeping(outcome)} ${value(farm, part("stress"))}, feared damage ${value(farm, part("damage"))} (counted ${farm.limits.caution} times for caution)${more("later cuts", "again")}${more("orders and stalls", "orders")}, work ${value(farm, part("labour"))}.`,
  ];
}

/** How worth is counted where nothing has a price. */
const unpriced = ({ units }: Farm): string =>
  `No prices in farm.yaml: every ${units === "US" ? "pound" : "kilogram"} counts alike.`;

/** How far from the best a plan can be that could not be proved best. */
function unproved({ farm }: Outcome, { bound, worth }: TogetherPlan): string {
  return `Not every schedule could be looked at; a better plan would be worth at most ${value(farm, bound - worth)} more.`;
}

function quiet({ madeFrom, walks }: Outcome, told: readonly Urgent[]): string | null {
  if (walks.length === 0 || told.some(({ kind }) => kind === "frost" || kind === "heat")) return null;
  return unforeseen({ madeFrom, walks })
    ? null
    : "No frost and no harmful heat in these days, as far as the forecast goes.";
}

/** What "~" means, where it is used. */
export function tildes(groups: readonly BedGroup[], days: Grid["days"]): string[] {
  const judged = groups.some(({ rows }) => rows.some((row) => row.judged));
  const carried = days.some(({ outside }) => outside?.startsWith("~"));
  return [
    ...(judged
      ? [
          '"~" before a size, date or weight: rough, by judgement only or mostly without a log. Measure one leaf and the mark goes.',
        ]
      : []),
    ...(carried
      ? [
          '"~" before a day\'s temperatures: beyond the forecast: usual weather, or the last known days carried on.',
        ]
      : []),
  ];
}

/** Lines on what the marks mean; only those that are used. */
export function marksUsed(groups: readonly BedGroup[], days: Grid["days"]): string[] {
  return [
    ...tildes(groups, days),
    "Sizes are the longest leaf; below a size stands the range four of five lie in. Odds are for salad size at the pick. Both count what weather, covers and the crop itself may do.",
  ];
}

/** What the columns of a frost warning mean. */
export const FROST_COLUMNS: readonly string[] = [
  "Promised: what the cloth can be relied on for; light cloth on a clear night: nothing. Unfit below: colder than this, leaves are marked and cannot be sold; regrowth after a cut dies. Risk left: the chance of damage with the plan, of the bed most at risk.",
];

export function sheetOf(outcome: Outcome): Sheet {
  const { farm, successions } = outcome;
  const names = namesOf(farm, successions);
  const table = grid(outcome, names);
  const told = urgent(outcome, names);
  const beds = bedGroups(farm, successions, names, outcome.on, outcome.walks.at(-1)?.date ?? null);
  const [first, last] = [outcome.walks[0], outcome.walks.at(-1)];
  const title =
    first === undefined || last === undefined
      ? clean(farm.name)
      : `${clean(farm.name)}, ${first.date === last.date ? "" : `${day(farm.units, first.date)} to `}${dayAndYear(farm.units, last.date)}`;
  return {
    title,
    made: `Made for ${moment(farm, outcome.on)}.`,
    on: outcome.on,
    urgent: told,
    quiet: quiet(outcome, told),
    since: since(outcome, names),
    summary: summary(outcome, table, names),
    limits: limits(outcome, names),
    startsToday: first?.date === localDate(farm.place.zone, outcome.on),
    walks: walks(outcome, names),
    grid: table,
    picks: picks(outcome, names),
    misses: misses(outcome, names),
    beds,
    reach: reachTable(farm, successions, names, outcome.on),
    strip: strip(outcome, names),
    whatIf: whatIfLines(farm, outcome.whatIf ?? [], names),
    needsYou: needsYou(outcome.problems),
    madeFrom: madeFrom(farm, outcome.madeFrom, outcome.on),
    found: [
      ...(farm.currency === null ? [unpriced(farm)] : []),
      ...membersTold(outcome.madeFrom),
      ...(outcome.together?.proved === false ? [unproved(outcome, outcome.together)] : []),
    ],
    marks: [
      ...marksUsed(beds, table.days),
      ...(told.some(({ kind, open }) => kind === "frost" && open) ? FROST_COLUMNS : []),
      "Minutes are estimates for one person: time a walk of your own and set them in farm.yaml.",
    ],
    cautions: cautions(farm, successions),
  };
}
