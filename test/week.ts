import { loadSolver } from "../src/cli/solver.ts";
import type { FarmPlan, Outcome, Scene, Solver } from "../src/decide/index.ts";
import { planAll as planAllWith, type WeekInput, week as weekWith } from "../src/week.ts";

/** The solver every test plans with. */
export const solver: Solver = await loadSolver();

/** The main job as the command runs it. */
export const week = (input: WeekInput): Outcome => weekWith(input, solver);

export const planAll = (scene: Scene): FarmPlan => planAllWith(scene, solver);
