import { calmCost } from "./calm.ts";
import { breachesAt, gravityOf, idle, quality, slopeOf } from "./evaluate.ts";
import { rangeMaximum, readAt, STEP } from "./harvest.ts";
import type { Prices } from "./prices.ts";
import type { OutletTable, SuccessionTable } from "./successionTable.ts";
import { leftAt, openSettings, type Tails, tailAt, tailsOf } from "./tails.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

/** A schedule with its cuts, and what it is worth at some prices. */
export interface Priced {
  /** Index of a lay for each interval. */
  readonly schedule: readonly number[];
  /** For each succession the index of its outlet; the number of its outlets leaves it uncut. */
  readonly cuts: readonly number[];
  readonly worth: number;
}

/** What a search came to. */
export interface Searched {
  /** Every schedule was looked at or ruled out by a bound. */
  readonly complete: boolean;
  /** No schedule is worth more than this or what was found, whichever is more. */
  readonly bound: number;
  readonly nodes: number;
}

/** Places in the tree looked into before a search gives up proving. The same on every machine. */
const MOST_NODES = 3_000_000;

const DIM = gravityOf(["dim"]);

/** An outlet at some prices. */
interface Way {
  readonly index: number;
  readonly tails: Tails;
  readonly outlet: OutletTable;
  /** Worth of the bed by the place of its thermal time in its harvest. */
  readonly worth: Float64Array;
  readonly highest: (from: number, to: number) => number;
  /** Cost of cutting it. */
  readonly cutting: number;
  /** To the place of a thermal time: its logarithm less this, in steps. */
  readonly origin: number;
}

interface Bed {
  readonly table: SuccessionTable;
  readonly ways: readonly Way[];
  readonly slope: number;
}

/** Searches one tunnel's schedules again and again at other prices. */
export interface Searcher {
  readonly problem: TunnelProblem;
  /**
   * Offers every schedule with its cuts that is worth more than the floor, which may rise as they come.
   *
   * @param floor - What a schedule must be worth more than, now.
   */
  search(prices: Prices, floor: () => number, offer: (found: Priced) => void): Searched;
  /** Offers one schedule with its best cuts. */
  offerOne(prices: Prices, schedule: readonly number[]): Priced;
}

/** What a bed can bring by place, at the prices of its market in each group of weathers. */
function wayOf(
  problem: TunnelProblem,
  table: SuccessionTable,
  tails: Tails,
  index: number,
  prices: Prices,
): Way {
  const { outlet } = tails;
  const { salad, other, cut, first } = outlet.harvest;
  const { mass, price } = table;
  const { kept, share, moved } = outlet;
  const paid = prices.salad(table, outlet);
  const rest = prices.handling(outlet);
  const rows = salad.length;
  const worth = new Float64Array(rows);
  const sooner = price * kept * (1 - share);
  const others = price * kept * share;
  problem.weathers.forEach((weight, k) => {
    const by = moved[k]!;
    const forSalad = mass * (paid[k]! * kept - weight * sooner);
    const forOther = mass * weight * others;
    const forCut = mass * weight * rest;
    for (let i = 0; i < rows; i++) {
      const at = Math.min(rows - 1, Math.max(0, i + by));
      worth[i]! += forSalad * salad[at]! + forOther * other[at]! - forCut * cut[at]!;
    }
  });
  return {
    index,
    tails,
    outlet,
    worth,
    highest: rangeMaximum(worth),
    cutting: table.cutting * (problem.minute + prices.cutting(outlet)),
    origin: table.growing.belief.shift + first,
  };
}

/**
 * Walks the tree of schedules walk by walk and leaves a branch when not even the best of everything still open could be worth
 * more than the floor. What is still open is bounded by the changes that are left.
 */
