import type {
  Alternative,
  AtPick,
  BedBeside,
  Change,
  Fate,
  LedgerEntry,
  Outcome,
  OwnParts,
  Parts,
  Pick,
  Range,
  SuccessionOutlook,
  TogetherPlan,
  TunnelPlan,
  Walk,
} from "../../src/decide/index.ts";
import {
  type Cover,
  type Crop,
  catalogue,
  type Farm,
  type Market,
  type Piece,
  type Setting,
  type Succession,
  settingKey,
  type Tunnel,
} from "../../src/farm/index.ts";
import {
  addDays,
  type Celsius,
  type Centimetre,
  celsius,
  celsiusDifference,
  degreeDays,
  fahrenheit,
  feet,
  HOUR,
  type Instant,
  inches,
  instant,
  instantAt,
  kilogram,
  type LocalDate,
  metre,
  milesPerHour,
  mol,
  pounds,
} from "../../src/quantity/index.ts";
import type { FrostedBed } from "../../src/watch/index.ts";

/** A small answer made by hand: three tunnels, a frost night, a hot day, a hold and a miss. Numbers are plausible, not computed. */

const ZONE = "America/New_York";
const MONDAY = "2026-04-20" as LocalDate;
const dateAt = (offset: number): LocalDate => addDays(MONDAY, offset);
const at = (offset: number, hour: number): Instant => instantAt(ZONE, dateAt(offset), hour);
const F = (value: number): Celsius => celsius(fahrenheit(value));
const size = (low: number, middle: number, high: number): Range<Centimetre> => ({
  low: inches(low),
  middle: inches(middle),
  high: inches(high),
});

const cover = (id: string, name: string, kind: Cover["kind"], light: number): Cover => ({
  id,
  name,
  kind,
  light,
  day: { sun: 0.24, still: 12, windy: 4 },
  night: { clear: celsiusDifference(1.3), cloudy: celsiusDifference(1.3) },
  frostCredit: celsiusDifference(0),
  minutes: { on: 30, off: 12, vent: 4 },
});

const crop = (id: string, standing: Crop["requirementStanding"]): Crop => ({
  id,
  name: id,
  emergence: { base: celsius(3), sum: degreeDays(60), tooWarm: celsius(29) },
  growth: { base: celsius(4), optimumLow: celsius(20), optimumHigh: celsius(24), ceiling: celsius(34) },
  requirement: degreeDays(240),
  requirementSpread: 0.12,
  requirementStanding: standing,
  lightOnPace: 0.3,
  lightOnWeight: 0.9,
  smallest: inches(3),
  largest: inches(5),
  yield: 1.1,
  unfit: F(28),
  kill: F(22),
  killSoft: F(27),
  qualityLimit: F(80),
  lightFloor: mol(12),
  regrowth: 0.7,
  cuts: 2,
  storage: 10,
  boltingDay: id === "arugula" ? 13 : null,
});

const COVERS: readonly Cover[] = [
  cover("row-30", "row cover, 30 g (0.9 oz)", "rowCover", 0.7),
  cover("shade-40", "shade cloth 40 %", "shade", 0.6),
  cover("net", "insect net", "net", 0.9),
];
const CROPS: readonly Crop[] = [
  crop("arugula", "published"),
  crop("spinach", "published"),
  crop("mustard", "judgement"),
  crop("lettuce mix", "derived"),
  crop("kale", "published"),
];

const tunnel = (id: string, name: string): Tunnel => ({
  id,
  name,
  length: feet(50),
  hoops: "conduit",
  beds: 2,
});
const piece = (id: string, coverId: string, liesOn: readonly string[] = []): Piece => ({
  id,
  cover: coverId,
  length: feet(60),
  count: 1,
  spans: 1,
  liesOn,
});
const succession = (id: string, cropId: string, tunnelId: string, net = false): Succession => ({
  id,
  crop: cropId,
  tunnel: tunnelId,
  from: metre(0),
  to: metre(7.5),
  sown: "2026-03-16" as LocalDate,
  market: "stall",
  cuts: 0,
  net,
});

