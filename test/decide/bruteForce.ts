import { type Evaluation, evaluate, rounded, type TunnelProblem } from "../../src/decide/index.ts";

/** Every schedule of settings that pieces allow and that stays within the number of changes a week. */
function* schedules(problem: TunnelProblem, begun: readonly number[] = []): Generator<readonly number[]> {
  const i = begun.length;
  if (i === problem.intervals) {
    yield begun;
    return;
  }
  for (let s = 0; s < problem.settings.length; s++) {
    if (problem.possible[i * problem.settings.length + s]) yield* schedules(problem, [...begun, s]);
  }
}

/** A change at which nothing at all is done is not a change a grower would be told of. */
function saysNothing(problem: TunnelProblem, choice: readonly number[]): boolean {
  const S = problem.settings.length;
  return choice.some((to, i) => {
    const from = i === 0 ? problem.now : choice[i - 1]!;
    const part = problem.parts[i]!;
    const move = from * S + to;
    return (
      from !== to &&
      problem.moves[part].minutes[move] === 0 &&
      !problem.moves[part].puts[move] &&
      !problem.moves[part].takes[move]
    );
  });
}

/** The best of all schedules, found by trying every one: least grave breaches, greatest worth, fewest changes. */
export function bruteForce(problem: TunnelProblem): { readonly best: Evaluation; readonly tried: number } {
  let best: Evaluation | null = null;
  let tried = 0;
  for (const choice of schedules(problem)) {
    if (saysNothing(problem, choice)) continue;
    const found = evaluate(problem, choice);
    if (found.breaches.includes("changes")) continue;
    tried += 1;
    if (best === null || isBetter(found, best)) best = found;
  }
  return { best: best!, tried };
}

function isBetter(a: Evaluation, b: Evaluation): boolean {
  if (a.gravity !== b.gravity) return a.gravity < b.gravity;
  if (rounded(a.worth) !== rounded(b.worth)) return rounded(a.worth) > rounded(b.worth);
  return a.changes < b.changes;
}
