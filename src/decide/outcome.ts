import type {
  Crop,
  Farm,
  KeptCut,
  Layer,
  Market,
  Piece,
  Setting,
  Settings,
  Succession,
  Tunnel,
} from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type {
  Celsius,
  CelsiusDifference,
  Centimetre,
  DegreeDays,
  Instant,
  Kilogram,
  LocalDate,
  MetrePerSecond,
} from "../quantity/index.ts";
import type { Warning } from "../watch/index.ts";
import type { DateRange, DayWeather, Doubtful, Gap } from "../weather/index.ts";
import type { Dry } from "./dry.ts";
import type { KeptCold } from "./keptCold.ts";
import type { Taken } from "./lays.ts";
import type { Learned } from "./learned.ts";
import type { BroughtOver } from "./ownRequirements.ts";
import type { SinceIssued } from "./since.ts";
import type { StripChance } from "./stripPlaces.ts";
import type { UsualBy } from "./usualWeather.ts";

/** One round along the beds. */
export interface Walk {
  readonly index: number;
  readonly at: Instant;
  readonly date: LocalDate;
  readonly part: "morning" | "evening";
  readonly wind: MetrePerSecond;
  /** Wind above the farm's limit: no cloth may be put on. */
  readonly tooWindy: boolean;
  /** Crop height at or below freezing: cloth is frozen and may not be moved until it has thawed. */
  readonly frozen: boolean;
  /** It does not thaw before the next walk either, so that not even a round can wait for it. */
  readonly frozenThrough: boolean;
  /** Snow lies: what lies may not be moved. */
  readonly snow: boolean;
}

/** A value with the range that four of five cases lie in. */
export interface Range<Value> {
  readonly low: Value;
  readonly middle: Value;
  readonly high: Value;
}

/** What a change, or a whole plan, is worth, by what brings it; in the farm's currency, or in kilograms when it has none. */
export interface Parts {
  /** Size and weight at the pick: what the harvest brings before losses, the time of cutting it paid. */
  readonly timing: number;
  /** Heat stress, at most 0. */
  readonly stress: number;
  /** Probable frost and heat damage with caution, at most 0. */
  readonly damage: number;
  /** What grows again after the cuts, were nothing of it lost: by judgement. */
  readonly again: number;
  /** Minutes of changing covers, at most 0. */
  readonly labour: number;
  /** What differing from a sheet given out is priced at, at most 0. It weighs in the choice, not in the worth. */
  readonly calm: number;
  /** What orders, stalls and mixes make of it beside what each kilogram is worth alone. */
  readonly orders: number;
}

/** The parts that are a tunnel's own. */
export type OwnParts = Omit<Parts, "orders">;

export interface Change {
  readonly walk: Walk;
  readonly tunnel: Tunnel;
  readonly from: Setting;
  readonly to: Setting;
  /** Pieces laid out by this change. */
  readonly pieces: readonly Piece[];
  /** Minutes at this walk. [min] */
  readonly minutes: number;
  /** Minutes at every later walk of a rhythm; 0 otherwise. [min] */
  readonly minutesEachWalk: number;
  /** The part that gains most against leaving this one change out; "limit" when leaving it out is not allowed. */
  readonly decidedBy: keyof Parts | "limit";
  /** Plan with this change less plan without it. */
  readonly gain: Parts;
  /** Limit that forbids leaving it out, in code form. */
  readonly limit: LimitName | null;
  /** What the plan would come to without it. */
  readonly without: Without;
  /** The strongest other setting that does the same; null: none that may lie there does. */
  readonly rather: Rather | null;
}

/** The same of the plan and of another plan. */
export interface Compared<Value> {
  readonly plan: Value;
  readonly other: Value;
}

