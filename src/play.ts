import { type Evaluation, evaluate, type TunnelProblem } from "./decide/index.ts";

/**
 * Re-evaluates a plan the grower changed by hand: the tunnel's own worth and limits as the search counts them, each kilogram at the price it has alone, without the
 * farm folder, without a solver and without the unit library, so that a page can do it.
 *
 * @param schedule - Index of a lay for each interval.
 * @throws RangeError if the schedule has another length or names a lay that does not exist: a programmer's mistake.
 */
export function replay(problem: TunnelProblem, schedule: readonly number[]): Evaluation {
  if (schedule.length !== problem.intervals || schedule.some((lay) => problem.lays[lay] === undefined)) {
    throw new RangeError(
      `expected ${problem.intervals} lays from 0 to ${problem.lays.length - 1}, received ${schedule.join(" ")}`,
    );
  }
  return evaluate(problem, schedule);
}

export type { Evaluation, TunnelProblem } from "./decide/index.ts";
