import { type Farm, standingSowings } from "../farm/index.ts";
import type { IssuedOutlook, IssuedPick, IssuedSheet, IssuedSize } from "../folder/index.ts";
import {
  type Centimetre,
  daysBetween,
  type Instant,
  type Kilogram,
  kilogram,
  type LocalDate,
  localDate,
} from "../quantity/index.ts";
import { intervalScore } from "./scores.ts";
import { DAY, reachedOn, type Stand, sizeOn, standAt } from "./stand.ts";

/** Share of cases the ranges of the sheet are to hold. */
export const SHARE = 0.8;

/** What is known of everything a sheet said and that came. */
interface Said {
  readonly succession: string;
  readonly crop: string;
  readonly cropName: string;
  /** Names the bed between two cuts: all that was said of it counts as one bed. */
  readonly stand: string;
  /** Moment the sheet was made for. */
  readonly sheet: Instant;
}

/** The day a bed came to the smallest salad size. */
export interface DateOutcome extends Said {
  readonly projected: LocalDate | null;
  readonly early: LocalDate;
  readonly late: LocalDate | null;
  readonly actual: LocalDate;
  /** Actual less projected: later than said above 0; null: no one day was said. [d] */
  readonly daysOff: number | null;
  readonly inside: boolean;
  /** Width of the range and ten times what it was missed by; null: the range is open. [d] */
  readonly score: number | null;
}

/** A bed's size at a pick. */
export interface SizeOutcome extends Said {
  readonly pick: IssuedPick;
  readonly size: IssuedSize;
  readonly actual: Centimetre;
  readonly inside: boolean;
  /** Chance to be salad size that was said, and whether it was. */
  readonly odds: number;
  readonly came: boolean;
  /** From the sheet to the pick. [d] */
  readonly lead: number;
}

export interface WeightOutcome extends Said {
  readonly date: LocalDate;
  readonly expected: Kilogram;
  readonly cut: Kilogram;
}

/** A day something was to be on and the day it was. */
export interface DayOutcome extends Said {
  readonly projected: LocalDate;
  readonly actual: LocalDate;
  readonly daysOff: number;
}

/** All that sheets said of one thing and that came; for each bed, and pick, by the last sheet that was a day or more ahead. */
export interface Outcomes {
  readonly dates: readonly DateOutcome[];
  readonly sizes: readonly SizeOutcome[];
  readonly weights: readonly WeightOutcome[];
  /** Days beds came up, and were cut. */
  readonly emergences: readonly DayOutcome[];
  readonly cuts: readonly DayOutcome[];
  /** Sizes as every sheet said them, so that those far ahead can be told from those near. */
  readonly everySize: readonly SizeOutcome[];
}

/** One succession on one sheet with what became of it. */
interface Told {
  readonly said: Said;
  readonly outlook: IssuedOutlook;
  readonly stand: Stand;
}

/** Is it the sowing the farm has now, or had at the time? Another one may have taken its id. */
function sameSowing(farm: Farm, { on }: IssuedSheet, { succession, crop, sown }: IssuedOutlook): boolean {
  const then = standingSowings(farm, farm.place.zone, on).successions;
  return then.some((each) => each.id === succession && each.crop === crop && each.sown === sown);
}

const toldOf = (farm: Farm, sheet: IssuedSheet): readonly Told[] =>
  sheet.successions
    .filter((outlook) => sameSowing(farm, sheet, outlook))
    .map((outlook) => {
      const { succession, crop, cropName } = outlook;
      const stand = standAt(farm.notes, succession, sheet.on);
      const name = `${succession} ${stand.begun ?? ""}`;
      return { said: { succession, crop, cropName, stand: name, sheet: sheet.on }, outlook, stand };
    });

/** Was a sheet made at least a day before? What is said on the same day is no foretelling. */
const ahead = ({ said }: Told, of: Instant): boolean => said.sheet <= of - DAY;

const near = (a: Instant, b: Instant): boolean => Math.abs(a - b) <= DAY;

