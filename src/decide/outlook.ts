import type { Setting } from "../farm/index.ts";
import { between, leafLength, lightOnWeight, thermalTimeAt } from "../growth/index.ts";
import { quantile } from "../learn/index.ts";
import { type Centimetre, degreeDays, kilogram, type LocalDate, metre } from "../quantity/index.ts";
import { OUTER } from "./chances.ts";
import { outletResults, type SuccessionResult } from "./evaluate.ts";
import { freedBy } from "./freed.ts";
import { ownTime } from "./lastLeaf.ts";
import { basisOf } from "./ledger.ts";
import type { Alternative, AtFate, AtPick, Fate, Miss, Pick, Range, SuccessionOutlook } from "./outcome.ts";
import { type PaceBounds, paceBounds } from "./paceBounds.ts";
import type { Planned } from "./planned.ts";
import { reachOf } from "./reach.ts";
import { rightAt } from "./right.ts";
import type { Scene } from "./scene.ts";
import { type Growing, isUndated, type Standing } from "./standing.ts";
import type { OutletTable as Outlet, SuccessionTable } from "./successionTable.ts";
import { openSettings } from "./tails.ts";
import { type Courses, coursesOf, type Telling, tellOf } from "./told.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

/** Leaf length now, with the range that its last leaf, or its requirement, leaves open. */
function sizeNowAt(growing: Growing): Range<Centimetre> {
  const { curve, belief, thermalTime, requirements } = growing;
  const times = requirements.map((_, i) => ownTime(growing, i, thermalTime)).sort();
  const at = (p: number): Centimetre => leafLength(curve, quantile(times, p));
  return {
    low: at(OUTER[0]),
    middle: leafLength(curve, thermalTime * Math.exp(-belief.shift)),
    high: at(OUTER[1]),
  };
}

/** What a leaf of a length is cut as. */
const soldAs = ({ crop }: Standing, length: number): "salad" | "braising" | "small" =>
  length < crop.smallest ? "small" : length > crop.largest ? "braising" : "salad";

type Result = SuccessionResult;

/** What a result makes of a succession. */
export function fateOf(standing: Standing, { curve, belief }: Growing, result: Result | undefined): Fate {
  if (result === undefined || result.outlet === null) return { kind: "none" };
  const length = leafLength(curve, result.thermalTime * Math.exp(-belief.shift));
  return { ...result.outlet.fate, as: soldAs(standing, length) };
}

const isPick = (outlet: Outlet | null, pick: Pick): boolean =>
  outlet?.fate.kind === "pick" && outlet.fate.pick === pick;

/** Size, odds and weight of a succession where a schedule brings it. */
function atOutlet(scene: Scene, table: SuccessionTable, result: Result, told: Telling): AtFate {
  const { standing, growing } = table;
  const { succession, crop } = standing;
  const { size, odds, weight, cases } = told(result);
  const { all, inSize } = weight();
  const bed = metre(Math.abs(succession.to - succession.from) * growing.share);
  const light = (table.light + lightUntil(table, result)) / result.outlet!.days;
  const whole = crop.yield * bed * lightOnWeight(light, crop, scene.settings);
  return {
    size,
    odds,
    weight: kilogram(whole * all),
    inSize: kilogram(whole * inSize),
    cases: () => cases().map((share) => whole * share),
    minutes: table.cutting,
    frozen: result.outlet!.frozen,
    thaw: result.outlet!.thaw,
    wet: result.wet,
  };
}

/** Size at every pick with and without the plan. */
function atPicks(
  scene: Scene,
  { problem, table, bounds }: { problem: TunnelProblem; table: SuccessionTable; bounds: PaceBounds },
  [unchanged, toldUnchanged]: readonly [readonly Result[], Telling],
  [planned, toldPlanned]: readonly [readonly Result[], Telling],
): readonly AtPick[] {
  return scene.picks.flatMap((pick): readonly AtPick[] => {
    const before = unchanged.find(({ outlet }) => isPick(outlet, pick));
    const after = planned.find(({ outlet }) => isPick(outlet, pick));
    if (before === undefined || after === undefined) return [];
    const left = toldUnchanged(before);
    const { size, odds, weight } = atOutlet(scene, table, after, toldPlanned);
    const { median } = toldPlanned(after);
    return [
      {
        pick,
        right: rightAt(table, before, problem.intervals, bounds),
        unchanged: left.size,
        planned: size,
        medianUnchanged: left.median,
        median,
        oddsUnchanged: left.odds,
        odds,
        weight,
      },
    ];
  });
}

