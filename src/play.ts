import { type Evaluation, evaluate, type TunnelProblem } from "./decide/index.ts";

/**
 * Re-evaluates a plan the grower changed by hand: the same worth and the same limits as the search used, without the
 * farm folder, without a solver and without the unit library, so that a page can do it.
 *
 * @param choice - Index of a setting for each interval.
 * @throws RangeError if the choice has another length or names a setting that does not exist: a programmer's mistake.
 */
export function replay(problem: TunnelProblem, choice: readonly number[]): Evaluation {
  if (choice.length !== problem.intervals || choice.some((s) => problem.settings[s] === undefined)) {
    throw new RangeError(
      `expected ${problem.intervals} settings from 0 to ${problem.settings.length - 1}, received ${choice.join(" ")}`,
    );
  }
  return evaluate(problem, choice);
}

export type { Evaluation, TunnelProblem } from "./decide/index.ts";
