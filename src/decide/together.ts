import type { Farm, Piece, Settings } from "../farm/index.ts";
import { addDays, type LocalDate, localDate } from "../quantity/index.ts";
import { FREE } from "./calm.ts";
import { type Evaluation, gravityOf } from "./evaluate.ts";
import { coldFor, type KeptCold } from "./keptCold.ts";
import type { Lay, Taken } from "./lays.ts";
import { addMarketDay, allShort, type Brought } from "./marketDay.ts";
import type { LimitName, Pick } from "./outcome.ts";
import { priceOf } from "./price.ts";
import type { Prices } from "./prices.ts";
import type { Program, ProgramRow, Solver } from "./solver.ts";
import type { OutletTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** Everything the joint plan needs: each tunnel's own problem, and what they share. */
export interface FarmProblem {
  readonly farm: Farm;
  readonly settings: Settings;
  /** Orders of their selling days count even where what is settled leaves no bed that could be cut for them. */
  readonly picks: readonly Pick[];
  /** Greens already cut that wait for them. */
  readonly keptCold: readonly KeptCold[];
  /** In the farm's order. */
  readonly tunnels: readonly { readonly id: string; readonly problem: TunnelProblem }[];
}

/** What several tunnels share, as one program in which each schedule of a tunnel with its cuts is a column. */
export interface Together {
  readonly program: Program;
  /** Row that gives each tunnel one schedule. */
  readonly one: readonly ProgramRow[];
  /** A schedule with its cuts as a column: its own worth, and what it brings to and takes from each row. */
  column(tunnel: number, schedule: readonly number[], evaluation: Evaluation): ProgramColumn;
  /** Adds a column; its number is returned. */
  add(tunnel: number, column: ProgramColumn): number;
  /** What a relaxed solution makes a tunnel's kilograms, cloth and minutes worth. */
  prices(rows: Float64Array, tunnel: number): Prices;
  /** The objective leaves this out: orders of which nothing at all is brought. */
  readonly offset: number;
  /** Limits of hands, hours, cold room and cloth that a whole solution goes beyond. */
  overrun(values: Float64Array): readonly LimitName[];
  /** What that weighs in the objective. */
  overWorth(values: Float64Array): number;
  /** Rows in which neither more nor less will do. */
  readonly exact: ReadonlySet<ProgramRow>;
  /** Worth of one unit of gravity. */
  readonly breach: number;
}

/** A column of the program, its tunnel's own row left out. */
export interface ProgramColumn {
  readonly worth: number;
  readonly amounts: ReadonlyMap<ProgramRow, number>;
  /** Limits that it goes beyond alone, and what that weighs; its amounts stop there, so that no part of it is lighter. */
  readonly beyond: ReadonlySet<LimitName>;
  readonly weight: number;
}

/**
 * One column is at least as good as another in every plan: it is worth as much, brings as much and takes no more.
 *
 * @param exact - Rows in which neither more nor less will do.
 */
export function outdoes(one: ProgramColumn, other: ProgramColumn, exact: ReadonlySet<ProgramRow>): boolean {
  if (one.worth < other.worth) return false;
  for (const [row, amount] of one.amounts) {
    const theirs = other.amounts.get(row) ?? 0;
    if (exact.has(row) ? amount !== theirs : amount > theirs) return false;
  }
  for (const [row, amount] of other.amounts) {
    if (one.amounts.has(row)) continue;
    if (exact.has(row) ? amount !== 0 : amount < 0) return false;
  }
  return true;
}

/** Differences of worth below this are none. */
export const NOTHING = 1e-6;

const BELOW = Number.NEGATIVE_INFINITY;
const UNLIMITED = Number.POSITIVE_INFINITY;

/** Gravity of each minute or kilogram beyond a limit: a hundredth of one is as grave as the least of a tunnel's own limits, so that no little pays. */
const BEYOND = 100;

/** Gravity of a piece that is not there: graver than anything it could be laid for. */
const NO_SUCH_PIECE = 10 * gravityOf(["pieces"]);

const dayOf = ({ market, marketDate }: Pick): string => `${market.id} ${marketDate}`;

/** More than anything the plan can be worth or pay for differing from a sheet given out, so that no limit is broken for either. */
function breachWorth({ farm, settings, tunnels, keptCold }: FarmProblem, orders: number): number {
  const cold = keptCold.reduce((sum, { crop, weight }) => sum + weight * priceOf(farm, crop, settings), 0);
  const whole = tunnels.reduce(
    (sum, { problem: { successions, undated, calm } }) =>
      sum +
      (calm === null ? 0 : calm.price * calm.entered.filter((asked) => asked !== FREE).length) +
      successions.reduce((total, { mass, price, regrown }) => total + mass * price + regrown, 0) +
      undated.reduce((total, { worth }) => total + worth, 0),
    0,
  );
  return 1 + 2 * (whole + cold + orders);
}

/** Rows by their keys, made when first asked for. */
function rowsOf(program: Program) {
  const rows = new Map<string, ProgramRow>();
  return {
    at: (key: string): ProgramRow | undefined => rows.get(key),
    make(key: string, lower: number, upper: number): void {
      if (!rows.has(key)) rows.set(key, program.addRow(lower, upper));
    },
  };
}

const clothKey = (piece: Piece, i: number): string => `cloth ${piece.id} ${i}`;
/** Neighbours under one piece have it alike: on, vented, or by nights. */
const spanKey = (piece: Piece, { over, state }: Taken, other: string, i: number): string =>
  `span ${piece.id} ${state} ${over.join(" ")} ${other} ${i}`;

/** Rows a lay takes part in through an interval, with its amounts. */
function clothRows(
  tunnel: string,
  { taken }: Lay,
  i: number,
): readonly (readonly [key: string, amount: number])[] {
  return taken.flatMap((each): readonly (readonly [string, number])[] => {
    const { piece, over } = each;
    if (piece === null) return [];
    // A piece over neighbours is counted once, and all of them must lie under it together.
    const [first, ...others] = over;
    if (first !== tunnel) return [[spanKey(piece, each, tunnel, i), -1]];
    return [[clothKey(piece, i), 1], ...others.map((other) => [spanKey(piece, each, other, i), 1] as const)];
  });
}

export function together(problem: FarmProblem, solver: Solver): Together {
  const { farm, settings, picks, tunnels } = problem;
  const program = solver.open();
  const one = tunnels.map(() => program.addRow(1, 1));
  const rows = rowsOf(program);
  const { zone } = farm.place;
  const dateOf = ({ at }: OutletTable): LocalDate => localDate(zone, at);
  const nightsOf = new Map<OutletTable, readonly LocalDate[]>();
  /** Nights in the cold. */
  const nights = (outlet: OutletTable): readonly LocalDate[] => {
    const before = nightsOf.get(outlet);
    if (before !== undefined) return before;
    const list: LocalDate[] = [];
    nightsOf.set(outlet, list);
    for (let night = dateOf(outlet); night < outlet.fate.pick.marketDate; night = addDays(night, 1))
      list.push(night);
    return list;
  };

  // Selling days, each in every group of weathers.
  const brought = new Map<string, readonly Brought[]>();
  const days = new Map<string, { readonly pick: Pick; readonly crops: Set<string> }>();
  for (const { problem: each } of tunnels)
    for (const { standing, outlets } of each.successions)
      for (const { fate } of outlets) {
        const key = dayOf(fate.pick);
        if (!days.has(key)) days.set(key, { pick: fate.pick, crops: new Set() });
        days.get(key)!.crops.add(standing.crop.id);
      }
  for (const pick of picks) if (!days.has(dayOf(pick))) days.set(dayOf(pick), { pick, crops: new Set() });
  const weathers = tunnels[0]?.problem.weathers ?? [];
  let offset = 0;
  for (const [key, { pick, crops }] of days) {
    const market = pick.market.id;
    offset -= allShort(farm, market, settings);
    const day = { market, crops: [...crops], cold: coldFor(problem.keptCold, pick) };
    brought.set(
      key,
      weathers.map((share) => addMarketDay(program, farm, { ...day, share }, settings)),
    );
  }

  // What goes beyond a limit counts as a breach, so that there is always a plan.
  const breach = breachWorth(problem, -offset);
  const overruns: { readonly column: number; readonly limit: LimitName; readonly weight: number }[] = [];
  const beyond = (key: string, sign: 1 | -1, limit: LimitName, weight: number): void => {
    const column = program.addColumn(-weight, UNLIMITED, [rows.at(key)!], [sign]);
    overruns.push({ column, limit, weight });
  };

  // Cloth: a row only where more tunnels could want a piece than there are.
  const exact = new Set<ProgramRow>();
  const cloth = (key: string, lower: number, upper: number, signs: readonly (1 | -1)[]): void => {
    if (rows.at(key) !== undefined) return;
    rows.make(key, lower, upper);
    for (const sign of signs) beyond(key, sign, "pieces", NO_SUCH_PIECE * breach);
  };
  const wanting = new Map<Piece, Set<string>>();
  for (const { id, problem: each } of tunnels)
    for (const { taken } of each.lays)
      for (const { piece, over } of taken)
        if (piece !== null)
          wanting.set(piece, (wanting.get(piece) ?? new Set()).add(over.length > 1 ? `${id}+` : id));
  for (const { problem: each } of tunnels)
    for (let i = 0; i < each.intervals; i++)
      for (const { taken } of each.lays)
        for (const lain of taken) {
          const { piece, over } = lain;
          if (piece === null) continue;
          if (wanting.get(piece)!.size > piece.count) cloth(clothKey(piece, i), BELOW, piece.count, [-1]);
          for (const other of over.slice(1)) {
            const key = spanKey(piece, lain, other, i);
            cloth(key, 0, 0, [1, -1]);
            exact.add(rows.at(key)!);
          }
        }

  // Hands, hours and cold room.
  const bounds = new Map<ProgramRow, { readonly most: number; readonly limit: LimitName }>();
  const bounded = (key: string, most: number | null, limit: LimitName): void => {
    if (most === null || rows.at(key) !== undefined) return;
    rows.make(key, BELOW, most);
    bounds.set(rows.at(key)!, { most, limit });
    beyond(key, -1, limit, BEYOND * breach);
  };
  const { labour, handling } = farm;
  for (const { problem: each } of tunnels) {
    for (let i = 0; i < each.intervals; i++) bounded(`walk ${i}`, labour.walk, "minutes");
    for (const { outlets } of each.successions)
      for (const outlet of outlets) {
        bounded(`picking ${outlet.at}`, labour.picking, "picking");
        bounded(`washing ${outlet.at}`, handling.washing, "washing");
        for (const night of nights(outlet)) bounded(`cooler ${night}`, handling.cooler, "cooler");
      }
  }

  /** Rows of each lay in each interval: [interval × lays + lay]. */
  const clothOf = tunnels.map(({ id, problem: each }) =>
    Array.from({ length: each.intervals * each.lays.length }, (_, k) => {
      const L = each.lays.length;
      return clothRows(id, each.lays[k % L]!, Math.floor(k / L)).flatMap(([key, amount]) => {
        const row = rows.at(key);
        return row === undefined ? [] : [{ row, amount }];
      });
    }),
  );

  return {
    program,
    one,
    exact,
    offset,
    breach,
    add(tunnel, { worth, amounts }) {
      const taken = [...amounts].filter(([, amount]) => amount !== 0);
      return program.addColumn(
        worth,
        UNLIMITED,
        [one[tunnel]!, ...taken.map(([row]) => row)],
        [1, ...taken.map(([, amount]) => amount)],
      );
    },
    column(tunnel, schedule, { worth, parts, gravity, successions, minutes }) {
      const { problem: each } = tunnels[tunnel]!;
      const amounts = new Map<ProgramRow, number>();
      const add = (row: ProgramRow, amount: number): void => {
        amounts.set(row, (amounts.get(row) ?? 0) + amount);
      };
      const take = (key: string, amount: number): void => {
        const row = rows.at(key);
        if (row !== undefined && amount !== 0) add(row, amount);
      };
      schedule.forEach((lay, i) => {
        for (const { row, amount } of clothOf[tunnel]![i * each.lays.length + lay]!) add(row, amount);
        take(`walk ${i}`, minutes[i]!);
      });
      let sold = 0;
      for (const { table, outlet, salad, cut, cutting } of successions) {
        if (outlet === null) continue;
        take(`picking ${outlet.at}`, cutting);
        take(`washing ${outlet.at}`, cut);
        for (const night of nights(outlet)) take(`cooler ${night}`, cut);
        brought.get(dayOf(outlet.fate.pick))!.forEach((day, k) => {
          const row = day.get(table.standing.crop.id)!;
          amounts.set(row, (amounts.get(row) ?? 0) - salad[k]!);
          sold += table.price * each.weathers[k]! * salad[k]!;
        });
      }
      const beyond = new Set<LimitName>();
      let over = 0;
      for (const [row, amount] of amounts) {
        const bound = bounds.get(row);
        if (bound === undefined || amount <= bound.most + 1e-6) continue;
        beyond.add(bound.limit);
        over += amount - bound.most;
        amounts.set(row, bound.most);
      }
      const weight = breach * (gravity + BEYOND * over);
      return { worth: worth + parts.calm - sold - weight, amounts, beyond, weight };
    },
    prices(duals, tunnel) {
      const { problem: each } = tunnels[tunnel]!;
      const of = (key: string): number => {
        const row = rows.at(key);
        return row === undefined ? 0 : duals[row]!;
      };
      const beyond = (key: string, amount: number): number => {
        const row = rows.at(key);
        const bound = row === undefined ? undefined : bounds.get(row);
        if (bound === undefined || amount <= bound.most) return 0;
        return Math.max(0, BEYOND * breach - of(key)) * (amount - bound.most);
      };
      const isBounded = [labour.picking, handling.washing, handling.cooler].some((most) => most !== null);
      return {
        tooLong: (i, minutes) => beyond(`walk ${i}`, minutes),
        tooMuch: isBounded
          ? (loads) => {
              const taken = new Map<string, number>();
              const take = (key: string, amount: number): void => {
                taken.set(key, (taken.get(key) ?? 0) + amount);
              };
              for (const { outlet, minutes, kilograms } of loads) {
                take(`picking ${outlet.at}`, minutes);
                take(`washing ${outlet.at}`, kilograms);
                for (const night of nights(outlet)) take(`cooler ${night}`, kilograms);
              }
              return [...taken].reduce((sum, [key, amount]) => sum + beyond(key, amount), 0);
            }
          : null,
        salad: ({ standing }, { fate }) =>
          brought.get(dayOf(fate.pick))!.map((day) => duals[day.get(standing.crop.id)!]!),
        handling: (outlet) =>
          of(`washing ${outlet.at}`) + nights(outlet).reduce((sum, night) => sum + of(`cooler ${night}`), 0),
        cutting: (outlet) => of(`picking ${outlet.at}`),
        cloth: Float64Array.from(clothOf[tunnel]!, (taken) =>
          taken.reduce((sum, { row, amount }) => sum + amount * duals[row]!, 0),
        ),
        minute: Float64Array.from({ length: each.intervals }, (_, i) => of(`walk ${i}`)),
        breach,
      };
    },
    overWorth: (values) => overruns.reduce((sum, { column, weight }) => sum + weight * values[column]!, 0),
    overrun: (values) => [
      ...new Set(overruns.filter(({ column }) => values[column]! > 1e-6).map(({ limit }) => limit)),
    ],
  };
}