function dateOutcome(zone: string, told: Told): DateOutcome | null {
  const { reach: projected, early, late, smallest } = told.outlook;
  const reached = reachedOn(told.stand, smallest);
  if (reached === null || early === null || !ahead(told, reached.knownAt)) return null;
  const actual = localDate(zone, reached.at);
  const since = (date: LocalDate): number => daysBetween(early, date);
  return {
    ...told.said,
    projected,
    early,
    late,
    actual,
    daysOff: projected === null ? null : daysBetween(projected, actual),
    inside: early <= actual && (late === null || actual <= late),
    score: late === null ? null : intervalScore(0, since(late), SHARE, since(actual)),
  };
}

const sizeOutcomes = (told: Told): readonly SizeOutcome[] =>
  told.outlook.atPicks.flatMap(({ pick, size, odds }): readonly SizeOutcome[] => {
    const { cut } = told.stand;
    const stood = cut === null || cut.at >= pick.at - DAY;
    const actual = stood ? sizeOn(told.stand, pick.at) : null;
    if (actual === null || !ahead(told, pick.at)) return [];
    return [
      {
        ...told.said,
        pick,
        size,
        actual,
        inside: size.low <= actual && actual <= size.high,
        odds,
        came: told.outlook.smallest <= actual && actual <= told.outlook.largest,
        lead: (pick.at - told.said.sheet) / DAY,
      },
    ];
  });

/** Weight a sheet expected of a cut at a moment; null: it said nothing of that day. */
function expectedAt({ fate, atPicks }: IssuedOutlook, at: Instant): Kilogram | null {
  if (fate !== null && near(fate.cut, at)) return fate.weight;
  return atPicks.find(({ pick }) => near(pick.at, at))?.weight ?? null;
}

function weightOutcome(zone: string, now: Instant, told: Told): WeightOutcome | null {
  const { stand, outlook } = told;
  const lost = stand.cut === null && stand.lost !== null && outlook.fate !== null && outlook.fate.cut <= now;
  const at = lost ? outlook.fate!.cut : stand.cut?.at;
  const cut = lost ? kilogram(0) : stand.cut?.weight;
  if (at === undefined || cut === undefined || cut === null || !ahead(told, lost ? stand.lost! : at))
    return null;
  const expected = expectedAt(outlook, at);
  return expected === null ? null : { ...told.said, date: localDate(zone, at), expected, cut };
}

function dayOutcome(zone: string, told: Told, said: Instant | null, came: Instant | null): DayOutcome | null {
  if (said === null || came === null || !ahead(told, came)) return null;
  const [projected, actual] = [localDate(zone, said), localDate(zone, came)];
  return { ...told.said, projected, actual, daysOff: daysBetween(projected, actual) };
}

/** The last of each key, in the order the keys came first. */
const lastOf = <Item>(items: readonly Item[], key: (item: Item) => string): readonly Item[] => [
  ...new Map(items.map((item) => [key(item), item])).values(),
];

const there = <Item>(item: Item | null): item is Item => item !== null;

/**
 * What sheets said beside what notes say came.
 *
 * @param sheets - In the order they were given out.
 * @param now - Notes after it are not looked at.
 */
export function outcomesOf(farm: Farm, sheets: readonly IssuedSheet[], now: Instant): Outcomes {
  const { zone } = farm.place;
  const known = { ...farm, notes: farm.notes.filter(({ at }) => at <= now) };
  const told = sheets.filter(({ on }) => on <= now).flatMap((sheet) => toldOf(known, sheet));
  const byStand = ({ stand }: Said): string => stand;
  const everySize = told.flatMap(sizeOutcomes);
  const emerging = told.map((each) => {
    const { emergence } = each.outlook;
    return dayOutcome(zone, each, emergence?.seen ? null : (emergence?.at ?? null), each.stand.emerged);
  });
  const cutting = told.map((each) => {
    const { fate } = each.outlook;
    return dayOutcome(zone, each, fate?.pick.planned ? fate.cut : null, each.stand.cut?.at ?? null);
  });
  return {
    dates: lastOf(told.map((each) => dateOutcome(zone, each)).filter(there), byStand),
    sizes: [...lastOf(everySize, ({ stand, pick }) => `${stand} ${pick.at}`)].sort(
      (a, b) => a.pick.at - b.pick.at,
    ),
    weights: lastOf(told.map((each) => weightOutcome(zone, now, each)).filter(there), byStand),
    emergences: lastOf(emerging.filter(there), byStand),
    cuts: lastOf(cutting.filter(there), byStand),
    everySize,
  };
}
