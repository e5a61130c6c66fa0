import type { Prices, TunnelProblem } from "../../src/decide/index.ts";
import { type Course, everySchedule, type Way } from "./everyWay.ts";

/** Visits every schedule of a tunnel with what it is worth at some prices: beside its beds, and each bed by its endings. */
function everyPriced(
  problem: TunnelProblem,
  { salad, handling, cutting, cloth, minute, breach }: Prices,
  visit: (course: Course, own: number, beds: readonly (readonly number[])[]) => void,
): void {
  const L = problem.lays.length;
  const paid = problem.successions.map((table) =>
    table.outlets.map((outlet) => ({
      salad: salad(table, outlet),
      weight: handling(outlet),
      minutes: cutting(outlet),
    })),
  );
  everySchedule(problem, (course) => {
    let own = course.own - breach * course.gravity;
    for (const [i, lay] of course.schedule.entries())
      own -= cloth[i * L + lay]! + course.minutes[i]! * minute[i]!;
    const beds = course.beds.map((endings, j) =>
      endings.map((ending) => {
        const at = paid[j]![ending.cut];
        if (at === undefined) return ending.own;
        let sum = ending.own - ending.weight * at.weight - ending.minutes * at.minutes;
        for (let k = 0; k < at.salad.length; k++) sum += ending.salad[k]! * at.salad[k]!;
        return sum;
      }),
    );
    visit(course, own, beds);
  });
}

/** The way of a tunnel that is worth most at some prices, found by trying all; null when none may be. */
export function bestPriced(
  problem: TunnelProblem,
  prices: Prices,
): { readonly way: Way; readonly worth: number } | null {
  let best: { readonly way: Way; readonly worth: number } | null = null;
  everyPriced(problem, prices, (course, own, beds) => {
    const cuts = beds.map((values) => values.indexOf(Math.max(...values)));
    const worth = beds.reduce((sum, values, j) => sum + values[cuts[j]!]!, own);
    if (best !== null && worth <= best.worth) return;
    best = { way: { course, endings: cuts.map((cut, j) => course.beds[j]![cut]!) }, worth };
  });
  return best;
}

/** Every way of a tunnel that is worth more than a floor at some prices. */
export function waysAbove(problem: TunnelProblem, prices: Prices, floor: number): readonly Way[] {
  const ways: Way[] = [];
  everyPriced(problem, prices, (course, own, beds) => {
    const best = beds.map((values) => Math.max(...values));
    const choose = (j: number, sum: number, endings: Way["endings"]): void => {
      if (!(sum + best.slice(j).reduce((most, each) => most + each, 0) > floor)) return;
      if (j === beds.length) ways.push({ course, endings });
      else
        for (const [w, value] of beds[j]!.entries())
          choose(j + 1, sum + value, [...endings, course.beds[j]![w]!]);
    };
    choose(0, own, []);
  });
  return ways;
}
