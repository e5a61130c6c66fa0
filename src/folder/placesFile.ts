import { tunnelIds } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { FarmSettings } from "./farmFile.ts";
import { shown, unknownName } from "./faults.ts";
import { isSensorName, OUTSIDE } from "./sensorsSetting.ts";

/** Where each sensor hangs: outside, or a tunnel's id. */
export type Places = ReadonlyMap<string, string>;

/** Name of the file in which an import keeps what --hangs said. */
export const PLACES_NAME = "sensors.csv";

const HEADER = "sensor,hangs";

export const writePlaces = (places: Places): string =>
  `${[HEADER, ...[...places].map((place) => place.join(","))].join("\n")}\n`;

/** Where a sensor may hang. */
export const hangingPlaces = ({ tunnels }: Pick<FarmSettings, "tunnels">): readonly string[] => [
  OUTSIDE,
  ...tunnelIds(tunnels),
];

/** Reads where sensors hang. A line that cannot be read, or names a tunnel the farm no longer has, is a problem and left out. */
export function readPlaces(
  file: string,
  text: string,
  farm: Pick<FarmSettings, "tunnels">,
): { readonly places: Places; readonly problems: readonly Problem[] } {
  const known = hangingPlaces(farm);
  const places = new Map<string, string>();
  const problems: Problem[] = [];
  const lines = text.replace(/^\uFEFF/u, "").split(/\r?\n/u);
  lines.forEach((line, index) => {
    if (index === 0 || /^[\s,;"]*$/u.test(line)) return;
    const spot = { file, line: index + 1, column: null };
    const [sensor = "", hangs = ""] = line
      .replaceAll('"', "")
      .split(/[,;\t]/u)
      .map((cell) => cell.trim());
    if (!isSensorName(sensor) || hangs === "")
      problems.push({
        ...spot,
        code: "place-unreadable",
        weight: "needsYou",
        expected: "a sensor and where it hangs",
        received: shown(line),
        hint: "Delete the line, then import with --sensor and --hangs.",
      });
    else if (!known.includes(hangs))
      problems.push({
        ...unknownName({ ...spot, column: "hangs" }, hangs, "outside or a tunnel", known, "tunnel-unknown"),
        weight: "needsYou",
      });
    else places.set(sensor, hangs);
  });
  return { places, problems };
}

/** A farm that knows where more of its sensors hang. What farm.yaml says counts before what an import was told. */
export const withPlaces = <Known extends Pick<FarmSettings, "sensors">>(
  farm: Known,
  places: Places,
): Known => ({
  ...farm,
  sensors: new Map([...farm.sensors, ...[...places].filter(([sensor]) => !farm.sensors.has(sensor))]),
});
