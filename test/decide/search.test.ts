import { describe, expect, it } from "vitest";
import { bestSchedule, evaluate, rounded } from "../../src/decide/index.ts";
import { bruteForce } from "./bruteForce.ts";
import { randomProblem } from "./randomProblem.ts";

/** Random tunnels tried here; `npm run proof` tries a thousand. */
const CASES = Number(process.env.LEAFPACE_CASES ?? 100);

describe("the schedule of one tunnel", () => {
  it(`is as good as the best of all schedules on ${CASES} random tunnels`, () => {
    let changed = 0;
    let broke = 0;
    for (let seed = 1; seed <= CASES; seed++) {
      const problem = randomProblem(seed);
      const { best } = bruteForce(problem);
      const { choice, proved } = bestSchedule(problem);
      const found = evaluate(problem, choice);
      const facts = ({ gravity, worth, changes }: typeof best) => ({
        seed,
        gravity,
        worth: rounded(worth),
        changes,
      });
      expect(facts(found)).toEqual(facts(best));
      expect(proved).toBe(true);
      if (found.changes > 0) changed += 1;
      if (found.breaches.length > 0) broke += 1;
    }
    expect(changed).toBeGreaterThan(CASES * 0.3);
    expect(broke).toBeGreaterThan(0);
  });

  it("never promises a bound below what a thermal time brings", () => {
    for (let seed = 1; seed <= 20; seed++) {
      for (const { outlets, thermalTime } of randomProblem(seed).successions) {
        const { value } = outlets[0]!;
        for (let step = 0; step < 60; step++) {
          const at = thermalTime + step * 0.83;
          expect(value.atMost(at, at)).toBeGreaterThanOrEqual(value.at(at) - 1e-9);
          const reach = value.atMost(at, at + 17);
          for (let inside = at; inside <= at + 17; inside += 1.7) {
            expect(reach).toBeGreaterThanOrEqual(value.at(inside) - 1e-9);
          }
        }
      }
    }
  });
});