/** One succession under the plan and under another schedule of its tunnel. */
export interface BedBeside {
  readonly succession: string;
  /** What becomes of it under the other. */
  readonly fate: Fate;
  /** Plan less the other, this succession alone. */
  readonly gain: Omit<OwnParts, "labour" | "calm">;
  /** At its cut under the plan, or where it has none under the other; null: neither cuts it. */
  readonly cut: {
    readonly at: Instant;
    readonly pick: Pick;
    readonly size: Compared<Range<Centimetre>>;
    /** Chance to be inside the window: the same members, moved by what the expected thermal time differs. [0–1] */
    readonly odds: Compared<number>;
    /** Expected of all that is cut, losses taken off. */
    readonly weight: Compared<Kilogram>;
    /** Rain that wets row cover before the cut, and whether the leaves are cut wet from under it; null: none does. [mm] */
    readonly wet: ({ readonly rain: number } & Compared<boolean>) | null;
  } | null;
}

/** The part of a day in which two schedules differ most in the odds of damage, and whose. */
export interface Worst {
  readonly succession: string;
  /** After a cut the stubble stands that grows again. */
  readonly of: "leaves" | "stubble";
  readonly walk: Walk;
  /** [0–1] */
  readonly odds: Compared<number>;
}

/** How much more of its orders a product fills, mean over the groups of weathers. */
export interface Filled extends Compared<Kilogram> {
  readonly product: string;
  readonly pick: Pick;
}

/** Another setting in the place of a change's, up to the tunnel's next change. */
export interface Rather {
  readonly setting: Setting;
  /** Plan less the plan with it. */
  readonly gain: Parts;
  readonly beds: readonly BedBeside[];
}

/** A plan with one change of one tunnel taken out, all else as planned. */
export interface Without {
  /** Of all tunnels together. */
  readonly worth: number;
  /** Limits the tunnel would break, one entry a breach, and limits all would break together. */
  readonly breaks: readonly LimitName[];
  readonly overrun: readonly LimitName[];
  /** What each of the tunnel's successions would be cut for: index among the outlets of its basis; null: not cut. */
  readonly cuts: readonly { readonly succession: string; readonly outlet: number | null }[];
  /** The tunnel's successions that the change makes a difference to. */
  readonly beds: readonly BedBeside[];
  /** null: the change makes no difference to any odds of damage. */
  readonly worst: Worst | null;
  /** Orders that are filled better with the change. */
  readonly filled: readonly Filled[];
}

export type LimitName =
  | "rowCoverInHeat"
  | "wind"
  | "frozen"
  | "snow"
  | "net"
  | "dim"
  | "pieces"
  | "changes"
  | "minutes"
  | "picking"
  | "washing"
  | "cooler";

/** What becomes of a succession under the plan. */
export type Fate =
  /** Cut for a market inside its window. */
  | { readonly kind: "pick"; readonly pick: Pick; readonly as: "salad" | "braising" | "small" }
  /** Cut early, keep cold until the market. */
  | {
      readonly kind: "hold";
      readonly cut: Instant;
      readonly days: number;
      readonly pick: Pick;
      readonly as: "salad" | "braising" | "small";
    }
  /** Not worth cutting for any market looked at. */
  | { readonly kind: "none" };

/** One moment greens are cut for one selling day. */
export interface Pick {
  readonly market: Market;
  /** Selling day. */
  readonly marketDate: LocalDate;
  readonly at: Instant;
  readonly date: LocalDate;
  /** Within the days planned, not only looked at beyond them. */
  readonly planned: boolean;
}

/** What the worth of a succession is computed from, together with the ledger; so that anyone can do it again. */
export interface Basis {
  /** Logarithm of its requirement relative to `requirement` of its curve. [1] */
  readonly shift: number;
  /** At the first walk: thermal time corrected for light, and light, since emergence or the last cut. [°C·d], [mol/m²] */
  readonly thermalTime: number;
  readonly light: number;
  /** Crop height at which its leaves are unfit, hardened as they are. [°C] */
  readonly unfit: number;
  /** Weight of the whole bed at the middle of the window in full light, and price of a kilogram alone. [kg] */
  readonly mass: number;
  readonly price: number;
  /** Time it takes to cut it. [min] */
  readonly cutting: number;
  /** What grows again after a cut brings later. judgement */
  readonly regrown: number;
  readonly curve: {
    readonly start: number;
    readonly end: number;
    readonly rate: number;
    readonly middle: number;
  };
  readonly outlets: readonly BasisOutlet[];
  /** Index of the one it is cut at under the plan, and if nothing is changed; null: not cut. */
  readonly cut: number | null;
  readonly cutUnchanged: number | null;
}

