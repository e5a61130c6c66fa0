import { CURVES, type Place } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { instant, localHour } from "../quantity/index.ts";
import { unknownName } from "./faults.ts";
import type { Setting } from "./settingReader.ts";
import { fitsSun, offsetWords, standardOffset } from "./standardTime.ts";

const knownZone = (zone: string): boolean => !Number.isNaN(localHour(zone, instant(0)));

/** Any year: standard time is compared with the sun only roughly. */
const YEAR = 2026;

function farFromSun(setting: Setting, longitude: number, zone: string): readonly Problem[] {
  if (fitsSun(zone, longitude, YEAR)) return [];
  const sun = offsetWords(Math.round(longitude / 15) * 60);
  return [
    {
      ...setting.spot,
      code: "zone-far-from-longitude",
      weight: "needsYou",
      expected: `a time zone near longitude ${longitude}, about ${sun}`,
      received: `${zone}, ${offsetWords(standardOffset(zone, YEAR))}`,
      hint: "Check latitude, longitude and zone; are two swapped?",
    },
  ];
}

/** Where the farm is. */
export function placeSetting(setting: Setting | null, problems: Problem[]): Place | null {
  const group = setting?.settings(["latitude", "longitude", "elevation", "zone", "setting", "curve"]) ?? null;
  if (group === null) return null;
  const latitude =
    group.need("latitude", "a latitude like 44.12")?.number("degrees, north positive,", -90, 90) ?? null;
  const longitude =
    group.need("longitude", "a longitude like -72.84")?.number("degrees, east positive,", -180, 180) ?? null;
  const elevation = group.need("elevation", "a height above the sea like 620 ft")?.quantity("length") ?? null;
  const zoneSetting = group.need("zone", "a time zone like America/New_York");
  let zone = zoneSetting?.text("a time zone like America/New_York") ?? null;
  if (zone !== null && !knownZone(zone)) {
    const zones = Intl.supportedValuesOf("timeZone");
    const problem = unknownName(
      zoneSetting!.spot,
      zone,
      "a time zone like America/New_York",
      zones,
      "zone-unknown",
    );
    zone = zoneSetting!.fault(
      problem.code,
      problem.expected,
      problem.hint.startsWith("Did")
        ? problem.hint
        : "Write continent and city, with a slash and underscores.",
    );
  }
  if (zone !== null && longitude !== null) problems.push(...farFromSun(zoneSetting!, longitude, zone));
  const lie =
    group.get("setting") === null ? "inland" : group.get("setting")!.oneOf(["inland", "coast"] as const);
  const curve = group.get("curve") === null ? CURVES[0] : group.get("curve")!.oneOf(CURVES);
  if (latitude === null || longitude === null || elevation === null || zone === null) return null;
  if (lie === null || curve === null) return null;
  return { latitude, longitude, elevation, zone, setting: lie, curve };
}
