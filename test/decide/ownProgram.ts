import type { FarmProblem, Program, Solver } from "../../src/decide/index.ts";
import { addOwnMarket } from "./ownMarket.ts";
import type { Shared, Use } from "./ownShared.ts";

/** Prices of a relaxed program: what each tunnel's choice is worth, and a unit of each need. */
export interface OwnPrices {
  readonly objective: number;
  readonly tunnels: readonly number[];
  readonly needs: Float64Array;
}

/** The plan of a farm as a program of its own: which way each tunnel goes. */
export interface OwnProgram {
  readonly ways: number;
  add(tunnel: number, use: Use): void;
  relaxed(): OwnPrices;
  /** @param nodes - Most places of the solver's own tree. */
  whole(nodes: number): { readonly objective: number; readonly bound: number; readonly proved: boolean };
  close(): void;
}

/** What a way is worth at prices of needs. */
export const worthAt = ({ own, gravity, amounts }: Use, needs: Float64Array, breach: number): number => {
  let sum = own - breach * gravity;
  for (const [need, amount] of amounts) sum -= amount * (needs[need] ?? 0);
  return sum;
};

const UNLIMITED = Number.POSITIVE_INFINITY;

export function ownProgram(
  { farm, settings, tunnels }: FarmProblem,
  { needs, days, breach }: Shared,
  solver: Solver,
): OwnProgram {
  const program: Program = solver.open();
  const { weathers } = tunnels[0]!.problem;
  const one = tunnels.map(() => program.addRow(1, 1));
  const rows = new Map<number, { readonly row: number; readonly sign: 1 | -1 }>();
  let short = 0;
  for (const { market, crops, needs: sales } of days)
    for (const [k, share] of weathers.entries()) {
      const day = addOwnMarket(program, farm, settings, market, crops, share);
      short += share * day.short;
      // A market's row holds what products take less what is brought.
      for (const [c, crop] of crops.entries())
        rows.set(sales[k]![c]!, { row: day.rows.get(crop)!, sign: -1 });
    }
  const rowOf = (need: number): { readonly row: number; readonly sign: 1 | -1 } => {
    const before = rows.get(need);
    if (before !== undefined) return before;
    const { kind, most, weighs } = needs[need]!;
    const equal = kind === "side by side";
    const row = program.addRow(equal ? 0 : Number.NEGATIVE_INFINITY, equal ? 0 : most);
    for (const sign of equal ? [1, -1] : [-1]) program.addColumn(-weighs * breach, UNLIMITED, [row], [sign]);
    rows.set(need, { row, sign: 1 });
    return rows.get(need)!;
  };
  const columns: number[] = [];
  return {
    get ways() {
      return columns.length;
    },
    add(tunnel, { own, gravity, amounts }) {
      const taken = [...amounts].map(([need, amount]) => ({ ...rowOf(need), amount }));
      columns.push(
        program.addColumn(
          own - breach * gravity,
          UNLIMITED,
          [one[tunnel]!, ...taken.map(({ row }) => row)],
          [1, ...taken.map(({ sign, amount }) => sign * amount)],
        ),
      );
    },
    relaxed() {
      const { objective, prices } = program.relaxed();
      return {
        objective: objective - short,
        tunnels: one.map((row) => prices[row]!),
        needs: Float64Array.from(needs, (_, need) => {
          const at = rows.get(need);
          return at === undefined ? 0 : at.sign * prices[at.row]!;
        }),
      };
    },
    whole(nodes) {
      const { objective, bound, proved } = program.whole(columns, nodes);
      return { objective: objective - short, bound: bound - short, proved };
    },
    close: () => program.close(),
  };
}