/** A moment at which it may be cut, with what the part of its interval before it adds under each setting. */
export interface BasisOutlet {
  readonly kind: "pick" | "hold";
  readonly at: Instant;
  /** The pick it is for. */
  readonly pick: Pick;
  /** Interval it lies in; the number of intervals when beyond them. */
  readonly interval: number;
  readonly kept: number;
  readonly share: number;
  readonly days: number;
  /** Standard deviation of the logarithm of thermal time over requirement: what is left of the requirement's, and of the weather's within a group of weathers. [1] */
  readonly spread: number;
  /** What each group of weathers adds to that logarithm. [1] */
  readonly moved: readonly number[];
  /** See `Outlet`. [mm] */
  readonly rain: number;
  /** Whose setting decides whether the leaves are wet; null: no cover makes them so. */
  readonly night: Dry["night"] | null;
  readonly added: readonly {
    readonly setting: string;
    readonly pace: number;
    readonly light: number;
    readonly heat: number;
    readonly safe: number;
    /** Share of its price that wet leaves leave, where this lay on it in that night. [0–1] */
    readonly keeps: number;
  }[];
}

/** A succession at the moment its fate cuts it. */
export interface AtFate {
  readonly size: Range<Centimetre>;
  /** Chance to be inside the window. [0–1] */
  readonly odds: number;
  /** Expected: of all there is, and of what is salad size. */
  readonly weight: Kilogram;
  readonly inSize: Kilogram;
  /** Of what is salad size in every case drawn, member by member; neither yield nor loss is drawn in it. [kg] */
  readonly cases: () => Float64Array;
  /** Time it takes to cut it. [min] */
  readonly minutes: number;
  /** The bed is frozen then: the pick waits until it has thawed; an early cut has been moved to that hour. */
  readonly frozen: boolean;
  /** First hour of that day at which a frozen bed has thawed; null: not frozen, or all day. */
  readonly thaw: Instant | null;
  /** The row cover over it is wet then, and so are the leaves. */
  readonly wet: boolean;
}

/** How a succession can be in salad size at a pick: left as it is, under some of the covers at hand, or not at all. */
export type Right = "asItIs" | "withCovers" | "no";

/** A succession at one pick, with and without the plan. */
export interface AtPick {
  readonly pick: Pick;
  /** When weather and requirement are as expected. */
  readonly right: Right;
  readonly unchanged: Range<Centimetre>;
  readonly planned: Range<Centimetre>;
  /** Half of the cases lie below: a little off the middle, which is what the weather as expected brings. */
  readonly medianUnchanged: Centimetre;
  readonly median: Centimetre;
  /** Chance to be inside the window. [0–1] */
  readonly oddsUnchanged: number;
  readonly odds: number;
  /** Expected weight of the succession at this pick under the plan. [kg] */
  readonly weight: Kilogram;
}

/** Dates that four of five cases lie between; null: not within the time looked at. */
export interface DateSpread {
  readonly early: LocalDate | null;
  readonly late: LocalDate | null;
}

