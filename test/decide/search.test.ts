import { describe, expect, it } from "vitest";
import { ALONE, evaluate, type Prices, searcher, type TunnelProblem } from "../../src/decide/index.ts";
import { seeded } from "./dice.ts";
import { bestPriced, waysAbove } from "./everyPriced.ts";
import { everySchedule } from "./everyWay.ts";
import { randomProblem } from "./randomProblem.ts";

const CASES = 60;
const BREACH = 1000;

/** Prices as a farm could set them. */
function randomPrices(problem: TunnelProblem, seed: number): Prices {
  const dice = seeded(seed);
  if (dice.happens(0.3)) return ALONE(problem, BREACH);
  const handling = dice.between(0, 2);
  const cutting = dice.between(0, 0.5);
  const paid = problem.weathers.map((share) => share * dice.between(0, 25));
  return {
    salad: () => paid,
    handling: () => handling,
    cutting: () => cutting,
    cloth: Float64Array.from({ length: problem.intervals * problem.lays.length }, () => dice.between(-2, 8)),
    minute: Float64Array.from({ length: problem.intervals }, () => dice.between(0, 1)),
    tooLong: () => 0,
    tooMuch: null,
    breach: BREACH,
  };
}

describe("the schedules of one tunnel", () => {
  it(`has the best of all, and each that is worth nearly as much, on ${CASES} random tunnels`, () => {
    let near = 0;
    for (let seed = 1; seed <= CASES; seed++) {
      const problem = randomProblem(seed);
      const prices = randomPrices(problem, seed);
      const best = bestPriced(problem, prices);
      const floor = best!.worth - 40;
      const { found, complete } = searcher(problem).near(prices, 1e6, floor);
      const offered = found.map(({ schedule, cuts }) => `${schedule.join()} ${cuts.join()}`);
      const top = found[0]!.worth;
      expect({ seed, complete, top }).toEqual({ seed, complete: true, top: expect.closeTo(best!.worth, 8) });
      const all = waysAbove(problem, prices, floor).map(
        ({ course, endings }) => `${course.schedule.join()} ${endings.map(({ cut }) => cut).join()}`,
      );
      expect({ seed, offered: offered.sort() }).toEqual({ seed, offered: all.sort() });
      near += all.length;
    }
    expect(near).toBeGreaterThan(10 * CASES);
  });

  it("are worth alone what plain sums make of each", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const problem = randomProblem(seed);
      const { weathers, successions } = problem;
      let visited = 0;
      everySchedule(problem, ({ schedule, own, gravity, minutes, beds }) => {
        visited += 1;
        if (visited % 7 !== 1) return;
        const cuts = beds.map((endings) => visited % endings.length);
        const told = evaluate(
          problem,
          schedule,
          beds.map((endings, j) => endings[cuts[j]!]!.cut),
        );
        const sold = beds.reduce((sum, endings, j) => {
          const { own: alone, salad } = endings[cuts[j]!]!;
          const paid = salad.reduce((total, weight, k) => total + weathers[k]! * weight, 0);
          return sum + alone + paid * successions[j]!.price;
        }, own);
        expect({ seed, worth: told.worth, gravity: told.gravity, minutes: [...told.minutes] }).toEqual({
          seed,
          worth: expect.closeTo(sold, 8),
          gravity,
          minutes,
        });
        for (const [j, result] of told.successions.entries()) {
          const { salad, weight, minutes: cutting } = beds[j]![cuts[j]!]!;
          expect(result.cut).toBeCloseTo(weight, 9);
          expect(result.cutting).toBeCloseTo(cutting, 9);
          for (const [k, each] of result.salad.entries()) expect(each).toBeCloseTo(salad[k]!, 9);
        }
      });
    }
  });
});
