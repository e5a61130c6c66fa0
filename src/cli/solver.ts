import type { Program, Solver } from "../decide/index.ts";

type Load = typeof import("highs")["default"];
type Highs = Awaited<ReturnType<Load>>;

/** Smallest difference of worth that counts, relative and absolute. Breaches that cannot be helped weigh a hundred thousand times what is planned for. */
const GAP = 1e-11;
const LEAST = 1e-7;

/** Programs within the program, to find whole solutions sooner, and beginning anew once some columns are fixed take several times as long as they save on plans of a farm. */
const PLAIN = {
  mip_heuristic_run_rins: false,
  mip_heuristic_run_rens: false,
  mip_heuristic_run_root_reduced_cost: false,
  mip_allow_restart: false,
};

function programOf(highs: Highs): Program {
  const { modelStatus, objectiveSense } = highs.constants;
  const model = highs.createModel();
  model.options.set({ output_flag: false, mip_rel_gap: GAP, mip_abs_gap: LEAST, random_seed: 1, ...PLAIN });
  model.changeObjectiveSense(objectiveSense.maximize);
  let rows = 0;
  let columns = 0;
  /** Going on from the solution before fails now and then where breaches weigh much; from the beginning and as it stands it succeeds. */
  const anew = (): void => {
    model.clearSolver();
    model.options.set({ presolve: "off" });
    model.run();
    model.options.set({ presolve: "choose" });
  };
  const run = (): void => {
    try {
      model.run();
    } catch {
      anew();
    }
  };
  return {
    addRow(lower, upper) {
      model.addRow(lower, upper, { indices: [], values: [] });
      rows += 1;
      return rows - 1;
    },
    addColumn(worth, upper, indices, values) {
      model.addCol(worth, 0, upper, { indices: [...indices], values: [...values] });
      columns += 1;
      return columns - 1;
    },
    limit(column, upper) {
      model.changeColBounds(column, 0, upper);
    },
    relaxed() {
      run();
      if (model.getModelStatus() !== modelStatus.optimal) anew();
      if (model.getModelStatus() !== modelStatus.optimal)
        throw new Error(`expected a program that can be solved, status ${model.getModelStatus()}`);
      const { colValue, rowDual } = model.getSolution();
      return { objective: model.getObjectiveValue(), values: colValue, prices: rowDual };
    },
    whole(whole, nodes) {
      for (const column of whole) model.changeColIntegrality(column, highs.constants.variableType.integer);
      model.options.set({ mip_max_nodes: nodes });
      run();
      const status = model.getModelStatus();
      const answer = {
        objective: model.getObjectiveValue(),
        values: model.getSolution().colValue,
        proved: status === modelStatus.optimal,
        bound: Number(model.info.get("mip_dual_bound")),
      };
      for (const column of whole) model.changeColIntegrality(column, highs.constants.variableType.continuous);
      return answer;
    },
    close() {
      model.dispose();
    },
  };
}

/** Loads the solver: a tenth of a second, so only when a farm needs it. */
export async function loadSolver(): Promise<Solver> {
  const { default: load } = await import("highs");
  const highs = await (load as unknown as Load)();
  return { open: () => programOf(highs) };
}