export interface SuccessionOutlook {
  readonly succession: Succession;
  readonly crop: Crop;
  readonly stage: "future" | "emerging" | "growing" | "ready" | "past" | "finished";
  /** Seen, computed or expected; null when not within the time looked at. */
  readonly emergence: { readonly at: Instant; readonly seen: boolean } | null;
  /** null before emergence. */
  readonly sizeNow: Range<Centimetre> | null;
  /** Thermal time since emergence and needed for the smallest salad size. [°C·d] */
  readonly thermalTime: DegreeDays;
  readonly requirement: DegreeDays;
  /** Standard deviation of the logarithm of what is still uncertain. [1] */
  readonly spread: number;
  /** Number of leaf measurements that shaped the estimate. */
  readonly measured: number;
  /** Share of the time it grew that is guessed, without a log and without a leaf since. [0–1] */
  readonly guessed: number;
  /** Growth today as °C·d a day under what lies on it. [°C·d/d] */
  readonly paceNow: number;
  /** Days its window lasts at the week's pace. [d] */
  readonly windowDays: number | null;
  readonly atPicks: readonly AtPick[];
  /** Date of the smallest salad size; null: not within the time looked at. */
  readonly reach: {
    readonly earliest: LocalDate | null;
    readonly unchanged: LocalDate | null;
    readonly planned: LocalDate | null;
    readonly latest: LocalDate | null;
    /** The range four of five cases lie in; null: not within the time looked at. */
    readonly spread: {
      readonly unchanged: DateSpread;
      readonly planned: DateSpread;
    };
  };
  readonly fate: Fate;
  /** null when its fate is none. */
  readonly atFate: AtFate | null;
  readonly fateUnchanged: Fate;
  /** Expected worth under the plan and when nothing is changed, damage and stress counted. */
  readonly worth: number;
  readonly worthUnchanged: number;
  /** The market it was meant for, or the next one, is missed under the plan; then why and the honest alternatives, best first. */
  readonly miss: Miss | null;
  /** null: not growing within the time looked at. */
  readonly basis: Basis | null;
}

export interface Miss {
  readonly pick: Pick;
  /** tooSmall/tooLarge at that pick under the plan. */
  readonly why: "tooSmall" | "tooLarge";
  /** Could covers at hand have reached it at all? */
  readonly coversCanHelp: boolean;
  /** What would do it if it lay from the first walk on; null: none at hand, or only one after the other. */
  readonly helps: Setting | null;
  readonly alternatives: readonly Alternative[];
  /** What growing again after a cut brings, within the worth of each cut; null: it is its last. judgement */
  readonly again: number | null;
  /** What clearing its bed now would make room for; null: the plan leaves it uncut, or no sowing would come to size before winter. */
  readonly freed: Freed | null;
}

/** A bed free before the plan would cut it. judgement */
export interface Freed {
  readonly days: number;
  /** What another sowing would make of these days beyond what the standing bed is charged for them. */
  readonly worth: number;
}

/** An honest way out of a miss, by what its worth counts. */
export type Alternative = BedAlone | PlannedAround;

/** A cut of the bed under the plan's covers. */
export interface BedAlone {
  readonly forced: false;
  readonly fate: Fate;
  /** What the bed alone brings. */
  readonly worth: number;
}

/** A cut settled, or none, with the farm planned anew around it. */
export interface PlannedAround {
  readonly forced: true;
  /** What becomes of the succession under the best plan with it settled. */
  readonly fate: Fate;
  readonly kept: KeptCut;
  /** It is what the plan does. */
  readonly planned: boolean;
  /**
   * Worth of the best plan of all tunnels with it settled, less that of the plan, both less what they pay for differing from a sheet
   * given out.
   */
  readonly worth: number;
  /** How far that may be off, either way: 0 where both plans are proved. */
  readonly off: number;
}

/** What one thing more, or another day of picking, would be worth in the days planned: the best plan with it, less the plan, as for a way out. */
export type WhatIf = (
  | { readonly kind: "piece"; readonly piece: Piece }
  /** Twice the minutes at every walk and pick. */
  | { readonly kind: "hands" }
  | { readonly kind: "pick"; readonly market: Market; readonly days: -1 | 1 }
) & {
  readonly worth: number;
  /** How far that may be off, either way: 0 where both plans are proved. */
  readonly off: number;
};