const STALL: Market = {
  id: "stall",
  name: "Saturday stall",
  weekday: 6,
  picks: [{ daysBefore: 1, hour: 6 }],
};
const KITCHEN: Market = {
  id: "kitchen",
  name: "Wednesday kitchen",
  weekday: 3,
  picks: [{ daysBefore: 0, hour: 6 }],
};

const pick = (market: Market, offset: number, marketOffset: number, planned = true): Pick => ({
  market,
  marketDate: dateAt(marketOffset),
  at: at(offset, 6),
  date: dateAt(offset),
  planned,
});
export const FRIDAY: Pick = pick(STALL, 4, 5);
const NEXT_WEDNESDAY: Pick = pick(KITCHEN, 9, 9, false);

const SUCCESSIONS: readonly Succession[] = [
  succession("A12", "arugula", "n1"),
  succession("S4", "spinach", "n1"),
  succession("M3", "mustard", "n2", true),
  succession("L7", "lettuce mix", "s1"),
  succession("K2", "kale", "s1"),
];

const farm = (changed: Partial<Farm>): Farm => ({
  name: "Two Oaks",
  units: "US",
  currency: "$",
  place: { latitude: 41.5, longitude: -73.9, elevation: metre(90), zone: ZONE, setting: "inland" },
  usual: [],
  walks: { morning: 7, evening: 18 },
  markets: [STALL, KITCHEN],
  products: [
    {
      id: "spicy",
      name: "Spicy mix",
      parts: [
        { crop: "arugula", share: 0.6, swaps: [] },
        { crop: "mustard", share: 0.4, swaps: [] },
      ],
      price: 22,
      stall: null,
      orders: [{ market: "stall", weight: pounds(40), short: null }],
    },
    {
      id: "spinach",
      name: "Spinach",
      parts: [{ crop: "spinach", share: 1, swaps: [] }],
      price: 20,
      stall: null,
      orders: [],
    },
  ],
  tunnels: [tunnel("n1", "North 1"), tunnel("n2", "North 2"), tunnel("s1", "South 1")],
  sideBySide: [],
  pieces: [
    piece("R1", "row-30"),
    piece("R2", "row-30", ["s1"]),
    piece("C1", "shade-40"),
    piece("N1", "net", ["n2"]),
  ],
  successions: SUCCESSIONS,
  notes: [],
  labour: { wage: 18, pace: 1, cutting: 2, walk: null, picking: null },
  handling: { washing: null, cooler: null },
  limits: { changesPerWeek: 3, layers: 2, wind: milesPerHour(15), dimDays: 2, caution: 3 },
  sensors: new Map([["outside", "outside"]]),
  keepFlagged: new Set<string>(),
  crops: new Map(CROPS.map((each) => [each.id, each])),
  covers: new Map(COVERS.map((each) => [each.id, each])),
  ...changed,
});

const WALKS: readonly Walk[] = Array.from({ length: 10 }, (_, index): Walk => {
  const offset = Math.floor(index / 2);
  const part = index % 2 === 0 ? "morning" : "evening";
  return {
    index,
    at: at(offset, part === "morning" ? 7 : 18),
    date: dateAt(offset),
    part,
    wind: milesPerHour(offset === 4 ? 18 : 5),
    tooWindy: offset === 4,
    frozen: index === 6,
    frozenThrough: false,
    snow: false,
  };
});

const BARE: Setting = [];
const SHADE: Setting = [{ cover: "shade-40", state: "on" }];
const NIGHTS: Setting = [{ cover: "row-30", state: "nights" }];
const ROW: Setting = [{ cover: "row-30", state: "on" }];
const NET: Setting = [{ cover: "net", state: "on" }];

const ownParts = (timing: number, stress: number, damage: number, labour: number): OwnParts => ({
  timing,
  stress,
  damage,
  again: 0,
  labour,
  calm: 0,
});

const parts = (...own: Parameters<typeof ownParts>): Parts => ({ ...ownParts(...own), orders: 0 });

