import type { AtPick, DateSpread, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { type Instant, type LocalDate, localDate } from "../quantity/index.ts";
import { SECOND_USE_SHORT, todo } from "./fate.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { pickHeading } from "./picks.ts";
import { samePick } from "./samePick.ts";
import {
  capital,
  day,
  dayOf,
  daySpread,
  days,
  dayWithin,
  leaf,
  leafSpread,
  leafWindow,
  odds,
} from "./words.ts";

/** A leaf length and the range four of five lie in. */
export interface Size {
  readonly middle: string;
  /** Without unit; null when it rounds to one number. */
  readonly range: string | null;
}

/** Where one succession stands. */
export interface BedRow {
  readonly succession: string;
  readonly who: string;
  readonly tunnel: string;
  /** Smallest to largest salad size. */
  readonly window: string;
  /** Size now, or what it is before it has one. */
  readonly now: Size;
  /** At the pick its group is headed with; null when there is none or it is not up by then. */
  readonly pick: {
    readonly unchanged: Size;
    readonly planned: Size;
    readonly oddsUnchanged: string;
    readonly odds: string;
  } | null;
  /** First day of salad size: with the covers that bring it soonest and latest, if nothing is changed, with the plan. */
  readonly reach: {
    readonly earliest: string;
    readonly latest: string;
    readonly unchanged: string;
    readonly planned: string;
    /** Earliest to latest, or since when it is there. */
    readonly told: string;
    readonly since: boolean;
    /** Dates four of five cases lie between, if nothing is changed and with the plan; null where one day says it. */
    readonly range: { readonly unchanged: string | null; readonly planned: string | null };
  };
  readonly todo: string;
  /** The same for a narrow column. */
  readonly todoShort: string;
  readonly todoUnchanged: string;
  /** Days its window lasts; null when not known. */
  readonly lasts: string | null;
  /** Where it stands if nothing is changed, as whole sentences. */
  readonly state: readonly string[];
  /** The same with the plan as whole sentences, where there is no room for columns. */
  readonly sentences: readonly string[];
  /** Rests on judgement: marked "~". */
  readonly judged: boolean;
  /** Cut for the last time: nothing is left to grow. */
  readonly finished: boolean;
}

/** Successions told about at the same pick, under its heading. */
export interface BedGroup {
  readonly heading: string;
  readonly date: LocalDate | null;
  readonly rows: readonly BedRow[];
}

/** The pick a succession is told about: where it goes, else what it misses, else the last of the days planned. */
function mainPick({ fate, miss, atPicks }: SuccessionOutlook): AtPick | null {
  const wanted = [fate.kind === "none" ? null : fate.pick, miss?.pick ?? null];
  for (const pick of wanted) {
    const at = pick?.planned ? atPicks.find((each) => samePick(each.pick, pick)) : undefined;
    if (at !== undefined) return at;
  }
  return atPicks.findLast((at) => at.pick.planned) ?? atPicks[0] ?? null;
}

const sizeOf = (farm: Farm, outlook: SuccessionOutlook, range: AtPick["planned"]): Size => ({
  middle: mark(outlook) + leaf(farm.units, range),
  range: leafSpread(farm.units, range),
});

function now(farm: Farm, outlook: SuccessionOutlook): Size {
  if (outlook.stage === "finished") return { middle: "finished", range: null };
  if (outlook.sizeNow !== null) return sizeOf(farm, outlook, outlook.sizeNow);
  return { middle: outlook.stage === "future" ? "not sown" : "not up", range: null };
}

/** A date of salad size, as precise as its range allows. */
function date(
  farm: Farm,
  outlook: SuccessionOutlook,
  at: LocalDate | null,
  { early, late }: DateSpread = outlook.reach.spread.planned,
): string {
  return at === null ? "later" : mark(outlook) + dayWithin(farm.units, at, early, late);
}

const dateRange = (farm: Farm, outlook: SuccessionOutlook, { early, late }: DateSpread): string | null => {
  const told = daySpread(farm.units, early, late);
  return told === null ? null : mark(outlook) + told;
};

const told = ({ middle, range }: Size): string => (range === null ? middle : `${middle} (${range})`);

/** The date it was reached at, when that has passed. */
const reached = (farm: Farm, outlook: SuccessionOutlook, today: LocalDate): string | null => {
  const { unchanged } = outlook.reach;
  return unchanged !== null && unchanged < today
    ? date(farm, outlook, unchanged, outlook.reach.spread.unchanged)
    : null;
};

function reachTold(farm: Farm, outlook: SuccessionOutlook, today: LocalDate): string {
  if (outlook.stage === "finished" || outlook.stage === "future") return "";
  const since = reached(farm, outlook, today);
  if (since !== null) return `since ${since}`;
  const { earliest, latest } = outlook.reach;
  const [first, last] = [date(farm, outlook, earliest), date(farm, outlook, latest)];
  return first === last ? first : `${first} … ${last}`;
}

/** Between which dates it becomes salad size, as a sentence. */
const within = (range: string | null, how: string): readonly string[] =>
  range === null ? [] : [`${how} in 4 of 5 cases ${range}.`];

function reachSentence(farm: Farm, outlook: SuccessionOutlook, today: LocalDate): string {
  const window = leafWindow(farm.units, outlook.crop.smallest, outlook.crop.largest);
  const since = reached(farm, outlook, today);
  if (since !== null) return `In salad size (${window}) or beyond since ${since}.`;
  const { earliest, latest } = outlook.reach;
  if (earliest === null) return `Salad size (${window}) lies beyond the days looked at.`;
  const first = date(farm, outlook, earliest);
  const last = latest === null ? null : date(farm, outlook, latest);
  if (last === null) return `Salad size (${window}) comes with covers ${first} at the earliest.`;
  return first === last
    ? `Salad size (${window}) comes ${first} whatever lies on it.`
    : `Salad size (${window}) comes with covers ${first} at the earliest and ${last} at the latest.`;
}

/** Where it stands now, as a sentence. */
function nowSentence(farm: Farm, outlook: SuccessionOutlook, who: string, tunnel: string): string {
  const head = `${capital(who)}, ${tunnel}`;
  if (outlook.stage === "finished") return `${head}: finished.`;
  if (outlook.sizeNow !== null) return `${head}: ${told(sizeOf(farm, outlook, outlook.sizeNow))} now.`;
  if (outlook.stage === "future") return `${head}: to be sown ${day(farm.units, outlook.succession.sown)}.`;
  return outlook.emergence === null
    ? `${head}: not up yet.`
    : `${head}: comes up about ${dayOf(farm, outlook.emergence.at)}.`;
}

function row(
  farm: Farm,
  outlook: SuccessionOutlook,
  names: Names,
  today: LocalDate,
  last: LocalDate | null,
): BedRow {
  const { succession, crop, stage, reach, windowDays } = outlook;
  const at = stage === "finished" ? null : mainPick(outlook);
  const common = {
    succession: succession.id,
    who: names.succession(succession.id),
    tunnel: names.tunnel(succession.tunnel),
    window: leafWindow(farm.units, crop.smallest, crop.largest),
    now: now(farm, outlook),
    reach: {
      earliest: date(farm, outlook, reach.earliest),
      latest: date(farm, outlook, reach.latest),
      unchanged: date(farm, outlook, reach.unchanged, reach.spread.unchanged),
      planned: date(farm, outlook, reach.planned),
      told: reachTold(farm, outlook, today),
      since: reached(farm, outlook, today) !== null,
      range: {
        unchanged: dateRange(farm, outlook, reach.spread.unchanged),
        planned: dateRange(farm, outlook, reach.spread.planned),
      },
    },
    todo: todo(farm, outlook, last),
    todoShort: todo(farm, outlook, last, SECOND_USE_SHORT),
    todoUnchanged: todo(farm, { ...outlook, fate: outlook.fateUnchanged }, last),
    lasts: windowDays === null ? null : days(Math.max(1, Math.round(windowDays))),
    judged: mark(outlook) !== "",
    finished: stage === "finished",
  };
  const pick =
    at === null
      ? null
      : {
          unchanged: sizeOf(farm, outlook, at.unchanged),
          planned: sizeOf(farm, outlook, at.planned),
          oddsUnchanged: odds(at.oddsUnchanged),
          odds: odds(at.odds),
        };
  const who = nowSentence(farm, outlook, common.who, common.tunnel);
  if (pick === null || at === null) return { ...common, pick, state: [who], sentences: [who, common.todo] };
  const when = day(farm.units, at.pick.date);
  const comes = reachSentence(farm, outlook, today);
  return {
    ...common,
    pick,
    state: [
      who,
      `On ${when} ${told(pick.unchanged)}; odds ${pick.oddsUnchanged}.`,
      comes,
      ...within(common.reach.range.unchanged, "Left as it is"),
    ],
    sentences: [
      who,
      `On ${when} ${told(pick.planned)} with the plan, ${told(pick.unchanged)} left as it is; odds ${pick.odds}.`,
      comes,
      ...within(common.reach.range.planned, "With the plan"),
      common.todo,
    ],
  };
}

/**
 * Every succession, grouped by the pick it is told about, picks in order, those without one last.
 *
 * @param last - Last day planned; null when nothing is planned.
 */
export function bedGroups(
  farm: Farm,
  outlooks: readonly SuccessionOutlook[],
  names: Names,
  on: Instant,
  last: LocalDate | null,
): readonly BedGroup[] {
  const today = localDate(farm.place.zone, on);
  const told = outlooks.map((outlook) => ({
    outlook,
    pick: outlook.stage === "finished" ? null : (mainPick(outlook)?.pick ?? null),
  }));
  const heads = told
    .flatMap(({ pick }) => (pick === null ? [] : [pick]))
    .sort((a, b) => a.at - b.at)
    .filter((pick, i, all) => all.findIndex((other) => samePick(other, pick)) === i);
  const groups = heads.map(
    (head): BedGroup => ({
      heading: pickHeading(farm, head),
      date: head.date,
      rows: told
        .filter(({ pick }) => pick !== null && samePick(pick, head))
        .map(({ outlook }) => row(farm, outlook, names, today, last)),
    }),
  );
  const rest = told
    .filter(({ pick }) => pick === null)
    .map(({ outlook }) => row(farm, outlook, names, today, last));
  return rest.length === 0
    ? groups
    : [...groups, { heading: "No pick in these days", date: null, rows: rest }];
}
