import { list, type Problem, unlikeInNumber } from "../problem/index.ts";
import { type Spot, unknownName } from "./faults.ts";

/** A cover nobody knows. Its number is how heavy it is or how much it shades: the nearest one may be meant. */
export function unknownCover(spot: Spot, name: string, known: readonly string[]): Problem {
  const problem = unknownName(spot, name, "a cover", known, "cover-unknown");
  const alike = unlikeInNumber(name, known);
  if (alike.length === 0 || problem.hint.startsWith("Did")) return problem;
  const others =
    alike.length === 1 ? "" : ` There are ${list(known.filter((each) => alike.includes(each)))}.`;
  return { ...problem, hint: `Did you mean "${alike[0]!}"?${others}` };
}