/** What the tunnels' plans come to together when each kilogram sells at its price. */
function together(tunnels: readonly TunnelPlan[]): TogetherPlan {
  const sum = (of: (plan: TunnelPlan) => number): number =>
    tunnels.reduce((total, plan) => total + of(plan), 0);
  const partsOf = (way: "parts" | "partsUnchanged"): Parts =>
    parts(
      sum((plan) => plan[way].timing),
      sum((plan) => plan[way].stress),
      sum((plan) => plan[way].damage),
      sum((plan) => plan[way].labour),
    );
  const worth = sum((plan) => plan.worth);
  return {
    worth,
    worthUnchanged: sum((plan) => plan.worthUnchanged),
    parts: partsOf("parts"),
    partsUnchanged: partsOf("partsUnchanged"),
    bound: worth,
    proved: true,
    weighed: 12,
    overrun: [],
    overrunUnchanged: [],
    decidedBy: { timing: 0.5, stress: 0, damage: 0.5, again: 0, labour: 0, calm: 0, orders: 0, limit: 0 },
  };
}

const NOTHING_LOST: Change["without"] = {
  worth: 0,
  breaks: [],
  overrun: [],
  cuts: [],
  beds: [],
  worst: null,
  filled: [],
};

const ARUGULA_HELD: BedBeside = {
  succession: "A12",
  fate: { kind: "pick", pick: FRIDAY, as: "braising" },
  gain: { timing: 64, stress: 0, damage: 0, again: 0 },
  cut: {
    at: FRIDAY.at,
    pick: FRIDAY,
    size: { plan: size(3.9, 4.4, 4.9), other: size(4.1, 4.8, 5.5) },
    odds: { plan: 0.83, other: 0.55 },
    weight: { plan: pounds(24), other: pounds(26) },
    wet: null,
  },
};

const change = (
  walk: number,
  on: Tunnel,
  from: Setting,
  to: Setting,
  more: Partial<Change> & Told,
): Change => ({
  walk: WALKS[walk]!,
  tunnel: on,
  from,
  to,
  pieces: [],
  minutesEachWalk: 0,
  limit: null,
  without: NOTHING_LOST,
  rather: null,
  ...more,
});
type Told = { readonly minutes: number; readonly decidedBy: Change["decidedBy"]; readonly gain: Parts };

const ledger = (settings: readonly Setting[], ids: readonly string[]): LedgerEntry[] =>
  WALKS.flatMap(({ index }) =>
    settings.map((setting, s) => ({
      walk: index,
      setting: settingKey(setting),
      breaks: [],
      allowed: true,
      dim: false,
      lowest: F(40 - s),
      highest: F(70 + s),
      successions: ids.map((id) => ({
        id,
        thermalTime: 5.5,
        pace: 5,
        light: 14,
        heat: 0,
        damage: 0.001,
        safe: -0.003,
        rooted: 0,
      })),
      undated: [],
    })),
  );

const NIGHT = (bare: number, expected: number, promised: number): TunnelPlan["nights"][number] => ({
  date: dateAt(2),
  station: F(31),
  bare: F(bare),
  expected: F(expected),
  promised: F(promised),
  gain: celsiusDifference(F(expected) - F(bare)),
});

