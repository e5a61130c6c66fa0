import type { OutletTable, SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** What cutting a bed takes: time, and all that is cut of it has to be washed and kept. */
export interface Load {
  readonly outlet: OutletTable;
  /** [min] */
  readonly minutes: number;
  /** [kg] */
  readonly kilograms: number;
}

/** What the rest of the farm makes a tunnel's kilograms, cloth and minutes worth. */
export interface Prices {
  /** Of a kilogram at salad size for an outlet's market, in each group of weathers, their shares counted in. */
  salad(table: SuccessionTable, outlet: OutletTable): readonly number[];
  /** Of washing and keeping cold a kilogram of what is cut. */
  handling(outlet: OutletTable): number;
  /** Of a minute of cutting, beside wages. */
  cutting(outlet: OutletTable): number;
  /** Of the pieces a lay holds through an interval: [interval × lays + lay]. */
  readonly cloth: Float64Array;
  /** Of a minute at each walk, beside wages. */
  readonly minute: Float64Array;
  /** What minutes at a walk cost on top that go beyond those there are. */
  tooLong(walk: number, minutes: number): number;
  /** What beds of the tunnel cost on top that together go beyond what there is for them; null: nothing bounds them. */
  readonly tooMuch: ((loads: readonly Load[]) => number) | null;
  /** Of one unit of gravity. */
  readonly breach: number;
}

/** As if the tunnel were alone: every kilogram sells at its price, cloth and hands are free. */
export const ALONE = (problem: TunnelProblem, breach: number): Prices => ({
  salad: ({ price }) => problem.weathers.map((share) => share * price),
  handling: () => 0,
  cutting: () => 0,
  cloth: new Float64Array(problem.intervals * problem.lays.length),
  minute: new Float64Array(problem.intervals),
  tooLong: () => 0,
  tooMuch: null,
  breach,
});

/** Two rounds of prices make every schedule of a tunnel worth the same; where beds can be too much together that is not looked into. */
export function samePrices({ successions }: TunnelProblem, one: Prices, other: Prices): boolean {
  const alike = (a: ArrayLike<number>, b: ArrayLike<number>): boolean =>
    Array.prototype.every.call(a, (value, i) => value === b[i]);
  return (
    one.tooMuch === null &&
    other.tooMuch === null &&
    alike(one.cloth, other.cloth) &&
    alike(one.minute, other.minute) &&
    successions.every((table) =>
      table.outlets.every(
        (outlet) =>
          one.handling(outlet) === other.handling(outlet) &&
          one.cutting(outlet) === other.cutting(outlet) &&
          alike(one.salad(table, outlet), other.salad(table, outlet)),
      ),
    )
  );
}