/** Effect of one setting on one tunnel in one interval between walks, per succession: what sizes and worth are recomputed from. */
export interface LedgerEntry {
  readonly walk: number;
  readonly setting: string;
  /** Limits that having it breaks, whatever lay before. */
  readonly breaks: readonly LimitName[];
  readonly allowed: boolean;
  /** Shade that keeps the day below the light floor of some crop. */
  readonly dim: boolean;
  /** Expected lowest and highest at crop height in calm air. [°C] */
  readonly lowest: Celsius;
  readonly highest: Celsius;
  readonly successions: readonly {
    readonly id: string;
    /** [°C·d] before and after the light correction */
    readonly thermalTime: number;
    readonly pace: number;
    /** [mol/m²] */
    readonly light: number;
    /** Heat above the quality limit. [°C·h] */
    readonly heat: number;
    /** Chance of being damaged. [0–1] */
    readonly damage: number;
    /** Logarithm of the chance to come through with caution: of its leaves, and of its roots, cut or not. [1] */
    readonly safe: number;
    readonly rooted: number;
  }[];
  /** The same logarithm of beds whose last cut nobody dated. */
  readonly undated: readonly { readonly id: string; readonly safe: number }[];
}

export interface TunnelPlan {
  readonly tunnel: Tunnel;
  /** What lies on it now. */
  readonly now: Setting;
  /** Settings considered. */
  readonly settings: readonly Setting[];
  /** Setting during each interval, the first from the first walk on. Index into `settings`. */
  readonly choice: readonly number[];
  /** The cloth of what lies now, and of what lies during each interval. */
  readonly taken: readonly Taken[];
  readonly takenIn: readonly (readonly Taken[])[];
  /** Beds whose last cut nobody dated, and what each is worth standing. */
  readonly undated: readonly { readonly id: string; readonly worth: number; readonly unfit: Celsius }[];
  readonly changes: readonly Change[];
  readonly worth: number;
  readonly worthUnchanged: number;
  readonly parts: OwnParts;
  readonly partsUnchanged: OwnParts;
  /** Limits the plan cannot keep; empty when all are kept. */
  readonly gaveWay: readonly LimitName[];
  /** Limits that changing nothing would break. */
  readonly unchangedBreaks: readonly LimitName[];
  readonly ledger: readonly LedgerEntry[];
  /** Predicted lowest temperature of each night at crop height, bare and under the plan; expected and promised. */
  readonly nights: readonly Night[];
}

export interface Night {
  readonly date: LocalDate;
  /** Air at the station. [°C] */
  readonly station: Celsius;
  /** Crop height, nothing on. [°C] */
  readonly bare: Celsius;
  readonly expected: Celsius;
  readonly promised: Celsius;
  /** Gain of the planned cover. [°C] */
  readonly gain: CelsiusDifference;
}

/** What a leaf at crop height meets in calm air over the days planned, hour by hour from `from`. */
export interface CropAir {
  /** First walk, and end of the days planned. */
  readonly from: Instant;
  readonly until: Instant;
  /** With nothing on. [°C] */
  readonly bare: readonly Celsius[];
  /** Under what the plan has on, by tunnel. [°C] */
  readonly under: ReadonlyMap<string, readonly Celsius[]>;
}

/** Pounds of a product at one pick. */
export interface ProductAtPick {
  readonly product: string;
  readonly pick: Pick;
  /** Expected salad-size weight, with what is already cut. [kg] */
  readonly expected: Kilogram;
  readonly ordered: Kilogram;
  /** Of its crops, what is already cut for that day. [kg] */
  readonly cold: Kilogram;
  /** Crop that runs out first and so keeps it from being more; null where nothing lacks, or nothing of it is cut. */
  readonly scarcest: string | null;
  readonly successions: readonly string[];
}

/** What may be offered of a product on one selling day. */
export interface Promised {
  readonly product: string;
  readonly market: string;
  /** Selling day. */
  readonly marketDate: LocalDate;
  /** There in four cases of five. [kg] */
  readonly safe: Kilogram;
  /** There in one case of five. [kg] */
  readonly mayCome: Kilogram;
  readonly ordered: Kilogram;
  /** What of the orders is not safe, and what is safe beyond them. [kg] */
  readonly short: Kilogram;
  readonly over: Kilogram;
}