export function searcher(problem: TunnelProblem): Searcher {
  const { intervals: n, settings, lays, changesPerWeek: R } = problem;
  const [S, L] = [settings.length, lays.length];
  const open = openSettings(problem);
  const tails = problem.successions.map((table) => tailsOf(problem, table, open));
  const settingOf = Int32Array.from(lays, ({ setting }) => setting);
  const lastWeek = problem.week[n - 1];
  /** Shade under the light floor from each interval to the end, should a setting stay. */
  const dimAfter = new Int32Array((n + 1) * S);
  for (let i = n - 1; i >= 0; i--)
    for (let s = 0; s < S; s++) dimAfter[i * S + s] = dimAfter[(i + 1) * S + s]! + problem.dim[i * S + s]!;
  const brokenGravity = Int32Array.from(problem.broken, gravityOf);
  const moveGravity = Int32Array.from({ length: n * L * L }, (_, k) =>
    gravityOf(breachesAt(problem, Math.floor(k / (L * L)), Math.floor(k / L) % L, k % L)),
  );
  const isIdle = Uint8Array.from({ length: n * L * L }, (_, k) =>
    idle(problem, Math.floor(k / (L * L)), Math.floor(k / L) % L, k % L) ? 1 : 0,
  );

  /** Beds whose last cut nobody dated, as what a setting costs of them: exact only in the end, never less than that. */
  const undatedAt = (sums: readonly number[]): number =>
    problem.undated.reduce(
      (sum, { worth }, u) => sum + worth * (Math.exp(sums[u]!) - 1 + problem.neverLost * sums[u]!),
      0,
    );

  const at = (prices: Prices) => {
    const beds = problem.successions.map(
      (table, j): Bed => ({
        table,
        ways: tails[j]!.map((each, index) => wayOf(problem, table, each, index, prices)),
        slope: slopeOf(problem, table),
      }),
    );
    const J = beds.length;
    /** Cost of going from one lay to another at a walk and lying through its interval. */
    const step = (i: number, from: number, to: number): number =>
      problem.moves[problem.parts[i]!].minutes[from * L + to]! * (problem.minute + prices.minute[i]!) +
      prices.cloth[i * L + to]! +
      calmCost(problem, i, from, to) +
      prices.breach * (brokenGravity[i * S + settingOf[to]!]! + moveGravity[i * L * L + from * L + to]!);
    /** The least that everything from a walk on can cost: [(walk × (changes + 1) + left) × lays + lay that lies]. */
    const least = new Float64Array((n + 1) * (R + 1) * L);
    const costAt = (i: number, left: number, lay: number): number => (i * (R + 1) + left) * L + lay;
    for (let i = n - 1; i >= 0; i--)
      for (let left = 0; left <= R; left++)
        for (let lay = 0; lay < L; lay++) {
          let cost = Number.POSITIVE_INFINITY;
          for (let to = 0; to < L; to++) {
            if (!problem.possible[i * L + to] || (to !== lay && left === 0)) continue;
            const then = leftAt(problem, i + 1, to === lay ? left : left - 1);
            cost = Math.min(cost, step(i, lay, to) + least[costAt(i + 1, then, to)]!);
          }
          least[costAt(i, left, lay)] = cost;
        }

    const column = (): readonly Float64Array[] => beds.map(() => new Float64Array(n + 1));
    const [time, light, heat, safe, stubble] = [column(), column(), column(), column(), column()];
    const spent = new Float64Array(n + 1);
    const dim = new Int32Array(n + 1);
    const undated = problem.undated.map(() => new Float64Array(n + 1));
    /** What each outlet passed brought, its stubble apart, and the stubble's chance up to the end of its interval. */
    const brought = beds.map(({ ways }) => new Float64Array(ways.length));
    const stubbleBefore = beds.map(({ ways }) => new Float64Array(ways.length));
    const schedule = new Int32Array(n);
    beds.forEach(({ table }, j) => {
      time[j]![0] = table.thermalTime;
      light[j]![0] = table.light;
    });

    const worthAt = (
      bed: Bed,
      way: Way,
      grown: number,
      lit: number,
      hot: number,
      survived: number,
    ): number => {
      const place = (Math.log(Math.max(1e-9, grown)) - way.origin) / STEP;
      const whole = readAt(way.worth, place);
      const share = problem.lightShare(bed.table, lit, way.outlet.days) * quality(hot, problem);
      return (whole * share - way.cutting) * Math.exp(survived) + bed.slope * survived;
    };

    /** Enters an interval under a lay. */
    const enter = (i: number, from: number, to: number): void => {
      const s = settingOf[to]!;
      const k = i * S + s;
      schedule[i] = to;
      dim[i + 1] = dim[i]! + problem.dim[k]!;
      const tooDim = problem.dim[k]! > 0 && dim[i + 1]! > problem.dimDays;
      spent[i + 1] = spent[i]! + step(i, from, to) + (tooDim ? DIM * prices.breach : 0);
      for (let u = 0; u < undated.length; u++)
        undated[u]![i + 1] = undated[u]![i]! + problem.undated[u]!.safe[k]!;
      for (let j = 0; j < J; j++) {
        const bed = beds[j]!;
        const { table, ways } = bed;
        for (let w = 0; w < ways.length; w++) {
          const way = ways[w]!;
          const { outlet } = way;
          if (outlet.interval !== i) continue;
          brought[j]![w] = worthAt(
            bed,
            way,
            time[j]![i]! + outlet.pace[s]!,
            light[j]![i]! + outlet.light[s]!,
            heat[j]![i]! + outlet.heat[s]!,
            safe[j]![i]! + outlet.safe[s]!,
          );
          stubbleBefore[j]![w] = stubble[j]![i]! + table.stubble[k]! - outlet.stubble[s]!;
        }
        time[j]![i + 1] = time[j]![i]! + table.pace[k]!;
        light[j]![i + 1] = light[j]![i]! + table.lightIn[k]!;
        heat[j]![i + 1] = heat[j]![i]! + table.heat[k]!;
        safe[j]![i + 1] = safe[j]![i]! + table.safe[k]!;
        stubble[j]![i + 1] = stubble[j]![i]! + table.stubble[k]!;
      }
    };

    /** The most a bed can still bring when a setting lies at walk i and so many changes are left. */
    const bedBound = (i: number, left: number, s: number, j: number): number => {
      const bed = beds[j]!;
      const { table, ways, slope } = bed;
      const [t, l, h, c] = [time[j]![i]!, light[j]![i]!, heat[j]![i]!, safe[j]![i]!];
      let top = table.mustCut ? Number.NEGATIVE_INFINITY : slope * c;
      for (let w = 0; w < ways.length; w++) {
        const way = ways[w]!;
        const { outlet, tails: to } = way;
        if (outlet.interval < i) {
          const settled =
            brought[j]![w]! +
            (table.regrown === 0
              ? 0
              : table.regrown * (Math.exp(stubble[j]![i]! - stubbleBefore[j]![w]!) - 1));
          if (settled > top) top = settled;
          continue;
        }
        const k = tailAt(problem, i, left, s);
        const from = (Math.log(Math.max(1e-9, t + to.leastTime[k]!)) - way.origin) / STEP;
        const until = (Math.log(Math.max(1e-9, t + to.mostTime[k]!)) - way.origin) / STEP;
        const last = way.worth.length - 1;
        const whole = way.highest(
          Math.max(0, Math.min(last, Math.floor(from))),
          Math.max(0, Math.min(last, Math.ceil(until))),
        );
        const survived = c + to.mostSafe[k]!;
        // Not even in full light.
        if (Math.max(0, whole - way.cutting) <= top) continue;
        const share = problem.lightShare(table, l + to.mostLight[k]!, outlet.days);
        const sold = whole <= 0 ? 0 : whole * share * quality(h + to.leastHeat[k]!, problem);
        const most = Math.max(0, sold - way.cutting) * Math.exp(survived) + slope * survived;
        if (most > top) top = most;
      }
      return top;
    };

    const bound = (i: number, left: number, lay: number): number => {
      let sum = undatedAt(undated.map((sums) => sums[i]!)) - spent[i]! - least[costAt(i, left, lay)]!;
      for (let j = 0; j < J; j++) sum += bedBound(i, left, settingOf[lay]!, j);
      return sum;
    };

    /** What each bed brings at each of its outlets, and uncut, once the whole schedule stands. */
    const endings = (): readonly (readonly number[])[] =>
      beds.map(({ table, ways, slope }, j) => {
        const last = settingOf[schedule[n - 1]!]!;
        const values = ways.map((way, w) => {
          const { outlet } = way;
          if (outlet.interval === n)
            return worthAt(
              beds[j]!,
              way,
              time[j]![n]! + outlet.pace[last]!,
              light[j]![n]! + outlet.light[last]!,
              heat[j]![n]!,
              safe[j]![n]!,
            );
          return brought[j]![w]! + table.regrown * (Math.exp(stubble[j]![n]! - stubbleBefore[j]![w]!) - 1);
        });
        return [...values, table.mustCut ? Number.NEGATIVE_INFINITY : slope * safe[j]![n]!];
      });

    return { beds, enter, bound, endings, spent, undated, dim, costAt, least, schedule };
  };

  type At = ReturnType<typeof at>;

  const totalOf = ({ spent, undated }: At): number => undatedAt(undated.map((sums) => sums[n]!)) - spent[n]!;

  const offerOne = (prices: Prices, wanted: readonly number[]): Priced => {
    const priced = at(prices);
    for (let i = 0; i < n; i++) priced.enter(i, i === 0 ? NOW : wanted[i - 1]!, wanted[i]!);
    const cuts = priced
      .endings()
      .map((values) => values.reduce((top, value, w) => (value > values[top]! ? w : top), 0));
    const worth = priced.endings().reduce((sum, values, j) => sum + values[cuts[j]!]!, totalOf(priced));
    return { schedule: [...wanted], cuts, worth };
  };

  return {
    problem,
    offerOne,
    search(prices, floor, offer) {
      const priced = at(prices);
      let nodes = 0;

      /** Offers every choice of cuts of the finished schedule that is worth more than the floor. */
      const finish = (): void => {
        const values = priced.endings();
        const best = values.map((of) => Math.max(...of));
        const start = totalOf(priced);
        const later = new Float64Array(values.length + 1);
        for (let j = values.length - 1; j >= 0; j--) later[j] = later[j + 1]! + best[j]!;
        if (!(start + later[0]! > floor())) return;
        const cuts: number[] = [];
        const choose = (j: number, sum: number): void => {
          if (j === values.length) {
            if (sum > floor()) offer({ schedule: [...priced.schedule], cuts: [...cuts], worth: sum });
            return;
          }
          const order = values[j]!.map((_, w) => w).sort((a, b) => values[j]![b]! - values[j]![a]!);
          for (const w of order) {
            const so = sum + values[j]![w]!;
            if (!(so + later[j + 1]! > floor())) break;
            cuts[j] = w;
            choose(j + 1, so);
          }
        };
        choose(0, start);
      };

      const stayOn = (from: number, lay: number): void => {
        for (let i = from; i < n; i++) {
          if (!problem.possible[i * L + lay]) return;
          priced.enter(i, lay, lay);
        }
        finish();
      };

      const visit = (i: number, left: number): void => {
        if (i === n) {
          finish();
          return;
        }
        if (nodes >= MOST_NODES) return;
        const from = i === 0 ? NOW : priced.schedule[i - 1]!;
        const open = leftAt(problem, i, left);
        for (let turn = -1; turn < L; turn++) {
          const to = turn < 0 ? from : turn;
          if (turn === from || !problem.possible[i * L + to]) continue;
          if (to !== from && (open === 0 || isIdle[(i * L + from) * L + to])) continue;
          nodes += 1;
          priced.enter(i, from, to);
          const then = to === from ? open : open - 1;
          const next = leftAt(problem, i + 1, then);
          const hope = priced.bound(i + 1, next, to);
          if (!(hope > floor())) continue;
          if (next === 0 && (i + 1 >= n || problem.week[i + 1] === lastWeek)) {
            stayOn(i + 1, to);
            continue;
          }
          visit(i + 1, next);
        }
      };

      const most = priced.bound(0, R, NOW);
      if (most > floor()) visit(0, R);
      const complete = nodes < MOST_NODES;
      return { complete, bound: complete ? Number.NEGATIVE_INFINITY : most, nodes };
    },
  };
}
