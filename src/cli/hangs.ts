import { type FarmSettings, hangingPlaces, isSensorName, unknownName, withPlaces } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { usage } from "./context.ts";
import type { Given } from "./spec.ts";

/** The farm with what --hangs says of the sensor behind --sensor; `place`: what is new and to be remembered, or null. */
export function hangsGiven(
  { sensor, hangs }: Given,
  farm: FarmSettings,
):
  | { readonly farm: FarmSettings; readonly place: readonly [sensor: string, hangs: string] | null }
  | { readonly problem: Problem } {
  if (typeof hangs !== "string") return { farm, place: null };
  if (typeof sensor !== "string")
    return {
      problem: usage(
        "--hangs",
        "the sensor's name with it",
        hangs,
        "Say --sensor and a name, like --sensor north.",
      ),
    };
  if (!isSensorName(sensor)) {
    const expected = "a sensor's name of letters, digits, - and _";
    return { problem: usage("--sensor", expected, sensor, "It becomes the name of a file.") };
  }
  const known = hangingPlaces(farm);
  const spot = { file: "--hangs", line: null, column: null };
  if (!known.includes(hangs))
    return { problem: unknownName(spot, hangs, "outside or a tunnel", known, "tunnel-unknown") };
  const before = farm.sensors.get(sensor);
  if (before === hangs) return { farm, place: null };
  if (before !== undefined)
    return {
      problem: usage(
        "--hangs",
        `${before}, where ${sensor} is known to hang`,
        hangs,
        "Give a sensor that moved a new name, so that its older records keep their place.",
      ),
    };
  return { farm: withPlaces(farm, new Map([[sensor, hangs]])), place: [sensor, hangs] };
}
