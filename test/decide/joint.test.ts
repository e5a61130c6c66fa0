import { beforeAll, describe, expect, it } from "vitest";
import { loadSolver } from "../../src/cli/solver.ts";
import { type FarmProblem, type Joint, planTogether, type Solver } from "../../src/decide/index.ts";
import { bruteForce } from "./bruteForce.ts";
import { allColumns, byPrices, type Counted, counted } from "./compared.ts";
import { pairsOf } from "./kinder.ts";
import { MIDDLE, randomFarm, type Size, SMALL } from "./randomFarm.ts";

const TINY: Size = { ...SMALL, walks: [3, 4], lays: [2, 3] };

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

function planned(problem: FarmProblem): { readonly joint: Joint; readonly plan: Counted } {
  const joint = planTogether(problem, solver);
  const plan = counted(problem, joint, solver);
  expect(plan).not.toBeNull();
  return { joint, plan: plan! };
}

describe("the plan of all tunnels", () => {
  it("is the best of all plans of small farms, and worth what it says", () => {
    let tried = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const problem = randomFarm(seed, TINY);
      const brute = bruteForce(problem, solver, 60_000);
      if (brute === null) continue;
      tried += 1;
      const { joint, plan } = planned(problem);
      expect({ seed, worth: plan.worth, breaches: plan.breaches, told: joint.worth }).toEqual({
        seed,
        worth: expect.closeTo(brute.worth, 6),
        breaches: expect.closeTo(brute.breaches, 6),
        told: expect.closeTo(plan.worth, 6),
      });
      expect(joint.proved).toBe(true);
    }
    expect(tried).toBeGreaterThan(15);
  });

  it("is as good as choosing among every schedule with its cuts, and no bound is below it", () => {
    for (const seed of [3, 7]) {
      const problem = randomFarm(seed, { ...MIDDLE, tunnels: [5, 5], walks: [6, 6], successions: [1, 1] });
      const { joint, plan } = planned(problem);
      const { best, linear } = allColumns(problem, plan, solver);
      const scale = Math.max(1, Math.abs(plan.worth));
      expect((best - plan.value) / scale).toBeLessThan(1e-6);
      const byPrice = byPrices(problem, joint, plan, Number.POSITIVE_INFINITY, solver);
      expect(byPrice.linear).toBeGreaterThanOrEqual(best - 1e-6 * scale);
      expect(Math.abs(byPrice.linear - linear) / scale).toBeLessThan(1e-4);
      expect(joint.bound).toBeGreaterThanOrEqual(joint.worth);
    }
  });

  it("keeps what the grower holds, even where what lies now would be worth more", () => {
    // Seeds on which a tunnel may not stay as it is all along.
    let kept = 0;
    for (let seed = 1; seed <= 80; seed++) {
      const problem = randomFarm(seed, TINY);
      const held = problem.tunnels.some(({ problem: { possible, lays } }) =>
        possible.some((open, k) => k % lays.length === 0 && open === 0),
      );
      if (!held) continue;
      kept += 1;
      planned(problem);
    }
    expect(kept).toBeGreaterThan(2);
  });

  it("is there even where the solver finds no whole solution", () => {
    const baffled: Solver = {
      open() {
        const program = solver.open();
        return {
          ...program,
          whole: () => ({
            objective: Number.NEGATIVE_INFINITY,
            values: new Float64Array(),
            proved: false,
            bound: Number.POSITIVE_INFINITY,
          }),
        };
      },
    };
    let unproved = 0;
    for (let seed = 1; seed <= 10; seed++) {
      const problem = randomFarm(seed, TINY);
      const joint = planTogether(problem, baffled);
      const plan = counted(problem, joint, solver)!;
      expect(joint.worth).toBeCloseTo(plan.worth, 6);
      if (!joint.proved) unproved += 1;
      else expect(plan.value).toBeCloseTo(planned(problem).plan.value, 4);
    }
    expect(unproved).toBeGreaterThan(0);
  });

  it.each([1, 2, 3])(
    "never loses by more cloth, hands, covers or markets, nor by other names: farm %i",
    (seed) => {
      for (const { name, less, more, same } of pairsOf(
        randomFarm(seed, { ...MIDDLE, tunnels: [3, 4], walks: [4, 5] }),
      )) {
        const [one, other] = [planned(less).plan, planned(more).plan];
        const gain = other.worth - one.worth - other.shared.breach * (other.breaches - one.breaches);
        const least = -1e-6 * Math.max(1, Math.abs(other.worth));
        expect({ name, gain: gain >= least ? "none lost" : gain }).toEqual({ name, gain: "none lost" });
        if (same) expect(gain).toBeLessThanOrEqual(-least);
      }
    },
  );
});
