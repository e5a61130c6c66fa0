import { type Evaluation, evaluate } from "./evaluate.ts";
import type { Priced } from "./search.ts";
import type { Relaxed, Whole } from "./solver.ts";
import { type FarmProblem, outdoes, type ProgramColumn, type Together } from "./together.ts";

/** A schedule of one tunnel with what it is cut for. */
export type Cutting = Pick<Priced, "schedule" | "cuts">;

/** One tunnel's part of a plan. */
export interface Chosen extends Cutting {
  readonly evaluation: Evaluation;
}

/** A schedule of one tunnel as a column of the farm's program. */
export interface Column {
  readonly tunnel: number;
  readonly chosen: Chosen;
  /** The program's own number of it. */
  readonly number: number;
  readonly column: ProgramColumn;
}

/** The schedules that are weighed against each other. */
export interface Columns {
  readonly all: readonly Column[];
  /** True where it was not among them yet. */
  add(tunnel: number, found: Cutting): boolean;
  /** The column of a schedule, added where it was not among them. */
  of(tunnel: number, found: Cutting): Column;
  /** Of some schedules the first so many that none before outdoes. */
  undominated(tunnel: number, found: readonly Cutting[], most: number): readonly Cutting[];
  /** The columns a whole solution takes, one of each tunnel. */
  taken(values: Float64Array): readonly Column[];
  /** The program relaxed, with these columns alone. */
  relaxed(isOpen?: (column: Column) => boolean): Relaxed;
  /** The program with whole columns, with these alone. @param places - Most places of the solver's own tree. */
  whole(places: number, isOpen?: (column: Column) => boolean): Whole;
}

const keyOf = ({ schedule, cuts }: Cutting): string => `${schedule.join()} ${cuts.join()}`;

export function columnsOf({ tunnels }: FarmProblem, shared: Together): Columns {
  const all: Column[] = [];
  const known = tunnels.map(() => new Map<string, Column>());
  const weigh = (tunnel: number, { schedule, cuts }: Cutting) => {
    const evaluation = evaluate(tunnels[tunnel]!.problem, schedule, cuts);
    return { evaluation, column: shared.column(tunnel, schedule, evaluation) };
  };
  const of = (tunnel: number, found: Cutting): Column => {
    const key = keyOf(found);
    const before = known[tunnel]!.get(key);
    if (before !== undefined) return before;
    const { evaluation, column } = weigh(tunnel, found);
    const chosen = { schedule: found.schedule, cuts: found.cuts, evaluation };
    const made: Column = { tunnel, chosen, number: shared.add(tunnel, column), column };
    known[tunnel]!.set(key, made);
    all.push(made);
    return made;
  };
  const closed = new Set<number>();
  const open = (isOpen: (column: Column) => boolean): void => {
    for (const column of all) {
      const { number } = column;
      if (isOpen(column) !== closed.has(number)) continue;
      shared.program.limit(number, closed.has(number) ? 1 : 0);
      if (!closed.delete(number)) closed.add(number);
    }
  };
  return {
    all,
    of,
    add(tunnel, found) {
      const before = all.length;
      of(tunnel, found);
      return all.length > before;
    },
    undominated(tunnel, found, most) {
      const kept: { readonly found: Cutting; readonly column: ProgramColumn }[] = [];
      for (const each of found) {
        if (kept.length === most) break;
        const { column } = weigh(tunnel, each);
        if (!kept.some((other) => outdoes(other.column, column, shared.exact)))
          kept.push({ found: each, column });
      }
      return kept.map((each) => each.found);
    },
    taken: (values) =>
      tunnels.map((_, t) => all.find(({ tunnel, number }) => tunnel === t && values[number]! > 0.5)!),
    relaxed(isOpen = () => true) {
      open(isOpen);
      return shared.program.relaxed();
    },
    whole(places, isOpen = () => true) {
      open(isOpen);
      return shared.program.whole(
        all.map(({ number }) => number),
        places,
      );
    },
  };
}
