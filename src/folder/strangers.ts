import type { Farm } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { unknownName } from "./faults.ts";

/** Sensors with records that farm.yaml does not place: their records cannot be used. */
export const strangers = (names: readonly string[], { sensors }: Pick<Farm, "sensors">): readonly Problem[] =>
  names
    .filter((name) => !sensors.has(name))
    .map((name) => ({
      ...unknownName(
        { file: "farm.yaml", line: null, column: "sensors" },
        name,
        "every sensor with records in temperature/",
        [...sensors.keys()],
        "sensor-unplaced",
      ),
      weight: "needsYou",
      hint: `Its records are not used. Add a line "${name}: outside", or the tunnel it hangs in.`,
      received: `none for "${name}"`,
    }));