/** Light of the time ahead up to a result's outlet, as nothing changed would have it; a cloth's share shows in worth. */
const lightUntil = ({ growing }: SuccessionTable, { outlet }: Result): number =>
  outlet === null
    ? 0
    : Math.max(
        0,
        between(
          growing.unchanged.light,
          growing.unchanged.from,
          growing.origin,
          growing.origin + Math.round(outlet.days * 24),
        ) - growing.light,
      );

/** The pick a succession is meant for: the first of its market, else the first there is. */
function aim(picks: readonly AtPick[], market: string | null): AtPick | undefined {
  return picks.find(({ pick }) => pick.planned && (market === null || pick.market.id === market));
}

/** A bed within sight of its size counts as missed; one that is far too young is simply not due. judgement */
const IN_SIGHT = 0.6;

/** An alternative worth less than this share of the best is not worth a line. judgement */
const WORTH_SAYING = 0.3;

/** What, lying from the first walk on, has a bed in its window at a pick; of several the one worth most. */
function helpingSetting({ problem }: Planned, table: SuccessionTable, pick: Pick): Setting | null {
  const { standing, growing } = table;
  const open = openSettings(problem);
  const S = problem.settings.length;
  const held = problem.settings.flatMap((setting, s) => {
    const lay = problem.lays.findIndex((each) => each.setting === s);
    const may = problem.parts.every((_, i) => open[i * S + s] && problem.broken[i * S + s]!.length === 0);
    if (lay < 0 || !may) return [];
    const results = outletResults(problem, table, new Array<number>(problem.intervals).fill(lay));
    const there = results.find(({ outlet }) => isPick(outlet, pick))!;
    const fate = fateOf(standing, growing, there);
    return fate.kind !== "none" && fate.as === "salad" ? [{ setting, worth: there.worth }] : [];
  });
  return held.sort((a, b) => b.worth - a.worth)[0]?.setting ?? null;
}

function missOf(
  scene: Scene,
  at: Planned,
  table: SuccessionTable,
  picks: readonly AtPick[],
  fate: Fate,
): Miss | null {
  const { standing, growing } = table;
  const { crop, succession } = standing;
  // Where the grower has settled what becomes of it, no other pick is missed.
  const open = picks.filter(({ pick }) => table.outlets.some((outlet) => isPick(outlet, pick)));
  const target = aim(open, succession.market);
  if (target === undefined || target.odds >= 0.5) return null;
  const small = target.planned.middle < crop.smallest;
  const meant = succession.market !== null || target.planned.middle >= IN_SIGHT * crop.smallest;
  if (!meant && small) return null;
  if (!small && target.planned.middle <= crop.largest) return null;
  const coversCanHelp = target.right !== "no";
  const kinds = new Map<string, { readonly result: SuccessionResult; readonly fate: Fate }>();
  const planned = outletResults(at.problem, table, at.schedule).filter(({ open }) => open);
  for (const result of planned.sort((a, b) => b.worth - a.worth)) {
    const other = fateOf(standing, growing, result);
    if (other.kind === "none") continue;
    const key = `${other.kind} ${other.as}`;
    if (!kinds.has(key)) kinds.set(key, { result, fate: other });
  }
  const greens = ({ result }: { readonly result: SuccessionResult }): number => result.worth - result.again;
  const ranked = [...kinds.values()];
  const least = (best: number): number => WORTH_SAYING * Math.max(0, best);
  const alternatives = ranked
    .filter((each, i) => i === 0 || greens(each) >= least(greens(ranked[0]!)))
    .slice(0, 3)
    .map(({ result, fate: way }): Alternative => ({ forced: false, fate: way, worth: result.worth }));
  return {
    pick: target.pick,
    why: small ? "tooSmall" : "tooLarge",
    coversCanHelp,
    helps: coversCanHelp ? helpingSetting(at, table, target.pick) : null,
    alternatives: alternatives.length > 0 ? alternatives : [{ forced: false, fate, worth: 0 }],
    again: table.regrown > 0 ? table.regrown : null,
    freed: freedBy(scene, at, table),
  };
}