/** What the sheet was made from. */
export interface MadeFrom {
  readonly sensors: readonly string[];
  readonly latest: Instant | null;
  /** Tunnels whose own logger stands for what was computed under their cover, and up to when. */
  readonly tunnels: readonly { readonly tunnel: Tunnel; readonly latest: Instant }[];
  readonly gaps: readonly Gap[];
  /** Hours that look like a fault of the sensor. */
  readonly doubtful: readonly Doubtful[];
  readonly forecastIssued: Instant | null;
  /** Who made it, where the forecast says so. */
  readonly forecastSource?: string;
  readonly forecastEnds: LocalDate | null;
  /** First day from today on that no forecast tells of; null when none lacks. */
  readonly unforeseenFrom: LocalDate | null;
  /** First day ahead that carries on the last known days, and first that stands on the usual weather. */
  readonly carriedFrom: LocalDate | null;
  readonly usualFrom: LocalDate | null;
  /** Whose usual weather that is; left out: none is known. */
  readonly usualBy?: UsualBy;
  /** Do days behind stand on the usual weather? */
  readonly usualBehind: boolean;
  /** Kept forecasts from which the error of this one was learned. */
  readonly learnedFrom: number;
  /** Ways the weather ahead may go that odds and ranges were counted over. */
  readonly members: number;
  /** Requirements stated by another way of counting, as they were brought to the model's clock. */
  readonly broughtOver: readonly BroughtOver[];
  /** What the notes have taught of crops and covers; left out: nothing can be computed. */
  readonly learned?: Learned;
  /** The stretch of days under ten hours that touches the days looked at. */
  readonly shortDays: DateRange | null;
}

/** What the tunnels' plans come to together. */
export interface TogetherPlan {
  /** Orders, stalls and mixes counted. */
  readonly worth: number;
  readonly worthUnchanged: number;
  readonly parts: Parts;
  readonly partsUnchanged: Parts;
  /** No plan can be worth more than this that goes no further beyond limits and differs from a sheet given out no more. */
  readonly bound: number;
  /** The plan is the best there is, up to a millionth. */
  readonly proved: boolean;
  /** Schedules that were weighed against each other. */
  readonly weighed: number;
  /** Shared hands, hours or cold room that do not suffice. */
  readonly overrun: readonly LimitName[];
  /** Limits that a plan without any change would break. */
  readonly overrunUnchanged: readonly LimitName[];
  /** Share of the plan's changes that each part decided. [0–1] */
  readonly decidedBy: Readonly<Record<keyof Parts | "limit", number>>;
}

/** The whole answer of the main job, before any of it is worded. */
export interface Outcome {
  readonly farm: Farm;
  /** Values of the model that belong to no crop and no cover. */
  readonly settings: Settings;
  /** Moment planned from. */
  readonly on: Instant;
  readonly days: number;
  readonly walks: readonly Walk[];
  /** Shares of the groups of weathers that what several beds bring is weighed in. [0–1] */
  readonly weathers: readonly number[];
  /** From yesterday to the end of the days planned. */
  readonly weather: readonly DayWeather[];
  /** Most urgent first: frost and heat before all else. */
  readonly warnings: readonly Warning[];
  readonly tunnels: readonly TunnelPlan[];
  /** null: nothing is planned. */
  readonly together: TogetherPlan | null;
  /** null: nothing is planned. */
  readonly air: CropAir | null;
  readonly successions: readonly SuccessionOutlook[];
  readonly picks: readonly Pick[];
  readonly products: readonly ProductAtPick[];
  /** Greens already cut that wait for a selling day. */
  readonly keptCold: readonly KeptCold[];
  /** By selling day, in the order the farm lists its products. */
  readonly promises: readonly Promised[];
  /** Where a check strip would teach most; null: nowhere. */
  readonly strip: StripChance | null;
  /** Most worth first; null: not asked for. */
  readonly whatIf: readonly WhatIf[] | null;
  readonly madeFrom: MadeFrom;
  /** Against the sheet given out before; null: none was. */
  readonly since: SinceIssued | null;
  readonly problems: readonly Problem[];
}

export type { Layer };
