import type { Problem } from "../problem/index.ts";
import { unknownName } from "./faults.ts";
import type { Setting } from "./settingReader.ts";

/** Where a sensor is that stands in the open. */
export const OUTSIDE = "outside";

/** A sensor's name becomes the name of a file. */
export const isSensorName = (name: string): boolean => /^[\w-]+$/u.test(name);

/** Where each sensor stands. */
export function sensorsSetting(
  setting: Setting | null,
  tunnels: readonly string[],
  problems: Problem[],
): ReadonlyMap<string, string> {
  // A farm with one logger in the open need not say so.
  if (setting === null) return new Map([[OUTSIDE, OUTSIDE]]);
  const found = new Map<string, string>();
  const group = setting.settings(null);
  const places = [OUTSIDE, ...tunnels];
  for (const name of group?.names ?? []) {
    const sensor = group!.get(name)!;
    const where = sensor.text("outside or a tunnel");
    if (!isSensorName(name))
      sensor.fault(
        "sensor-name",
        "a sensor's name of letters, digits, - and _",
        "It becomes the name of a file.",
      );
    else if (where !== null && !places.includes(where))
      problems.push(unknownName(sensor.spot, where, "outside or a tunnel", places, "tunnel-unknown"));
    else if (where !== null) found.set(name, where);
  }
  return found;
}

/** Sensors named in a list; one that "sensors" does not place may be placed by an import. */
export const sensorNames = (setting: Setting | null): ReadonlySet<string> =>
  new Set((setting?.list() ?? []).map((entry) => entry.text("a sensor")).filter((name) => name !== null));