/** Days from the smallest to the largest salad size at the pace of the week ahead. [d] */
function windowDays(scene: Scene, { standing, growing }: SuccessionTable): number | null {
  const { now, lookout } = scene.horizon;
  const end = Math.min(lookout, now + 7 * 24);
  const from = Math.max(now, growing.origin);
  const pace = (between(growing.unchanged.pace, growing.unchanged.from, from, end) / (end - from)) * 24;
  if (!(pace > 0)) return null;
  const width = thermalTimeAt(growing.curve, standing.crop.largest) - growing.requirement;
  return (width * Math.exp(growing.belief.shift)) / pace;
}

const NO_DATES = { early: null, late: null } as const;

/** A succession that is finished or cannot be computed, without sizes. */
function blank(standing: Standing, today: LocalDate): SuccessionOutlook {
  const { crop, succession, finished, emergence } = standing;
  const none = { kind: "none" } as const;
  return {
    succession,
    crop,
    stage: finished
      ? "finished"
      : isUndated(standing)
        ? "growing"
        : succession.sown > today
          ? "future"
          : "emerging",
    emergence,
    sizeNow: null,
    thermalTime: degreeDays(0),
    requirement: crop.requirement,
    spread: crop.requirementSpread,
    measured: 0,
    guessed: 0,
    paceNow: 0,
    windowDays: null,
    atPicks: [],
    reach: {
      earliest: null,
      unchanged: null,
      planned: null,
      latest: null,
      spread: { unchanged: NO_DATES, planned: NO_DATES },
    },
    fate: none,
    atFate: null,
    fateUnchanged: none,
    worth: 0,
    worthUnchanged: 0,
    miss: null,
    basis: null,
  };
}

/** Everything a grower asks about one succession. */
export function outlookOf(
  scene: Scene,
  planned: Planned,
  standing: Standing,
  courses: Courses = coursesOf(scene),
): SuccessionOutlook {
  const table = planned.problem.successions.find((other) => other.standing === standing);
  const today = scene.weather.days.find(({ lead }) => lead === 0)!.date;
  if (table === undefined) return blank(standing, today);
  const { growing } = table;
  const { crop, succession } = standing;
  const { problem, schedule } = planned;
  const stay = new Array<number>(problem.intervals).fill(NOW);
  const offered = { ...table, outlets: table.offered };
  const up = growing.origin <= scene.horizon.now;
  const sizeNow = up ? sizeNowAt(growing) : null;
  const course = courses(planned, table);
  const [toldBefore, toldAfter] = [growing.ahead, course].map((along) => tellOf(scene, table, along));
  const bounds = paceBounds(problem, table);
  const picks = atPicks(
    scene,
    { problem, table, bounds },
    [outletResults(problem, offered, stay), toldBefore!],
    [outletResults(problem, offered, schedule), toldAfter!],
  );
  const reach = reachOf(scene, planned, table, course, bounds);
  const own = (result: SuccessionResult): boolean => result.table.standing === standing;
  const [bestBefore, bestAfter] = [
    planned.unchanged.successions.find(own),
    planned.chosen.successions.find(own),
  ];
  const fate = fateOf(standing, growing, bestAfter);
  const stage =
    succession.sown > today
      ? "future"
      : sizeNow === null
        ? "emerging"
        : sizeNow.middle > crop.largest
          ? "past"
          : sizeNow.middle >= crop.smallest
            ? "ready"
            : "growing";
  const next = scene.horizon.now + 24;
  return {
    succession,
    crop,
    stage,
    emergence: standing.emergence,
    sizeNow,
    thermalTime: degreeDays(growing.thermalTime),
    requirement: degreeDays(growing.requirement * Math.exp(growing.belief.shift)),
    spread: growing.belief.spread,
    measured: growing.belief.measured,
    guessed: growing.guessed,
    paceNow: between(growing.unchanged.pace, growing.unchanged.from, scene.horizon.now, next),
    windowDays: windowDays(scene, table),
    atPicks: picks,
    reach,
    fate,
    atFate:
      fate.kind === "none" || bestAfter === undefined ? null : atOutlet(scene, table, bestAfter, toldAfter!),
    fateUnchanged: fateOf(standing, growing, bestBefore),
    worth: Math.max(0, bestAfter?.worth ?? 0),
    worthUnchanged: Math.max(0, bestBefore?.worth ?? 0),
    basis: basisOf(planned, table),
    miss: missOf(scene, planned, table, picks, fate),
  };
}
