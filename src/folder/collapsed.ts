import type { Problem } from "../problem/index.ts";

/** How many of a kind are told one by one. */
const TOLD = 3;

/** Problems of one code in one column of a table: the first few, then one that counts the rest. */
export function collapsed(problems: readonly Problem[]): readonly Problem[] {
  const groups = new Map<string, Problem[]>();
  const keyOf = ({ file, code, column, weight }: Problem): string =>
    JSON.stringify([file, code, column, weight]);
  for (const problem of problems) {
    const group = groups.get(keyOf(problem));
    if (group === undefined) groups.set(keyOf(problem), [problem]);
    else group.push(problem);
  }
  return problems.flatMap((problem): readonly Problem[] => {
    if (problem.line === null || typeof problem.column !== "string") return [problem];
    const group = groups.get(keyOf(problem))!;
    const index = group.indexOf(problem);
    if (index < TOLD) return [problem];
    if (index > TOLD) return [];
    const rest = group.length - TOLD;
    const received = `${rest} more ${rest === 1 ? "line" : "lines"}`;
    return [{ ...problem, received, hint: `And ${rest} more like it, to line ${group.at(-1)!.line}.` }];
  });
}