function plans(tunnels: readonly Tunnel[]): TunnelPlan[] {
  const [n1, n2, s1] = [tunnels[0]!, tunnels[1]!, tunnels[2]!];
  const common = { gaveWay: [], unchangedBreaks: [], taken: [], takenIn: WALKS.map(() => []), undated: [] };
  return [
    {
      ...common,
      tunnel: n1,
      now: BARE,
      settings: [BARE, SHADE, NIGHTS],
      choice: [1, 1, 1, 1, 1, 2, 2, 2, 0, 0],
      changes: [
        change(0, n1, BARE, SHADE, {
          pieces: [piece("C1", "shade-40")],
          minutes: 18,
          decidedBy: "timing",
          gain: parts(64, 0, 0, -5),
          without: { ...NOTHING_LOST, beds: [ARUGULA_HELD] },
        }),
        change(5, n1, SHADE, NIGHTS, {
          pieces: [piece("R1", "row-30")],
          minutes: 25,
          minutesEachWalk: 6,
          decidedBy: "damage",
          gain: parts(-2, 0, 120, -9),
          without: {
            ...NOTHING_LOST,
            worst: {
              succession: "S4",
              of: "leaves",
              walk: WALKS[5]!,
              odds: { plan: 0.05, other: 0.6 },
            },
          },
          rather: { setting: ROW, gain: parts(6, 8, 0, -2), beds: [] },
        }),
        change(8, n1, NIGHTS, BARE, {
          minutes: 6,
          decidedBy: "labour",
          gain: parts(0, 0, 0, 4),
        }),
      ],
      worth: 412,
      worthUnchanged: 240,
      parts: ownParts(440, 0, -12, -16),
      partsUnchanged: ownParts(380, 0, -140, 0),
      ledger: ledger([BARE, SHADE, NIGHTS], ["A12", "S4"]),
      nights: [NIGHT(26, 29, 27)],
    },
    {
      ...common,
      tunnel: n2,
      now: NET,
      settings: [NET],
      choice: WALKS.map(() => 0),
      changes: [],
      worth: 90,
      worthUnchanged: 90,
      parts: ownParts(96, 0, -6, 0),
      partsUnchanged: ownParts(96, 0, -6, 0),
      ledger: ledger([NET], ["M3"]),
      nights: [NIGHT(26, 27, 26)],
    },
    {
      ...common,
      tunnel: s1,
      now: ROW,
      settings: [ROW, NIGHTS, BARE],
      choice: [1, 1, 1, 1, 1, 1, 1, 1, 2, 2],
      changes: [
        change(0, s1, ROW, NIGHTS, {
          minutes: 9,
          minutesEachWalk: 6,
          decidedBy: "limit",
          limit: "rowCoverInHeat",
          gain: parts(0, 20, 0, -14),
        }),
        change(8, s1, NIGHTS, BARE, { minutes: 6, decidedBy: "labour", gain: parts(0, 0, 0, 4) }),
      ],
      worth: 130,
      worthUnchanged: 124,
      parts: ownParts(140, 0, 0, -10),
      partsUnchanged: ownParts(144, -20, 0, 0),
      ledger: ledger([ROW, NIGHTS, BARE], ["L7", "K2"]),
      nights: [NIGHT(26, 29, 27)],
    },
  ];
}

const atFriday = (
  right: AtPick["right"],
  unchanged: Range<Centimetre>,
  planned: Range<Centimetre>,
  oddsUnchanged: number,
  odds: number,
  weight: number,
): AtPick => ({
  pick: FRIDAY,
  right,
  unchanged,
  planned,
  oddsUnchanged,
  odds,
  weight: pounds(weight),
  medianUnchanged: unchanged.middle,
  median: planned.middle,
});

const HELD: Fate = { kind: "hold", cut: at(0, 7), days: 4, pick: FRIDAY, as: "salad" };

/** A way out of a miss by what its bed alone brings. */
const alone = (fate: Fate, worth: number): Alternative => ({ forced: false, fate, worth });

/** A way out of a miss the farm is planned anew around; the one that costs nothing is the plan's own. */
const around = (succession: string, fate: Fate, worth: number): Alternative => ({
  forced: true,
  fate,
  kept:
    fate.kind === "none"
      ? { kind: "uncut", succession }
      : fate.kind === "hold"
        ? { kind: "cut", succession, date: dateAt(0), part: "morning" }
        : { kind: "cut", succession, date: fate.pick.date, part: "morning" },
  planned: worth === 0,
  worth,
  off: 0,
});

