import { bestSchedule, evaluate, rounded } from "../../src/index.ts";
import { bruteForce } from "../decide/bruteForce.ts";
import { randomProblem } from "../decide/randomProblem.ts";

const CASES = 1000;
let equal = 0;
let tried = 0;
let changed = 0;
let bound = 0;
for (let seed = 1; seed <= CASES; seed++) {
  const problem = randomProblem(seed);
  const brute = bruteForce(problem);
  const found = evaluate(problem, bestSchedule(problem).choice);
  tried += brute.tried;
  if (found.changes > 0) changed += 1;
  if (found.breaches.length > 0) bound += 1;
  const same =
    rounded(found.worth) === rounded(brute.best.worth) &&
    found.gravity === brute.best.gravity &&
    found.changes === brute.best.changes;
  if (same) equal += 1;
  else console.log(`case ${seed}: found ${found.worth}, best ${brute.best.worth}`);
}
console.log(
  `${equal} of ${CASES} tunnels equal to trying all ${tried} allowed schedules; ${changed} change something, in ${bound} a limit gives way`,
);
if (equal < CASES) process.exitCode = 1;
