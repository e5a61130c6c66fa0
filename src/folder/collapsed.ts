import { list, type Problem } from "../problem/index.ts";
import { groupBy } from "../quantity/index.ts";

/** How many different cells with the same next step are told one by one. */
const TOLD = 3;

const lines = (number: number): string => `${number} more ${number === 1 ? "line" : "lines"}`;

function repeated(again: readonly Problem[]): string {
  const last = again.at(-1)?.line;
  if (last === undefined) return "";
  return again.length === 1
    ? ` The same in line ${last}.`
    : ` The same in ${lines(again.length)}, to line ${last}.`;
}

/**
 * Problems in one column of a table without their repetitions: the same cell is told once with the number of lines that
 * have it, and of different cells with the same next step the first few, then one problem that names the rest.
 */
export function collapsed(problems: readonly Problem[]): readonly Problem[] {
  const inTable = ({ line, column }: Problem): boolean => line !== null && typeof column === "string";
  const alike = ({ file, code, column, weight, hint }: Problem): string =>
    JSON.stringify([file, code, column, weight, hint]);
  const cell = ({ expected, received }: Problem): string => JSON.stringify([expected, received]);
  const groups = groupBy(problems.filter(inTable), alike);
  const told = new Map<Problem, Problem>();
  for (const group of groups.values()) {
    const cells = [...groupBy(group, cell).values()];
    // One that is left is told as shortly as that it is left.
    const whole = cells.length === TOLD + 1 ? cells : cells.slice(0, TOLD);
    for (const [first, ...again] of whole) {
      told.set(first!, { ...first!, hint: `${first!.hint}${repeated(again)}` });
    }
    const rest = cells.slice(whole.length);
    const [first] = rest;
    if (first === undefined) continue;
    const names = [...new Set(rest.map(([each]) => each!.received))];
    const count = rest.flat().length;
    told.set(first[0]!, {
      ...first[0]!,
      received: names.length > 2 * TOLD ? lines(count) : `${list(names)} in ${lines(count)}`,
      hint: `Like those above, to line ${rest.at(-1)!.at(-1)!.line}.`,
    });
  }
  return problems.flatMap((problem) => (inTable(problem) ? (told.get(problem) ?? []) : [problem]));
}