function outlooks(successions: readonly Succession[]): SuccessionOutlook[] {
  const find = (id: string) => successions.find((each) => each.id === id)!;
  const cropOf = (id: string) => CROPS.find((each) => each.id === id)!;
  const grown = { emergence: { at: at(-28, 12), seen: false }, thermalTime: degreeDays(230) };
  const common = {
    ...grown,
    requirement: degreeDays(240),
    spread: 0.1,
    measured: 0,
    guessed: 0,
    paceNow: 8.5,
    windowDays: 4.6,
  };
  const asSalad = { kind: "pick", pick: FRIDAY, as: "salad" } as const;
  return [
    {
      ...common,
      succession: find("A12"),
      crop: cropOf("arugula"),
      stage: "ready",
      sizeNow: size(2.6, 3.1, 3.5),
      measured: 1,
      atPicks: [atFriday("asItIs", size(4.1, 4.8, 5.5), size(3.9, 4.4, 4.9), 0.55, 0.83, 24)],
      reach: {
        earliest: dateAt(-1),
        unchanged: dateAt(-1),
        planned: dateAt(-1),
        latest: dateAt(0),
        spread: {
          unchanged: { early: dateAt(-3), late: dateAt(1) },
          planned: { early: dateAt(-3), late: dateAt(1) },
        },
      },
      fate: asSalad,
      atFate: {
        size: size(3.9, 4.4, 4.9),
        odds: 0.83,
        weight: pounds(24),
        inSize: pounds(19.9),
        cases: () => new Float64Array(),
        minutes: 30,
        frozen: false,
        wet: false,
        thaw: null,
      },
      fateUnchanged: { kind: "pick", pick: FRIDAY, as: "braising" },
      worth: 260,
      worthUnchanged: 150,
      basis: null,
      miss: null,
    },
    {
      ...common,
      succession: find("S4"),
      crop: cropOf("spinach"),
      stage: "ready",
      sizeNow: size(4, 4.6, 5.2),
      atPicks: [atFriday("no", size(5.2, 6.1, 7), size(5, 5.8, 6.6), 0.02, 0.06, 18)],
      reach: {
        earliest: dateAt(-6),
        unchanged: dateAt(-6),
        planned: dateAt(-6),
        latest: dateAt(-5),
        spread: {
          unchanged: { early: dateAt(-8), late: dateAt(-4) },
          planned: { early: dateAt(-8), late: dateAt(-4) },
        },
      },
      fate: { kind: "hold", cut: at(0, 7), days: 4, pick: FRIDAY, as: "salad" },
      atFate: {
        size: size(4, 4.6, 5.2),
        odds: 0.78,
        weight: pounds(15),
        inSize: pounds(11.7),
        cases: () => new Float64Array(),
        minutes: 30,
        frozen: false,
        wet: false,
        thaw: null,
      },
      fateUnchanged: { kind: "hold", cut: at(0, 7), days: 4, pick: FRIDAY, as: "salad" },
      worth: 152,
      worthUnchanged: 150,
      basis: null,
      miss: {
        pick: FRIDAY,
        why: "tooLarge",
        coversCanHelp: false,
        helps: null,
        alternatives: [
          alone(HELD, 152),
          alone({ kind: "pick", pick: FRIDAY, as: "braising" }, 124),
          alone({ kind: "none" }, 0),
        ],
        again: 46,
        freed: { days: 0.02, worth: 0.1 },
      },
    },
    {
      ...common,
      succession: find("M3"),
      crop: cropOf("mustard"),
      stage: "growing",
      sizeNow: size(2, 2.6, 3.2),
      atPicks: [atFriday("asItIs", size(2.8, 3.6, 4.4), size(2.8, 3.6, 4.4), 0.72, 0.72, 9)],
      reach: {
        earliest: dateAt(3),
        unchanged: dateAt(3),
        planned: dateAt(3),
        latest: dateAt(3),
        spread: {
          unchanged: { early: dateAt(1), late: dateAt(5) },
          planned: { early: dateAt(1), late: dateAt(5) },
        },
      },
      fate: asSalad,
      atFate: {
        size: size(2.8, 3.6, 4.4),
        odds: 0.72,
        weight: pounds(9),
        inSize: pounds(6.5),
        cases: () => new Float64Array(),
        minutes: 30,
        frozen: false,
        wet: false,
        thaw: null,
      },
      fateUnchanged: asSalad,
      worth: 90,
      worthUnchanged: 90,
      basis: null,
      miss: null,
    },
    {
      ...common,
      succession: find("L7"),
      crop: cropOf("lettuce mix"),
      stage: "growing",
      sizeNow: size(1.3, 1.7, 2.1),
      atPicks: [atFriday("no", size(1.9, 2.5, 3.1), size(1.8, 2.4, 3), 0.1, 0.08, 6)],
      reach: {
        earliest: dateAt(6),
        unchanged: dateAt(6),
        planned: dateAt(7),
        latest: null,
        spread: {
          unchanged: { early: dateAt(4), late: dateAt(8) },
          planned: { early: dateAt(5), late: null },
        },
      },
      fate: { kind: "none" },
      atFate: null,
      fateUnchanged: { kind: "none" },
      worth: 130,
      worthUnchanged: 124,
      basis: null,
      miss: {
        pick: FRIDAY,
        why: "tooSmall",
        coversCanHelp: false,
        helps: null,
        alternatives: [
          alone({ kind: "pick", pick: NEXT_WEDNESDAY, as: "salad" }, 130),
          alone({ kind: "pick", pick: FRIDAY, as: "small" }, 12),
        ],
        again: null,
        freed: { days: 9.2, worth: 70 },
      },
    },
    {
      ...common,
      succession: find("K2"),
      crop: cropOf("kale"),
      stage: "emerging",
      emergence: { at: at(3, 12), seen: false },
      thermalTime: degreeDays(0),
      sizeNow: null,
      windowDays: null,
      atPicks: [],
      reach: {
        earliest: null,
        unchanged: null,
        planned: null,
        latest: null,
        spread: { unchanged: { early: null, late: null }, planned: { early: null, late: null } },
      },
      fate: { kind: "none" },
      atFate: null,
      fateUnchanged: { kind: "none" },
      worth: 0,
      worthUnchanged: 0,
      basis: null,
      miss: null,
    },
  ];
}

