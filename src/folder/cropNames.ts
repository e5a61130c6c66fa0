import type { Problem } from "../problem/index.ts";
import { type Spot, unknownName } from "./faults.ts";
import { idNamed, plainName } from "./idNamed.ts";

/** What else growers call the crops of the catalogue. Lower case, without marks. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ["rocket", "arugula"],
  ["roquette", "arugula"],
  ["beetroot leaves", "beet-greens"],
  ["beet", "beet-greens"],
  ["swiss chard", "chard"],
  ["silverbeet", "chard"],
  ["lambs lettuce", "mache"],
  ["corn salad", "mache"],
  ["coriander", "cilantro"],
  ["pak choi", "baby-pak-choi"],
  ["bok choy", "baby-pak-choi"],
  ["lettuce", "lettuce-mix"],
  ["salad mix", "lettuce-mix"],
]);

/** The known crop of a name, written in any way or in other words; null for none. @example cropNamed("Rocket", crops) // => "arugula" */
export function cropNamed(
  name: string,
  known: ReadonlyMap<string, { readonly name: string }>,
): string | null {
  const other = OTHER_NAMES.get(plainName(name));
  return idNamed(name, known) ?? (other !== undefined && known.has(other) ? other : null);
}

/** A crop nobody knows, with the known one of another name or the nearest spelling. */
export function unknownCrop(spot: Spot, name: string, known: readonly string[]): Problem {
  const problem = unknownName(spot, name, "a crop", known, "crop-unknown");
  const same = OTHER_NAMES.get(plainName(name));
  return same !== undefined && known.includes(same)
    ? { ...problem, hint: `Did you mean "${same}"?` }
    : problem;
}
