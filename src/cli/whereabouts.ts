import { fitsSun } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { instant, localHour, parseQuantity } from "../quantity/index.ts";
import { type Context, usage } from "./context.ts";
import type { Given } from "./spec.ts";

/** A part of the place: as it was said, or what stands in for it. */
export interface Part {
  readonly text: string;
  readonly standsIn: boolean;
}

/** Where the farm is; null: left for the grower to fill in. */
export interface Whereabouts {
  readonly latitude: Part | null;
  readonly longitude: Part | null;
  readonly elevation: Part | null;
  readonly zone: Part | null;
}

export const NOWHERE: Whereabouts = { latitude: null, longitude: null, elevation: null, zone: null };

/** Degrees with a point, also where they were written with a comma. */
const plainDegrees = (text: string): string => text.trim().replace(/^([-+]?\d+),(\d+)$/u, "$1.$2");

const within = (limit: number) => (text: string) => text.trim() !== "" && Math.abs(Number(text)) <= limit;

/** A machine nobody has told where it stands keeps universal time. */
const isPlace = (zone: string): boolean => zone.includes("/") && !zone.startsWith("Etc/");

/** The machine's zone, where it goes with the sun at the farm. */
function machineZone(longitude: Part, { io }: Context, problems: Problem[]): Part | null {
  const year = new Date(io.now()).getUTCFullYear();
  if (isPlace(io.zone) && fitsSun(io.zone, Number(longitude.text), year))
    return { text: io.zone, standsIn: true };
  problems.push({
    ...usage("--zone", "the farm's time zone", "", "Say it, like --zone America/New_York."),
    received: `nothing, and the machine's is ${io.zone}`,
  });
  return null;
}

/**
 * Where the farm is, as the options say; what they say must be right. Where its longitude is said, the machine's time zone
 * and the height of the sea stand in for what is not.
 */
export function whereabouts(given: Given, context: Context, problems: Problem[]): Whereabouts {
  const said = (
    name: keyof Whereabouts,
    right: (text: string) => boolean,
    expected: string,
    hint: string,
    plain = (text: string): string => text,
  ): Part | null => {
    const said = given[name];
    if (typeof said !== "string") return null;
    const text = plain(said);
    if (right(text)) return { text, standsIn: false };
    problems.push(usage(`--${name}`, expected, text, hint));
    return null;
  };
  const latitude = said(
    "latitude",
    within(90),
    "degrees from -90 to 90",
    "South of the equator is negative.",
    plainDegrees,
  );
  const longitude = said(
    "longitude",
    within(180),
    "degrees from -180 to 180",
    "America is negative.",
    plainDegrees,
  );
  const elevation = said(
    "elevation",
    (text) => parseQuantity(text, "length", null).fault === null,
    "a height above the sea like 620 ft",
    "Write a number and its unit, in quotes when there is a blank.",
  );
  const zone = said(
    "zone",
    (text) => !Number.isNaN(localHour(text, instant(0))),
    "a time zone like America/New_York",
    "Write continent and city, with a slash and underscores.",
  );
  if (longitude === null) return { latitude, longitude, elevation, zone };
  const sea: Part = { text: given.units === "metric" ? "0 m" : "0 ft", standsIn: true };
  return {
    latitude,
    longitude,
    elevation: given.elevation === undefined ? sea : elevation,
    zone: given.zone === undefined ? machineZone(longitude, context, problems) : zone,
  };
}