const leavesOf = (risk: number, ...ids: readonly string[]): readonly FrostedBed[] =>
  ids.map((succession) => ({ succession, of: "leaves", kill: F(22), risk }));

/** The sample answer. Parts of the farm and of the answer can be replaced. */
export function sample(changedFarm: Partial<Farm> = {}, changed: Partial<Outcome> = {}): Outcome {
  const own = farm(changedFarm);
  const tunnels = plans(own.tunnels);
  const frost = {
    kind: "frost",
    date: dateAt(2),
    bare: F(26),
    unfit: F(28),
    kill: F(22),
    windy: false,
  } as const;
  return {
    farm: own,
    settings: catalogue().settings,
    on: at(0, 5.5),
    days: 5,
    walks: WALKS,
    weathers: [1],
    strip: null,
    weather: Array.from({ length: 6 }, (_, i) => ({
      date: dateAt(i - 1),
      low: F(i === 4 ? 31 : 38),
      high: F(i === 1 ? 74 : 58 + i),
      wind: milesPerHour(i === 5 ? 18 : 5),
      windKnown: true,
      light: mol(32),
      dayLength: 13.4,
      sunrise: at(i - 1, 6.1),
      sunset: at(i - 1, 19.6),
      cloud: 0.2,
      rain: null,
      snowfall: null,
      origin: i === 0 ? "logger" : i === 5 ? "carried" : "forecast",
      lead: i - 1,
    })),
    warnings: [
      {
        ...frost,
        severity: "danger",
        tunnel: "n2",
        beds: leavesOf(0.62, "M3"),
        expected: F(27),
        promised: F(26),
        risk: 0.62,
      },
      {
        ...frost,
        severity: "danger",
        tunnel: "n1",
        beds: leavesOf(0.18, "A12", "S4"),
        expected: F(29),
        promised: F(27),
        risk: 0.18,
      },
      {
        ...frost,
        severity: "care",
        tunnel: "s1",
        beds: leavesOf(0.005, "L7"),
        expected: F(30),
        promised: F(28),
        risk: 0.005,
      },
      {
        kind: "heat",
        severity: "care",
        date: dateAt(0),
        tunnel: "s1",
        successions: ["L7"],
        ifLeft: F(96),
        planned: F(75),
        limit: F(80),
      },
      { kind: "wind", severity: "care", date: dateAt(4), wind: milesPerHour(18), limit: milesPerHour(15) },
      { kind: "bolting", severity: "care", date: dateAt(0), succession: "A12", dayLength: 13.4 },
    ],
    tunnels,
    together: together(tunnels),
    air: null,
    successions: outlooks(own.successions),
    picks: [FRIDAY],
    products: [
      {
        product: "spicy",
        pick: FRIDAY,
        expected: pounds(33),
        ordered: pounds(40),
        cold: kilogram(0),
        scarcest: null,
        successions: ["A12", "M3"],
      },
      {
        product: "spinach",
        pick: FRIDAY,
        expected: pounds(7.4),
        ordered: kilogram(0),
        cold: kilogram(0),
        scarcest: null,
        successions: ["S4"],
      },
    ],
    keptCold: [],
    promises: [
      {
        product: "spicy",
        market: FRIDAY.market.id,
        marketDate: FRIDAY.marketDate,
        safe: pounds(24.3),
        mayCome: pounds(38.8),
        ordered: pounds(40),
        short: pounds(15.7),
        over: kilogram(0),
      },
      {
        product: "spinach",
        market: FRIDAY.market.id,
        marketDate: FRIDAY.marketDate,
        safe: kilogram(0),
        mayCome: pounds(11.6),
        ordered: kilogram(0),
        short: kilogram(0),
        over: kilogram(0),
      },
    ],
    whatIf: null,
    madeFrom: {
      sensors: ["north post"],
      latest: instant(at(0, 5.25)),
      tunnels: [],
      gaps: [{ from: at(-8, 2), to: at(-8, 9), origin: "filled" }],
      doubtful: [],
      forecastIssued: instant(at(0, 5.5) - 11 * HOUR),
      forecastEnds: dateAt(3),
      unforeseenFrom: dateAt(4),
      carriedFrom: dateAt(4),
      usualFrom: null,
      usualBehind: false,
      learnedFrom: 0,
      members: 64,
      broughtOver: [],
      shortDays: null,
    },
    problems: [
      {
        code: "forecast-ends-early",
        weight: "needsYou",
        file: "forecasts",
        line: null,
        column: null,
        expected: "a forecast up to Fri Apr 24",
        received: "one that ends Thu Apr 23",
        hint: "Import a newer one with leafpace import.",
      },
    ],
    since: null,
    ...changed,
  };
}

const AROUND: ReadonlyMap<string, readonly Alternative[]> = new Map([
  [
    "S4",
    [
      around("S4", HELD, 0),
      around("S4", { kind: "pick", pick: FRIDAY, as: "braising" }, -68),
      around("S4", { kind: "none" }, -152),
    ],
  ],
  [
    "L7",
    [
      around("L7", { kind: "none" }, 0),
      around("L7", { kind: "pick", pick: NEXT_WEDNESDAY, as: "salad" }, -0.4),
      around("L7", { kind: "pick", pick: FRIDAY, as: "small" }, -118),
    ],
  ],
]);

/** The sample with the farm planned anew around every way out of a miss. */
export function plannedAround(): Outcome {
  const outcome = sample();
  const successions = outcome.successions.map((outlook) => {
    const alternatives = AROUND.get(outlook.succession.id);
    return outlook.miss === null || alternatives === undefined
      ? outlook
      : { ...outlook, miss: { ...outlook.miss, alternatives } };
  });
  return { ...outcome, successions };
}

/** The sample on a farm that works in metres and degrees Celsius. */
export const metricSample = (): Outcome => sample({ units: "metric", currency: null });
